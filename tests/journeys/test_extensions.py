"""Leads that make a cable longer, and the length of other adapters: planned where they help, judged as plugged."""

import copy
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest

from service.intake.faults import Faults
from tests.journeys.asked import ask, badness, said, spoken, with_wiring
from tests.journeys.bench import CARD, DRIVE, PROCESSOR, SUPPLY, bench, plug_of, plugged, port_of

Json = dict[str, Any]
AT_MM = 700
"""Where the processor plug of the bench is along its cable."""
FIRST = 6
"""The line of the first adapter: the case stands before it."""


def _longer(connector: str = "cpu-8", **other: Any) -> Json:
    end = [{"connector": connector}]
    return {"category": "adapter", "takes": end, "gives": end, "rated_watts": 300} | other


def _machine(routes_mm: Json, *adapters: Json) -> Json:
    sheet = bench()
    case = {"category": "case", "routes_mm": routes_mm}
    sheet["parts"] += [{"spec": copy.deepcopy(each)} for each in (case, *adapters)]
    return sheet


def _drop_cables(sheet: Json, *plugs: str) -> None:
    """Take the cables with such a plug out of the box."""
    supply = sheet["parts"][SUPPLY]["spec"]
    supply["cables"] = [cable for cable in supply["cables"] if cable["plugs"][0]["connector"] not in plugs]


def _through(answer: Json, port: str) -> list[str] | None:
    """Return the adapters on the way to a port, None where it is not fed."""
    line, connector, _ = port_of(port)
    ways = [one["adapters"] for one in answer["plan"]["connections"]
            if (one["part"], one["port"]["connector"]) == (line, connector)]
    return [each["adapter"] for each in ways[0]] if ways else None


@pytest.mark.parametrize("short_mm", [1, 120, 300])
def test_trap_the_only_processor_cable_is_short_and_a_lead_makes_it_long_enough(short_mm: int) -> None:
    way = {"processor": AT_MM + short_mm, "main": 600, "card": 600, "drive": 500}
    assert spoken(ask(_machine(way)), "stop") == {"CON101"}
    answer = ask(_machine(way, _longer(length_mm=300)))
    assert (answer["verdict"], spoken(answer, "caution")) == ("fits", set())
    assert _through(answer, "processor") == [f"/parts/{FIRST}"]


def test_one_millimetre_more_than_cable_and_lead_is_too_far() -> None:
    answer = ask(_machine({"processor": AT_MM + 301}, _longer(length_mm=300)))
    assert said(answer, "CON101") == [port_of("processor")]
    open_port = next(one for one in answer["plan"]["not_fed"] if one["port"]["connector"] == "cpu-8")
    assert (open_port["reason"], open_port["short_by_mm"]) == ("too_short", 1)


def test_a_lead_is_left_out_where_the_cable_reaches() -> None:
    answer = ask(_machine({"processor": AT_MM, "main": 600, "card": 600, "drive": 500}, _longer(length_mm=300)))
    assert answer["verdict"] == "fits"
    assert _through(answer, "processor") == []


def test_a_lead_settles_a_way_that_is_only_assumed() -> None:
    """A card plug at 500 mm by a usual way of up to 550 may be short; 100 mm more of lead are enough."""
    sheet = _machine({"processor": AT_MM, "main": 600, "drive": 500})
    for cable in sheet["parts"][SUPPLY]["spec"]["cables"]:
        if cable["plugs"][0]["connector"] == "pcie-6+2":
            cable["plugs"][0]["at_mm"] = 500
    assert said(ask(sheet), "CBL103") == [port_of("card")]
    sheet["parts"].append({"spec": _longer("pcie-8", length_mm=100)})
    answer = ask(sheet)
    assert (answer["verdict"], _through(answer, "card")) == ("fits", [f"/parts/{FIRST}"])


@pytest.mark.parametrize(
    ("short_mm", "verdict"), [(150, "fits"), (151, "undecided"), (500, "undecided"), (501, "does_not_fit")],
)
def test_a_lead_of_unknown_length_is_taken_for_150_to_500_mm(short_mm: int, verdict: str) -> None:
    way = {"processor": AT_MM + short_mm, "main": 600, "card": 600, "drive": 500}
    answer = ask(_machine(way, _longer()))
    assert answer["verdict"] == verdict
    assumed = next(one for one in answer["assumptions"] if one["where"] == f"/parts/{FIRST}/length_mm")
    assert (assumed["low"], assumed["high"], assumed["used"]) == (150, 500, 150)


@pytest.mark.parametrize("short_mm", [1, 150, 151, 300, 301, 500, 501])
@pytest.mark.parametrize("length_mm", [150, 300, 500])
def test_a_length_left_out_is_never_the_better_for_it(short_mm: int, length_mm: int) -> None:
    way = {"processor": AT_MM + short_mm, "main": 600, "card": 600, "drive": 500}
    known, left_out = ask(_machine(way, _longer(length_mm=length_mm))), ask(_machine(way, _longer()))
    assert left_out["score"] <= known["score"]
    assert (left_out["verdict"] == "fits") <= (known["verdict"] == "fits")


def test_an_adapter_without_a_length_may_be_one_body() -> None:
    """Card plug at 650 mm, adapter to the processor port 700 mm away: with 50 mm of lead it reaches."""
    way = {"processor": 700, "main": 600, "card": 650, "drive": 500}
    adapter = {"category": "adapter", "takes": [{"connector": "pcie-8"}], "gives": [{"connector": "cpu-8"}]}
    verdicts = []
    for length in ({"length_mm": 50}, {"length_mm": 49}, {}):
        sheet = _machine(way, adapter | length | {"rated_watts": 150})
        _drop_cables(sheet, "cpu-4+4", "cpu-4")
        verdicts.append(ask(sheet)["verdict"])
    assert verdicts == ["fits", "does_not_fit", "undecided"]


# -- as plugged --------------------------------------------------------------------------------------------------------


def _by_two(sheet: Json) -> Json:
    """Return the sheet with its processor port plugged through both adapters, the second at the cable."""
    wiring = plugged()
    connection = next(one for one in wiring if one["port"]["connector"] == "cpu-8")
    connection["adapters"] = [{"adapter": f"/parts/{FIRST + at}", "inputs": 1} for at in range(2)]
    return with_wiring(sheet, wiring)


@pytest.mark.parametrize(("way_mm", "short_mm"), [(AT_MM, 0), (AT_MM + 250, 0), (AT_MM + 251, 1), (AT_MM + 300, 50)])
def test_two_leads_in_a_row_reach_as_far_as_both_together(way_mm: int, short_mm: int) -> None:
    sheet = _by_two(_machine({"processor": way_mm}, _longer(length_mm=100), _longer(length_mm=150)))
    answer = ask(sheet)
    assert said(answer, "CBL102") == ([port_of("processor")] if short_mm else [])
    assert all(f" {short_mm} mm short" in one["message"] for one in answer["findings"] if one["rule"] == "CBL102")


def test_a_plug_in_a_lead_that_is_too_short_is_told() -> None:
    wiring = plugged()
    connection = next(one for one in wiring if one["port"]["connector"] == "cpu-8")
    connection["adapters"] = [{"adapter": f"/parts/{FIRST}", "inputs": 1}]
    answer = ask(with_wiring(_machine({"processor": AT_MM + 320}, _longer(length_mm=300)), wiring))
    assert said(answer, "CBL102") == [port_of("processor")]
    assert answer["verdict"] == "does_not_fit"


def test_a_lead_that_lies_idle_beside_a_short_plug_is_a_move() -> None:
    way = {"processor": AT_MM + 120, "main": 600, "card": 600, "drive": 500}
    answer = ask(with_wiring(_machine(way, _longer(length_mm=300)), plugged()))
    assert said(answer, "CBL102") == [port_of("processor")]
    port, plug = "the cpu-8 port of the motherboard of line 2", "plug 1 of cable 2"
    moves = [move["message"] for move in answer["moves"]]
    assert moves == [f"Feed {port} from {plug} through the cpu-8 extension instead of {plug}."]
    sheet = with_wiring(_machine(way, _longer(length_mm=300)), answer["better_plan"]["connections"])
    assert ask(sheet)["verdict"] == "fits"


@pytest.mark.parametrize(
    ("bridge_mm", "planned"),
    [pytest.param(100, True, id="the-adapter-bridges-both-ways"), pytest.param(99, False, id="it-does-not")],
)
def test_a_chain_across_the_case_is_planned_leg_by_leg(bridge_mm: int, planned: bool) -> None:
    """Card plug at 500 mm, lead of 150 to the card 600 mm away, adapter on to the processor port at 700 mm."""
    to_processor = {
        "category": "adapter", "takes": [{"connector": "pcie-8"}], "gives": [{"connector": "cpu-8"}],
        "rated_watts": 150, "length_mm": bridge_mm,
    }
    sheet = _machine({"processor": 700, "card": 600}, to_processor, _longer("pcie-8", length_mm=150))
    _drop_cables(sheet, "cpu-4+4", "cpu-4", "pcie-6")
    del sheet["parts"][CARD]
    for cable in sheet["parts"][SUPPLY]["spec"]["cables"]:
        if cable["plugs"][0]["connector"] == "pcie-6+2":
            cable["plugs"][0]["at_mm"] = 500
    answer = ask(sheet)
    chain = [f"/parts/{FIRST - 1}", f"/parts/{FIRST}"]
    assert _through(answer, "processor") == (chain if planned else None)
    if planned:
        again = ask(with_wiring(sheet, answer["plan"]["connections"]))
        assert [again[key] for key in ("verdict", "score", "findings")] == [
            answer[key] for key in ("verdict", "score", "findings")
        ]
        return
    connection = {
        "part": "/parts/1", "copy": 1, "port": {"connector": "cpu-8", "number": 1},
        "adapters": [{"adapter": each, "copy": 1, "inputs": 1} for each in chain],
        "plugs": [{"cable": "/parts/0/cables/1", "copy": 1, "plug": 1}],
    }
    judged = ask(with_wiring(sheet, [*answer["plan"]["connections"], connection]))
    assert said(judged, "CBL102") == [], "all three together are 749 mm"


# -- what its wires and joints carry -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("lead", "rule"),
    [
        pytest.param({"rated_watts": 90}, "CON118", id="rating"),
        pytest.param({"awg": 26}, "CON104", id="wires"),
        pytest.param({"moulded": True}, "CON114", id="make"),
    ],
)
def test_a_lead_is_judged_like_any_adapter(lead: Json, rule: str) -> None:
    """96 W at the processor are 8 A: 2 A on each of four wires, past the 1.5 A of 26 AWG."""
    way = {"processor": AT_MM + 100, "main": 600, "card": 600, "drive": 500}
    answer = ask(_machine(way, _longer(length_mm=300) | lead))
    assert spoken(answer, "stop") | spoken(answer, "caution") == {rule}
    assert said(answer, rule) == [port_of("processor")]


def test_each_joint_of_a_lead_is_a_joint_on_the_way() -> None:
    """22 A through a 4+4 plug are 5.5 A a contact; where a lead takes a 4-pin plug they are 11 A."""
    sheet = _machine({"processor": AT_MM + 100}, _longer(length_mm=300))
    sheet["parts"][PROCESSOR]["spec"]["plug_watts"] = 264
    assert not {"CON104", "CON105"} & spoken(ask(sheet))
    sheet["parts"][FIRST]["spec"] |= {"takes": [{"connector": "cpu-4"}]}
    answer = ask(sheet)
    assert said(answer, "CON104") == [port_of("processor")]
    message = next(one["message"] for one in answer["findings"] if one["rule"] == "CON104")
    assert "one contact at an adapter's input carries 11 A" in message


def test_the_wires_of_a_lead_are_told_apart_from_those_of_the_cable() -> None:
    """22 A are 5.5 A on each of four wires, past what 24 AWG carries; the 18 AWG wires of the cable are well."""
    sheet = _machine({"processor": AT_MM + 100}, _longer(length_mm=300, awg=24))
    sheet["parts"][PROCESSOR]["spec"]["plug_watts"] = 264
    messages = [one["message"] for one in ask(sheet)["findings"] if one["rule"] == "CON104"]
    assert ["one wire at the port carries 5.5 A" in each for each in messages] == [True]


def test_a_contact_that_is_open_counts_in_the_lead_too() -> None:
    wiring = plugged()
    connection = next(one for one in wiring if one["port"]["connector"] == "cpu-8")
    connection["adapters"] = [{"adapter": f"/parts/{FIRST}", "inputs": 1}]
    plug_of(wiring, "processor")["open_contacts"] = 3
    sheet = with_wiring(_machine({"processor": AT_MM + 100}, _longer(length_mm=300)), wiring)
    sheet["parts"][PROCESSOR]["spec"]["plug_watts"] = 108
    assert said(ask(sheet), "CON104") == [port_of("processor")], "9 A through the one contact that is left"


def test_a_lead_gives_no_3_3_v_that_its_cable_does_not_have() -> None:
    sheet = _machine({}, _longer("sata-power", length_mm=200, rated_watts=54))
    sheet["parts"][DRIVE]["spec"]["running_amps"]["3v3"] = 0.2
    assert said(ask(sheet), "CON101") == [port_of("drives")]
    for cable in sheet["parts"][SUPPLY]["spec"]["cables"]:
        if cable["plugs"][0]["connector"] == "sata-power":
            cable["carries_3v3"] = True
    assert said(ask(sheet), "CON101") == []


def test_a_lead_is_no_way_round_the_caution_of_a_drive_that_3_3_v_keeps_off() -> None:
    sheet = bench()
    sheet["parts"].append({"spec": _longer("sata-power", length_mm=200, rated_watts=54)})
    sheet["parts"][DRIVE]["spec"]["power_disable"] = True
    for cable in sheet["parts"][SUPPLY]["spec"]["cables"]:
        if cable["plugs"][0]["connector"] == "sata-power":
            cable["carries_3v3"] = True
    answer = ask(sheet)
    assert said(answer, "CON120") == [port_of("drives")]
    assert _through(answer, "drives") == []


@pytest.mark.parametrize(
    ("field", "value"),
    [("length_mm", -1), ("length_mm", 5001), ("length_mm", "300"), ("length_mm", None), ("awg", 9), ("awg", 18.5)],
)
def test_nonsense_is_refused_with_its_place(field: str, value: object) -> None:
    with pytest.raises(Faults) as refused:
        ask(_machine({}, _longer() | {field: value}))
    assert [fault.pointer for fault in refused.value.faults] == [f"/parts/{FIRST}/spec/{field}"]


# -- random machines ---------------------------------------------------------------------------------------------------

ENDS = (
    ("cpu-8", "cpu-8"), ("cpu-8", "cpu-4+4"), ("pcie-8", "pcie-8"), ("sata-power", "sata-power"), ("atx-24", "atx-24"),
    ("pcie-8", "cpu-8"), ("cpu-8", "pcie-8"),
)
WAYS_MM = {"main": 600, "processor": 700, "card": 650, "drive": 500}
SUPPOSED_MM = {True: (150, 500), False: (0, 300)}
SEEDS = range(80)


def _random_machine(seed: int) -> Json:
    """Return the bench with fewer cables, ways that are near to what they reach, and some adapters."""
    random = Random(seed)
    adapters = []
    for takes, gives in random.choices(ENDS, k=random.randint(1, 4)):
        adapter: Json = {"category": "adapter", "takes": [{"connector": takes}], "gives": [{"connector": gives}]}
        some = {"rated_watts": (50, 150, 300), "length_mm": (50, 150, 300, 500), "awg": (18, 20, 26)}
        adapters.append(adapter | {key: random.choice(of) for key, of in some.items() if random.random() < 0.6})
    ways = {name: mm + random.choice((-100, 0, 50, 150, 300)) for name, mm in WAYS_MM.items() if random.random() < 0.8}
    sheet = _machine(ways, *adapters)
    supply = sheet["parts"][SUPPLY]["spec"]
    supply["cables"] = [cable for cable in supply["cables"] if random.random() < 0.75]
    return sheet


def _changed(sheet: Json) -> Iterator[Json]:
    """Yield the sheet with each length left out that lies in its range."""
    for line in range(FIRST, len(sheet["parts"])):
        spec = sheet["parts"][line]["spec"]
        ends = spec["takes"][0]["connector"], spec["gives"][0]["connector"]
        low, high = SUPPOSED_MM[ends in ENDS[:5]]
        if low <= spec.get("length_mm", -1) <= high:
            changed = copy.deepcopy(sheet)
            del changed["parts"][line]["spec"]["length_mm"]
            yield changed


@pytest.mark.parametrize("seed", SEEDS)
def test_random_machine_is_planned_and_judged_alike_and_gains_nothing_by_silence(seed: int) -> None:
    sheet = _random_machine(seed)
    planned = ask(sheet)
    again = ask(with_wiring(sheet, planned["plan"]["connections"]))
    assert [again[key] for key in ("score", "unknowns")] == [planned[key] for key in ("score", "unknowns")]
    assert "better_plan" not in again
    for changed in _changed(sheet):
        answer = ask(changed)
        assert badness(answer) >= badness(planned)
        assert answer["score"] <= planned["score"]


def test_many_random_machines_are_planned_with_a_lead() -> None:
    plans = [ask(_random_machine(seed))["plan"]["connections"] for seed in SEEDS]
    assert sum(any(one["adapters"] for one in plan) for plan in plans) > len(SEEDS) // 5
