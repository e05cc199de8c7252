"""From sheets and an edition to builds: what is not there, what is too much, and one order for all."""

import random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.catalogue.edition import Edition, edition_of
from service.catalogue.resolve import resolve
from service.intake.entries import StatedEntry
from service.intake.faults import Faults
from service.intake.sheet import read_sheet
from service.intake.specs import read_spec
from service.parts.build import Build

SUPPLY = {"category": "power_supply", "rated_watts": 650, "design": "atx-2",
          "sockets": [{"label": "card", "count": 2}, {"label": "cpu", "count": 2}],
          "cables": [{"quantity": 2, "occupies": {"card": 1}, "plugs": [{"connector": "pcie-6+2"}] * 2},
                     {"occupies": {"cpu": 1}, "plugs": [{"connector": "cpu-4+4"}]}]}
CARD = {"category": "graphics_card", "board_watts": 220, "needs": [{"connector": "pcie-8", "count": 2}],
        "adapters": [{"takes": [{"connector": "pcie-8", "count": 2}], "gives": [{"connector": "pcie-8", "count": 2}]}]}
BOARD = {"category": "motherboard", "needs": [{"connector": "cpu-4", "count": 2}, {"connector": "cpu-8"}]}
LEAD = {"category": "cable", "quantity": 2, "plugs": [{"connector": "pcie-8"}]}
EDITION: Edition = edition_of("test-1", [
    StatedEntry("supply-650", "Orrel", read_spec(SUPPLY), mpn="OR 650", gtin="00000012345670"),
    StatedEntry("card-220", "Orrel", read_spec(CARD), mpn="X1"),
    StatedEntry("board-1", "Tamsin", read_spec(BOARD), mpn="x1"),
])
PARTS: list[dict[str, Any]] = [{"part": "supply-650"}, {"part": "card-220", "quantity": 2}, {"part": "board-1"},
                               {"spec": LEAD}]


def build(parts: list[dict[str, Any]], **rest: Any) -> Build:
    """Return the build of a sheet."""
    return resolve(read_sheet({"parts": parts} | rest), EDITION)


def faults_of(parts: list[dict[str, Any]], **rest: Any) -> dict[str, str]:
    """Return the faults of a sheet by pointer."""
    with pytest.raises(Faults) as caught:
        build(parts, **rest)
    return dict(caught.value.faults)


FAN = {"spec": {"category": "fan"}}
BAD = [
    pytest.param([{"part": "card-22"}], "/parts/0/part", "is not in edition test-1; near it: card-220", id="near"),
    pytest.param([{"part": "zzzz"}], "/parts/0/part", "is not in edition test-1", id="unknown"),
    pytest.param([{"gtin": "00000000"}], "/parts/0/gtin", "is not in edition test-1", id="gtin"),
    pytest.param([{"mpn": "none"}], "/parts/0/mpn", "is not in edition test-1", id="mpn"),
    pytest.param([{"mpn": "X1"}], "/parts/0/mpn", "is the number of 2 parts; name one by its id: board-1, card-220",
                 id="ambiguous"),
    pytest.param([FAN, {"part": "supply-650"}, {"part": "supply-650"}], "/parts/2", "is a second power supply; one "
                 "supply per build: check each machine, or each supply, by itself", id="two supplies"),
    pytest.param([{"part": "supply-650", "quantity": 2}], "/parts/0/quantity",
                 "must be 1 for a power supply; one supply per build", id="supply twice"),
    pytest.param([{"spec": {"category": "motherboard"}}, {"spec": {"category": "motherboard"}}], "/parts/1",
                 "is a second motherboard; one motherboard per build: check each machine by itself", id="two boards"),
    pytest.param([FAN | {"quantity": 64}] * 5, "/parts", "makes 320 devices in all; 256 are allowed", id="devices"),
    pytest.param([{"spec": LEAD, "quantity": 64}] * 2, "/parts", "makes 256 cables in all; 128 are allowed",
                 id="cables"),
    pytest.param([{"spec": CARD | {"adapters": []}, "quantity": 64}] * 2, "/parts",
                 "makes 256 power ports in all; 160 are allowed", id="ports"),
]


@pytest.mark.parametrize(("parts", "pointer", "sentence"), BAD)
def test_fault(parts: list[dict[str, Any]], pointer: str, sentence: str) -> None:
    assert faults_of(parts) == {pointer: sentence}


def test_numbers_lead_to_the_same_part() -> None:
    by_id = build([{"part": "supply-650"}]).units
    assert build([{"gtin": "12345670"}]).units == by_id
    assert build([{"mpn": "or650"}]).units == by_id


def plugged(line: int, connector: str, number: int = 1, cable: str = "/parts/0/cables/0", plug: int = 1,
            copy: int = 1, **rest: Any) -> dict[str, Any]:
    """Return one connection, without adapters."""
    plugs = [{"cable": cable, "plug": plug, "copy": copy}]
    return {"part": f"/parts/{line}", "port": {"connector": connector, "number": number}, "plugs": plugs} | rest


def fanned(number: int, **rest: Any) -> dict[str, Any]:
    """Return a connection of the card through its adapter."""
    plugs = [{"cable": "/parts/0/cables/0", "plug": plug} for plug in (1, 2)]
    adapters = [{"adapter": "/parts/1/adapters/0", "inputs": 2}]
    return plugged(1, "pcie-8", number) | {"plugs": plugs, "adapters": adapters} | rest


NOT_THERE = [
    pytest.param([plugged(9, "pcie-8")], "/wiring/0/part", id="line"),
    pytest.param([plugged(1, "pcie-8") | {"copy": 3}], "/wiring/0/copy", id="copy"),
    pytest.param([plugged(1, "pcie-6")], "/wiring/0/port/connector", id="connector"),
    pytest.param([plugged(1, "pcie-8", 3)], "/wiring/0/port/number", id="port number"),
    pytest.param([plugged(1, "pcie-8", cable="/parts/9")], "/wiring/0/plugs/0/cable", id="cable line"),
    pytest.param([plugged(1, "pcie-8", cable="/parts/0/cables/7")], "/wiring/0/plugs/0/cable", id="boxed cable"),
    pytest.param([plugged(1, "pcie-8", cable="/parts/1/cables/0")], "/wiring/0/plugs/0/cable", id="box of a card"),
    pytest.param([plugged(1, "pcie-8", cable="/parts/1")], "/wiring/0/plugs/0/cable", id="card as cable"),
    pytest.param([plugged(1, "pcie-8", copy=3)], "/wiring/0/plugs/0/copy", id="cable copy"),
    pytest.param([plugged(1, "pcie-8", plug=3)], "/wiring/0/plugs/0/plug", id="plug"),
    pytest.param([plugged(1, "pcie-8") | {"plugs": [{"cable": "/parts/0/cables/0", "plug": 1, "sockets": ["sata"]}]}],
                 "/wiring/0/plugs/0/sockets/0", id="socket"),
    pytest.param([fanned(1, adapters=[{"adapter": "/parts/1/adapters/1", "inputs": 2}])],
                 "/wiring/0/adapters/0/adapter", id="adapter"),
    pytest.param([fanned(1, adapters=[{"adapter": "/parts/1/adapters/0", "inputs": 3}])],
                 "/wiring/0/adapters/0/inputs", id="adapter inputs"),
    pytest.param([fanned(1, adapters=[{"adapter": "/parts/1/adapters/0", "inputs": 1}])], "/wiring/0/plugs",
                 id="two plugs for one input"),
    pytest.param([plugged(1, "pcie-8"), plugged(1, "pcie-8", plug=2)], "/wiring/1/port", id="port twice"),
    pytest.param([plugged(1, "pcie-8"), plugged(1, "pcie-8", 2)], "/wiring/1/plugs/0", id="plug twice"),
    pytest.param([plugged(2, "cpu-8", cable="/parts/0/cables/1"), plugged(2, "cpu-4", cable="/parts/0/cables/1")],
                 "/wiring/1/plugs/0", id="split plug whole, then half"),
    pytest.param([fanned(1), fanned(1, copy=2), fanned(2)], "/wiring/2/adapters/0", id="third output of two"),
]


@pytest.mark.parametrize(("wiring", "pointer"), NOT_THERE)
def test_wiring_speaks_of_what_is_there(wiring: list[dict[str, Any]], pointer: str) -> None:
    assert pointer in faults_of(PARTS, wiring=wiring)


def in_socket(plug: int, *sockets: str) -> dict[str, Any]:
    """Return a connection of the card that says which sockets the cable is in."""
    plugs = [{"cable": "/parts/0/cables/0", "plug": plug, "sockets": list(sockets)}]
    return plugged(1, "pcie-8", plug) | {"plugs": plugs}


def test_one_cable_is_in_one_place() -> None:
    assert faults_of(PARTS, wiring=[in_socket(1, "card"), in_socket(2, "cpu")]) == {
        "/wiring/1/plugs/0/sockets": "differ from the sockets named for this cable before"
    }


THERE = [
    pytest.param([in_socket(1, "card"), in_socket(2)], id="sockets named once"),
    pytest.param([plugged(1, "pcie-8"), plugged(1, "pcie-8", 2, plug=2)], id="two plugs of a cable"),
    pytest.param([plugged(1, "pcie-8", cable="/parts/3", copy=2)], id="bought cable"),
    pytest.param([plugged(2, "cpu-4", n, cable="/parts/0/cables/1") for n in (1, 2)], id="halves of a split plug"),
    pytest.param([fanned(1), fanned(2)], id="two outputs of one adapter"),
    pytest.param([plugged(2, "cpu-8")], id="a wrong mate is judged, not refused"),
]


@pytest.mark.parametrize("wiring", THERE)
def test_wiring_that_is_there(wiring: list[dict[str, Any]]) -> None:
    assert len(build(PARTS, wiring=wiring).wiring or ()) == len(wiring)


@given(st.randoms(use_true_random=False), st.integers(1, 6), st.integers(1, 6))
def test_order_and_split_change_no_unit(rng: random.Random, fans: int, cards: int) -> None:
    whole: list[dict[str, Any]] = [{"part": "supply-650"}, FAN | {"quantity": fans}]
    whole.append({"part": "card-220", "quantity": cards})
    same = {"spec": CARD | {"name": "the same"}}
    split: list[dict[str, Any]] = [{"part": "supply-650"}, *[FAN] * fans, *[same] * cards]
    rng.shuffle(split)
    one, other = build(whole), build(split)
    assert [unit.digest for unit in one.units] == [unit.digest for unit in other.units]
    assert [unit.digest for unit in one.units] == sorted(unit.digest for unit in one.units)
    assert len({(unit.line, unit.copy) for unit in other.units}) == 1 + fans + cards


@given(order=st.permutations(range(4)))
def test_adapters_on_offer_are_those_of_the_edition_each_once_in_one_order(order: list[int]) -> None:
    ends = [("pcie-8", "pcie-8"), ("cpu-8", "cpu-8"), ("pcie-8", "pcie-8"), ("sata-power", "sata-power")]
    specs = [{"category": "adapter", "name": f"{at}", "takes": [{"connector": takes}], "gives": [{"connector": gives}]}
             for at, (takes, gives) in enumerate(ends)]
    stated = [StatedEntry(f"adapter-{at}", "Orrel", read_spec(spec)) for at, spec in enumerate(specs)]
    fan = StatedEntry("fan-1", "Orrel", read_spec(FAN["spec"]))
    edition = edition_of("test-2", [*(stated[at] for at in order), fan])
    offered = resolve(read_sheet({"parts": [FAN]}), edition).adapters_on_offer
    assert sorted(adapter.name for adapter in offered) == ["0", "1", "3"]
    assert offered == edition_of("test-2", stated).adapters
