"""Stated peaks beside derived ones: each bounds the other where it can, and what is stated is never called derived."""

from typing import Any

import pytest

from service.intake.faults import Faults
from tests.journeys.asked import Json, ask, spoken

MAIN = {"plugs": [{"connector": "atx-20+4"}]}
CPU = {"plugs": [{"connector": "cpu-8"}]}
CARDS = {"plugs": [{"connector": "pcie-6+2"}], "quantity": 6}
BOARD = {
    "category": "motherboard", "own_amps": {"12v": 1, "5v": 1, "3v3": 1, "5vsb": 0.5}, "offers": [],
    "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}],
}
STEADY = {"category": "processor", "plug_watts": 100, "peaks": [{"microseconds": 100, "watts": 100}]}


def peak(microseconds: int, watts: float) -> Json:
    """Return one stated peak."""
    return {"microseconds": microseconds, "watts": watts}


def card(watts: float, *peaks: Json) -> Json:
    """Return a card that takes nothing from its slot."""
    needs = [{"connector": "pcie-8", "count": 3}]
    return {"category": "graphics_card", "board_watts": watts, "slot_watts": 0, "needs": needs, "peaks": list(peaks)}


def checked(*parts: Json, rated: float = 3000, design: str = "atx-3.1", **other: Any) -> Json:
    """Return the answer to a build of these parts with a supply and a board."""
    supply = {"category": "power_supply", "rated_watts": rated, "design": design, "cables": [MAIN, CPU, CARDS]}
    return ask({"parts": [{"spec": spec} for spec in (supply, BOARD, *parts)], **other})


def extras(answer: Json, *, stated: bool = False) -> dict[int, float]:
    """Return the watts above the sustained ones, by moment, of one kind of evidence."""
    power = answer["power"]
    found = [one for one in power["moments"] if one["stated"] is stated and not one["beyond_formula"]]
    return {one["microseconds"]: round(one["watts"] - power["sustained_watts"]) for one in found}


def test_a_short_stated_peak_bounds_what_is_derived_for_longer_moments() -> None:
    found = checked(STEADY, card(400, peak(100, 600)))
    assert extras(found, stated=True) == {100: 200}
    assert extras(found) == {100: 0, 1_000: 200, 10_000: 200, 100_000: 200}


def test_a_long_stated_peak_leaves_shorter_moments_as_derived() -> None:
    found, derived = checked(STEADY, card(400, peak(10_000, 500))), checked(STEADY, card(400))
    assert extras(found, stated=True) == {100: 100, 1_000: 100, 10_000: 100}
    assert {t: extras(found)[t] for t in (100, 1_000)} == {t: extras(derived)[t] for t in (100, 1_000)}
    assert extras(found)[100_000] == 100 < extras(derived)[100_000]


def test_between_two_stated_peaks_stands_what_is_derived_within_them() -> None:
    found = checked(STEADY, card(400, peak(100, 700), peak(10_000, 500)))
    assert (extras(found, stated=True)[1_000], extras(found)[1_000]) == (100, 300)


def test_a_short_stated_peak_of_a_processor_does_not_silence_longer_moments() -> None:
    processor = {"category": "processor", "plug_watts": 200}
    derived = extras(checked(processor))
    assert derived[1_000] == derived[10_000] == 146
    assert extras(checked(processor | {"peaks": [peak(100, 250)]})) == {100: 0, 1_000: 50, 10_000: 50, 100_000: 0}


def test_a_long_stated_peak_of_a_processor_does_not_silence_shorter_moments() -> None:
    processor = {"category": "processor", "plug_watts": 200, "peaks": [peak(10_000, 250)]}
    assert extras(checked(processor)) == {100: 146, 1_000: 146, 10_000: 0, 100_000: 0}


def test_a_peak_below_what_the_card_may_draw_says_nothing_at_that_end() -> None:
    """The card may draw 400 W for long, so a peak of 350 W can only be true if it draws less."""
    asked = card(400, peak(100, 350)) | {"board_watts": {"low": 300, "high": 400}}
    assert extras(checked(STEADY, asked)) == extras(checked(STEADY, card(400)))


@pytest.mark.parametrize(("design", "says"), [("atx-3.1", "PWR403"), ("atx-2", "PWR404")])
def test_a_stated_peak_is_not_called_derived(design: str, says: str) -> None:
    found = checked(STEADY, card(400, peak(100, 2000)), rated=750, design=design)["findings"]
    assert {one["rule"] for one in found if one["place"].get("microseconds") == 100} == {says}


def test_a_stated_peak_counts_beside_a_derived_one() -> None:
    """The card alone, by its maker, and the processor alone, by its ratio, stay within the column; both do not."""
    processor = {"category": "processor", "plug_watts": 150}
    both = spoken(checked(processor, card(400, peak(100, 1390)), rated=800, design="atx-3.1"))
    assert both & {"PWR401", "PWR402"}


def test_cards_at_once_are_told_only_where_one_alone_passes() -> None:
    one = card(250)
    assert "PWR405" not in spoken(checked(STEADY, one, rated=500))
    one = card(400, peak(100, 900))
    assert "PWR405" in spoken(checked(STEADY, one, one, rated=1000))
    assert "PWR405" not in spoken(checked(STEADY, one, rated=1000))


def test_what_is_drawn_for_seconds_is_no_peak() -> None:
    with pytest.raises(Faults) as refused:
        checked(STEADY, card(400, peak(100_001, 2_000)))
    assert [fault.pointer for fault in refused.value.faults] == ["/parts/3/spec/peaks/0/microseconds"]
