"""The formulas of contacts, chains, runs and strips against ngspice, a circuit simulator.

``python -m tests.reference.physics`` prints how far each network lies from it.
"""

import pytest

from tests.reference.physics.compare import farthest
from tests.reference.physics.networks import LINEAR, WRITTEN, Network, drawn

UNSOLVED = {
    "long thin chain just above what it can carry", "long thin chain far above what it can carry",
    "a run of six pairs above what it can carry", "a hundredth above the most",
}
RANDOM = range(30)


@pytest.mark.parametrize("network", WRITTEN, ids=lambda network: network.name)
def test_network_agrees(network: Network) -> None:
    difference = farthest(network)
    assert (difference is None) == (network.name in UNSOLVED)
    assert difference is None or difference <= network.within


@pytest.mark.parametrize("seed", RANDOM)
def test_random_tree_agrees(seed: int) -> None:
    network = drawn(seed)
    difference = farthest(network)
    assert difference is None or difference <= network.within


def test_random_trees_are_of_all_kinds() -> None:
    found = [drawn(seed) for seed in RANDOM]
    answers = [network.ours() for network in found]
    assert sum(answer is None for answer in answers) >= 3
    assert sum(answer is not None and network.within != LINEAR
               for answer, network in zip(answers, found, strict=True)) >= 10
