"""The smallest size: what halving finds is what walking finds, and what the check itself says of that supply."""

import copy
from dataclasses import replace
from typing import Any

import orjson
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from service.advice import size as advice
from service.advice.size import COUNTS, SIZES_WATTS, Goal, Sized, kinds, of_size, sizes, with_supply
from service.case.assemble import assemble
from service.catalogue.resolve import resolve
from service.intake.body import read_json
from service.intake.faults import Faults
from service.intake.sheet import read_sheet
from service.parts.build import Build
from service.parts.records import PowerSupply
from service.parts.words import Aspect
from service.verdict.check import check
from service.verdict.speak import Spoken, speak
from tests import strategies as changes
from tests.journeys.asked import ask, shelf
from tests.practice.test_trade import BOARD, SIXTEEN, card, supply

Json = dict[str, Any]
GOALS = ("carries", "with_reserve", "with_peaks")
POWER: frozenset[Aspect] = frozenset({"power"})


def build_of(sheet: Json) -> Build:
    """Return the build of a sheet; a sheet at fault is not looked at."""
    try:
        return resolve(read_sheet(read_json(orjson.dumps(sheet))), shelf().edition)
    except Faults:
        assume(False)
        raise


def supplies_of(sheet: Json) -> list[Json]:
    """Return the kinds of supply that a sheet's answer tells sizes of."""
    found: list[Json] = ask(sheet | {"size": True})["size"]["supplies"]
    return found


def watts_of(kind: Json) -> list[float | None]:
    """Return the sizes of a kind of supply, goal by goal."""
    return [kind[goal]["watts"] for goal in GOALS]


def without_supply(sheet: Json) -> Json:
    """Return a sheet without the line of its supply."""
    lines = changes.written_out(sheet)["parts"]
    return copy.deepcopy(sheet) | {"parts": [one for one in lines if one["spec"]["category"] != "power_supply"]}


def _said(build: Build, kind: PowerSupply, watts: float) -> list[Spoken]:
    return speak(assemble(with_supply(build, of_size(kind, watts)), "unfavourable").case, POWER)


def _walked(build: Build, kind: PowerSupply, goal: Goal, kept: set[Any]) -> float | None:
    """Return the smallest size from which on nothing speaks, looking at every size from the largest down."""
    enough = None
    for watts in reversed(SIZES_WATTS):
        if any(COUNTS[goal](each) for each in _said(build, kind, watts) if each.key not in kept):
            return enough
        enough = watts
    return enough


def _below(build: Build, kind: PowerSupply, sized: Sized) -> None:
    kept = {each.key for each in sized.unmended}
    for goal, reached in sized.reached:
        assert reached.watts == _walked(build, kind, goal, kept), goal
        for watts in SIZES_WATTS:
            speaks = any(COUNTS[goal](each) for each in _said(build, kind, watts) if each.key not in kept)
            assert speaks == (reached.watts is None or watts < reached.watts), (goal, watts)
        assert bool(reached.bounds) == (reached.smaller_watts is not None)


@given(sheet=changes.sheets(), listed=st.booleans())
@settings(max_examples=40)
def test_halving_finds_what_walking_finds(sheet: Json, listed: bool) -> None:
    build = build_of(sheet if listed else without_supply(sheet))
    for kind, sized in zip(kinds(build), sizes(build).kinds, strict=True):
        _below(build, kind, sized)


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=40)
def test_the_check_says_the_same_of_a_supply_of_that_size(sheet: Json, data: st.DataObject) -> None:
    """Put on the sheet with its box, planned wiring and all, the supply draws the same findings on power."""
    build = build_of(sheet)
    kind = data.draw(st.sampled_from(kinds(build)))
    watts = data.draw(st.sampled_from(SIZES_WATTS))
    whole = replace(with_supply(build, of_size(kind, watts)), wiring=None)
    assert list(check(whole).spoken) == _said(build, kind, watts)


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=40)
def test_more_load_never_takes_a_smaller_supply(sheet: Json, data: st.DataObject) -> None:
    changed = changes.heavier(data.draw, sheet)
    assume(changed is not None)
    assert changed is not None
    before, after = sizes(build_of(sheet)), sizes(build_of(changed))
    for one, other in zip(before.kinds, after.kinds, strict=True):
        for (goal, least), (_, then) in zip(one.reached, other.reached, strict=True):
            assert (then.watts or float("inf")) >= (least.watts or float("inf")), goal


def example_of_intel(*cables: Json, design: str = "atx-3.0") -> Json:
    """Return 300 W card, 300 W processor, 150 W rest, of which 12 W are standby, on a supply of 750 W.

    0.2 W less, for at 100 ms the card's ratio is 1.5005 where the supply's column has room for 1.5.
    """
    board = BOARD | {"own_amps": {"12v": 11.485, "5v": 0, "3v3": 0, "5vsb": 2.4}}
    processor = {"category": "processor", "plug_watts": 300, "peaks": [{"microseconds": 100, "watts": 300}]}
    power = supply(*cables, rated_watts=750, design=design, rails={"12v": {"max_amps": 62.5}, "5vsb": {"max_amps": 3}})
    return {"parts": [{"spec": spec} for spec in (power, board, processor, card(300, "12v-2x6", 1))]}


# Intel to the press, April 2022: 750 W of ATX 3.0 and about 1100 W of ATX 2.x for the same machine.
def test_size_of_the_published_example() -> None:
    old, new = supplies_of(example_of_intel(SIXTEEN))
    assert (new["design"], new["carries"]["watts"]) == ("atx-3.1", 750)
    assert [one["rule"] for one in new["carries"]["bounded_by"]] == ["PWR101", "PWR201"]
    # All of 750 W leaves no tenth, and that is all that is said: every moment is within the table's large column.
    assert {one["rule"] for one in new["with_peaks"]["bounded_by"]} == {"PWR102"}
    assert new["with_peaks"]["watts"] == 850
    # The small column lets an old one go at 1000 W; from 1200 W on, the first size above 1100 W, so does the press.
    assert (old["design"], old["with_peaks"]["watts"]) == ("atx-2", 1000)
    assert [(one["rule"], one["measured"], one["limit"]) for one in old["with_peaks"]["bounded_by"]] == [
        ("PWR402", pytest.approx(1350, abs=0.5), 1275),
    ]


def test_without_a_16_pin_plug_the_example_needs_more() -> None:
    old, new = supplies_of(example_of_intel())
    assert watts_of(new) == watts_of(old) == [750, 850, 1000]


@pytest.mark.parametrize(("watts", "least", "reserve"), [
    (330, 450, 450), (404, 450, 450), (406, 450, 550), (449, 450, 550), (494, 550, 550), (496, 550, 650),
    (1599, 1600, None), (1601, None, None),
])
def test_rating_and_reserve(watts: float, least: float | None, reserve: float | None) -> None:
    board = BOARD | {"own_amps": {"12v": watts / 12, "5v": 0, "3v3": 0, "5vsb": 0}}
    power = supply(rails={"12v": {"max_amps": 83.4}})
    kind = supplies_of({"parts": [{"spec": power}, {"spec": board}]})[1]
    assert watts_of(kind) == [least, reserve, reserve]


def test_a_rail_that_stays_small_is_no_matter_of_size() -> None:
    board = BOARD | {"own_amps": {"12v": 5, "5v": 25, "3v3": 1, "5vsb": 4}}
    power = supply(combined_limits=[{"rails": ["5v", "3v3"], "watts": 130}])
    kind = supplies_of({"parts": [{"spec": power}, {"spec": board}]})[1]
    assert [(one["rule"], one["measured"], one["limit"]) for one in kind["at_every_size"]] == [
        ("PWR201", 25, 22), ("PWR202", 25, 22), ("PWR205", 4, 3),
    ]
    assert watts_of(kind) == [450, 450, 450]


@pytest.mark.parametrize(("celsius", "reserve"), [(50, 850), (53, 850), (60, 1000), (61, 1200)])
def test_a_hot_room_takes_a_larger_supply(celsius: float, reserve: float) -> None:
    """750 W of a supply that is rated at 50 degrees; 3, 10 and 11 degrees above take 811, 1000 and 1034 W."""
    board = BOARD | {"own_amps": {"12v": 61.5, "5v": 0, "3v3": 0, "5vsb": 2.4}}
    sheet = {"parts": [{"spec": supply()}, {"spec": board}], "site": {"room_celsius": celsius}}
    kind = supplies_of(sheet)[1]
    assert kind["with_reserve"]["watts"] == reserve
    assert [one["rule"] for one in kind["at_every_size"]] == (["PWR501"] if celsius > 50 else [])


def test_groups_are_left_out_for_they_belong_to_one_supply() -> None:
    tight = [{"name": "A", "max_amps": 5, "feeds": ["main", "processor", "card", "drive"]}]
    plain, grouped = ({"parts": [{"spec": supply(**given)}, {"spec": BOARD}]} for given in ({}, {"groups": tight}))
    assert supplies_of(plain) == supplies_of(grouped)


def test_a_12_volt_only_board_takes_a_12_volt_only_supply() -> None:
    board = BOARD | {"needs": [{"connector": "atx12vo-10"}, {"connector": "cpu-8"}]}
    assert {one["design"] for one in supplies_of({"parts": [{"spec": board}]})} == {"atx12vo"}


def test_what_any_supply_must_give_is_told_without_one() -> None:
    """1.2 A of the board and 90 W of the processor on 12 V, at start-up too."""
    parts = [{"spec": BOARD}, {"spec": {"category": "processor", "plug_watts": 90}}]
    asked = ask({"parts": parts, "size": True})["size"]["asked_amps"]
    assert asked["12v"] == {"sustained": 8.7, "starting": 8.7}
    assert asked["5vsb"] == {"sustained": 0.8, "starting": 0.8}


def test_what_is_not_on_the_sheet_is_said_not_to_count() -> None:
    fan = {"category": "fan", "needs": [{"connector": "fan-4"}]}
    assert ask({"parts": [{"spec": fan}], "size": True})["size"]["missing"] == ["motherboard", "processor"]


@pytest.mark.parametrize("given", [{}, {"size": False}])
def test_size_is_told_only_where_it_is_asked_for(given: Json) -> None:
    assert "size" not in ask({"parts": [{"spec": BOARD}], **given})


def test_each_size_is_looked_at_once_at_most(monkeypatch: pytest.MonkeyPatch) -> None:
    looked: list[tuple[str, float]] = []

    def counted(build: Build, *given: Any, **named: Any) -> Any:
        part = next(unit.part for unit in build.units if isinstance(unit.part, PowerSupply))
        looked.append((f"{part.design} {part.cables is None}", part.rated_watts))
        return assemble(build, *given, **named)

    monkeypatch.setattr(advice, "assemble", counted)
    found = sizes(build_of(without_supply(example_of_intel())))
    assert len(looked) == len(set(looked)) <= len(found.kinds) * len(SIZES_WATTS)
