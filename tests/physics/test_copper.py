"""Wires: thinner, longer and warmer resists more, more side by side less, and a gauge that is none is refused."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.facts.wire import SOLID_OHMS_PER_METRE, STRANDED_OHMS_PER_METRE
from service.physics.copper import (
    area_square_mm,
    diameter_mm,
    ohms_per_metre,
    pair_ohms,
    temperature_factor,
    wire_ohms,
)

gauges = st.integers(-3, 36)
celsius = st.floats(10, 99)
lengths = st.floats(1, 3000)


@given(one=gauges, other=gauges, warmth=celsius, stranded=st.booleans())
def test_a_thinner_gauge_resists_more(one: int, other: int, warmth: float, stranded: bool) -> None:
    thick, thin = (ohms_per_metre(awg, stranded=stranded, celsius=warmth) for awg in sorted((one, other)))
    assert (thin > thick) == (one != other)


@given(awg=gauges, warmth=celsius, more=st.floats(0.1, 50))
def test_warmer_wire_resists_more(awg: int, warmth: float, more: float) -> None:
    assert ohms_per_metre(awg, celsius=warmth + more) > ohms_per_metre(awg, celsius=warmth)


@pytest.mark.parametrize("awg", range(-3, 37))
def test_strands_resist_a_little_more_than_solid_wire(awg: int) -> None:
    assert 1.02 <= ohms_per_metre(awg, stranded=True) / ohms_per_metre(awg) <= 1.05


# Common practice: 2 to 5 % for the lay of the strands, 4 % taken where nothing is printed; 22 AWG is solid 52.953.
@pytest.mark.parametrize(("awg", "milliohms"), [(22, 55.071), (24, 87.588), (28, 221.444)])
def test_strands_that_are_not_printed_resist_4_percent_more(awg: int, milliohms: float) -> None:
    assert awg not in STRANDED_OHMS_PER_METRE
    assert ohms_per_metre(awg, stranded=True) * 1000 == pytest.approx(milliohms, abs=0.001)


def test_printed_ohms_hold_at_20_degrees() -> None:
    assert temperature_factor(20) == 1


@pytest.mark.parametrize("celsius", [-300, float("-inf")])
def test_no_warmth_makes_copper_resist_nothing(celsius: float) -> None:
    with pytest.raises(ValueError, match="10 to 100 C"):
        ohms_per_metre(18, celsius=celsius)


@pytest.mark.parametrize("awg", sorted(SOLID_OHMS_PER_METRE))
def test_diameter_and_resistivity_give_the_printed_ohms(awg: int) -> None:
    assert 0.01724 / area_square_mm(awg) == pytest.approx(ohms_per_metre(awg), rel=4e-4)


@pytest.mark.parametrize("awg", [17, 19, 21, 23])
def test_a_gauge_that_is_not_printed_follows_the_diameter(awg: int) -> None:
    assert awg not in SOLID_OHMS_PER_METRE
    ohms = ohms_per_metre(awg)
    assert ohms == pytest.approx((ohms_per_metre(awg - 1) * ohms_per_metre(awg + 1)) ** 0.5, rel=3e-4)
    assert ohms * pi / 4 * diameter_mm(awg) ** 2 == pytest.approx(0.01724)


@pytest.mark.parametrize("awg", [-4, 37, 100])
def test_a_gauge_that_is_none_is_refused(awg: int) -> None:
    with pytest.raises(ValueError, match="between 0000 and 36"):
        ohms_per_metre(awg)


@given(awg=gauges, length=lengths, parallel=st.integers(1, 8))
def test_equal_wires_side_by_side_share_evenly(awg: int, length: float, parallel: int) -> None:
    assert wire_ohms(awg, length, parallel=parallel) * parallel == pytest.approx(wire_ohms(awg, length))


@given(awg=gauges, length=lengths, more=lengths)
def test_lengths_add_up(awg: int, length: float, more: float) -> None:
    assert wire_ohms(awg, length) + wire_ohms(awg, more) == pytest.approx(wire_ohms(awg, length + more))


# 18 AWG, 0.6 m: 12.569 milliohms one way, so 25.138 there and back; 3 pairs with four contacts of 6 milliohms each.
def test_a_pair_goes_there_and_back_with_its_contacts() -> None:
    assert pair_ohms(18, 600) * 1000 == pytest.approx(25.138, abs=0.001)
    three = pair_ohms(18, 600, parallel_pairs=3, ohms_per_contact=0.006, contacts_in_series=4)
    assert three * 1000 == pytest.approx((25.138 + 24) / 3, abs=0.001)


@pytest.mark.parametrize(
    "wrong",
    [{"length_mm": -1.0}, {"parallel_pairs": 0}, {"ohms_per_contact": -0.001}, {"contacts_in_series": -1},
     {"length_mm": float("nan")}],
    ids=str,
)
def test_no_wire_is_refused(wrong: dict[str, float]) -> None:
    given: dict[str, float] = {"length_mm": 100.0, "contacts_in_series": 2} | wrong
    with pytest.raises(ValueError, match=r"a wire has a length|are not negative"):
        pair_ohms(18, **given)  # type: ignore[arg-type]
