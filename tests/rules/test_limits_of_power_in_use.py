"""Limits of power, room and headers at 99, 100 and 101 %, from the sheet to the finding.

Plugs and cables stand in ``test_limits_in_use``, runs and readings in ``test_runs_in_use`` and
``test_readings_in_use``; the figures are written out here as there. Loads are counted in whole milliamps, so the limits
are such that a load exactly on one is a whole number of milliamps.
"""

from collections.abc import Callable
from typing import Any

import pytest

from tests.published.printed import Json, asked, board, card, disk, supply
from tests.rules.at_the_limit import BREAKS_BELOW, LIMITS
from tests.rules.test_limits_in_use import told

Ask = Callable[[float], Json]
STARTING = "starting_amps"
LOSSLESS: Json = {"efficiency_points": [{"load_percent": 50, "percent": 100}]}


def load(divided_by: float = 1.0, site: Json | None = None, cards: int = 1, **box: Any) -> Ask:
    """Return a build by watts, which a card or several draw through a plug each, divided by so many."""
    power = supply("pcie-8", **box)
    given = {"site": site} if site else {}
    return lambda watts: asked(power, *[card(watts / divided_by, "pcie-8")] * cards, **given)


def stated(**box: Any) -> Ask:
    """Return a build by the watts of a peak of 100 us that a card's maker states."""
    power = supply("pcie-8", rated_watts=850, **box)
    return lambda watts: asked(power, card(300, "pcie-8", peaks=[{"microseconds": 100, "watts": watts}]))


def drives(moment: str, rail: str, volts: float = 1.0, **box: Any) -> Ask:
    """Return a build by amps, or by watts at so many volts, of a rail in one moment of a drive."""
    power = supply("sata-power", **box)
    return lambda amount: asked(power, disk(amount / volts, moment=moment, rail=rail))


def grouped(feeds: str) -> Json:
    """Return what a supply has of groups: one of 20 A for a kind of cable."""
    others = [one for one in ("main", "processor", "card", "drive") if one != feeds]
    return {"groups": [{"name": "a", "max_amps": 20, "feeds": [feeds]}, {"name": "b", "max_amps": 99, "feeds": others}]}


def group_of_cards(amps: float) -> Json:
    """Return the answer to two cards on one group, each through a plug of its own."""
    return asked(supply("pcie-8", "pcie-8", **grouped("card")), *[card(amps * 12 / 2, "pcie-8")] * 2)


def group_of_drives(amps: float) -> Json:
    """Return the answer to four drives on one group that start together, each on a cable of its own."""
    box = supply(*["peripheral-4"] * 4, **grouped("drive"))
    return asked(box, *[disk(amps / 4, "peripheral-4", STARTING)] * 4)


def slotted(watts: float) -> Json:
    """Return the answer to a card that takes so many watts through its slot."""
    return asked(supply("atx-24", "cpu-8"), board(), card(watts, slot_watts=watts))


def warm(celsius: float) -> Json:
    """Return the answer to a room of so many degrees."""
    return asked(supply(rated_at_celsius=40), card(300, "pcie-8"), site={"room_celsius": celsius})


def asleep(amps: float) -> Json:
    """Return the answer to a board that takes so many amps from a standby rail of 3 A."""
    own = {"12v": 1, "5v": 0, "3v3": 0, "5vsb": amps}
    return asked(supply("atx-24", "cpu-8", rails={"5vsb": {"max_amps": 3}}), board() | {"own_amps": own})


def changing_over(milliseconds: float) -> Json:
    """Return the answer to a supply of ATX 3.1 behind a UPS that takes so long."""
    backed = {"watts": 5000, "volt_amperes": 5000, "transfer_milliseconds": milliseconds}
    return asked(supply(), card(300, "pcie-8"), site=at_the_wall(230, backed))


def deep(mm: float) -> Json:
    """Return the answer to a supply of this depth in a bay of 200 mm."""
    bay = {"form_factors": ["atx"], "depth_mm": 200}
    return asked(supply(form_factor="atx", depth_mm=mm), {"category": "case", "bays": [bay]})


def long(mm: float) -> Json:
    """Return the answer to a card of this length in a case that takes 300 mm."""
    return asked(supply(), card(100, length_mm=mm), {"category": "case", "card_length_mm": 300})


def fan(amps: float) -> Json:
    """Return the answer to a fan on the one header of a board, good for an ampere."""
    header = {"offers": [{"connector": "fan-4", "count": 1, "max_amps": 1}]}
    return asked(supply(), board() | header, {"category": "fan", "amps": amps, "needs": [{"connector": "fan-4"}]})


def at_the_wall(volts: float, ups: Json | None = None, **site: Any) -> Json:
    """Return a site."""
    return {"mains_volts": volts, **({"ups": ups} if ups else {}), **site}


NARROW: Json = {"rails": {"12v": {"max_amps": 50}, "5v": {"max_amps": 100}, "3v3": {"max_amps": 100}}}
SHARED: Json = {"combined_limits": [{"rails": ["5v", "3v3"], "watts": 120}]}
ROWS: list[tuple[str, float, Ask]] = [
    ("PWR101", 1008, load(rated_watts=1008)),
    ("PWR102", 900, load()),
    ("PWR103", 1008, drives(STARTING, "12v", 12, rated_watts=1008)),
    ("PWR201", 50, drives("running_amps", "12v", **NARROW)),
    ("PWR202", 50, drives(STARTING, "12v", **NARROW)),
    ("PWR203", 120, drives("running_amps", "5v", 5, **SHARED)),
    ("PWR204", 120, drives(STARTING, "5v", 5, **SHARED)),
    ("PWR301", 20, group_of_cards),
    ("PWR302", 75, slotted),
    ("PWR303", 20, group_of_drives),
    ("PWR401", 1692, load(3, rated_watts=846)),
    ("PWR402", 1269, load(3, rated_watts=846)),
    ("PWR403", 1275, stated()),
    ("PWR404", 1275, stated(design="atx-2")),
    ("PWR405", 2088, load(6, cards=2, rated_watts=1392)),
    ("PWR406", 612, load(3, rated_watts=408)),
    ("PWR205", 3, asleep),
    ("PWR501", 40, warm),
    ("PWR502", 900, load(site={"room_celsius": 44}, rated_at_celsius=40)),
    ("PWR601", 12 * 120, load(site=at_the_wall(120, circuit_amps=15), rated_watts=5000, **LOSSLESS)),
    ("PWR601", 16 * 240, load(site=at_the_wall(240, circuit_amps=16, code="iec"), rated_watts=5000, **LOSSLESS)),
    ("PWR602", 15 * 120, load(site=at_the_wall(120), rated_watts=5000, inlet="c14", **LOSSLESS)),
    ("PWR602", 10 * 240, load(site=at_the_wall(240), rated_watts=5000, inlet="c14", **LOSSLESS)),
    ("PWR603", 540, load(site=at_the_wall(230, {"watts": 540, "volt_amperes": 900}), **LOSSLESS)),
    ("PWR604", 600, load(site=at_the_wall(230, {"watts": 900, "volt_amperes": 600}), **LOSSLESS)),
    ("PWR605", 5 * 240, load(site=at_the_wall(240, plug_fuse_amps=5), rated_watts=5000, **LOSSLESS)),
    ("PWR606", 12, changing_over),
    ("PWR701", 200, load(efficiency_level="gold")),
    ("PWR702", 1, drives("running_amps", "12v", design="atx-2")),
    ("FIT101", 200, deep),
    ("FIT102", 150, deep),
    ("FIT104", 300, long),
    ("AUX102", 1, fan),
]


@pytest.mark.parametrize("percent", [99, 100, 101])
@pytest.mark.parametrize(("rule", "limit", "build"), ROWS, ids=[f"{row[0]} {row[1]}" for row in ROWS])
def test_only_past_the_limit(rule: str, limit: float, build: Ask, percent: int) -> None:
    speaks = percent < 100 if rule in BREAKS_BELOW else percent > 100
    assert told(build(limit * percent / 100), rule) == speaks


def test_every_rule_of_power_room_and_headers_with_a_limit_has_a_row() -> None:
    due = {rule for rule in LIMITS if not rule.startswith(("CON", "CBL", "RUN", "RDG"))}
    assert due == {rule for rule, _, _ in ROWS}
