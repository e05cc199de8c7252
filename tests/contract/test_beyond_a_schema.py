"""Where the schema ends: what it states between fields is refused by the service, and the rest is listed, whole.

The document lists under the answer 422 of a check the sentences that a sheet may get though it fits its schema. Each
is shown here by a sheet that does; ``test_conversation`` sees to it that generated sheets get no other.
"""

from typing import Any

import pytest
from flask import Flask

from service.catalogue.edition import edition_of
from service.catalogue.resolve import resolve
from service.intake.entries import StatedEntry
from service.intake.faults import Faults
from service.intake.sheet import read_sheet
from service.parts.figures import exactly
from service.parts.records import Fan
from tests.contract.document import faults_of, of_sentence, sentences_beyond

Json = dict[str, Any]
CHECKS = "/v1/checks"
SHEET = {"$ref": "#/components/schemas/Sheet"}
EIGHT, SIXTEEN, MAIN = {"connector": "pcie-8"}, {"connector": "12v-2x6"}, {"connector": "atx-24"}
ONE = {"number": 1}
TWO_PARTS = "is the number of {count} parts; name one by its id: {ids}"


def sheet(*specs: Json, **given: Any) -> Json:
    """Return a sheet of specs."""
    return {"parts": [{"spec": spec} for spec in specs], **given}


def supply(*cables: Json, **given: Any) -> Json:
    """Return a supply and the cables in its box."""
    cables_of_it = {"cables": list(cables)} if cables else {}
    return {"category": "power_supply", "rated_watts": 850, "design": "atx-3.0", **cables_of_it, **given}


def cable(*plugs: Json, **given: Any) -> Json:
    """Return a cable bought separately."""
    return {"category": "cable", "plugs": list(plugs or (EIGHT,)), **given}


def adapter(count: int, **given: Any) -> Json:
    """Return an adapter from 8-pin plugs to two 8-pin plugs."""
    takes, gives = [EIGHT | {"count": count}], [EIGHT | {"count": 2}]
    return {"category": "adapter", "takes": takes, "gives": gives, **given}


def card(count: int = 1, **given: Any) -> Json:
    """Return a card with 8-pin ports."""
    return {"category": "graphics_card", "board_watts": 200, "needs": [EIGHT | {"count": count}], **given}


def fed(port: Json | None = None, *, plug: Json | None = None, **given: Any) -> Json:
    """Return a connection of the card on line 1 to the first boxed cable of line 0, but for what is given."""
    plugs = [{"cable": "/parts/0/cables/0", "plug": 1} | (plug or {})]
    return {"part": "/parts/1", "port": EIGHT | ONE | (port or {}), "plugs": plugs} | given


def wired(*connections: Json, ports: int = 2, box: Json | None = None, further: Json | None = None) -> Json:
    """Return a sheet of a supply with one cable of two plugs, a card and an adapter, and its wiring."""
    listed = box or supply({"plugs": [EIGHT, EIGHT]})
    return sheet(listed, card(ports), further or adapter(2, quantity=2), wiring=list(connections))


def through(*adapters: int, inputs: int = 1, plugs: int = 1, number: int = 1) -> Json:
    """Return a connection through adapters of line 2, by their copies."""
    way = [{"adapter": "/parts/2", "copy": copy, "inputs": inputs} for copy in adapters]
    ends = [{"cable": "/parts/0/cables/0", "plug": at} for at in range(1, plugs + 1)]
    return {"part": "/parts/1", "port": EIGHT | {"number": number}, "adapters": way, "plugs": ends}


RUN = {"source_volts": 12, "length_mm": 500}
READ = {"part": "/parts/0", "rail": "12v"}
LIGHT: Json = {"category": "lighting", "volts": 5, "strip": {"length_mm": 500}}
GROUP, LUGS = {"name": "a", "max_amps": 20}, {"label": "lug", "count": 2}
POINTS = [{"load_percent": 50, "percent": 90}, {"load_percent": 20, "percent": 88}]
FANS, CARDS = {"category": "fan"}, {"category": "graphics_card", "board_watts": 60}
LABELLED = supply({"plugs": [EIGHT, EIGHT], "occupies": {"lug": 1}}, sockets=[LUGS, LUGS | {"label": "other lug"}])


def many(spec: Json, lines: int = 3) -> Json:
    """Return a sheet of three lines of 64 pieces of a part."""
    return {"parts": [{"spec": spec, "quantity": 64}] * lines}


BEYOND: list[tuple[str, Json]] = [
    ("is not in edition {name}", {"parts": [{"mpn": "no such number"}]}),
    ("is not in edition {name}; near it: {ids}", {"parts": [{"part": "demo-supply-851"}]}),
    ("has a last digit that does not check the others; one digit is wrong", {"parts": [{"gtin": "20000012"}]}),
    ("must not be above high", sheet(card(board_watts={"low": 2, "high": 1}))),
    ("stands in the list already", sheet({"category": "case", "bays": [{"form_factors": ["ATX", "atx"]}]})),
    ("is more inputs than the {count} that the adapter takes", sheet(adapter(2, rated_watts_by_inputs={"3": 100}))),
    ("must not be nearer than the plug listed before it", sheet(cable(EIGHT | {"at_mm": 9}, EIGHT | {"at_mm": 8}))),
    ("must be above that of the point before it", sheet(supply(efficiency_points=POINTS))),
    ("is the name of an earlier one already", sheet(supply(groups=[GROUP, GROUP | {"max_amps": 30}]))),
    ("names a group that the supply does not list", sheet(supply({"plugs": [EIGHT], "group": "b"}, groups=[GROUP]))),
    ("names a socket that the supply does not list",
     sheet(supply({"plugs": [EIGHT], "occupies": {"other": 1}}, sockets=[LUGS]))),
    ("is more sockets than the {count} that the supply has",
     sheet(supply({"plugs": [EIGHT], "occupies": {"lug": 3}}, sockets=[LUGS]))),
    ("is in none of the supply's groups: name its group, the group of its sockets, or what a group feeds",
     sheet(supply({"plugs": [EIGHT]}, groups=[GROUP]))),
    ("is a second power supply; one supply per build: check each machine, or each supply, by itself",
     {"parts": [{"part": "demo-supply-850"}, {"spec": supply()}]}),
    ("is a second motherboard; one motherboard per build: check each machine by itself",
     {"parts": [{"part": "demo-board-4c"}, {"spec": {"category": "motherboard"}}]}),
    ("must be 1 for a power supply; one supply per build", {"parts": [{"part": "demo-supply-850", "quantity": 2}]}),
    ("must be 1 for a motherboard; one motherboard per build", {"parts": [{"part": "demo-board-4c", "quantity": 2}]}),
    ("names a group that the supply of this sheet does not list", sheet(supply(), cable(group="a"))),
    ("names a socket that the supply of this sheet does not list",
     sheet(supply(sockets=[LUGS]), cable(occupies={"other": 1}))),
    ("makes {count} devices in all; {most} are allowed", many(FANS, 5)),
    ("makes {count} cables in all; {most} are allowed", many(cable())),
    ("makes {count} adapters in all; {most} are allowed", many(adapter(1))),
    ("makes {count} power ports in all; {most} are allowed", many(card())),
    ("makes {count} signal ports in all; {most} are allowed",
     many(FANS | {"needs": [{"connector": "fan-4", "count": 4}]})),
    ("makes {count} ports on offer in all; {most} are allowed",
     many({"category": "controller", "offers": [{"connector": "fan-4", "count": 6}]})),
    ("points at a line that the sheet does not have", wired(fed(part="/parts/9"))),
    ("points at no adapter", wired(fed(adapters=[{"adapter": "/parts/0", "inputs": 1}]))),
    ("points at no cable", wired(fed(plug={"cable": "/parts/0/cables/7"}))),
    ("is not a port of this part", wired(fed({"connector": "pcie-6"}))),
    ("is above the quantity of the line, {count}", wired(fed(copy=2))),
    ("is above the number of such ports of this part, {count}", wired(fed({"number": 3}))),
    ("is above the number of such adapters, {count}", wired(through(3))),
    ("is above the number of such cables, {count}", wired(fed(plug={"copy": 2}))),
    ("is above the number of inputs of this adapter, {count}", wired(through(1, inputs=3))),
    ("is above the number of plugs of this cable, {count}", wired(fed(plug={"plug": 3}))),
    ("has more adapters behind the first one than inputs of it are in use", wired(through(1, 2, 2))),
    ("must list {count}: one for the port, or one for each input in use", wired(through(1, inputs=2))),
    ("is fed by an earlier connection already", wired(fed(), fed(plug={"plug": 2}))),
    ("is in use already, with no output left or fed in another way",
     wired(*(through(1, number=number) for number in (1, 2, 3)), ports=3)),
    ("is a plug that is in use already", wired(fed(), fed({"number": 2}))),
    ("differ from the sockets named for this cable before",
     wired(fed(plug={"sockets": ["lug"]}), fed({"number": 2}, plug={"plug": 2, "sockets": ["other lug"]}),
           box=LABELLED)),
    ("is read by an earlier reading", sheet(FANS, readings=[READ | {"amps": 0.1}, READ | {"amps": 0.2}])),
    ("must be given: without one only a supply is read, and amps of a part that has a figure for them",
     sheet(FANS, readings=[READ | {"volts": 12}])),
    ("has more faults than are listed: {count} were left out",
     sheet(*[cable(*[EIGHT | {"at_mm": mm} for mm in range(16, 0, -1)])] * 14)),
]


@pytest.mark.parametrize(("sentence", "asked"), BEYOND, ids=[sentence for sentence, _ in BEYOND])
def test_sheet_as_documented_is_refused_by_a_listed_sentence(sentence: str, asked: Json, app: Flask) -> None:
    assert faults_of(SHEET, asked) == []
    answer = app.test_client().post(CHECKS, json=asked)
    said = {fault["detail"] for fault in answer.get_json()["errors"]}
    assert answer.status_code == 422
    assert any(of_sentence(sentence).fullmatch(detail) for detail in said), said
    listed = [of_sentence(one) for one in sentences_beyond()]
    assert [detail for detail in said if not any(one.fullmatch(detail) for one in listed)] == []


def test_number_of_two_parts_is_refused_by_a_listed_sentence() -> None:
    """No two parts of the demo catalogue have one number, so they are made here."""
    fan = Fan(amps=exactly(0.1))
    twins = [StatedEntry(id=id_, maker="Ackerly", mpn="X1", gtin=None, spec=fan) for id_ in ("fan-a", "fan-b")]
    with pytest.raises(Faults) as refused:
        resolve(read_sheet({"parts": [{"mpn": "x 1"}]}), edition_of("test-1", twins))
    assert [of_sentence(TWO_PARTS).fullmatch(fault.sentence) for fault in refused.value.faults] != [None]


def test_every_listed_sentence_is_shown() -> None:
    assert sorted(sentences_beyond()) == sorted([TWO_PARTS, *(sentence for sentence, _ in BEYOND)])


ONE_SOCKET = {"sockets": [LUGS]}
TOGETHER = [
    pytest.param(sheet(cable(EIGHT, rated_watts=300)), sheet(cable(EIGHT, SIXTEEN, rated_watts=300)), id="print"),
    pytest.param(sheet(supply({"plugs": [EIGHT], "rated_watts": 300})),
                 sheet(supply({"plugs": [SIXTEEN], "rated_watts": 300})), id="print on a boxed cable"),
    pytest.param(sheet(supply({"plugs": [EIGHT], "captive": True, "occupies": {"lug": 1}}, **ONE_SOCKET)),
                 sheet(supply({"plugs": [EIGHT], "captive": True, "occupies": {}}, **ONE_SOCKET)), id="captive"),
    pytest.param(sheet(supply({"plugs": [EIGHT], "group": "a"})),
                 sheet(supply({"plugs": [EIGHT], "group": "a"}, groups=[GROUP])), id="group of a cable"),
    pytest.param(sheet(supply(sockets=[LUGS | {"group": "a"}], groups=[])),
                 sheet(supply(sockets=[LUGS | {"group": "a"}], groups=[GROUP])), id="group of a socket"),
    pytest.param(sheet(supply({"plugs": [EIGHT], "occupies": {"lug": 1}})),
                 sheet(supply({"plugs": [EIGHT], "occupies": {"lug": 1}}, **ONE_SOCKET)), id="socket of a cable"),
    pytest.param({"parts": [{"spec": supply(), "quantity": 2}]}, {"parts": [{"spec": supply(), "quantity": 1}]},
                 id="two pieces of a supply"),
    pytest.param({"parts": [{"spec": {"category": "motherboard"}, "quantity": 2}]},
                 {"parts": [{"spec": FANS, "quantity": 2}]}, id="two pieces of a board"),
    pytest.param(sheet(supply(), supply(name="another")), sheet(supply(), FANS, FANS), id="two supplies"),
    pytest.param(sheet({"category": "motherboard"}, {"category": "motherboard"}), sheet({"category": "motherboard"}),
                 id="two boards"),
    pytest.param(wired(fed(plugs=[{"cable": "/parts/0/cables/0", "plug": at} for at in (1, 2)])), wired(fed()),
                 id="two plugs without an adapter"),
    pytest.param(wired(fed({"connector": "fan-4"})), wired(fed()), id="port of a header"),
    pytest.param(sheet(FANS, runs=[RUN]), sheet(FANS, runs=[RUN | {"watts": 1}]), id="no load of a run"),
    pytest.param(sheet(FANS, runs=[RUN | {"amps": 1, "watts": 1}]), sheet(FANS, runs=[RUN | {"amps": 1}]),
                 id="two loads of a run"),
    pytest.param(sheet(FANS, readings=[READ]), sheet(FANS, readings=[READ | {"amps": 0.1}]), id="nothing read"),
    pytest.param(sheet(LIGHT), sheet(LIGHT | {"lead": {"length_mm": 9}}), id="strip without its lead"),
]


@pytest.mark.parametrize(("wrong", "right"), TOGETHER)
def test_what_fields_ask_of_each_other_is_documented(wrong: Json, right: Json, app: Flask) -> None:
    client = app.test_client()
    assert client.post(CHECKS, json=wrong).status_code == 422
    assert faults_of(SHEET, wrong) != []
    assert client.post(CHECKS, json=right).status_code == 200
    assert faults_of(SHEET, right) == []
