"""Contacts side by side: amps add up, an open one loads the others, a worn one unloads itself; constant power."""

from collections.abc import Sequence
from itertools import combinations, product
from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics.contacts import (
    OPEN,
    amps_per_contact,
    credible_ohms,
    divide_amps,
    feed_watts,
    parallel_ohms,
    watts_of_contacts,
    worst_sharing,
)
from service.physics.loads import amps_of_watts, heat_watts, most_watts
from service.physics.warmth import estimated_rise_celsius, rated_point

amps = st.floats(0.1, 60)
ohms = st.floats(1e-4, 1)
branches = st.lists(st.one_of(ohms, st.just(OPEN)), min_size=1, max_size=12)
closed = st.lists(ohms, min_size=2, max_size=12)
NOISE = 1e-12


def _no_less(one: float, other: float) -> bool:
    """Say that the first is no less than the second, but for rounding."""
    return one >= other - NOISE * max(abs(one), abs(other))


@given(carried=amps, volts=st.sampled_from([3.3, 5.0, 12.0]), contacts=st.integers(1, 12))
def test_watts_and_amps_of_contacts_undo_each_other(carried: float, volts: float, contacts: int) -> None:
    assert amps_per_contact(watts_of_contacts(carried, volts, contacts), volts, contacts) == pytest.approx(carried)


@given(watts=st.floats(1, 600), volts=st.floats(11, 12.6), contacts=st.integers(1, 11))
def test_one_contact_more_lightens_the_others(watts: float, volts: float, contacts: int) -> None:
    assert amps_per_contact(watts, volts, contacts + 1) < amps_per_contact(watts, volts, contacts)


def test_no_contact_carries_nothing() -> None:
    with pytest.raises(ZeroDivisionError):
        amps_per_contact(1, 12, 0)


@given(total=amps, branch=ohms, count=st.integers(1, 12))
def test_equal_branches_carry_what_the_plain_division_says(total: float, branch: float, count: int) -> None:
    assert divide_amps(total, [branch] * count) == pytest.approx([amps_per_contact(total, 1, count)] * count)


@given(total=amps, ohms=branches)
def test_amps_add_up_and_every_branch_has_the_same_volts(total: float, ohms: list[float]) -> None:
    shares = divide_amps(total, ohms)
    if shares is None:
        assert set(ohms) == {OPEN}
        return
    assert sum(shares) == pytest.approx(total)
    drop = total * parallel_ohms(ohms)
    assert [share * one for share, one in zip(shares, ohms, strict=True) if one < OPEN] == pytest.approx(
        [drop] * sum(one < OPEN for one in ohms))
    assert all(share == 0 for share, one in zip(shares, ohms, strict=True) if one == OPEN)


@given(total=amps, ohms=closed, data=st.data())
def test_opening_a_contact_never_lowers_anothers_amps(total: float, ohms: list[float], data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(ohms) - 1))
    before, after = divide_amps(total, ohms), divide_amps(total, [*ohms[:at], OPEN, *ohms[at + 1:]])
    assert before
    assert after
    assert after[at] == 0
    assert all(_no_less(after[other], before[other]) for other in range(len(ohms)) if other != at)


@given(total=amps, ohms=closed, more=ohms, data=st.data())
def test_a_worse_contact_carries_less_and_all_others_more(
    total: float, ohms: list[float], more: float, data: st.DataObject,
) -> None:
    at = data.draw(st.integers(0, len(ohms) - 1))
    before, after = divide_amps(total, ohms), divide_amps(total, [*ohms[:at], ohms[at] + more, *ohms[at + 1:]])
    assert before
    assert after
    assert after[at] < before[at]
    assert all(_no_less(after[other], before[other]) for other in range(len(ohms)) if other != at)


@pytest.mark.parametrize("wrong", [0.0, -0.01, nan, 1e-13])
def test_a_branch_without_resistance_is_refused(wrong: float) -> None:
    with pytest.raises(ValueError, match="some resistance"):
        divide_amps(10, [0.01, wrong])
    with pytest.raises(ValueError, match="some resistance"):
        parallel_ohms([wrong])


@pytest.mark.parametrize("none", [[], [OPEN], [OPEN, OPEN]], ids=str)
def test_nothing_carries_where_all_are_open(none: list[float]) -> None:
    assert divide_amps(10, none) is None
    assert parallel_ohms(none) == OPEN
    assert feed_watts(12, none, 1) is None


# 12 V behind 0.1 ohm give at most 360 W, at 60 A and 6 V; 110 W take 10 A at 11 V.
def test_constant_power_by_hand() -> None:
    assert most_watts(12, 0.1) == pytest.approx(360)
    assert amps_of_watts(12, 0.1, 110) == pytest.approx(10)
    assert amps_of_watts(12, 0.1, 360) == pytest.approx(60)
    assert amps_of_watts(12, 0.1, 360.0001) is None
    assert amps_of_watts(12, 0, 600) == 50
    assert amps_of_watts(12, OPEN, 0) == 0
    assert amps_of_watts(12, OPEN, 1) is None
    assert most_watts(12, 0) == inf


@given(volts=st.floats(1, 20), way=ohms, share=st.floats(0, 1))
def test_watts_at_the_load_are_those_asked_for_on_the_high_branch(volts: float, way: float, share: float) -> None:
    watts = most_watts(volts, way) * share * (1 - 1e-9)
    found = amps_of_watts(volts, way, watts)
    assert found is not None
    left = volts - way * found
    assert left * found == pytest.approx(watts, rel=1e-12)
    assert left >= volts / 2


@given(volts=st.floats(1, 20), way=ohms, over=st.floats(1e-9, 10))
def test_past_the_most_there_is_no_solution(volts: float, way: float, over: float) -> None:
    assert amps_of_watts(volts, way, most_watts(volts, way) * (1 + over)) is None


@given(volts=st.floats(1, 20), way=ohms, more=ohms, watts=st.floats(0.1, 600))
def test_more_resistance_never_raises_the_volts(volts: float, way: float, more: float, watts: float) -> None:
    before, after = feed_watts(volts, [way], watts), feed_watts(volts, [way + more], watts)
    assert after is None or before is not None
    assert after is None or before is None or _no_less(before.load_volts, after.load_volts)


@given(ohms=closed, back=ohms, watts=st.floats(0.1, 100), data=st.data())
def test_opening_a_contact_never_lowers_anothers_amps_at_constant_power(
    ohms: list[float], back: float, watts: float, data: st.DataObject,
) -> None:
    at = data.draw(st.integers(0, len(ohms) - 1))
    before = feed_watts(12, ohms, watts, back)
    after = feed_watts(12, [*ohms[:at], OPEN, *ohms[at + 1:]], watts, back)
    if before is None:
        assert after is None
        return
    assert sum(before.branch_amps) == pytest.approx(before.total_amps)
    assert before.load_volts * before.total_amps == pytest.approx(watts)
    if after is not None:
        assert all(
            _no_less(after.branch_amps[other], before.branch_amps[other]) for other in range(len(ohms)) if other != at
        )


@pytest.mark.parametrize("wrong", [(0, 0.1, 1), (12, -0.1, 1), (12, 0.1, -1), (nan, 0.1, 1), (12, nan, 1)], ids=str)
def test_no_load_is_refused(wrong: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="not negative"):
        amps_of_watts(*wrong)


def _every_sharing(total: float, wires: Sequence[float], ends: tuple[float, float], opened: int) -> float:
    """Return the most on any branch over all choices of open branches, and fresh or worn for each of the others."""
    most = 0.0
    for away in combinations(range(len(wires)), opened):
        for contacts in product(ends, repeat=len(wires)):
            ohms = [OPEN if at in away else wire + contact
                    for at, (wire, contact) in enumerate(zip(wires, contacts, strict=True))]
            most = max(most, *(divide_amps(total, ohms) or ()))
    return most


@given(
    total=amps, wires=st.lists(st.floats(1e-3, 0.05), min_size=2, max_size=5),
    ends=st.tuples(st.floats(1e-4, 0.01), st.floats(0.01, 0.1)), data=st.data(),
)
def test_no_sharing_in_the_range_is_worse_than_the_worst(
    total: float, wires: list[float], ends: tuple[float, float], data: st.DataObject,
) -> None:
    opened = data.draw(st.integers(0, len(wires) - 1))
    found = worst_sharing(total, wires, *ends, opened)
    assert found is not None
    assert found.branch_amps[found.most_loaded] == max(found.branch_amps)
    assert found.branch_amps[found.most_loaded] == pytest.approx(_every_sharing(total, wires, ends, opened))
    assert sum(each == OPEN for each in found.branch_ohms) == opened
    assert sum(found.branch_amps) == pytest.approx(total)


def test_no_sharing_is_left() -> None:
    assert worst_sharing(10, [0.01, 0.01], 0.001, 0.01, 2) is None
    assert worst_sharing(10, [], 0.001, 0.01, 0) is None
    with pytest.raises(ValueError, match="no less than fresh"):
        worst_sharing(10, [0.01, 0.01], 0.01, 0.001)
    with pytest.raises(ValueError, match="no fewer than none"):
        worst_sharing(10, [0.01, 0.01], 0.001, 0.01, -1)


# 600 W at 12 V over six wires of 0.65 m, 16 AWG, a contact at each end: evenly 8.33 A. With one open and one as good as
# new beside four worn ones the good one carries 16.8 A; a failing cable that was measured had 22 A of 51 A on one wire.
def test_worst_sharing_of_a_16_pin_cable_is_credible() -> None:
    fresh, worn = credible_ohms("16-pin")
    found = worst_sharing(50, [0.013176 * 0.65] * 6, 2 * fresh, 2 * worn)
    assert found
    assert found.branch_amps[found.most_loaded] == pytest.approx(16.8, abs=0.05)
    assert 50 / 6 < found.branch_amps[found.most_loaded] < 22


@pytest.mark.parametrize(("carried", "rise"), [(9.2, 30), (4.6, 7.5), (18.4, 120), (0, 0)])
def test_rise_goes_with_the_square_of_the_amps(carried: float, rise: float) -> None:
    assert estimated_rise_celsius(carried, 9.2, 30) == pytest.approx(rise)


def test_no_rated_amps_are_refused() -> None:
    with pytest.raises(ValueError, match="above 0"):
        estimated_rise_celsius(1, 0, 30)


# 9.2 A through one milliohm more are 0.0846 W more.
def test_heat_of_a_milliohm() -> None:
    assert heat_watts(9.2, 0.001) == pytest.approx(0.0846, abs=0.00005)


def test_a_family_that_nothing_is_published_for_is_not_guessed() -> None:
    with pytest.raises(KeyError):
        credible_ohms("5.08 mm")


@pytest.mark.parametrize(("family", "circuits"), [
    ("4.2 mm", 1), ("4.2 mm", 11), ("4.2 mm", 25), ("16-pin", 8), ("5.08 mm", 4),
])
def test_a_size_that_nothing_is_printed_for_is_not_guessed(family: str, circuits: int) -> None:
    with pytest.raises(KeyError):
        rated_point(family, circuits)
