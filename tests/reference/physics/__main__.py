"""How far each network lies from the simulator: ``python -m tests.reference.physics``."""

import sys

from tests.reference.physics.compare import farthest
from tests.reference.physics.networks import WRITTEN, drawn

DRAWN = 200


def main() -> None:
    """Print the greatest relative difference of each network, and of many random ones."""
    for network in WRITTEN:
        difference = farthest(network)
        _say(network.name, difference)
    found = [farthest(drawn(seed)) for seed in range(DRAWN)]
    solved = [difference for difference in found if difference is not None]
    _say(f"{DRAWN} random trees, {DRAWN - len(solved)} of them without a solution for both", max(solved))


def _say(name: str, difference: float | None) -> None:
    sys.stdout.write(f"{name:72} {'no solution, by both' if difference is None else f'{difference:.1e}'}\n")


if __name__ == "__main__":
    main()
