"""Rules on ports, plugs, contacts, adapters and cables: past the limit, within, exactly on it, figure missing."""

from itertools import product

import pytest

from service.case.case import CardShare, Case, Drop, Heat, Strain
from service.case.place import Place
from service.parts.figures import Range
from service.parts.records import Drive, Fan, GraphicsCard, Riser
from service.rules.book import RULES
from service.rules.rule import Finding
from tests.rules.cases import PORT, adapter, case, heard, joint, open_port, outcome, plug, strain

CABLE = Place("cable", 0, (0, 0))
SATA = Place("port", 1, ("sata-power", 0))
NEWER, OLDER = Place("port", 1, ("12v-2x6", 0)), Place("port", 1, ("12vhpwr", 0))
CPU = Place("port", 1, ("cpu-8", 0))
SIX = Place("port", 1, ("pcie-6", 0))
MAIN = Place("port", 1, ("atx-24", 0))
CARD = GraphicsCard(name="Loan card", board_watts=Range(300, 300))
DRIVE = Drive(name="Archive disk", power_disable=True)
RISER = Riser(name="Slot riser", feeds_slot_watts=75)


def strained(
    cause: str, level: str, amps: float, limit: float, *, sixteen_pin: bool = False, contacts: int = 0,
) -> Case:
    return case(CARD, joints=(joint(strain(cause, level, amps, limit, sixteen_pin=sixteen_pin, contacts=contacts)),))


def share(watts: float) -> Case:
    return case(CARD, shares=(CardShare(Place("unit", 1), CABLE, 2, watts),))


def plugged(*plugs: object, at: Place = PORT, watts: float = 100.0, part: object = CARD) -> Case:
    return case(part, joints=(joint(at=at, watts=watts, plugs=plugs),))  # type: ignore[arg-type]


def adapted(*adapters: object, watts: float = 60.0, at: Place = PORT) -> Case:
    return case(CARD, joints=(joint(at=at, watts=watts, adapters=adapters),))  # type: ignore[arg-type]


def shared_equally(watts_each: float, watts: float = 50.0) -> Case:
    return case(CARD, joints=(joint(at=SIX, watts=watts)._replace(equal_watts=watts_each),))


def two_ports(watts: float) -> Case:
    one = adapter("peripheral-4", "pcie-6")
    ports = (Place("port", 1, ("pcie-6", 0)), Place("port", 1, ("pcie-6", 1)))
    return case(CARD, joints=tuple(joint(at=at, watts=watts, adapters=(one,)) for at in ports))


def behind(volts: float, *strains: Strain, rail: str = "12v") -> Case:
    """Return a card's port behind a lead, with 11.04 V as the least and 11.52 V as half of the way there."""
    drop = Drop(rail, volts, 11.04, 11.52, 1.0)
    return case(CARD, joints=(joint(*strains, adapters=(adapter("pcie-8", "pcie-8"),))._replace(drops=(drop,)),))


def heated(hottest: float | None, rated: float = 8.0, opened: int = 0) -> Case:
    """Return a card's port with a plug whose hottest contact may carry so much."""
    heat = Heat("at_port", "pcie-8", 3 - opened, opened, 4.0, 13.3, hottest, None if hottest is None else 60.0, rated,
                600.0, 18, ())
    return case(CARD, joints=(joint()._replace(heats=(heat,)),))


SATA_TO_CARD = adapter("sata-power", "pcie-6")
PERIPHERAL_TO_CARD = adapter("peripheral-4", "pcie-6")
MOULDED = adapter("peripheral-4", "sata-power", moulded=True)
HALF_6 = plug("pcie-6", mate="half")

BREAKS = [
    ("CON101", case(CARD, open_ports=(open_port(required=True),)), PORT),
    ("CON102", strained("plug", "stop", 12.501, 12.5), PORT),
    ("CON103", strained("print", "stop", 37.6, 37.5), PORT),
    ("CON104", strained("contact", "stop", 8.001, 8.0, contacts=3), PORT),
    ("CON104", strained("wire", "stop", 8.001, 8.0, contacts=3), PORT),
    ("CON104", strained("socket", "stop", 8.001, 8.0, contacts=3), PORT),
    ("CON105", strained("contact", "band", 6.001, 6.0, contacts=3), PORT),
    ("CON106", strained("contact", "stop", 9.201, 9.2, sixteen_pin=True, contacts=6), PORT),
    ("CON107", strained("drive_rail", "stop", 1.501, 1.5, contacts=3), PORT),
    ("CON107", strained("drive_rail", "start_stop", 1.501, 1.5, contacts=3), PORT),
    ("CON108", strained("start_wire", "start_band", 8.001, 8.0, contacts=1), PORT),
    ("CON109", share(225.1), CABLE),
    ("CON110", plugged(plug("cpu-4", mate="half"), at=CPU), CPU),
    ("CON111", plugged(plug("atx-20", mate="half"), at=MAIN), MAIN),
    ("CON112", plugged(HALF_6, watts=75.1), PORT),
    ("CON113", plugged(plug("cpu-8", mate="impossible")), PORT),
    ("CON114", adapted(MOULDED), PORT),
    ("CON115", adapted(SATA_TO_CARD, watts=10), PORT),
    ("CON116", adapted(PERIPHERAL_TO_CARD, watts=60), PORT),
    ("CON116", adapted(PERIPHERAL_TO_CARD, watts=90), PORT),
    ("CON117", adapted(PERIPHERAL_TO_CARD, watts=75.1), PORT),
    ("CON118", strained("adapter", "stop", 25.1, 25.0), PORT),
    ("CON119", case(CARD, open_ports=(open_port(required=False, crowded=True),)), PORT),
    ("CON120", plugged(plug("sata-power", carries_3v3=True), at=SATA, part=DRIVE), SATA),
    ("CON121", plugged(plug("sata-power"), at=SATA, watts=54.1, part=RISER), SATA),
    ("CON122", plugged(plug(put_in=("Disk",))), PORT),
    ("CON123", plugged(plug("12vhpwr"), at=NEWER), NEWER),
    ("CON123", plugged(plug("12v-2x6"), at=OLDER), OLDER),
    ("CON124", shared_equally(75.1), SIX),
    ("CON125", heated(8.01), PORT),
    ("CON125", heated(9.21, 9.2), PORT),
    ("CON126", heated(None, opened=2), PORT),
    ("CON127", behind(11.03), PORT),
    ("CON128", behind(11.51), PORT),
    ("CON128", behind(11.04), PORT),
    ("CBL101", plugged(plug(foreign=True)), PORT),
    ("CBL102", plugged(plug(short_by_mm=0.1)), PORT),
    ("CBL103", plugged(plug(assumed_short_by_mm=0.1)), PORT),
    ("CBL104", case(foreign_spare=(CABLE,)), CABLE),
]
SILENT = [
    pytest.param("CON101", case(CARD, open_ports=(open_port(required=False),)), id="CON101 optional"),
    pytest.param("CON102", case(CARD, joints=(joint(),)), id="CON102 within"),
    pytest.param("CON103", strained("plug", "stop", 51, 50), id="CON103 leaves the plug's watts to CON102"),
    pytest.param(
        "CON104", strained("contact", "stop", 9.3, 9.2, sixteen_pin=True), id="CON104 leaves 16-pin to CON106",
    ),
    pytest.param("CON104", strained("contact", "band", 8.0, 6.0), id="CON104 on the limit"),
    pytest.param("CON105", case(CARD, joints=(joint(),)), id="CON105 on the limit: no strain"),
    pytest.param("CON105", case(CARD, joints=(joint(strain("contact", "band", 7, 6), strain("plug", "stop", 13, 12)),)),
                 id="CON105 past a stop already"),
    pytest.param("CON106", strained("contact", "stop", 8.1, 8.0), id="CON106 leaves 4.2 mm to CON104"),
    pytest.param("CON107", strained("start_wire", "start_band", 9, 8), id="CON107 leaves the wires to CON108"),
    pytest.param("CON108", case(CARD, joints=(joint(strain("start_wire", "start_band", 9, 8),
                                                    strain("drive_rail", "start_stop", 5, 4.5)),)),
                 id="CON108 past a stop already"),
    pytest.param("CON109", share(225), id="CON109 on the limit"),
    pytest.param("CON110", plugged(plug("cpu-4"), at=CPU), id="CON110 full mate"),
    pytest.param("CON110", plugged(HALF_6), id="CON110 another kind of plug"),
    pytest.param("CON111", plugged(plug("atx-20+4"), at=MAIN), id="CON111 full mate"),
    pytest.param("CON112", plugged(HALF_6, watts=75), id="CON112 on the limit"),
    pytest.param("CON112", plugged(plug("pcie-6"), watts=150), id="CON112 full mate"),
    pytest.param("CON113", plugged(HALF_6), id="CON113 half mate"),
    pytest.param("CON114", adapted(PERIPHERAL_TO_CARD), id="CON114 crimped"),
    pytest.param("CON115", adapted(adapter("sata-power", "peripheral-4"), at=SATA), id="CON115 to a drive"),
    pytest.param("CON116", adapted(adapter("peripheral-4", "sata-power"), at=SATA), id="CON116 to a drive"),
    pytest.param("CON117", adapted(PERIPHERAL_TO_CARD, watts=75), id="CON117 on the limit"),
    pytest.param("CON117", two_ports(37.5), id="CON117 on the limit over two ports"),
    pytest.param("CON118", strained("print", "stop", 26, 25), id="CON118 leaves the print to CON103"),
    pytest.param("CON119", case(CARD, open_ports=(open_port(required=False),)), id="CON119 within comfort"),
    pytest.param("CON119", case(CARD, open_ports=(open_port(required=True, crowded=True),)), id="CON119 required"),
    pytest.param("CON120", plugged(plug("sata-power", carries_3v3=False), at=SATA, part=DRIVE), id="CON120 no 3.3 V"),
    pytest.param(
        "CON120", plugged(plug("sata-power", carries_3v3=True), at=SATA, part=Drive()), id="CON120 other drive",
    ),
    pytest.param(
        "CON120", plugged(plug("peripheral-4", carries_3v3=None), at=SATA, part=DRIVE), id="CON120 no SATA plug",
    ),
    pytest.param("CON121", plugged(plug("sata-power"), at=SATA, watts=54, part=RISER), id="CON121 on the limit"),
    pytest.param("CON125", case(CARD, joints=(joint(),)), id="CON125 not looked at"),
    pytest.param("CON125", heated(8), id="CON125 on the limit"),
    pytest.param("CON125", heated(None), id="CON125 none would be left"),
    pytest.param("CON126", heated(9), id="CON126 none open"),
    pytest.param("CON127", case(CARD, joints=(joint(),)), id="CON127 nothing added"),
    pytest.param("CON127", behind(11.05), id="CON127 within"),
    pytest.param("CON128", case(CARD, joints=(joint(),)), id="CON128 nothing added"),
    pytest.param("CON128", behind(11.03), id="CON128 leaves what is too low to CON127"),
    pytest.param("CON128", behind(11.3, strain("wire", "band", 7, 6)), id="CON128 counts once with CON105"),
    pytest.param("CON128", behind(11.3, strain("plug", "stop", 13, 12)), id="CON128 past a stop already"),
    pytest.param("CON105", behind(11.3, strain("volts", "band", 14, 13)), id="CON105 leaves volts to CON128"),
    pytest.param("CON121", plugged(plug("pcie-6"), at=SATA, watts=66, part=RISER), id="CON121 on a card plug"),
    pytest.param("CON121", plugged(plug("sata-power"), at=SATA, watts=66, part=Fan()), id="CON121 no riser"),
    pytest.param("CON122", plugged(plug()), id="CON122 own socket"),
    pytest.param("CON123", plugged(plug("12v-2x6"), at=NEWER), id="CON123 of one edition"),
    pytest.param("CON123", plugged(plug("pcie-8"), at=NEWER), id="CON123 on an adapter"),
    pytest.param("CON124", shared_equally(75), id="CON124 on the limit"),
    pytest.param("CON124", shared_equally(90, watts=75.1), id="CON124 leaves it to CON102"),
    pytest.param("CON124", shared_equally(0), id="CON124 stated, or no card"),
    pytest.param("CBL101", plugged(plug()), id="CBL101 own cable"),
    pytest.param("CBL102", plugged(plug(assumed_short_by_mm=50.0)), id="CBL102 only assumed"),
    pytest.param("CBL103", plugged(plug(assumed_short_by_mm=50.0, short_by_mm=50.0)), id="CBL103 leaves it to CBL102"),
    pytest.param("CBL103", plugged(plug()), id="CBL103 reaches exactly"),
    pytest.param("CBL104", case(), id="CBL104 none"),
]


@pytest.mark.parametrize(("rule", "given", "at"), BREAKS, ids=[f"{rule}-{i}" for i, (rule, _, _) in enumerate(BREAKS)])
def test_past_the_limit(rule: str, given: Case, at: Place) -> None:
    assert outcome(rule, given) == [("breaks", at)]


@pytest.mark.parametrize(("rule", "given"), SILENT)
def test_within_the_limit(rule: str, given: Case) -> None:
    assert outcome(rule, given) == []


def test_ports_of_one_adapter_count_together() -> None:
    assert [at for _, at in outcome("CON117", two_ports(37.6))] == [
        Place("port", 1, ("pcie-6", 0)), Place("port", 1, ("pcie-6", 1)),
    ]


def test_six_pin_plug_behind_an_adapter_carries_its_share() -> None:
    two = adapter("pcie-8", "pcie-8", inputs=2)
    within = case(CARD, joints=(joint(watts=150, plugs=(HALF_6, HALF_6), adapters=(two,)),))
    past = case(CARD, joints=(joint(watts=150.2, plugs=(HALF_6, HALF_6), adapters=(two,)),))
    assert outcome("CON112", within) == []
    assert outcome("CON112", past) == [("breaks", PORT)]


@pytest.mark.parametrize(("index", "field"), [(3, "cables/3/carries_3v3"), (-1, "carries_3v3")], ids=["box", "line"])
def test_cable_that_does_not_say_whether_it_carries_3v3(index: int, field: str) -> None:
    given = plugged(plug("sata-power", carries_3v3=None, cable=index, plug=2), at=SATA, part=DRIVE)
    assert outcome("CON120", given) == [(field, Place("cable", 0, (index, 0, 2)))]


def test_plug_is_told_in_watts() -> None:
    (said,) = heard("CON102", strained("plug", "stop", 13.0, 12.5))
    assert isinstance(said, Finding)
    assert (said.measured, said.limit, said.unit) == (156.0, 150.0, "W")


def test_drive_plug_is_told_in_amps_of_all_its_pins() -> None:
    (said,) = heard("CON107", strained("drive_rail", "stop", 2.0, 1.5, contacts=3))
    assert isinstance(said, Finding)
    assert (said.measured, said.limit, said.unit) == (6.0, 4.5, "A")


STOPS = ("stop", "start_stop")
CAUSES = ("plug", "contact", "wire", "socket", "print", "adapter", "drive_rail", "start_wire")


@pytest.mark.parametrize(("cause", "level", "sixteen_pin"), list(product(CAUSES, STOPS, (False, True))))
def test_every_strain_past_a_stop_is_heard_once(cause: str, level: str, sixteen_pin: bool) -> None:
    given = strained(cause, level, 20.0, 8.0, sixteen_pin=sixteen_pin)
    said = [(rule.weight, rule.planned, one.at) for rule in RULES for one in rule.check(given)]
    assert said == [("stop", True, PORT)]


@pytest.mark.parametrize(("level", "rule"), [("band", "CON105"), ("start_band", "CON108")])
@pytest.mark.parametrize("cause", CAUSES)
def test_every_strain_in_a_band_is_heard_once(cause: str, level: str, rule: str) -> None:
    given = strained(cause, level, 7.0, 6.0)
    assert [(one.id, said.at) for one in RULES for said in one.check(given)] == [(rule, PORT)]


def test_the_strain_furthest_past_its_limit_is_told() -> None:
    given = case(CARD, joints=(joint(strain("wire", "stop", 8.2, 8.0), strain("contact", "stop", 9.0, 8.0)),))
    (said,) = heard("CON104", given)
    assert isinstance(said, Finding)
    assert said.measured == 9.0
    assert dict(said.values)["cause"] == "contact"


def test_each_plug_that_may_be_short_is_told() -> None:
    given = plugged(plug(assumed_short_by_mm=10.0), plug(), plug(assumed_short_by_mm=20.0))
    assert [at for _, at in outcome("CBL103", given)] == [PORT, PORT.nth(1)]


def test_the_plug_that_is_shortest_is_told() -> None:
    (said,) = heard("CBL102", plugged(plug(short_by_mm=5.0), plug(), plug(short_by_mm=7.0)))
    assert isinstance(said, Finding)
    assert said.measured == 7.0


def test_furthest_past_is_by_parts_of_the_limit_not_by_amps() -> None:
    """One ampere over 4 A is worse than two over 20 A."""
    given = case(CARD, joints=(joint(strain("wire", "stop", 22.0, 20.0), strain("contact", "stop", 5.0, 4.0)),))
    (said,) = heard("CON104", given)
    assert isinstance(said, Finding)
    assert (said.measured, said.limit) == (5.0, 4.0)


@pytest.mark.parametrize(("rail", "watts"), [("12v", (60.0, 48.0)), ("5v", (25.0, 20.0)), ("3v3", (16.5, 13.2))])
def test_watts_are_told_at_the_volts_of_the_rail(rail: str, watts: tuple[float, float]) -> None:
    past = strain("adapter", "stop", 5.0, 4.0)._replace(rail=rail)
    (said,) = heard("CON118", case(CARD, joints=(joint(past),)))
    assert isinstance(said, Finding)
    assert (said.measured, said.limit) == pytest.approx(watts)


def test_a_contact_that_may_carry_nothing_is_told() -> None:
    assert outcome("CON104", strained("contact", "stop", 2.0, 0.0)) == [("breaks", PORT)]
