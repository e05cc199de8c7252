"""Limits of runs and leads at 99, 100 and 101 %, from the sheet to the finding; figures as printed, by hand."""

from typing import Any

import pytest

from tests.practice.test_trade import supply
from tests.rules.test_limits_in_use import PERCENT, judged, told

Json = dict[str, Any]
AT_20 = {"mains_volts": 230, "room_celsius": 20}


def wire_run(**given: Any) -> Json:
    """Return the answer to a build with a metre of soldered wire from 12 V in a room of 20 C, but for what is given."""
    run = {"source_volts": 12, "length_mm": 1000, "ohms_per_contact": 0, "lowest_volts": 1} | given
    return judged(supply(), runs=[run], site=AT_20)


def lit(volts: int, **given: Any) -> Json:
    """Return the answer to a build with a light in a room of 20 C."""
    light = {"category": "lighting", "volts": volts, "needs": [{"connector": "sata-power"}]} | given
    return judged(supply({"plugs": [{"connector": "sata-power"}]}), light, site=AT_20)


def shown(answer: Json) -> Json:
    """Return the one run of an answer."""
    (one,) = answer["runs"]
    assert isinstance(one, dict)
    return one


def missing(answer: Json, rule: str) -> list[str]:
    """Return what a rule could not judge for."""
    return [one["missing"] for one in answer["unknowns"] if one["rule"] == rule]


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("awg", "amps"), [(18, 8), (20, 5), (22, 4), (24, 2.5), (26, 1.5), (28, 0.9), (30, 0.9)])
def test_wire_of_a_run(awg: int, amps: float, percent: int) -> None:
    answer = wire_run(awg=awg, amps=2 * amps * percent / 100, parallel_pairs=2, length_mm=100)
    assert told(answer, "RUN104") == (percent > 100)
    assert told(wire_run(awg=awg, amps=0.75 * amps * percent / 100, length_mm=100), "RUN105") == (percent > 100)


@pytest.mark.parametrize(("amps", "unknown"), [(7.99, []), (8.01, ["/runs/0/max_amps"])])
def test_thick_wire_is_known_up_to_what_a_contact_carries(amps: float, unknown: list[str]) -> None:
    assert missing(wire_run(awg=14, amps=amps), "RUN104") == unknown
    assert not told(wire_run(awg=14, amps=amps, max_amps=amps), "RUN104")
    assert told(wire_run(awg=14, amps=amps, max_amps=0.99 * amps), "RUN104")


@pytest.mark.parametrize("percent", PERCENT)
def test_volts_at_the_end_of_a_run(percent: int) -> None:
    """1 m of 18 AWG of 7 strands, there and back, is 2 x 6.636 mohm / 0.3048 = 43.54 mohm; 5 A take 0.2177 V off."""
    given = {"awg": 18, "amps": 5, "lowest_volts": 12 - 0.21772 * 100 / percent}
    assert told(wire_run(**given), "RUN102") == (percent > 100)
    assert told(wire_run(**given | {"lowest_volts": 12 - 2 * 0.21775 * 100 / percent}), "RUN103") == (percent > 100)
    assert shown(wire_run(**given))["end_volts"] == pytest.approx(12 - 0.2177, abs=0.001)


@pytest.mark.parametrize(("watts", "solved"), [(203.4, True), (207.6, False)])
def test_most_watts_that_a_run_carries(watts: float, solved: bool) -> None:
    """1 m of 24 AWG, 4 % above 25.67 ohm/1000 ft, is 175.2 mohm there and back: 12^2 / (4 x 0.1752) = 205.5 W."""
    answer = wire_run(awg=24, watts=watts, max_amps=50)
    assert told(answer, "RUN101") != solved
    assert shown(answer)["solved"] == solved


@pytest.mark.parametrize(("amps", "short"), [(0, False), (0.001, True)])
def test_source_that_has_no_more_than_the_load_needs(amps: float, short: bool) -> None:
    answer = wire_run(awg=18, amps=amps, lowest_volts=12)
    assert told(answer, "RUN102") == short
    assert not told(answer, "RUN103")


def test_run_without_a_solution_is_past_its_wire_still() -> None:
    for length_mm in (1000, 9000):
        answer = wire_run(awg=24, watts=100, length_mm=length_mm)
        assert told(answer, "RUN104")
        assert told(answer, "RUN101") == (length_mm > 2000)


@pytest.mark.parametrize(("field", "usual"), [
    ("awg", (18, 24)), ("ohms_per_contact", (0.006, 0.03)), ("strip/ohms_per_metre", (0.1, 0.5)),
])
def test_what_a_run_does_not_say_is_assumed(field: str, usual: tuple[float, float]) -> None:
    run = {"source_volts": 12, "length_mm": 100, "strip": {"length_mm": 500, "amps_per_metre": 1}, "lowest_volts": 9}
    assumed = {one["where"]: one for one in judged(supply(), runs=[run])["assumptions"]}[f"/runs/0/{field}"]
    assert (assumed["low"], assumed["high"], assumed["used"]) == (*usual, usual[1])


def test_worn_contacts_of_a_run() -> None:
    """Four contacts of 30 mohm in series take 0.6 V of 5 A."""
    run = {"source_volts": 12, "length_mm": 1000, "awg": 18, "amps": 5, "lowest_volts": 9}
    answer = judged(supply(), runs=[run], site=AT_20)
    assert shown(answer)["end_volts"] == pytest.approx(12 - 0.2177 - 0.6, abs=0.001)


def test_a_run_is_as_warm_as_its_room() -> None:
    """0.393 % a degree: 43.54 mohm are 47.82 mohm at 45 C."""
    run = {"source_volts": 12, "length_mm": 1000, "awg": 18, "amps": 5, "lowest_volts": 9, "ohms_per_contact": 0}
    answer = judged(supply(), runs=[run], site=AT_20 | {"room_celsius": 45})
    assert shown(answer)["end_volts"] == pytest.approx(12 - 5 * 0.04782, abs=0.001)


def test_strip_at_the_end_of_a_run() -> None:
    """2 m with 0.4 ohm and 0.5 A a metre lose 0.4 x 0.5 x 2^2 / 2 = 0.4 V, and the lead 43.54 mohm x 1 A."""
    strip = {"length_mm": 2000, "amps_per_metre": 0.5, "ohms_per_metre": 0.4}
    one = shown(wire_run(awg=18, strip=strip))
    assert one["end_volts"] == pytest.approx(12 - 0.4 - 0.0435, abs=0.001)
    assert one["amps"] == pytest.approx(1.0)
    assert not shown(wire_run(awg=18, strip=strip | {"amps_per_metre": 15}))["solved"]


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("volts", "per_metre"), [(5, 0.5), (12, 1.2)])
def test_light_at_its_far_end(volts: int, per_metre: float, percent: int) -> None:
    """2 m with half an ohm a metre lose as many volts as a metre takes amps: half a volt of 5, 1.2 V of 12."""
    strip = {"length_mm": 2000, "ohms_per_metre": 0.5 * percent / 100}
    lead = {"length_mm": 0, "awg": 18, "ohms_per_contact": 0}
    assert told(lit(volts, amps=2 * per_metre, lead=lead, strip=strip), "RUN106") == (percent > 100)


def test_light_of_which_the_way_is_not_known() -> None:
    assert missing(lit(5, amps=1), "RUN106") == ["/parts/3/lead"]
    assert missing(lit(5, amps=1, lead={"length_mm": 500}), "RUN106") == ["/parts/3/strip/length_mm"]


def test_length_of_a_strip_by_its_lights() -> None:
    """60 lights of 60 mA take 3.6 A at the worst; one for each 33 mm are 1.98 m."""
    answer = lit(5, leds=60, lead={"length_mm": 500, "awg": 22})
    assumed = {one["where"]: one for one in answer["assumptions"]}["/parts/3/strip/length_mm"]
    assert (assumed["low"], assumed["high"]) == (420, 1980)
    assert shown(answer)["amps"] == pytest.approx(3.6)


def test_ring_of_lights_has_no_length() -> None:
    one = shown(lit(5, amps=1, lead={"length_mm": 1000, "awg": 18, "ohms_per_contact": 0}, strip={"length_mm": 0}))
    assert one["end_volts"] == pytest.approx(5 - 0.0435, abs=0.001)


@pytest.mark.parametrize("percent", PERCENT)
@pytest.mark.parametrize(("awg", "amps"), [(14, 8), (18, 8), (22, 4)])
def test_wire_of_a_lead(awg: int, amps: float, percent: int) -> None:
    given = {"lead": {"length_mm": 300, "awg": awg}, "strip": {"length_mm": 300, "ohms_per_metre": 0.1}}
    assert told(lit(12, amps=amps * percent / 100, **given), "RUN104") == (percent > 100)
    assert told(lit(12, amps=0.75 * amps * percent / 100, **given), "RUN105") == (percent > 100)
