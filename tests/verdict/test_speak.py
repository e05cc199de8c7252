"""What rules say, in order and counted once a place; and what a plan that is not proven decides."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from service.case.assemble import Assembled
from service.case.assemble import assemble as assemble_of_old
from service.case.case import Case
from service.case.place import Place
from service.parts.build import Build
from service.rules.book import RULES, by_id
from service.rules.rule import Finding, Said, Unknown
from service.verdict import check, speak
from service.verdict.speak import Spoken, tally
from tests.journeys.asked import ask, spoken
from tests.journeys.bench import CARD, SUPPLY, bench
from tests.practice.test_trade import BOARD, DOUBLE, SINGLE, card, supply
from tests.rules.cases import PORT, case, joint, strain
from tests.rules.test_connectors import CARD as LOAN_CARD

Json = dict[str, Any]
AT = Place("supply", 0)


def said(rule: str, at: Place) -> Spoken:
    """Return a finding of a rule at a place."""
    return Spoken(by_id()[rule], Finding(at))


def test_ports_are_in_order_of_their_numbers() -> None:
    ports = [Place("port", 1, ("pcie-8", number)) for number in (10, 2)]
    given = case(LOAN_CARD, joints=tuple(joint(strain("plug", "stop", 13, 12.5), at=at) for at in ports))
    found = speak.speak(given, frozenset({"connections"}))
    assert [one.said.at.detail[1] for one in found] == [2, 10]


def test_a_finding_outweighs_an_unknown_of_the_same_place(monkeypatch: pytest.MonkeyPatch) -> None:
    def both(given: Case) -> Iterator[Said]:
        assert given.build is not None
        yield Unknown(AT, "depth_mm")
        yield Finding(AT)
        yield Unknown(AT, "depth_mm")

    monkeypatch.setattr(speak, "RULES", (replace(by_id()["FIT101"], check=both),))
    assert [one.unknown for one in speak.speak(case(), frozenset({"fit"}))] == [False]


@pytest.mark.parametrize(("heard", "stops", "points"), [
    pytest.param([said("CON102", PORT), said("CON104", PORT)], 1, 0, id="one port is one stop"),
    pytest.param([said("FIT101", AT), said("FIT103", AT)], 2, 0, id="other stops are counted by rule"),
    pytest.param([said("CON102", PORT), said("CON114", PORT)], 1, 0, id="no caution at a port that is stopped"),
    pytest.param([said("CON102", PORT), said("CBL103", PORT.nth(1))], 1, 0, id="nor at a further plug of it"),
    pytest.param([said("CBL103", PORT), said("CBL103", PORT.nth(1))], 0, 4, id="each plug is a caution"),
    pytest.param([said("FIT101", AT), said("FIT105", AT)], 1, 3, id="cautions beside the wiring stay"),
])
def test_counted_once_a_place(heard: list[Spoken], stops: int, points: int) -> None:
    counted = tally(heard)
    assert (counted.stops, counted.points) == (stops, points)


def _unproven(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let every plan be one that is not proven."""
    def assemble(build: Build, *given: Any, **named: Any) -> Assembled:
        made = assemble_of_old(build, *given, **named)
        return made._replace(case=replace(made.case, proven=False))

    monkeypatch.setattr(check, "assemble", assemble)


def _without_card_cables() -> Json:
    sheet = bench()
    cables = sheet["parts"][SUPPLY]["spec"]["cables"]
    cables[:] = [cable for cable in cables if not cable["plugs"][0]["connector"].startswith("pcie")]
    return sheet


def test_a_stop_of_the_wiring_alone_is_undecided_by_a_plan_that_is_not_proven(monkeypatch: pytest.MonkeyPatch) -> None:
    sheet = _without_card_cables()
    assert ask(sheet)["verdict"] == "does_not_fit"
    _unproven(monkeypatch)
    assert ask(sheet)["verdict"] == "undecided"


def test_a_stop_beside_the_wiring_stands_whatever_the_plan(monkeypatch: pytest.MonkeyPatch) -> None:
    sheet = bench()
    sheet["parts"][CARD]["spec"]["slot_watts"] = 80
    _unproven(monkeypatch)
    answer = ask(sheet)
    assert [one["rule"] for one in answer["findings"] if one["weight"] == "stop"] == ["PWR302"]
    assert answer["verdict"] == "does_not_fit"


@pytest.mark.parametrize(("at_best", "certain"), [
    pytest.param([], False, id="nothing there"),
    pytest.param([said("CON101", PORT)], True, id="the same port"),
    pytest.param([said("CON101", Place("port", 1, ("pcie-8", 1)))], True, id="another port is left unfed there"),
    pytest.param([said("CON102", PORT)], False, id="another rule"),
])
def test_what_is_certain_of_a_port(at_best: list[Spoken], certain: bool) -> None:
    worst = [said("CON101", PORT)]
    assert (worst[0].key in check._certain(worst, at_best)) == certain


def test_a_rule_beside_the_wiring_is_certain_of_its_own_place_only() -> None:
    worst, best = [said("PWR302", Place("unit", 1))], [said("PWR302", Place("unit", 2))]
    assert check._certain(worst, best) == frozenset({best[0].key})
    assert by_id()["PWR302"] in RULES


def test_a_better_plan_is_of_the_same_use() -> None:
    """The card is held to half of its watts, which the supply carries; the better plan must not forget that."""
    box = supply(DOUBLE, SINGLE, rated_watts=450)
    plugs = [{"plugs": [{"cable": "/parts/0/cables/2", "plug": plug}]} for plug in (1, 2)]
    wiring = [{"part": "/parts/3", "port": {"connector": "pcie-8", "number": at}} | one
              for at, one in enumerate(plugs, start=1)]
    specs = (box, BOARD, {"category": "processor", "plug_watts": 90}, card(500, "pcie-8", 2))
    answer = ask({
        "parts": [{"spec": spec} for spec in specs], "use": {"graphics_limit_percent": 50}, "wiring": wiring,
        "wiring_rest": "plan",
    })
    assert "PWR101" not in spoken(answer)
    assert "move" in {one["action"] for one in answer["moves"]}
