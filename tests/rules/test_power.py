"""Rules on supply, rails, moments, warmth and mains: past the limit, within, exactly on it, figure missing."""

from typing import Any

import pytest

from service.case.case import Case, CombinedLoad, GroupLoad, RailLoad
from service.case.place import Place
from tests.rules.cases import case, moment, outcome, promises, slotted, wall

SUPPLY = Place("supply", 0)
RAIL = Place("rail", 0, ("12v",))
STANDBY = Place("rail", 0, ("5vsb",))
WALL = Place("wall")
MOMENT = Place("moment", 0, (100, 0))
SHARED = Place("combined", 0, (0,))
GROUP = Place("group", 0, (0,))


def rail(sustained: float, starting: float) -> Case:
    return case(rails=(RailLoad(RAIL, "12v", sustained, starting, 70.0),))


def standby(amps: float, starting: float = 0.0) -> Case:
    return case(rails=(RailLoad(STANDBY, "5vsb", amps, starting, 2.5),))


def least(amps: float) -> Case:
    return case(rails=(RailLoad(RAIL, "12v", amps, amps, 70.0, 1.0),))


def warm(watts: float, **given: Any) -> Case:
    """Return a case in which 750 of 850 W are left by the warmth of the room."""
    return case(sustained_watts=watts, promises=promises(room_watts=750.0), **given)


def ups(milliseconds: float | None, **given: Any) -> Case:
    return case(wall=wall(ups_transfer_milliseconds=milliseconds), promises=promises(**given))


def shared(watts: float, starting: float = 0.0) -> Case:
    return case(combined=(CombinedLoad(SHARED, ("3v3", "5v"), watts, starting, 120.0),))


def group(amps: float, starting: float = 0.0) -> Case:
    return case(groups=(GroupLoad(GROUP, "12V1", "12v", amps, starting, 25.0),))


BREAKS = [
    ("PWR101", case(sustained_watts=850.1), SUPPLY),
    ("PWR102", case(sustained_watts=765.1), SUPPLY),
    ("PWR102", case(sustained_watts=850.0), SUPPLY),
    ("PWR201", rail(70.001, 0), RAIL),
    ("PWR202", rail(10, 70.001), RAIL),
    ("PWR103", case(starting_watts=850.1), SUPPLY),
    ("PWR203", shared(120.1), SHARED),
    ("PWR204", shared(0, 120.1), SHARED),
    ("PWR205", standby(2.501), STANDBY),
    ("PWR205", standby(1, 2.501), STANDBY),
    ("PWR301", group(25.001), GROUP),
    ("PWR303", group(10, 25.001), GROUP),
    ("PWR302", slotted(75.75), Place("unit", 1)),
    ("PWR401", case(moments=(moment(1700.1),)), MOMENT),
    ("PWR402", case(moments=(moment(1275.1),)), MOMENT),
    ("PWR402", case(moments=(moment(1700),)), MOMENT),
    ("PWR403", case(moments=(moment(1275.1, stated=True),)), MOMENT),
    ("PWR404", case(moments=(moment(1275.1, stated=True, promised_watts=None),)), MOMENT),
    ("PWR405", case(moments=(moment(900, all_cards_watts=1275.1),)), MOMENT),
    ("PWR405", case(moments=(moment(900, all_cards_watts=1275.1, promised_watts=None),)), MOMENT),
    ("PWR406", case(moments=(moment(1275.1, beyond_formula=True),)), MOMENT),
    ("PWR501", case(room_celsius=40.1), SUPPLY),
    ("PWR502", warm(750.1), SUPPLY),
    ("PWR502", warm(850), SUPPLY),
    ("PWR601", case(wall=wall(amps=12.001)), WALL),
    ("PWR601", case(wall=wall(amps=16.001, continuous_rule=False, circuit_amps=16.0)), WALL),
    ("PWR602", case(wall=wall(amps=15.001)), SUPPLY),
    ("PWR603", case(wall=wall(watts=540.1, ups_watts=540.0)), WALL),
    ("PWR604", case(wall=wall(volt_amperes=900.1, ups_volt_amperes=900.0)), WALL),
    ("PWR605", case(wall=wall(amps=5.001, plug_fuse_amps=5.0)), WALL),
    ("PWR606", ups(17.1), WALL),
    ("PWR606", ups(12.1, hold_up_milliseconds=12.0), WALL),
    ("PWR701", case(sustained_watts=169.9), SUPPLY),
    ("PWR702", least(0.999), RAIL),
]
SILENT = [
    pytest.param("PWR302", slotted(75.0), id="PWR302 on the limit"),
    pytest.param("PWR302", slotted(74.25), id="PWR302 at 99 %"),
    pytest.param("PWR101", case(sustained_watts=400), id="PWR101 within"),
    pytest.param("PWR101", case(sustained_watts=850), id="PWR101 on the limit"),
    pytest.param("PWR101", case(supply=None, sustained_watts=9000), id="PWR101 no supply"),
    pytest.param("PWR102", case(sustained_watts=400), id="PWR102 within"),
    pytest.param("PWR102", case(sustained_watts=765), id="PWR102 on the limit"),
    pytest.param("PWR102", case(sustained_watts=850.1), id="PWR102 leaves it to PWR101"),
    pytest.param("PWR102", case(supply=None, sustained_watts=9000), id="PWR102 no supply"),
    pytest.param("PWR201", rail(70, 80), id="PWR201 on the limit"),
    pytest.param("PWR201", case(), id="PWR201 no rails"),
    pytest.param("PWR202", rail(80, 70), id="PWR202 on the limit"),
    pytest.param("PWR202", case(), id="PWR202 no rails"),
    pytest.param("PWR203", shared(120), id="PWR203 on the limit"),
    pytest.param("PWR203", case(), id="PWR203 none printed"),
    pytest.param("PWR103", case(starting_watts=400), id="PWR103 within"),
    pytest.param("PWR103", case(starting_watts=850), id="PWR103 on the limit"),
    pytest.param("PWR103", case(supply=None, starting_watts=9000), id="PWR103 no supply"),
    pytest.param("PWR204", shared(130, 120), id="PWR204 on the limit"),
    pytest.param("PWR204", case(), id="PWR204 none printed"),
    pytest.param("PWR201", standby(9), id="PWR201 leaves standby to PWR205"),
    pytest.param("PWR202", standby(0, 9), id="PWR202 leaves standby to PWR205"),
    pytest.param("PWR205", standby(2.5, 2.5), id="PWR205 on the limit"),
    pytest.param("PWR205", rail(90, 90), id="PWR205 no standby rail"),
    pytest.param("PWR301", group(25), id="PWR301 on the limit"),
    pytest.param("PWR301", case(), id="PWR301 none printed"),
    pytest.param("PWR303", group(10, 25), id="PWR303 on the limit"),
    pytest.param("PWR303", group(26, 30), id="PWR303 leaves it to PWR301"),
    pytest.param("PWR303", case(), id="PWR303 none printed"),
    pytest.param("PWR401", case(moments=(moment(1700),)), id="PWR401 on the limit"),
    pytest.param("PWR401", case(moments=(moment(1701, stated=True),)), id="PWR401 leaves stated to PWR403"),
    pytest.param("PWR401", case(moments=(moment(1701, beyond_formula=True),)), id="PWR401 outside the ratio"),
    pytest.param("PWR402", case(moments=(moment(1275),)), id="PWR402 on the limit"),
    pytest.param("PWR402", case(moments=(moment(1700.1),)), id="PWR402 leaves it to PWR401"),
    pytest.param("PWR402", case(moments=(moment(1276, beyond_formula=True),)), id="PWR402 outside the ratio"),
    pytest.param("PWR403", case(moments=(moment(1275, stated=True),)), id="PWR403 on the limit"),
    pytest.param("PWR403", case(moments=(moment(1276),)), id="PWR403 derived"),
    pytest.param("PWR403", case(moments=(moment(9000, stated=True, promised_watts=None),)), id="PWR403 no promise"),
    pytest.param("PWR404", case(moments=(moment(1275, stated=True, promised_watts=None),)), id="PWR404 on the limit"),
    pytest.param("PWR404", case(moments=(moment(1276, stated=True),)), id="PWR404 has a promise"),
    pytest.param("PWR404", case(moments=(moment(1276, promised_watts=None),)), id="PWR404 derived"),
    pytest.param("PWR405", case(moments=(moment(900, all_cards_watts=1275),)), id="PWR405 on the limit"),
    pytest.param("PWR405", case(moments=(moment(1276, all_cards_watts=1400),)), id="PWR405 one card does it"),
    pytest.param("PWR406", case(moments=(moment(1275, beyond_formula=True),)), id="PWR406 on the limit"),
    pytest.param("PWR406", case(moments=(moment(1276),)), id="PWR406 within the ratio"),
    pytest.param("PWR501", case(room_celsius=40.0), id="PWR501 on the limit"),
    pytest.param("PWR501", case(supply=None, room_celsius=60.0), id="PWR501 no supply"),
    pytest.param("PWR502", warm(750), id="PWR502 on the limit"),
    pytest.param("PWR502", warm(850.1), id="PWR502 leaves it to PWR101"),
    pytest.param("PWR502", case(supply=None, sustained_watts=9000), id="PWR502 no supply"),
    pytest.param("PWR601", case(wall=wall(amps=12.0)), id="PWR601 on the limit"),
    pytest.param(
        "PWR601", case(wall=wall(amps=15.0, continuous_rule=False)), id="PWR601 all of it",
    ),
    pytest.param("PWR601", case(wall=wall(amps=12.0, circuit_amps=None)), id="PWR601 small enough for any circuit"),
    pytest.param("PWR601", case(), id="PWR601 no mains"),
    pytest.param("PWR602", case(wall=wall(amps=15.0)), id="PWR602 on the limit"),
    pytest.param("PWR602", case(wall=wall(amps=15.0, inlet_amps=None)), id="PWR602 small enough for any inlet"),
    pytest.param(
        "PWR602", case(wall=wall(amps=10.0, mains_volts=230.0, inlet_amps=None)), id="PWR602 the same at 230 V",
    ),
    pytest.param("PWR602", case(), id="PWR602 no mains"),
    pytest.param("PWR603", case(wall=wall(watts=540.0, ups_watts=540.0)), id="PWR603 on the limit"),
    pytest.param("PWR603", case(wall=wall()), id="PWR603 no UPS"),
    pytest.param("PWR604", case(wall=wall(volt_amperes=900.0, ups_volt_amperes=900.0)), id="PWR604 on the limit"),
    pytest.param("PWR604", case(wall=wall(ups_watts=960.0)), id="PWR604 as many volt-amperes as watts at least"),
    pytest.param("PWR604", case(wall=wall()), id="PWR604 no UPS"),
    pytest.param("PWR605", case(wall=wall(amps=5.0, plug_fuse_amps=5.0)), id="PWR605 on the limit"),
    pytest.param("PWR605", case(wall=wall(amps=99.0)), id="PWR605 no fuse"),
    pytest.param("PWR605", case(), id="PWR605 no mains"),
    pytest.param("PWR606", ups(17), id="PWR606 on the limit"),
    pytest.param("PWR606", ups(None), id="PWR606 no UPS"),
    pytest.param("PWR606", case(), id="PWR606 no mains"),
    pytest.param("PWR702", least(1.0), id="PWR702 on the limit"),
    pytest.param("PWR702", least(0), id="PWR702 no load known"),
    pytest.param("PWR702", rail(0.1, 0.1), id="PWR702 nothing is asked of the design"),
    pytest.param("PWR701", case(sustained_watts=170), id="PWR701 on the limit"),
    pytest.param("PWR701", case(), id="PWR701 no load known"),
    pytest.param("PWR701", case(supply=None, sustained_watts=9), id="PWR701 no supply"),
]
UNKNOWN = [
    ("PWR601", case(wall=wall(amps=12.001, circuit_amps=None)), "site/circuit_amps", WALL),
    ("PWR602", case(wall=wall(amps=15.001, inlet_amps=None)), "inlet", SUPPLY),
    ("PWR602", case(wall=wall(amps=10.001, mains_volts=230.0, inlet_amps=None)), "inlet", SUPPLY),
    ("PWR603", case(wall=wall(ups_volt_amperes=900.0)), "site/ups/watts", WALL),
    ("PWR604", case(wall=wall(volt_amperes=960.0, ups_watts=959.0)), "site/ups/volt_amperes", WALL),
]


@pytest.mark.parametrize(("rule", "given", "at"), BREAKS, ids=[f"{rule}-{i}" for i, (rule, _, _) in enumerate(BREAKS)])
def test_past_the_limit(rule: str, given: Case, at: Place) -> None:
    assert outcome(rule, given) == [("breaks", at)]


@pytest.mark.parametrize(("rule", "given"), SILENT)
def test_within_the_limit(rule: str, given: Case) -> None:
    assert outcome(rule, given) == []


@pytest.mark.parametrize(
    ("rule", "given", "missing", "at"), UNKNOWN, ids=[f"{row[0]}-{i}" for i, row in enumerate(UNKNOWN)],
)
def test_figure_missing(rule: str, given: Case, missing: str, at: Place) -> None:
    assert outcome(rule, given) == [(missing, at)]
