"""Verdicts: decided or not, what was not looked at, what would settle it, and a rule that breaks down."""

import logging
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from service.case.case import Case
from service.intake.faults import Faults
from service.parts.words import ASPECTS
from service.rules.book import RULES, by_id
from service.rules.rule import Said
from service.verdict import speak
from tests.journeys.asked import ask, example, spoken
from tests.journeys.bench import CARD, PROCESSOR, SUPPLY, bench

Json = dict[str, Any]


@pytest.mark.parametrize(
    ("watts", "verdict"),
    [
        pytest.param({"low": 60, "high": 96}, "fits", id="carried-at-both-ends"),
        pytest.param({"low": 96, "high": 700}, "undecided", id="carried-at-one-end"),
        pytest.param({"low": 700, "high": 800}, "does_not_fit", id="carried-at-neither"),
    ],
)
def test_both_ends_of_a_range(watts: Json, verdict: str) -> None:
    sheet = bench()
    sheet["parts"][PROCESSOR]["spec"]["plug_watts"] = watts
    answer = ask(sheet)
    assert answer["verdict"] == verdict
    found = [one["certain"] for one in answer["findings"] if one["rule"] == "PWR101"]
    assert found == {"fits": [], "undecided": [False], "does_not_fit": [True]}[verdict]


def test_more_beyond_doubt_is_no_better_score() -> None:
    scores = []
    for watts in ({"low": 96, "high": 700}, 700):
        sheet = bench()
        sheet["parts"][PROCESSOR]["spec"]["plug_watts"] = watts
        scores.append(ask(sheet)["score"])
    assert scores[0] == scores[1]


def test_what_would_settle_it_names_the_telling_field_first() -> None:
    sheet = bench() | {"would_settle": True}
    sheet["parts"][PROCESSOR]["spec"]["plug_watts"] = {"low": 96, "high": 700}
    sheet["parts"][CARD]["spec"]["board_watts"] = {"low": 170, "high": 180}
    answer = ask(sheet)
    assert answer["would_settle"][0] == f"/parts/{PROCESSOR}/plug_watts"
    assert "would_settle" not in ask(sheet | {"would_settle": False})


def test_what_would_settle_the_example() -> None:
    """The processor's watts, by whichever of its fields they are given."""
    assert ask(example("figures-missing"))["would_settle"][0] in {"/parts/2/plug_watts", "/parts/2/turbo_watts"}


@pytest.mark.parametrize("aspect", ASPECTS)
def test_aspect_alone(aspect: str) -> None:
    """Nothing of the other aspects is said, and each of them is named as not looked at."""
    answer = ask(example("printed-450-for-a-575-watt-card") | {"aspects": [aspect]})
    rules = {one["rule"] for one in answer["findings"] + answer["unknowns"]}
    assert {by_id()[rule].aspect for rule in rules} <= {aspect}
    assert {one["aspect"] for one in answer["not_checked"]} == set(ASPECTS) - {aspect}


@pytest.mark.parametrize(
    ("gone", "aspects"),
    [
        pytest.param(("power_supply",), {"power", "connections", "mains", "fit"}, id="supply-and-there-is-no-card"),
        pytest.param(("motherboard",), {"connections", "signals", "mating"}, id="board"),
        pytest.param(("case",), {"fit"}, id="case"),
        pytest.param(("processor", "memory"), {"mating"}, id="processor-and-memory"),
        pytest.param((), set(), id="nothing"),
    ],
)
def test_what_is_not_looked_at_follows_from_the_categories(gone: tuple[str, ...], aspects: set[str]) -> None:
    sheet = example("quiet-office")
    sheet["parts"] = [line for line in sheet["parts"] if line["spec"]["category"] not in gone]
    assert {one["aspect"] for one in ask(sheet)["not_checked"]} == aspects


ON_A_BOARD = {
    "processor": {"category": "processor", "plug_watts": 90}, "memory": {"category": "memory", "watts": 9},
    "graphics_card": {"category": "graphics_card", "board_watts": 60},
    "expansion_card": {"category": "expansion_card", "board_watts": 20},
}


@pytest.mark.parametrize("category", sorted(ON_A_BOARD))
def test_without_a_board_what_hangs_on_it_is_in_no_plug(category: str) -> None:
    supply = bench()["parts"][SUPPLY]
    answer = ask({"parts": [supply, {"spec": ON_A_BOARD[category]}], "aspects": ["connections"]})
    assert "connections" in {one["aspect"] for one in answer["not_checked"]}
    alone = ask({"parts": [supply, {"spec": {"category": "drive"}}], "aspects": ["connections"]})
    assert "connections" not in {one["aspect"] for one in alone["not_checked"]}


@pytest.mark.parametrize("category", ["processor", "memory"])
def test_either_of_what_mates_with_a_board_is_looked_at(category: str) -> None:
    answer = ask({"parts": [{"spec": {"category": "motherboard"}}, {"spec": ON_A_BOARD[category]}]})
    assert "mating" not in {one["aspect"] for one in answer["not_checked"]}


def test_without_a_supply_there_is_no_plan() -> None:
    sheet = bench() | {"aspects": None}
    del sheet["parts"][SUPPLY]
    answer = ask(sheet)
    assert answer["plan"] is None
    assert answer["power"]["wall"] is None
    assert answer["power"]["sustained_watts"] > 0


SUPPLY_ALONE = {"category": "power_supply", "rated_watts": 650, "design": "atx-3.1"}
CARD_ALONE = {"category": "graphics_card", "board_watts": 300, "needs": [{"connector": "pcie-8", "count": 2}]}
CABLE_ALONE = {"category": "cable", "plugs": [{"connector": "cpu-8"}]}


@pytest.mark.parametrize(
    ("specs", "aspects"),
    [
        pytest.param([SUPPLY_ALONE], None, id="a-supply-and-nothing-that-it-feeds"),
        pytest.param([SUPPLY_ALONE, CABLE_ALONE], None, id="a-supply-and-a-cable"),
        pytest.param([CARD_ALONE], None, id="a-card-and-nothing-that-feeds-it"),
        pytest.param([{"category": "lighting", "volts": 5, "leds": 9}], None, id="a-light-and-nothing-that-feeds-it"),
        pytest.param([CARD_ALONE, {"category": "motherboard"}], ["power"], id="asked-for-what-cannot-be-looked-at"),
    ],
)
def test_a_sheet_of_which_nothing_is_looked_at_is_undecided(specs: list[Json], aspects: list[str] | None) -> None:
    answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": aspects})
    assert {one["aspect"] for one in answer["not_checked"]} | {"runs"} == set(ASPECTS)
    assert (answer["verdict"], answer["score"]) == ("undecided", 0)
    assert answer["score_lines"] == [{"what": "base", "points": 0}]
    assert answer["findings"] == answer["unknowns"] == []


def test_a_supply_that_feeds_nothing_is_said_to_be_looked_at_for_nothing() -> None:
    case = {"category": "case", "bays": [{"form_factors": ["atx"], "depth_mm": 200}]}
    answer = ask({"parts": [{"spec": SUPPLY_ALONE | {"form_factor": "atx", "depth_mm": 140}}, {"spec": case}]})
    left_out = {one["aspect"]: one["reason"] for one in answer["not_checked"]}
    assert {left_out[aspect] for aspect in ("power", "connections", "mains")} == {
        "The sheet lists nothing that takes power."
    }
    assert "fit" not in left_out


def test_two_supplies_are_refused() -> None:
    sheet = bench()
    sheet["parts"].append(sheet["parts"][SUPPLY])
    with pytest.raises(Faults) as refused:
        ask(sheet)
    assert [fault.pointer for fault in refused.value.faults] == [f"/parts/{len(sheet['parts']) - 1}"]


def test_rule_that_breaks_down(monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture) -> None:
    """It has not judged: an unknown of its weight, a line in the log, and every other rule has its say."""
    before = ask(bench())

    def broken(case: Case) -> Iterator[Said]:
        raise ZeroDivisionError(case.end)

    rules = tuple(replace(rule, check=broken) if rule.id == "PWR101" else rule for rule in RULES)
    monkeypatch.setattr(speak, "RULES", rules)
    with caplog.at_level(logging.ERROR):
        answer = ask(bench())
    assert [(one["rule"], one["missing"]) for one in answer["unknowns"]] == [("PWR101", "")]
    assert "the service failed" in answer["unknowns"][0]["message"]
    assert answer["verdict"] == "undecided"
    assert spoken(answer) == spoken(before)
    assert any("PWR101" in record.getMessage() for record in caplog.records)


def test_how_certain_a_caution_is_stands_only_where_it_was_asked_for() -> None:
    """No verdict hangs on it, so without a stop the favourable end is looked at for ``would_settle`` alone."""
    sheet = example("two-groups-drive-chain-and-adapter")
    plain, asked = ask(sheet), ask(sheet | {"would_settle": True})
    assert plain["verdict"] == asked["verdict"] == "fits_with_cautions"
    assert {each["certain"] for each in plain["findings"]} == {None}
    assert {each["certain"] for each in asked["findings"]} <= {True, False}
