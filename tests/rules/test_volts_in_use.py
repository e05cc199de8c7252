"""Volts behind a lead at 99, 100 and 101 % of the load that leaves the least, from the sheet to the finding.

The figures are written out here as printed: least volts by the guides, 7 strands at 20 C in milliohms a metre, the most
of a new contact in milliohms. A load of constant power that leaves v of V volts behind R takes v (V - v) / R.
"""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.journeys.asked import ask, badness, said
from tests.practice.test_trade import BOARD, card, supply

Json = dict[str, Any]
STRANDED = {16: 13.688, 18: 21.772, 20: 34.580}
LEAST = {"12v": 11.4, "5v": 4.75, "3v3": 3.14, "card": 11.04}
NOMINAL = {"12v": 12.0, "5v": 5.0, "3v3": 3.3, "card": 12.0}


def lead(connector: str, metres: float, awg: int, **given: Any) -> Json:
    """Return an extension."""
    end = [{"connector": connector}]
    return {"category": "adapter", "takes": end, "gives": end, "length_mm": metres * 1000, "awg": awg,
            "rated_watts": 600, **given}


def watts(rail: str, milliohms: float, used: float = 1.0) -> float:
    """Return the load that uses up this part of the volts that may be lost."""
    volts = NOMINAL[rail] - (NOMINAL[rail] - LEAST[rail]) * used
    return volts * (NOMINAL[rail] - volts) / milliohms * 1000


def through(answer: Json, connector: str) -> Json:
    """Return what the port behind the lead carries."""
    found: Json = next(one for one in answer["power"]["connections"] if one["port"]["connector"] == connector)
    return found


def wired(connector: str, cable: int, part: int) -> Json:
    """Return the connection of a port through the lead on line 3."""
    plug = {"cable": f"/parts/0/cables/{cable}", "plug": 1}
    return {"part": f"/parts/{part}", "port": {"connector": connector, "number": 1},
            "adapters": [{"adapter": "/parts/3", "inputs": 1}], "plugs": [plug]}


def asked(connector: str, cable: int, part: int, added: Json, box: Json, *others: Json, plug_watts: float = 60,
          board: Json = BOARD) -> Json:
    """Return the answer with the lead plugged between a cable and a port, the rest planned."""
    processor = {"category": "processor", "socket": "q7", "plug_watts": plug_watts}
    specs = (box, board, processor, added, *others)
    return ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"],
                "wiring": [wired(connector, cable, part)], "wiring_rest": "plan"})


def processor(load: float) -> Json:
    return asked("cpu-8", 1, 1, lead("cpu-8", 3, 18), supply(), plug_watts=load)


def card_8(load: float) -> Json:
    box = supply({"plugs": [{"connector": "pcie-8"}], "awg": 16})
    return asked("pcie-8", 2, 4, lead("pcie-8", 5, 18), box, card(25 + load, "pcie-8", 1))


def card_16(load: float) -> Json:
    box = supply({"plugs": [{"connector": "12v-2x6"}], "awg": 16, "rated_watts": 600})
    return asked("12v-2x6", 2, 4, lead("12v-2x6", 5, 16), box, card(25 + load, "12v-2x6", 1))


def disk(load: float) -> Json:
    given = {"category": "drive", "interface": "sata", "running_amps": {"12v": 0.1, "5v": load / 5},
             "starting_amps": {"12v": 0.1, "5v": 0.1}}
    box = supply({"plugs": [{"connector": "sata-power"}], "awg": 16, "carries_3v3": False})
    return asked("sata-power", 2, 4, lead("sata-power", 2, 18), box, given)


def board_3v3(load: float) -> Json:
    board = BOARD | {"own_amps": {"12v": 0.1, "5v": 0.1, "3v3": load / 3.3, "5vsb": 0.1}, "memory_type": None}
    board.pop("memory_type")
    return asked("atx-24", 0, 1, lead("atx-24", 3, 18), supply(), board=board)


# Milliohms there and back: contacts and wires of a rail side by side. A main plug has 11 supplies to 8 returns.
CASES: dict[str, tuple[Callable[[float], Json], str, str, float]] = {
    "processor": (processor, "12v", "cpu-8", 2 * (10 + 3 * STRANDED[18]) / 4),
    "8-pin card": (card_8, "card", "pcie-8", 2 * (10 + 5 * STRANDED[18]) / 3),
    "16-pin card": (card_16, "card", "12v-2x6", 2 * (6 + 5 * STRANDED[16]) / 6),
    "drive on 5 V": (disk, "5v", "sata-power", 2 * (20 / 3 + 2 * STRANDED[18])),
    "board on 3.3 V": (board_3v3, "3v3", "atx-24", (1 + 11 / 8) * (10 + 3 * STRANDED[18]) / 4),
}
RULES = [("CON127", 1.0), ("CON128", 0.5)]
"""Each rule and how much of what may be lost its limit is."""
named = pytest.mark.parametrize("name", CASES)


@pytest.mark.parametrize("percent", [99, 100, 101])
@pytest.mark.parametrize(("rule", "used"), RULES)
@named
def test_only_past_the_limit(name: str, rule: str, used: float, percent: int) -> None:
    build, rail, connector, milliohms = CASES[name]
    # A thousandth less, for amps are whole milliamps.
    answer = build(watts(rail, milliohms, used) * percent / 100 * 0.999)
    assert (len(said(answer, rule)) == 1) == (percent > 100), answer["findings"]
    assert all(place[1] == connector for place in said(answer, rule))


@named
def test_half_of_the_load_that_leaves_the_least_is_told_in_volts_and_watts(name: str) -> None:
    build, rail, connector, milliohms = CASES[name]
    load = watts(rail, milliohms) / 2
    told = through(build(load), connector)["volts"]["12v" if rail == "card" else rail]
    volts = told["volts"]
    assert volts * (NOMINAL[rail] - volts) * 1000 / milliohms == pytest.approx(load, rel=0.01)
    assert told["lowest_volts"] == LEAST[rail]
    assert told["cautious_volts"] == pytest.approx((LEAST[rail] + NOMINAL[rail]) / 2, abs=0.0006)
    assert told["lost_watts"] == pytest.approx(load * (NOMINAL[rail] - volts) / volts, rel=0.01, abs=0.006)


def test_nothing_is_lost_where_nothing_is_added() -> None:
    specs = (supply(), BOARD, {"category": "processor", "plug_watts": 90})
    answer = ask({"parts": [{"spec": spec} for spec in specs]})
    assert [one for one in answer["power"]["connections"] if "volts" in one] == []


def test_length_and_gauge_that_are_not_given_are_supposed_long_and_thin_and_it_is_said() -> None:
    bare = lead("cpu-8", 0, 18)
    del bare["length_mm"], bare["awg"]
    answer = asked("cpu-8", 1, 1, bare, supply(), plug_watts=120)
    told = {one["where"]: (one["low"], one["high"], one["used"]) for one in answer["assumptions"]}
    assert told["/parts/3/length_mm"] == (150, 500, 500)
    assert told["/parts/3/awg"] == (16, 20, 20)
    worst = asked("cpu-8", 1, 1, lead("cpu-8", 0.5, 20), supply(), plug_watts=120)
    assert through(answer, "cpu-8")["volts"] == through(worst, "cpu-8")["volts"]


@pytest.mark.parametrize(("metres", "rule"), [(1.0, None), (1.8, "CON128"), (3.0, "CON127")])
def test_two_leads_in_a_row_add_up(metres: float, rule: str | None) -> None:
    """Each of them leaves more than half by itself."""
    first, second = lead("cpu-8", metres, 18), lead("cpu-8", metres, 18)
    one = wired("cpu-8", 1, 1)
    one["adapters"] = [{"adapter": "/parts/3", "inputs": 1}, {"adapter": "/parts/4", "inputs": 1}]
    specs = (supply(), BOARD, {"category": "processor", "socket": "q7", "plug_watts": 92}, first, second)
    answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"], "wiring": [one],
                  "wiring_rest": "plan"})
    milliohms = 2 * 2 * (10 + metres * STRANDED[18]) / 4
    volts = through(answer, "cpu-8")["volts"]["12v"]["volts"]
    assert volts * (12 - volts) * 1000 / milliohms == pytest.approx(92, rel=0.01)
    assert [each for each in ("CON127", "CON128") if said(answer, each)] == ([rule] if rule else [])
    points = sum(line["points"] for line in answer["score_lines"] if line.get("rule") == "CON128")
    assert points == (-4 if rule == "CON128" else 0)


def test_more_inputs_leave_more_volts() -> None:
    box = supply({"plugs": [{"connector": "pcie-8"}], "awg": 16, "quantity": 3})
    seen = []
    for inputs in (2, 3):
        added = {"category": "adapter", "takes": [{"connector": "pcie-8", "count": inputs}], "awg": 18,
                 "gives": [{"connector": "12v-2x6"}], "length_mm": 300, "rated_watts": 600}
        processor_part = {"category": "processor", "socket": "q7", "plug_watts": 90}
        specs = (box, BOARD, processor_part, added, card(325, "12v-2x6", 1))
        answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"]})
        volts = through(answer, "12v-2x6")["volts"]["12v"]["volts"]
        milliohms = 2 * (10 + 0.3 * STRANDED[18]) / 3 / inputs
        assert volts * (12 - volts) * 1000 / milliohms == pytest.approx(300, rel=0.01)
        seen.append(volts)
    assert seen[0] < seen[1]


def test_plan_takes_the_lead_that_leaves_enough() -> None:
    """Two leads reach; the thin one would leave too few volts, and is not taken whichever stands first."""
    thin, thick = lead("cpu-8", 3, 20), lead("cpu-8", 3, 16)
    route = {"category": "case", "routes_mm": {"processor": 2000}}
    cables = [{"plugs": [{"connector": "atx-24", "at_mm": 600}]}, {"plugs": [{"connector": "cpu-8", "at_mm": 600}]}]
    for first, second, taken in ((thin, thick, "/parts/4"), (thick, thin, "/parts/3")):
        processor_part = {"category": "processor", "socket": "q7", "plug_watts": 125}
        specs = (supply(cables=cables), BOARD, processor_part, first, second, route)
        answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"]})
        ways = [one["adapters"] for one in answer["plan"]["connections"] if one["port"]["connector"] == "cpu-8"]
        assert [each["adapter"] for each in ways[0]] == [taken]
        assert not said(answer, "CON127")


def test_plan_knows_that_two_in_a_row_add_up() -> None:
    """By itself either lead leaves more than half; with the adapter behind it only the thick one does."""
    route = {"category": "case", "routes_mm": {"card": 1500}}
    box = supply({"plugs": [{"connector": "pcie-8", "at_mm": 600}], "awg": 16, "quantity": 2})
    thin, thick = (lead("pcie-8", metres, awg) | {"quantity": 2} for metres, awg in ((1.66, 20), (1.66, 16)))
    last = {"category": "adapter", "takes": [{"connector": "pcie-8", "count": 2}], "awg": 18,
            "gives": [{"connector": "12v-2x6"}], "length_mm": 300, "rated_watts": 600}
    processor_part = {"category": "processor", "socket": "q7", "plug_watts": 90}
    for leads, rule in (((thin, thick), set()), ((thick,), set()), ((thin,), {"CON128"})):
        specs = (box, BOARD, processor_part, card(240, "12v-2x6", 1), last, route, *leads)
        answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"]})
        way = next(one["adapters"] for one in answer["plan"]["connections"] if one["port"]["connector"] == "12v-2x6")
        assert len(way) == 3
        assert {each for each in ("CON127", "CON128") if said(answer, each)} == rule


@given(
    metres=st.integers(1, 7), awg=st.sampled_from([16, 18, 20]), load=st.integers(20, 200), longer=st.integers(0, 3),
    heavier=st.integers(0, 80), thinner=st.sampled_from([0, 2, 4]),
)
def test_longer_thinner_or_heavier_never_looks_better(
    metres: int, awg: int, load: int, longer: int, heavier: int, thinner: int,
) -> None:
    before = asked("cpu-8", 1, 1, lead("cpu-8", metres * 0.5, awg), supply(), plug_watts=load)
    worse = lead("cpu-8", (metres + longer) * 0.5, awg + thinner)
    after = asked("cpu-8", 1, 1, worse, supply(), plug_watts=load + heavier)
    assert (badness(after), -after["score"]) >= (badness(before), -before["score"])
    assert through(after, "cpu-8")["volts"]["12v"]["volts"] <= through(before, "cpu-8")["volts"]["12v"]["volts"]
