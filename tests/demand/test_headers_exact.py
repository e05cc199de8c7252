"""Headers filled, against every placing of some two thousand small builds."""

import pytest

from service.demand.draws import Draw
from service.demand.hosts import hang, others, state
from service.demand.placing import FIXED
from service.demand.wants import Host
from tests.demand.brute_headers import all_worths, plugs, small_build

SLICES = 8


@pytest.mark.parametrize("part", range(SLICES))
def test_no_placing_is_better(part: int) -> None:
    """By all six levels, and of every different load on the supply's plugs the fewest headers overloaded."""
    searched = 0
    for seed in range(part * 300, part * 300 + 300):
        draws, hosts = small_build(seed)
        if sum(len(draw.needs) for draw in draws) > 7:
            continue
        every = all_worths(draws, hosts)
        least = min(worth for worth, _ in every)
        found = hang(state(draws, hosts))
        assert (seed, tuple(found.worth), found.proven) == (seed, least, True)
        searched += any(least)
        assert (seed, _outcomes(draws, hosts)) == (seed, _by_hand(every, least))
    assert searched > 100


def _outcomes(draws: list[Draw], hosts: list[Host]) -> dict[object, int]:
    found = others(state(draws, hosts))
    assert found.complete
    of = plugs(draws)
    outcomes: dict[object, int] = {}
    for hung in found.hung:
        loads = {unit: (*hung.sustained[unit], *hung.starting[unit]) for unit in hung.sustained if unit not in hung.fed}
        roots = tuple(sorted((unit, load) for unit, load in loads.items() if any(load)))
        left = sorted((plug.connector, plug.load) for plug in of if not plug.header and plug.unit not in hung.fed)
        outcomes[roots, tuple(left)] = hung.worth.over
    return outcomes


def _by_hand(every: list[tuple[tuple[int, ...], object]], least: tuple[int, ...]) -> dict[object, int]:
    outcomes: dict[object, int] = {}
    for worth, seen in every:
        if worth[:FIXED] == least[:FIXED]:
            outcomes[seen] = min(worth[FIXED + 1], outcomes.get(seen, worth[FIXED + 1]))
    return outcomes
