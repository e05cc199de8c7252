"""Readings from the sheet to the answer: what they settle, what they contradict, and what they are compared with."""

from typing import Any

import pytest

from service.intake.faults import Faults
from tests.journeys.asked import ask, said, spoken
from tests.practice.test_trade import BOARD, card, supply

Json = dict[str, Any]
PORTS = [{"plugs": [{"connector": "sata-power"}], "quantity": 2}, {"plugs": [{"connector": "pcie-8"}], "quantity": 2}]
DISK = {"category": "drive", "interface": "sata", "size": "3.5", "needs": [{"connector": "sata-power"}]}
PROCESSOR = {"category": "processor", "socket": "q7"}


def judged(*specs: Json, readings: list[Json], design: str = "atx-3.0", **given: Any) -> Json:
    """Return the answer to a supply (line 0), a board (1) and other parts (from 2) with readings."""
    parts = [{"spec": spec} for spec in (supply(*PORTS, design=design), BOARD, *specs)]
    return ask({"parts": parts, "readings": readings, **given})


def at(line: int, rail: str = "12v", port: str | None = None, number: int = 1, **read: float) -> Json:
    """Return a reading."""
    where = {"part": f"/parts/{line}", "rail": rail, **read}
    return where if port is None else where | {"port": {"connector": port, "number": number}}


def assumed(answer: Json) -> set[str]:
    """Return what was assumed."""
    return {one["where"] for one in answer["assumptions"]}


def carried(answer: Json, line: int, connector: str) -> Json:
    """Return what a port carries."""
    ports = [one for one in answer["power"]["connections"] if one["part"] == f"/parts/{line}"]
    amps = next(one["amps"] for one in ports if one["port"]["connector"] == connector)
    assert isinstance(amps, dict)
    return amps


@pytest.mark.parametrize("port", [None, "sata-power"])
def test_amps_of_a_drive_stand_for_what_is_assumed(port: str | None) -> None:
    answer = judged(DISK, readings=[at(2, port=port, amps=0.61)])
    assert "/parts/2/running_amps/12v" in assumed(judged(DISK, readings=[]))
    assert "/parts/2/running_amps/12v" not in assumed(answer)
    assert "/parts/2/running_amps/5v" in assumed(answer)
    assert carried(answer, 2, "sata-power")["12v"] == pytest.approx(0.61)
    assert answer["readings"] == [
        {"where": "/readings/0", "settles": "/parts/2/running_amps/12v", "stated_amps": None},
    ]


# A processor of which nothing is known may take anything; 14 A at its plugs are 168 W.
def test_amps_of_a_processor() -> None:
    answer = judged(PROCESSOR, readings=[at(2, amps=14)])
    assert "/parts/2/turbo_watts" not in assumed(answer)
    assert carried(answer, 1, "cpu-8")["12v"] == pytest.approx(14)


@pytest.mark.parametrize(
    ("amps", "used", "rules"),
    [(0.5, 0.5, set()), (0.35, 0.35, set()), (0.9, 0.9, {"RDG103"}), (0.1, 0.6, {"RDG104"}), (0.61, 0.61, set())],
    ids=["within", "within-low", "above", "below", "above-within-the-meter"],
)
def test_a_stated_range(amps: float, used: float, rules: set[str]) -> None:
    stated = DISK | {"running_amps": {"12v": {"low": 0.3, "high": 0.6}}}
    answer = judged(stated, readings=[at(2, amps=amps)])
    assert carried(answer, 2, "sata-power")["12v"] == pytest.approx(used)
    assert spoken(answer) & {"RDG103", "RDG104"} == rules
    assert answer["readings"][0]["stated_amps"] == {"low": 0.3, "high": 0.6}


def test_only_the_piece_that_was_measured() -> None:
    reading = at(2, amps=0.9) | {"copy": 2}
    disks = {"spec": DISK | {"running_amps": {"12v": 0.3, "5v": 0.3}}, "quantity": 2}
    answer = ask({"parts": [{"spec": supply(*PORTS)}, {"spec": BOARD}, disks], "readings": [reading]})
    amps = {one["copy"]: one["amps"]["12v"] for one in answer["power"]["connections"] if one["part"] == "/parts/2"}
    assert amps == {1: 0.3, 2: 0.9}
    assert [one["place"]["copy"] for one in answer["findings"] if one["rule"] == "RDG103"] == [2]


# 275 W through two plugs, half each by their ratings: 11.5 A. Both were measured: 9 and 12 A; the greater counts.
def test_plugs_of_a_card() -> None:
    readings = [at(2, port="pcie-8", number=n, amps=amps) for n, amps in ((1, 9), (2, 12))]
    answer = judged(card(300, "pcie-8", 2), readings=readings)
    assert carried(answer, 2, "pcie-8")["12v"] == pytest.approx(12, abs=0.01)
    assert [one["settles"] for one in answer["readings"]] == ["/parts/2/needs/0/watts"] * 2


# Of 275 W a plug has half, 11.46 A; 2 % more are 11.69 A.
def test_one_plug_of_two_is_compared_with_what_is_reckoned() -> None:
    for amps, rules in ((11.6, set()), (11.8, {"RDG103"})):
        answer = judged(card(300, "pcie-8", 2), readings=[at(2, port="pcie-8", amps=amps)])
        assert spoken(answer) & {"RDG103", "RDG104"} == rules
        assert answer["readings"][0]["settles"] is None


def test_main_plug_and_rail_are_compared_with_what_is_reckoned() -> None:
    sound = judged(PROCESSOR | {"plug_watts": 60}, readings=[])
    main, rail = carried(sound, 1, "atx-24")["5v"], sound["power"]["rails"]["5v"]["sustained_amps"]
    for factor, rules in ((1.01, set()), (1.03, {"RDG103"})):
        readings = [at(1, "5v", port="atx-24", amps=main * factor), at(0, "5v", amps=rail * factor)]
        answer = judged(PROCESSOR | {"plug_watts": 60}, readings=readings)
        assert spoken(answer) & {"RDG103"} == rules
        assert answer["power"]["rails"]["5v"]["sustained_amps"] == pytest.approx(rail * factor, abs=0.001)


def test_standby_of_a_board() -> None:
    answer = judged(readings=[at(1, "5vsb", port="atx-24", amps=1.1)])
    assert "/parts/1/own_amps/5vsb" not in assumed(answer)
    assert answer["power"]["rails"]["5vsb"]["sustained_amps"] == pytest.approx(1.1)


# As printed: 12 V 11.40 to 12.60 V, since ATX 3.0 down to 11.16 V and 11.04 V at a card; 4.75 to 5.25; 3.14 to 3.47 V.
@pytest.mark.parametrize(("rail", "design", "low", "high"), [
    ("12v", "atx-2", 11.40, 12.60), ("12v", "atx-3.0", 11.16, 12.60), ("5v", "atx-2", 4.75, 5.25),
    ("5vsb", "atx-3.1", 4.75, 5.25), ("3v3", "atx-3.1", 3.14, 3.47),
])
def test_span_of_a_rail(rail: str, design: str, low: float, high: float) -> None:
    for volts, told in ((low - 0.01, True), (low, False), (high, False), (high + 0.01, True)):
        answer = judged(design=design, readings=[at(0, rail, volts=volts)])
        assert said(answer, "RDG101") == ([(f"/parts/0/rails/{rail}",)] if told else [])
        assert answer["verdict"] == ("does_not_fit" if told else answer["verdict"])


@pytest.mark.parametrize(("design", "low"), [("atx-2", 11.40), ("atx-3.0", 11.04)])
def test_span_at_a_card(design: str, low: float) -> None:
    for volts, told in ((low - 0.01, True), (low, False), (12.60, False), (12.61, True)):
        answer = judged(card(140, "pcie-8", 1), design=design, readings=[at(2, port="pcie-8", volts=volts)])
        assert said(answer, "RDG102") == ([("/parts/2", "pcie-8", "1")] if told else [])


# A lead of no length and soldered: a strip of 1 A, 1 m and 0.5 ohm loses 0.25 V of what was measured.
@pytest.mark.parametrize(("readings", "volts"), [
    ([], 5.0), ([at(0, "5v", volts=4.8)], 4.8), ([at(2, "5v", port="argb-3", volts=4.7)], 4.7),
    ([at(0, "5v", volts=4.8), at(2, "5v", port="argb-3", volts=4.9)], 4.9), ([at(0, "12v", volts=11.9)], 5.0),
])
def test_lights_begin_with_what_was_measured(readings: list[Json], volts: float) -> None:
    lead = {"length_mm": 0, "awg": 18, "ohms_per_contact": 0}
    light = {"category": "lighting", "volts": 5, "amps": 1, "lead": lead,
             "strip": {"length_mm": 1000, "ohms_per_metre": 0.5}}
    (run,) = judged(light, readings=readings)["runs"]
    assert (run["source_volts"], run["end_volts"]) == pytest.approx((volts, volts - 0.25))


READ_TWICE = [at(0, volts=12), at(0, volts=12.1)]
BAD = [
    pytest.param([at(0)], "/readings/0/volts", "must be given, or amps", id="nothing read"),
    pytest.param([at(9, amps=1)], "/readings/0/part", "points at a line that the sheet does not have", id="no line"),
    pytest.param([at(2, amps=1) | {"copy": 2}], "/readings/0/copy", "is above the quantity of the line, 1", id="copy"),
    pytest.param([at(2, port="pcie-8", amps=1)], "/readings/0/port/connector", "is not a port of this part", id="port"),
    pytest.param([at(2, port="sata-power", number=2, amps=1)], "/readings/0/port/number",
                 "is above the number of such ports of this part, 1", id="number"),
    pytest.param([at(2, volts=12)], "/readings/0/port",
                 "must be given: without one only a supply is read, and amps of a part that has a figure for them",
                 id="volts of a whole part"),
    pytest.param([at(1, amps=4)], "/readings/0/port",
                 "must be given: without one only a supply is read, and amps of a part that has a figure for them",
                 id="amps of a whole board"),
    pytest.param(READ_TWICE, "/readings/1/volts", "is read by an earlier reading", id="twice"),
    pytest.param([at(0, "24v", volts=24)], "/readings/0/rail", "must be one of 12v, 5v, 3v3, 5vsb", id="24 V"),
    pytest.param([at(0, volts=230)], "/readings/0/volts", "must be from 0 to 20", id="mains"),
]


@pytest.mark.parametrize(("readings", "pointer", "sentence"), BAD)
def test_fault(readings: list[Json], pointer: str, sentence: str) -> None:
    with pytest.raises(Faults) as caught:
        judged(DISK, readings=readings)
    found = dict(caught.value.faults)
    assert found[pointer] == sentence
    assert len(found) <= 2
