"""Short peaks: longer stretches never allow more, and what is in watts scales with watts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.facts.supply import EXCURSION_MICROSECONDS
from service.physics.excursion import (
    card_ratio,
    cycle_low_watts,
    envelope_percent,
    supply_envelope_watts,
)

stretches = st.floats(0.1, 1e7)
watts = st.floats(1, 3000)


@given(one=stretches, other=stretches)
def test_a_longer_stretch_never_allows_a_card_more(one: float, other: float) -> None:
    short, long = sorted((one, other))
    assert card_ratio(long) <= card_ratio(short)


@given(microseconds=stretches)
def test_a_card_may_always_draw_its_sustained_watts_and_never_over_three_times(microseconds: float) -> None:
    assert 1 <= card_ratio(microseconds) <= 3


@given(one=stretches, other=stretches, large=st.booleans())
def test_a_longer_stretch_never_asks_more_of_a_supply(one: float, other: float, large: bool) -> None:
    short, long = sorted((one, other))
    assert envelope_percent(long, large=large) <= envelope_percent(short, large=large)


@given(microseconds=stretches)
def test_the_large_column_is_never_below_the_small_one(microseconds: float) -> None:
    assert envelope_percent(microseconds, large=True) >= envelope_percent(microseconds, large=False) >= 100


@given(rated=watts, more=watts, microseconds=stretches, large=st.booleans())
def test_a_larger_supply_carries_more(rated: float, more: float, microseconds: float, large: bool) -> None:
    smaller = supply_envelope_watts(rated, microseconds, large=large)
    assert supply_envelope_watts(rated + more, microseconds, large=large) > smaller >= rated * (1 - 1e-9)


@given(rated=watts, row=st.sampled_from(EXCURSION_MICROSECONDS), large=st.booleans())
def test_watts_of_a_supply_are_percent_of_its_rating(rated: float, row: int, large: bool) -> None:
    carried = supply_envelope_watts(rated, row, large=large)
    assert carried / rated == pytest.approx(envelope_percent(row, large=large) / 100)


@given(rated=watts, row=st.sampled_from(EXCURSION_MICROSECONDS), large=st.booleans())
def test_the_low_level_of_a_cycle_lies_below_the_rating(rated: float, row: int, large: bool) -> None:
    assert 0 < cycle_low_watts(rated, row, large=large) < rated


@pytest.mark.parametrize("microseconds", [0, -1])
def test_no_stretch_is_refused(microseconds: float) -> None:
    with pytest.raises(ValueError, match="longer than nothing"):
        card_ratio(microseconds)
    with pytest.raises(ValueError, match="longer than nothing"):
        envelope_percent(microseconds, large=True)


def test_a_cycle_is_known_for_printed_rows_only() -> None:
    with pytest.raises(KeyError):
        cycle_low_watts(750, 101, large=True)
