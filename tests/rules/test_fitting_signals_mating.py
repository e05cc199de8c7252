"""Rules on room, headers and parts that mate: past the limit, within, exactly on it, figure missing."""

from dataclasses import replace

import pytest

from service.case.case import Case
from service.case.place import Place
from service.parts.figures import Range
from service.parts.records import (
    Bay,
    Bracket,
    CaseBox,
    ExpansionCard,
    GraphicsCard,
    Lighting,
    Memory,
    Motherboard,
    Need,
    Part,
    Processor,
)
from service.rules.same import same
from tests.rules.cases import SUPPLY, case, header, outcome

AT = Place("supply", 0)
UNIT_1 = Place("unit", 1)
BAY = Place("bay", 1, (0,))
BOARD = Motherboard(name="Fern board", processor_socket="LGA 1700", memory_type="ddr5")
BRACKET = Bracket(from_form_factor="SFX", to_form_factor="ATX")


def box(depth: float | None = 200.0, *forms: str, **given: object) -> CaseBox:
    return CaseBox(name="Oak case", bays=(Bay(form_factors=forms or ("atx",), depth_mm=depth, **given),))  # type: ignore[arg-type]


def fit(part: Part, *others: Part, **supply: object) -> Case:
    return case(part, *others, supply=replace(SUPPLY, **supply))  # type: ignore[arg-type]


def card(length: float | None, room: float | None) -> Case:
    return case(GraphicsCard(board_watts=Range(300, 300), length_mm=length), CaseBox(card_length_mm=room))


def two_cases(length: float) -> Case:
    return case(GraphicsCard(board_watts=Range(300, 300), length_mm=length),
                CaseBox(card_length_mm=300.0), CaseBox(card_length_mm=280.0))


def light(volts: int, connector: str) -> Case:
    return case(Lighting(volts=volts, needs=(Need(connector=connector),)))


SFX_ONLY = box(200.0, "sfx")
TWO_BAYS = CaseBox(bays=(Bay(form_factors=("atx",), depth_mm=120), Bay(form_factors=("atx",), depth_mm=140)))
BREAKS = [
    ("FIT101", fit(box(139.9)), AT),
    ("FIT102", fit(box(189.9)), AT),
    ("FIT103", fit(SFX_ONLY), AT),
    ("FIT103", fit(SFX_ONLY, BRACKET), AT),
    ("FIT104", card(300.1, 300.0), UNIT_1),
    ("FIT104", two_cases(300.1), UNIT_1),
    ("FIT105", fit(box(fan_vent="top")), AT),
    ("AUX101", case(headless=(Place("header", 1, ("fan-4",)),)), Place("header", 1, ("fan-4",))),
    ("AUX102", case(headers=(header(1.001, 1.0),)), Place("header", 1, ("fan-4",))),
    ("AUX103", light(12, "argb-3"), UNIT_1),
    ("AUX103", light(5, "rgb-4"), UNIT_1),
    ("MATE101", case(Processor(socket="AM5"), BOARD), UNIT_1),
    ("MATE102", case(Memory(type="ddr4"), BOARD), UNIT_1),
    ("MATE103", case(BOARD, Processor(), Processor()), UNIT_1),
]
SILENT = [
    pytest.param("FIT101", fit(box(140)), id="FIT101 on the limit"),
    pytest.param("FIT101", fit(TWO_BAYS), id="FIT101 second bay"),
    pytest.param("FIT101", fit(SFX_ONLY, depth_mm=999), id="FIT101 leaves the form to FIT103"),
    pytest.param("FIT101", case(), id="FIT101 no case"),
    pytest.param("FIT102", fit(box(190)), id="FIT102 on the limit"),
    pytest.param("FIT102", fit(box(150, plugs_clear_mm=40)), id="FIT102 clear room stated"),
    pytest.param("FIT102", fit(box(139)), id="FIT102 leaves the body to FIT101"),
    pytest.param("FIT102", fit(box(None)), id="FIT102 depth of the bay missing"),
    pytest.param("FIT102", fit(box(150), depth_mm=None), id="FIT102 depth of the supply missing"),
    pytest.param("FIT103", fit(box(200, "Micro ATX", "ATX")), id="FIT103 taken"),
    pytest.param("FIT103", fit(box(), BRACKET, form_factor="sfx"), id="FIT103 in a bracket"),
    pytest.param("FIT103", case(), id="FIT103 no case"),
    pytest.param("FIT104", card(300.0, 300.0), id="FIT104 on the limit"),
    pytest.param("FIT104", two_cases(300.0), id="FIT104 the longer of two cases"),
    pytest.param("FIT104", case(ExpansionCard(board_watts=Range(9, 9), length_mm=400)), id="FIT104 no case"),
    pytest.param("FIT105", fit(box(fan_vent="Bottom")), id="FIT105 at the vent"),
    pytest.param("FIT105", case(), id="FIT105 no case"),
    pytest.param("AUX101", case(), id="AUX101 none"),
    pytest.param("AUX102", case(headers=(header(1.0, 1.0),)), id="AUX102 on the limit"),
    pytest.param("AUX102", case(headers=(header(1.0, None),)), id="AUX102 what any header gives"),
    pytest.param("AUX102", case(headers=(header(0.0, None, "sata-data"),)), id="AUX102 carries nothing"),
    pytest.param("AUX103", light(5, "argb-3"), id="AUX103 5 V"),
    pytest.param("AUX103", light(12, "rgb-4"), id="AUX103 12 V"),
    pytest.param("AUX103", light(12, "peripheral-4"), id="AUX103 another plug"),
    pytest.param("AUX103", case(Lighting(volts=12)), id="AUX103 no plug given"),
    pytest.param("MATE101", case(Processor(socket="lga-1700"), BOARD), id="MATE101 same socket, written otherwise"),
    pytest.param("MATE101", case(Processor()), id="MATE101 no board"),
    pytest.param("MATE102", case(Memory(type="DDR5"), BOARD), id="MATE102 same type"),
    pytest.param("MATE102", case(Memory()), id="MATE102 no board"),
    pytest.param("MATE103", case(BOARD, Processor()), id="MATE103 on the limit"),
    pytest.param("MATE103", case(Processor(), Processor()), id="MATE103 no board"),
]
UNKNOWN = [
    ("FIT101", fit(box(), depth_mm=None), "depth_mm", AT),
    ("FIT101", fit(box(None)), "bays/0/depth_mm", BAY),
    ("FIT103", fit(box(), form_factor=None), "form_factor", AT),
    ("FIT103", fit(CaseBox()), "bays", UNIT_1),
    ("FIT104", card(None, 300.0), "length_mm", UNIT_1),
    ("FIT104", card(300.0, None), "card_length_mm", Place("unit", 2)),
    ("FIT105", fit(box(fan_vent="top"), fan_side=None), "fan_side", AT),
    ("FIT105", fit(box()), "bays/0/fan_vent", BAY),
    ("AUX102", case(headers=(header(1.001, None),)), "offers", Place("header", 1, ("fan-4",))),
    ("AUX102", case(headers=(header(0.1, None, "usb2-9"),)), "offers", Place("header", 1, ("usb2-9",))),
    ("MATE101", case(Processor(), BOARD), "socket", UNIT_1),
    ("MATE101", case(Processor(socket="AM5"), Motherboard()), "processor_socket", Place("unit", 2)),
    ("MATE102", case(Memory(), BOARD), "type", UNIT_1),
    ("MATE102", case(Memory(type="ddr5"), Motherboard()), "memory_type", Place("unit", 2)),
]


def _ids(table: list[tuple[object, ...]]) -> list[str]:
    return [f"{row[0]}-{i}" for i, row in enumerate(table)]


@pytest.mark.parametrize(("rule", "given", "at"), BREAKS, ids=_ids([*BREAKS]))
def test_past_the_limit(rule: str, given: Case, at: Place) -> None:
    assert outcome(rule, given) == [("breaks", at)]


@pytest.mark.parametrize(("rule", "given"), SILENT)
def test_within_the_limit(rule: str, given: Case) -> None:
    assert outcome(rule, given) == []


@pytest.mark.parametrize(("rule", "given", "missing", "at"), UNKNOWN, ids=_ids([*UNKNOWN]))
def test_figure_missing(rule: str, given: Case, missing: str, at: Place) -> None:
    assert outcome(rule, given) == [(missing, at)]


@pytest.mark.parametrize("other", ["DDR5-ECC", "ddr5 ecc", "Ddr5_Ecc", "ddr5ecc"])
def test_names_are_the_same_but_for_case_spaces_hyphens_and_underscores(other: str) -> None:
    assert same("ddr5-ecc", other)
    assert not same("ddr4-ecc", other)
