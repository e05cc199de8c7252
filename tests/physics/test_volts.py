"""Volts at a load behind a resistance, and the most that leaves enough of them: each undoes the other."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics.loads import most_watts, volts_behind, watts_above

volts = st.floats(3, 60)
way = st.floats(0.001, 0.5)


# 132 W at 11 V are 12 A, which drop 1 V in a twelfth of an ohm: 12 V before it.
def test_volts_by_hand() -> None:
    assert volts_behind(12, 1 / 12, 132) == pytest.approx(11)
    assert watts_above(12, 11, 1 / 12) == pytest.approx(132)


@given(source=volts, share=st.floats(0.51, 1), ohms=way)
def test_the_most_that_leaves_enough_leaves_just_that(source: float, share: float, ohms: float) -> None:
    lowest = source * share
    assert volts_behind(source, ohms, watts_above(source, lowest, ohms)) == pytest.approx(lowest, rel=1e-6)


@given(source=volts, ohms=way, part=st.floats(0, 0.999), more=st.floats(1.001, 2))
def test_more_watts_leave_fewer_volts(source: float, ohms: float, part: float, more: float) -> None:
    watts = part * most_watts(source, ohms)
    assert volts_behind(source, ohms, watts * more) <= volts_behind(source, ohms, watts)


def test_nothing_is_dropped_by_no_load_and_nothing_left_past_the_most() -> None:
    assert volts_behind(12, 0.1, 0) == 12
    assert volts_behind(12, 0.1, most_watts(12, 0.1) * 1.001) == 0


@pytest.mark.parametrize(("source", "lowest", "ohms"), [(12, 5.9, 0.1), (12, 12.1, 0.1), (12, 11, 0)])
def test_no_limit_is_refused(source: float, lowest: float, ohms: float) -> None:
    with pytest.raises(ValueError, match="upper half"):
        watts_above(source, lowest, ohms)
