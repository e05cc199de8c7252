"""A plan posted back as ``wiring`` is judged as it was planned; and each way to plug it wrongly speaks at its port."""

from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from service.intake.faults import Faults
from tests import strategies as changes
from tests.journeys.asked import SUPPLIED, ask, badness, example, said, spoken, with_wiring
from tests.journeys.bench import CABLES, CARD, SUPPLY, bench, plug_of, plugged, port_of

Json = dict[str, Any]
# At the unfavourable end, of which score and numbers speak. The favourable end plans anew where nothing is plugged,
# and cannot where something is: what was not certain of the plan may be certain of the wiring, never the reverse.
JUDGED = ("score", "score_lines", "unknowns", "power")
# What a plan never does or would not do with this box, and an example does as plugged.
WORSE_THAN_ITS_PLAN = frozenset({"old-cable-of-another-family", "plugged-worse-than-the-box-allows"})


@pytest.mark.parametrize("name", SUPPLIED)
def test_example(name: str) -> None:
    sheet = example(name)
    first = ask(sheet)
    _judged_the_same(sheet, first)
    again = ask(with_wiring(sheet, first["plan"]["connections"]))
    assert again["verdict"] == first["verdict"]
    assert ("better_plan" in again) == (name in WORSE_THAN_ITS_PLAN)


@given(sheet=changes.sheets())
def test_random_build(sheet: Json) -> None:
    first = _planned(sheet)
    _judged_the_same(sheet, first)
    assert "better_plan" not in ask(with_wiring(sheet, first["plan"]["connections"]))


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=60)
def test_rest_is_planned_around_a_part_of_the_plan(sheet: Json, data: st.DataObject) -> None:
    first = _planned(sheet)
    connections = first["plan"]["connections"]
    part = [one for one in connections if _of_one_adapter(one) or data.draw(st.booleans())]
    whole = ask(with_wiring(sheet, part, "plan"))
    assume(whole["plan"]["proven"])
    assert (badness(whole), whole["score"]) == (badness(first), first["score"])
    assert all(_stated(one) in map(_stated, whole["plan"]["connections"]) for one in part)
    used = [(p["cable"], p["copy"], p["plug"]) for one in whole["plan"]["connections"] for p in one["plugs"]]
    halves = {key for key in used if used.count(key) > 1}
    assert all(used.count(key) <= 2 for key in halves)
    _judged_the_same(sheet, whole)


def test_bench_is_sound() -> None:
    for answer in (ask(bench()), ask(with_wiring(bench(), plugged()))):
        assert (answer["verdict"], spoken(answer, "stop"), spoken(answer, "caution")) == ("fits", set(), set())


@pytest.mark.parametrize(
    ("port", "cable", "rule"),
    [
        pytest.param("processor", "card", "CON113", id="card-plug-in-processor-port"),
        pytest.param("main", "drives", "CON113", id="drive-plug-in-main-port"),
        pytest.param("card", "four", "CON113", id="processor-plug-in-card-port"),
        pytest.param("processor", "four", "CON110", id="4-pin-in-8"),
        pytest.param("main", "twenty", "CON111", id="20-pin-in-24"),
        pytest.param("card", "six", "CON112", id="6-pin-in-card-8"),
    ],
)
def test_wrong_plug(port: str, cable: str, rule: str) -> None:
    left = {cable: ""} if cable in ("main", "processor", "card", "drives") else {}
    wiring = plugged(**left | {port: cable})
    answer = ask(with_wiring(bench(), wiring))
    assert said(answer, rule) == [port_of(port)]
    assert port_of(port) not in said(answer, "CON101"), "a port with a plug in it is not an open port"


@pytest.mark.parametrize(
    ("board_watts", "places"),
    [(60 + 75, []), (60 + 76, [port_of("card")])],
    ids=["75-W", "76-W"],
)
def test_six_pin_plug_may_bring_75_watts(board_watts: int, places: list[tuple[str, ...]]) -> None:
    sheet = bench()
    sheet["parts"][CARD]["spec"]["board_watts"] = board_watts
    answer = ask(with_wiring(sheet, plugged(card="six")))
    assert said(answer, "CON112") == places


@pytest.mark.parametrize(
    ("family", "places"), [("brink-2", []), ("brink-1", [port_of("card")]), (None, [port_of("card")])],
)
def test_cable_of_another_family(family: str | None, places: list[tuple[str, ...]]) -> None:
    sheet = bench()
    cable: Json = {"category": "cable", "plugs": [{"connector": "pcie-6+2", "at_mm": 650}], "awg": 18}
    sheet["parts"].append({"spec": cable | ({"family": family} if family else {})})
    wiring = plugged()
    plug_of(wiring, "card")["cable"] = f"/parts/{len(sheet['parts']) - 1}"
    answer = ask(with_wiring(sheet, wiring))
    assert said(answer, "CBL101") == places
    assert answer["verdict"] == {"brink-2": "fits", "brink-1": "does_not_fit", None: "undecided"}[family]


@pytest.mark.parametrize(("way_mm", "places"), [(600, []), (720, [port_of("card")])])
def test_plug_that_does_not_reach(way_mm: int, places: list[tuple[str, ...]]) -> None:
    sheet = bench()
    sheet["parts"].append({"spec": {"category": "case", "routes_mm": {"card": way_mm}}})
    answer = ask(with_wiring(sheet, plugged()))
    assert said(answer, "CBL102") == places


def test_open_contact() -> None:
    """120 W are 10 A: over three contacts 3.3 A, over one 10 A, past the 8 A of a contact."""
    wiring = plugged()
    plug_of(wiring, "card")["open_contacts"] = 2
    answer = ask(with_wiring(bench(), wiring))
    assert said(answer, "CON104") == [port_of("card")]
    found = next(one for one in answer["findings"] if one["rule"] == "CON104")
    assert (found["measured"], found["limit"], found["unit"]) == (10.0, 8.0, "A")


def test_socket_of_another_cable() -> None:
    wiring = plugged()
    plug_of(wiring, "card")["sockets"] = ["Board"]
    answer = ask(with_wiring(bench(), wiring))
    assert said(answer, "CON122") == [port_of("card")]
    told = next(one["message"] for one in answer["findings"] if one["rule"] == "CON122")
    assert told == "At the supply, the cable to this pcie-8 port is put in: Board. It belongs in: Power."


def test_sockets_in_which_too_many_cables_are_said_to_be() -> None:
    sheet = bench()
    sheet["parts"][SUPPLY]["spec"]["sockets"][1]["count"] = 1
    answer = ask(with_wiring(sheet, plugged()))
    assert said(answer, "CON122")
    assert set(said(answer, "CON122")) <= {port_of("processor"), port_of("card")}
    told = {one["message"] for one in answer["findings"] if one["rule"] == "CON122"}
    assert all("put in: no socket at all, since other cables are in all of its kind." in message for message in told)


def test_socket_of_a_cable_of_which_none_is_known() -> None:
    """Nothing says where it belongs, so nothing is wrong with where it is."""
    sheet = bench()
    supply = sheet["parts"][SUPPLY]["spec"]
    supply["sockets"] = [{"label": label, "count": 3} for label in "ABC"]
    for cable in supply["cables"]:
        del cable["occupies"]
    wiring = plugged()
    plug_of(wiring, "card")["sockets"] = ["B"]
    assert said(ask(with_wiring(sheet, wiring)), "CON122") == []


@pytest.mark.parametrize(
    ("rest", "places"), [("leave", [port_of("card")]), ("plan", [])], ids=["as-it-is", "rest-planned"],
)
def test_port_left_open(rest: str, places: list[tuple[str, ...]]) -> None:
    answer = ask(with_wiring(bench(), plugged(card=""), rest))
    assert said(answer, "CON101") == places


def test_better_plan_beside_a_worse_wiring() -> None:
    answer = ask(with_wiring(bench(), plugged(card="six")))
    better = answer["better_plan"]["connections"]
    assert badness(answer) > badness(ask(with_wiring(bench(), better)))
    plugs = {CABLES[int(p["cable"].rsplit("/", 1)[1])] for one in better for p in one["plugs"]}
    assert plugs <= {"main", "processor", "card", "card too", "drives"}


def _planned(sheet: Json) -> Json:
    try:
        first = ask(sheet)
    except Faults:
        assume(False)
        raise
    assume(first["plan"] is not None and first["plan"]["proven"])
    return first


def _judged_the_same(sheet: Json, first: Json) -> None:
    again = ask(with_wiring(sheet, first["plan"]["connections"]))
    for key in JUDGED:
        assert again[key] == first[key], key
    assert _of_no_piece(again) == _of_no_piece(first)
    assert badness(again) == badness(first)
    assert list(map(_at_this_end, again["findings"])) == list(map(_at_this_end, first["findings"]))
    for now, before in zip(again["findings"], first["findings"], strict=True):
        assert before["weight"] != "stop" or now["certain"] >= before["certain"], before
    for key in ("connections", "spare_cables", "loose_plugs"):
        assert again["plan"][key] == first["plan"][key], key
    assert again["plan"]["not_fed"] == list(map(_as_sent, first["plan"]["not_fed"]))


def _of_no_piece(answer: Json) -> list[Json]:
    """Return what is assumed, but of cables and adapters: a plan looks at more of these than it takes."""
    pieces = ("/cables/", "/adapters/")
    return [each for each in answer["assumptions"] if not any(piece in each["where"] for piece in pieces)]


_WHY_NOT = ("CON101", "message")


def _at_this_end(finding: Json) -> Json:
    """Return a finding without how certain it is, and without why a port is left: of a wiring nobody knows that."""
    return {key: value for key, value in finding.items() if key != "certain" and (finding["rule"], key) != _WHY_NOT}


def _of_one_adapter(connection: Json) -> bool:
    """Say whether other connections may hang on the same adapter, which is then given whole."""
    return bool(connection["adapters"])


def _stated(connection: Json) -> str:
    return repr(sorted(connection.items(), key=lambda item: item[0]))


def _as_sent(port: Json) -> Json:
    """Return a port that a plan leaves as it is told of a wiring: nobody knows why that leaves it."""
    return port | {"reason": "not_plugged"} if port["reason"] == "left_out" else port
