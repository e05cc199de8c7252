"""The moves beside a better plan: applied to the wiring as plugged they give just that plan, and none is idle."""

import copy
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from service.case.assign import assign
from service.intake.faults import Faults
from tests import strategies as changes
from tests.journeys.asked import SUPPLIED, ask, example, with_wiring
from tests.journeys.bench import CARD, SUPPLY, bench, plug_of, plugged
from tests.journeys.workshop import by_adapters, everything

Json = dict[str, Any]
FEED = ("adapters", "plugs")


def _port(one: Json) -> tuple[Any, ...]:
    port = one["port"]
    return (one["part"], one.get("copy", 1), port["connector"], port.get("number", 1))


def _feed(one: Json) -> Json:
    """Return what feeds a port, defaults written out."""
    plugs = [{"copy": 1, "sockets": [], "open_contacts": 0} | plug for plug in one["plugs"]]
    return {"adapters": [{"copy": 1} | each for each in one.get("adapters", [])], "plugs": plugs}


def _applied(wiring: list[Json], moves: list[Json]) -> dict[tuple[Any, ...], Json]:
    """Return a wiring after the moves; what a move says of the state before it must be so."""
    state = {_port(one): _feed(one) for one in wiring}
    for move in moves:
        before = state.pop(_port(move), None)
        assert before == move["from"]
        if move["to"] is not None:
            state[_port(move)] = move["to"]
    return state


def _without_sockets(state: dict[tuple[Any, ...], Json], wiring: list[Json]) -> dict[tuple[Any, ...], Json]:
    """Return a state in which what was plugged without naming sockets is told without them on both sides."""
    state = copy.deepcopy(state)
    silent = {_port(one) for one in wiring if not all(plug.get("sockets") for plug in one["plugs"])}
    for port in silent & set(state):
        for plug in state[port]["plugs"]:
            plug["sockets"] = []
    return state


def _holds(wiring: list[Json], answer: Json) -> None:
    moves, planned = answer["moves"], answer["better_plan"]["connections"]
    after = {_port(one): {key: one[key] for key in FEED} for one in planned}
    assert _without_sockets(_applied(wiring, moves), wiring) == _without_sockets(after, wiring)
    assert moves, "a plan that is better than a wiring differs from it"
    for move in moves:
        assert move["from"] != move["to"]
        assert move["action"] == ("plug" if move["from"] is None else "unplug" if move["to"] is None else "move")
        assert move["message"].endswith(".")


def _worse(draw: changes.Draw, connections: list[Json]) -> list[Json]:
    """Leave connections out, exchange the feeds of equal ports, or give contacts up, as a hurried hand would."""
    wiring = [one for one in copy.deepcopy(connections) if one["adapters"] or draw(changes.whole(0, 3))]
    by_connector: dict[str, list[Json]] = {}
    for one in wiring:
        if not one["adapters"]:
            by_connector.setdefault(one["port"]["connector"], []).append(one)
    for alike in by_connector.values():
        feeds = draw(st.permutations([one["plugs"] for one in alike]))
        for one, plugs in zip(alike, feeds, strict=True):
            one["plugs"] = plugs
    for one in wiring:
        if not one["adapters"] and draw(changes.whole(0, 4)) == 0:
            one["plugs"][0]["open_contacts"] = 2
    return wiring


@given(sheet=changes.sheets(), data=st.data())
@settings(max_examples=80)
def test_moves_lead_from_the_wiring_to_the_better_plan(sheet: Json, data: st.DataObject) -> None:
    try:
        first = ask(sheet)
    except Faults:
        assume(False)
        raise
    wiring = _worse(data.draw, (first["plan"] or {"connections": []})["connections"])
    answer = ask(with_wiring(sheet, wiring, data.draw(st.sampled_from(["leave", "plan"]))))
    assert ("moves" in answer) == ("better_plan" in answer)
    assume("better_plan" in answer)
    _holds(wiring, answer)


@pytest.mark.parametrize("sheet", [everything(), by_adapters(rated=True)], ids=["everything", "by-adapters"])
def test_whole_machine_without_its_last_connection(sheet: Json) -> None:
    wiring = ask(sheet)["plan"]["connections"][:-1]
    _holds(wiring, ask(with_wiring(sheet, wiring)))


@pytest.mark.parametrize("name", sorted(set(SUPPLIED) - {"old-cable-of-another-family"}))
def test_one_connection_less_is_one_move(name: str) -> None:
    """From the plan of our own: what an example says is plugged is left out."""
    sheet = example(name)
    sheet.pop("wiring", None)
    connections = ask(sheet)["plan"]["connections"]
    for gone, one in enumerate(connections):
        wiring = connections[:gone] + connections[gone + 1 :]
        answer = ask(with_wiring(sheet, wiring))
        if any(left["adapters"] == one["adapters"] and one["adapters"] for left in wiring):
            continue
        _holds(wiring, answer)
        assert [(move["action"], _port(move)) for move in answer["moves"]] == [("plug", _port(one))]


def test_no_moves_without_a_better_plan() -> None:
    assert "moves" not in ask(bench())
    answer = ask(with_wiring(bench(), plugged()))
    assert "better_plan" not in answer
    assert "moves" not in answer


def test_the_only_move_is_that_of_the_wrong_plug() -> None:
    answer = ask(with_wiring(bench(), plugged(card="six")))
    (move,) = answer["moves"]
    assert (move["action"], _port(move)) == ("move", (f"/parts/{CARD}", 1, "pcie-8", 1))
    assert move["from"]["plugs"][0]["cable"] == f"/parts/{SUPPLY}/cables/7"
    assert move["to"]["plugs"][0]["sockets"] == ["Power"]
    assert move["message"] == (
        "Feed the pcie-8 port of the graphics card of line 4 from plug 1 of cable 3 instead of plug 1 of cable 8; "
        "put cable 3 into socket Power."
    )


def _two_ports(copies: tuple[int, int], plugs: tuple[int, int]) -> tuple[Json, list[Json]]:
    """Return the bench with a card of two ports and two equal double-ended cables, and a wiring of that card."""
    sheet, wiring = bench(), plugged(card="")
    sheet["parts"][CARD]["spec"] |= {"board_watts": 300, "needs": [{"connector": "pcie-8", "count": 2}]}
    ends = [{"connector": "pcie-6+2", "at_mm": 650}, {"connector": "pcie-6+2", "at_mm": 700}]
    box = sheet["parts"][SUPPLY]["spec"]["cables"]
    box[2] = {"plugs": ends, "awg": 18, "occupies": {"Power": 1}, "quantity": 2}
    box[3] = {"plugs": [{"connector": "cpu-4", "at_mm": 100}], "awg": 18, "occupies": {"Power": 1}}
    for number, (of, plug) in enumerate(zip(copies, plugs, strict=True), start=1):
        wiring.append({
            "part": f"/parts/{CARD}", "port": {"connector": "pcie-8", "number": number},
            "plugs": [{"cable": f"/parts/{SUPPLY}/cables/2", "copy": of, "plug": plug}],
        })
    return sheet, wiring


@pytest.mark.parametrize("copies", [(1, 1), (2, 2)], ids=["first-copy", "second-copy"])
def test_shared_cable_moves_one_plug_whatever_the_number_of_the_copy(copies: tuple[int, int]) -> None:
    sheet, wiring = _two_ports(copies, (1, 2))
    answer = ask(with_wiring(sheet, wiring))
    (move,) = answer["moves"]
    assert move["port"] == {"connector": "pcie-8", "number": 2}
    assert (move["from"]["plugs"][0]["copy"], move["to"]["plugs"][0]["copy"]) == (copies[1], 3 - copies[1])
    assert "a cable of its own," in move["message"]
    _holds(wiring, answer)


@pytest.mark.parametrize("copies", [(1, 2), (2, 1)], ids=["as-planned", "other-way-round"])
def test_equal_copies_are_not_exchanged(copies: tuple[int, int]) -> None:
    sheet, wiring = _two_ports(copies, (1, 1))
    assert "moves" not in ask(with_wiring(sheet, wiring))
    answer = ask(with_wiring(sheet, [one for one in wiring if one["port"]["connector"] != "cpu-8"]))
    assert [move["port"]["connector"] for move in answer["moves"]] == ["cpu-8"]


def test_a_plug_with_open_contacts_is_not_offered_as_whole() -> None:
    wiring = plugged()
    plug_of(wiring, "card")["open_contacts"] = 2
    answer = ask(with_wiring(bench(), wiring))
    (move,) = answer["moves"]
    assert move["to"]["plugs"][0]["cable"] == f"/parts/{SUPPLY}/cables/3"
    sheet = bench()
    sheet["parts"][SUPPLY]["spec"]["cables"][3] = sheet["parts"][SUPPLY]["spec"]["cables"][7]
    assert "better_plan" not in ask(with_wiring(sheet, wiring)), "no other plug is left, and this one is as it is"


def test_cable_in_a_wrong_socket_moves_at_the_supply() -> None:
    wiring = plugged()
    plug_of(wiring, "card")["sockets"] = ["Board"]
    answer = ask(with_wiring(bench(), wiring))
    (move,) = answer["moves"]
    assert (move["from"]["plugs"][0]["sockets"], move["to"]["plugs"][0]["sockets"]) == (["Board"], ["Power"])
    assert move["message"] == (
        "Leave the plug in the pcie-8 port of the graphics card of line 4 and put cable 3 into socket Power."
    )


@given(st.lists(st.lists(st.integers(0, 9), min_size=5, max_size=5), min_size=1, max_size=5))
def test_assignment_is_the_best(weights: list[list[int]]) -> None:
    def best(row: int, free: frozenset[int]) -> int:
        if row == len(weights):
            return 0
        return max(weights[row][at] + best(row + 1, free - {at}) for at in free)

    chosen = assign(weights)
    assert len(set(chosen)) == len(weights)
    assert sum(row[at] for row, at in zip(weights, chosen, strict=True)) == best(0, frozenset(range(5)))
