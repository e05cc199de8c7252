"""From outputs to the wall: more load takes more, better efficiency less, and the ends of the points hold."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.facts.efficiency import LEVELS_115_VOLTS, LEVELS_230_VOLTS, Points, points
from service.physics.conversion import efficiency_at, wall_amps, wall_watts

watts = st.floats(1, 3000)
percents = st.floats(50, 99)
levels = st.sampled_from([*LEVELS_115_VOLTS.values(), *LEVELS_230_VOLTS.values()])


@given(output=watts, more=watts, percent=percents)
def test_more_at_the_outputs_is_more_at_the_wall(output: float, more: float, percent: float) -> None:
    assert wall_watts(output + more, percent) > wall_watts(output, percent) > output


@given(output=watts, percent=percents, better=st.floats(0.5, 1))
def test_better_efficiency_takes_less_from_the_wall(output: float, percent: float, better: float) -> None:
    assert wall_watts(output, percent + better) < wall_watts(output, percent)


@given(taken=watts, volts=st.floats(90, 264), factor=st.floats(0.5, 1))
def test_volts_times_amps_times_factor_are_the_watts(taken: float, volts: float, factor: float) -> None:
    assert wall_amps(taken, volts, factor) * volts * factor == pytest.approx(taken)


@given(taken=watts, volts=st.floats(90, 200), higher=st.floats(1, 64), factor=st.floats(0.5, 1))
def test_higher_mains_take_fewer_amps(taken: float, volts: float, higher: float, factor: float) -> None:
    assert wall_amps(taken, volts + higher, factor) < wall_amps(taken, volts, factor)


@given(level=levels, load=st.floats(0, 120))
def test_efficiency_lies_between_the_points_beside_it(level: Points, load: float) -> None:
    found = efficiency_at(load, level)
    ends = [level[0], *level, level[-1]]
    beside = [(one[1], other[1]) for one, other in pairwise(ends) if one[0] <= load <= other[0]]
    outside = [(level[0][1], level[0][1])] if load < level[0][0] else [(level[-1][1], level[-1][1])]
    low, high = sorted((beside or outside)[0])
    assert low - 1e-9 <= found <= high + 1e-9


@given(level=levels)
def test_points_themselves_are_met(level: Points) -> None:
    assert [efficiency_at(load, level) for load, _ in level] == [percent for _, percent in level]


@given(level=levels, load=st.floats(1, 100), more=st.floats(0.1, 50))
def test_more_load_takes_more_from_the_wall_on_every_level(level: Points, load: float, more: float) -> None:
    light, heavy = (wall_watts(share, efficiency_at(share, level)) for share in (load, load + more))
    assert heavy > light


@pytest.mark.parametrize(("mains_volts", "gold"), [(100, 87), (127, 87), (127.1, 90), (230, 90)])
def test_low_mains_have_the_levels_of_115_volts(mains_volts: float, gold: float) -> None:
    assert efficiency_at(20, points("gold", mains_volts)) == gold


@pytest.mark.parametrize("percent", [0, -1, 100.1])
def test_no_efficiency_is_refused(percent: float) -> None:
    with pytest.raises(ValueError, match="at most 100 %"):
        wall_watts(100, percent)


@pytest.mark.parametrize(("volts", "factor"), [(0, 1), (230, 0), (230, 1.01)])
def test_no_mains_are_refused(volts: float, factor: float) -> None:
    with pytest.raises(ValueError, match="above 0"):
        wall_amps(100, volts, factor)


def test_no_points_are_refused() -> None:
    with pytest.raises(ValueError, match="at least one point"):
        efficiency_at(50, ())
