"""Sheets with faults: every fault, its pointer and its sentence; and the short road proven equal to the schema."""

from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from marshmallow import ValidationError

from service.intake.faults import MOST_FAULTS, Faults
from service.intake.sheet import LINE, plain_line, read_sheet
from service.intake.wiring import connection_of
from tests.intake.spec_cases import BY_CATEGORY, JSON

LINES = {"parts": [{"part": "a"}]}
NO_FIELD = "is not a field here"
RANGE_LOAD = "must be from 0 to 5000"
NO_LESS = "the greatest mean over a stretch is no less than what is drawn for long"


def spec(category: str, **changed: Any) -> dict[str, Any]:
    """Return a sheet of one full spec with some fields changed."""
    return {"parts": [{"spec": BY_CATEGORY[category] | changed}]}


def run(**changed: Any) -> dict[str, Any]:
    """Return a sheet of one run with some fields changed."""
    return LINES | {"runs": [{"source_volts": 12, "length_mm": 500, "amps": 1} | changed]}


CARD = "/parts/0/spec"
ONE_LOAD = "must have exactly one of amps, watts, strip"
CONNECTION: dict[str, Any] = {
    "part": "/parts/3",
    "copy": 1,
    "port": {"connector": "pcie-8", "number": 1},
    "adapters": [{"adapter": "/parts/3/adapters/0", "copy": 1, "inputs": 2}],
    "plugs": [
        {"cable": "/parts/0/cables/2", "copy": 1, "plug": 1, "sockets": ["card"], "open_contacts": 0},
        {"cable": "/parts/7", "copy": 2, "plug": 1, "sockets": [], "open_contacts": 1},
    ],
}
BAD = [
    pytest.param([], "", "must be an object, not a list", id="list"),
    pytest.param({}, "/parts", "must be given", id="no parts"),
    pytest.param({"parts": []}, "/parts", "must list from 1 to 64", id="no lines"),
    pytest.param({"parts": {}}, "/parts", "must be a list, not an object", id="object of parts"),
    pytest.param(LINES | {"a/b": 1}, "/a~1b", NO_FIELD, id="unknown field"),
    pytest.param(LINES | {"_schema": 1}, "/_schema", NO_FIELD, id="field named as the library's own"),
    pytest.param({"parts": [{}]}, "/parts/0", "must have exactly one of part, gtin, mpn, spec", id="no way"),
    pytest.param(
        {"parts": [{"part": "a", "mpn": "b"}]},
        "/parts/0",
        "must have exactly one of part, gtin, mpn, spec",
        id="two ways",
    ),
    pytest.param({"parts": ["a"]}, "/parts/0", "must be an object, not text", id="text as line"),
    pytest.param({"parts": [{"part": 7}]}, "/parts/0/part", "must be text, not a number", id="number as id"),
    pytest.param(
        {"parts": [{"part": "a\nb"}]},
        "/parts/0/part",
        "must not hold line breaks or other control characters",
        id="line break",
    ),
    pytest.param(
        {"parts": [{"part": "a\n"}]},
        "/parts/0/part",
        "must not hold line breaks or other control characters",
        id="line break at the end",
    ),
    pytest.param(
        {"parts": [{"part": "a", "quantity": True}]},
        "/parts/0/quantity",
        "must be a whole number, not true or false",
        id="true pieces",
    ),
    pytest.param(
        {"parts": [{"part": "a", "quantity": "3"}]},
        "/parts/0/quantity",
        "must be a whole number, not text",
        id="text pieces",
    ),
    pytest.param({"parts": [{"part": "a", "quantity": 2.5}]}, "/parts/0/quantity", "must be a whole number", id="2.5"),
    pytest.param({"parts": [{"part": "a", "quantity": 65}]}, "/parts/0/quantity", "must be from 1 to 64", id="65"),
    pytest.param(
        {"parts": [{"gtin": "12345671"}]},
        "/parts/0/gtin",
        "has a last digit that does not check the others; one digit is wrong",
        id="check digit",
    ),
    pytest.param({"parts": [{"gtin": 12345670}]}, "/parts/0/gtin", "must be text of digits, not a number", id="gtin"),
    pytest.param({"parts": [{"gtin": "1234567"}]}, "/parts/0/gtin", "must be 8, 12, 13 or 14 digits", id="7 digits"),
    pytest.param({"parts": [{"spec": {}}]}, f"{CARD}/category", "must be given", id="no category"),
    pytest.param(
        spec("graphics_card", board_watts="350"),
        f"{CARD}/board_watts",
        "must be a number, or an object of low and high, not text",
        id="text watts",
    ),
    pytest.param(spec("graphics_card", board_watts=1e300), f"{CARD}/board_watts", RANGE_LOAD, id="1e300"),
    pytest.param(spec("graphics_card", board_watts=10**16), f"{CARD}/board_watts", RANGE_LOAD, id="16 digits"),
    pytest.param(
        spec("graphics_card", board_watts={"low": 2, "high": 1}),
        f"{CARD}/board_watts/low",
        "must not be above high",
        id="low above high",
    ),
    pytest.param(
        spec("graphics_card", board_watts={"low": 2}), f"{CARD}/board_watts/high", "must be given", id="no high"
    ),
    pytest.param(
        spec("graphics_card", board_watts={"low": 2, "high": 3, "mid": 1}),
        f"{CARD}/board_watts/mid",
        NO_FIELD,
        id="mid",
    ),
    pytest.param(
        spec("graphics_card", length_mm=None),
        f"{CARD}/length_mm",
        "must not be null; leave out what is not known",
        id="null",
    ),
    pytest.param(
        {"parts": [{"spec": {"category": "graphics_card"}}]}, f"{CARD}/board_watts", "must be given", id="no watts"
    ),
    pytest.param(
        spec("drive", power_disable=1), f"{CARD}/power_disable", "must be true or false, not a number", id="1"
    ),
    pytest.param(spec("drive", running_amps={"24v": 1}), f"{CARD}/running_amps/24v", NO_FIELD, id="24 V"),
    pytest.param(
        spec("graphics_card", peaks=[{"microseconds": 100, "watts": 300}, {"microseconds": 1000, "watts": 299.9}]),
        f"{CARD}/peaks/1/watts",
        f"must not be below board_watts: {NO_LESS}",
        id="peak below the low end of a card's watts",
    ),
    pytest.param(
        spec("processor", peaks=[{"microseconds": 100, "watts": 169}]),
        f"{CARD}/peaks/0/watts",
        f"must not be below plug_watts: {NO_LESS}",
        id="peak below a processor's watts",
    ),
    pytest.param(
        spec("motherboard", needs=[{"connector": "cpu-8", "watts": 90}, {"connector": "atx-24", "watts": 50}]),
        f"{CARD}/needs/1/watts",
        "must be left out at a main port: it carries what the board, its slots and its headers draw",
        id="watts of a main port",
    ),
    pytest.param(
        spec("power_supply", groups=[{"name": "g1", "max_amps": 40, "feeds": ["main", "slot"]}]),
        f"{CARD}/groups/0/feeds/1",
        "must be one of main, processor, card, drive; slots are fed through main",
        id="group that feeds slots",
    ),
    pytest.param(
        spec("power_supply", groups=[{"name": "g1", "max_amps": 3, "rail": "5vsb", "feeds": ["main"]}]),
        f"{CARD}/groups/0/rail",
        "must be one of 12v, 5v, 3v3",
        id="group on standby",
    ),
    pytest.param(spec("lighting", volts=9), f"{CARD}/volts", "must be one of 5, 12", id="9 V"),
    pytest.param(spec("cable", plugs=[]), f"{CARD}/plugs", "must list from 1 to 16", id="cable without plugs"),
    pytest.param(
        spec("cable", plugs=[{"connector": "pcie-8"}]),
        f"{CARD}/rated_watts",
        "is printed only on a cable that has a 16-pin plug",
        id="print without 16-pin",
    ),
    pytest.param(
        spec("cable", rated_watts=500), f"{CARD}/rated_watts", "must be one of 150, 300, 450, 600", id="500 W"
    ),
    pytest.param(
        spec("power_supply", cables=[BY_CATEGORY["power_supply"]["cables"][0] | {"captive": True}]),
        f"{CARD}/cables/0/occupies",
        "must be left out: a captive cable takes no socket",
        id="captive in a socket",
    ),
    pytest.param(
        spec("adapter", rated_watts_by_inputs={"4": 1}),
        f"{CARD}/rated_watts_by_inputs/4",
        "is more inputs than the 3 that the adapter takes",
        id="four inputs of three",
    ),
    pytest.param(
        spec("adapter", takes=[{"connector": "pcie-8"}] * 2), f"{CARD}/takes", "must list exactly 1", id="takes"
    ),
    pytest.param(
        spec("power_supply", rails={"48v": {"max_amps": 1}}),
        f"{CARD}/rails/48v",
        "is no key here: the key must be one of 12v, 5v, 3v3, 5vsb",
        id="48 V",
    ),
    pytest.param(
        spec("power_supply", cables=[{"occupies": {"_schema": 1}, "group": "g1", "plugs": [{"connector": "cpu-8"}]}]),
        f"{CARD}/cables/0/occupies/_schema",
        "names a socket that the supply does not list",
        id="no such socket",
    ),
    pytest.param(
        spec("power_supply", cables=[{"group": "g9", "plugs": [{"connector": "cpu-8"}]}]),
        f"{CARD}/cables/0/group",
        "names a group that the supply does not list",
        id="no such group",
    ),
    pytest.param(
        spec("power_supply", cables=[{"plugs": [{"connector": "cpu-4+4"}]}]),
        f"{CARD}/cables/0",
        "is in none of the supply's groups: name its group, the group of its sockets, or what a group feeds",
        id="in no group",
    ),
    pytest.param(
        spec("power_supply", efficiency_points=[{"load_percent": 20, "percent": 80}] * 2),
        f"{CARD}/efficiency_points/1/load_percent",
        "must be above that of the point before it",
        id="points",
    ),
    pytest.param(
        spec("power_supply", efficiency_points=[{"load_percent": n, "percent": n**2} for n in (5, 9)]),
        f"{CARD}/efficiency_points/1/percent",
        "is so far above the point before it that more load would take less from the wall",
        id="points less from the wall",
    ),
    pytest.param(
        LINES | {"aspects": ["power", "power"]}, "/aspects/1", "stands in the list already", id="aspect twice"
    ),
    pytest.param(LINES | {"use": None}, "/use", "must not be null; leave out what is not known", id="null use"),
    pytest.param(
        LINES | {"site": {"ups": {"watts": 0, "volt_amperes": 900}}},
        "/site/ups/watts",
        "must be from 1 to 100000",
        id="ups",
    ),
    pytest.param(
        LINES | {"wiring": [CONNECTION | {"part": "parts/3"}]},
        "/wiring/0/part",
        "must be a pointer such as /parts/0",
        id="pointer",
    ),
    pytest.param(run(watts=20), "/runs/0/watts", ONE_LOAD, id="amps and watts"),
    pytest.param(run(strip={"length_mm": 1, "amps_per_metre": 1}), "/runs/0/strip", ONE_LOAD, id="amps and a strip"),
    pytest.param(LINES | {"runs": [{"source_volts": 12, "length_mm": 1}]}, "/runs/0/amps", ONE_LOAD, id="no load"),
    pytest.param(run(source_volts=230), "/runs/0/source_volts", "must be from 1 to 60", id="a run at the mains"),
    pytest.param(run(awg=31), "/runs/0/awg", "must be from 10 to 30", id="31 AWG"),
    pytest.param(run(parallel_pairs=0), "/runs/0/parallel_pairs", "must be from 1 to 64", id="no pair"),
    pytest.param(run(length_mm=-1), "/runs/0/length_mm", "must be from 0 to 100000", id="shorter than nothing"),
    pytest.param(run(ohms_per_contact=None), "/runs/0/ohms_per_contact",
                 "must not be null; leave out what is not known", id="null ohms"),
    pytest.param(run(celsius=20), "/runs/0/celsius", NO_FIELD, id="warmth of a run"),
    pytest.param({"parts": [{"spec": {"category": "lighting", "volts": 5, "strip": {}}}]}, f"{CARD}/strip",
                 "must be left out where the lead to it is not given", id="strip without its lead"),
    pytest.param(
        LINES | {"wiring": [CONNECTION | {"plugs": []}]}, "/wiring/0/plugs", "must list from 1 to 64", id="plugs"
    ),
]


def faults_of(data: Any) -> dict[str, str]:
    """Return the faults of a sheet by pointer."""
    with pytest.raises(Faults) as caught:
        read_sheet(data)
    return dict(caught.value.faults)


@pytest.mark.parametrize(("data", "pointer", "sentence"), BAD)
def test_fault(data: Any, pointer: str, sentence: str) -> None:
    assert faults_of(data) == {pointer: sentence}


def test_all_faults_of_all_lines_at_once() -> None:
    broken = spec("cable", awg=5)["parts"] + [{"part": 1}] + spec("fan", amps=-1, colour=2)["parts"]
    found = faults_of({"parts": broken, "site": {"code": "x"}, "extra": 0})
    assert list(found) == [
        "/extra",
        "/parts/0/spec/awg",
        "/parts/1/part",
        "/parts/2/spec/amps",
        "/parts/2/spec/colour",
        "/site/code",
    ]


def test_list_of_faults_is_cut_and_says_so() -> None:
    found = faults_of(LINES | {f"k{number}": 0 for number in range(MOST_FAULTS + 5)})
    assert len(found) == MOST_FAULTS + 1
    assert found[""] == "has more faults than are listed: 5 were left out"


def test_wiring_comes_back_as_it_went_in() -> None:
    wiring = read_sheet(LINES | {"wiring": [CONNECTION]}).wiring
    assert wiring is not None
    assert [connection_of(plugged) for plugged in wiring] == [CONNECTION]


ODD_LINES = (
    st.fixed_dictionaries(
        {},
        optional={
            "part": st.text(max_size=90) | JSON,
            "quantity": st.integers(-2, 70) | st.sampled_from([25.0, True, "3"]) | JSON,
            "mpn": st.text(max_size=3),
        },
    )
    | JSON
)


@given(ODD_LINES)
@example({"part": "x" * 80, "quantity": 64})
@example({"part": "x" * 81})
@example({"part": "a", "quantity": False})
def test_short_road_says_what_the_schema_says(line: Any) -> None:
    short = plain_line(line)
    if short is not None:
        assert short == LINE.load(line)


@given(st.from_regex("[ -~]{1,80}", fullmatch=True), st.integers(1, 64))
def test_short_road_takes_every_common_line(part: str, quantity: int) -> None:
    assert plain_line({"part": part}) == LINE.load({"part": part})
    assert plain_line({"part": part, "quantity": quantity}) == LINE.load({"part": part, "quantity": quantity})


@given(ODD_LINES)
def test_sheet_takes_a_line_where_the_schema_does(line: Any) -> None:
    try:
        due = LINE.load(line) if isinstance(line, dict) else None
    except ValidationError:
        due = None
    try:
        read = read_sheet({"parts": [line]}).lines[0]
    except Faults:
        read = None
    assert read == due


FIELDS = ("parts", "use", "site", "runs", "readings", "wiring", "wiring_rest", "aspects", "would_settle", "reference")


@given(JSON | st.fixed_dictionaries({}, optional=dict.fromkeys(FIELDS, JSON)))
def test_any_json_raises_nothing_but_faults(data: Any) -> None:
    said = ["read"]
    try:
        read_sheet(data)
    except Faults as refused:
        said = [fault.sentence for fault in refused.faults]
    assert said
    assert all(said)
