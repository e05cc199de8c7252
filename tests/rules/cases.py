"""Small cases, built directly: each gives only what a rule looks at."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Any

from service.case.case import (
    Case,
    FeedAdapter,
    FeedPlug,
    HeaderLoad,
    Joint,
    MomentLoad,
    OpenPort,
    Promises,
    Strain,
    Wall,
)
from service.case.place import Place
from service.demand.demand import Demand
from service.parts.build import Build, Unit
from service.parts.records import Part, PowerSupply
from service.rules.book import by_id
from service.rules.rule import Finding, Said, Unknown

NOTHING = (0.0, 0.0, 0.0)
SUPPLY = PowerSupply(
    name="Linden 850", rated_watts=850, design="atx-3.0", form_factor="atx", depth_mm=140, fan_side="bottom",
)
PORT = Place("port", 1, ("pcie-8", 0))


def case(*others: Part, supply: PowerSupply | None = SUPPLY, **given: Any) -> Case:
    """Return a case of a supply (unit 0, unless None) and other parts, with what is given and nothing else."""
    parts = (*((supply,) if supply else ()), *others)
    demand = Demand(
        feeds=(), sustained=(0, 0, 0, 0), starting=(0, 0, 0, 0), sustained_watts=0.0, moments=(),
        slots=(), headers=(), headless=(),
    )
    whole: dict[str, Any] = {
        "build": Build(units=tuple(Unit(part, "", line, 0) for line, part in enumerate(parts))), "end": "unfavourable",
        "supply": 0 if supply else None, "supply_part": supply, "demand": demand, "sustained_watts": 0.0,
        "starting_watts": 0.0, "joints": (), "stretches": (),
        "open_ports": (), "shares": (), "rails": (), "combined": (), "groups": (), "moments": (), "wall": None,
        "room_celsius": 25.0, "rated_at_celsius": 40.0, "promises": None,
        "headers": (), "headless": (), "spare": (), "loose": (),
        "foreign_spare": (), "to_buy": (), "proven": True, "stopped": False, "objective": (), "assumed": (),
    }
    return Case(**(whole | given))


def slotted(watts: float) -> Case:
    """Return a case in which unit 1 takes so many watts through its slot."""
    empty = case()
    return replace(empty, demand=replace(empty.demand, slots=((1, watts),)))


def plug(connector: str = "pcie-6+2", **given: Any) -> FeedPlug:
    """Return a sound plug, but for what is given."""
    sound: dict[str, Any] = {
        "unit": 0, "cable": 0, "copy": 0, "plug": 0, "connector": connector, "mate": "full", "sockets": ("card",),
        "open_contacts": 0, "rated_watts": None, "foreign": False, "carries_3v3": False, "short_by_mm": 0.0,
        "assumed_short_by_mm": 0.0, "put_in": (),
    }
    return FeedPlug(**(sound | given))


def adapter(takes: str, gives: str, *, copy: int = 0, inputs: int = 1, moulded: bool = False) -> FeedAdapter:
    """Return an adapter on the way."""
    return FeedAdapter(2, -1, copy, inputs, moulded, False, takes, gives, None)


def strain(
    cause: str, level: str, amps: float, limit: float, *, sixteen_pin: bool = False, contacts: int = 0,
) -> Strain:
    """Return a strain on 12 V."""
    return Strain(cause, level, "12v", amps, limit, contacts, sixteen_pin)  # type: ignore[arg-type]


def joint(
    *strains: Strain, at: Place = PORT, watts: float = 100.0, plugs: Sequence[FeedPlug] | None = None,
    adapters: Sequence[FeedAdapter] = (),
) -> Joint:
    """Return a fed port."""
    return Joint(
        at, "card", str(at.detail[0]), True, (watts / 12, 0.0, 0.0), NOTHING, watts, 50.0, strains,
        tuple(plugs) if plugs is not None else (plug(),), tuple(adapters),
    )


def open_port(*, required: bool, crowded: bool = False) -> OpenPort:
    """Return a port without a source."""
    return OpenPort(PORT, "card", "pcie-8", required, crowded, "none_left", 0.0)


def moment(watts: float, **given: Any) -> MomentLoad:
    """Return 100 us of an 850 W supply of the small column: promise and own column 1275 W, large column 1700 W."""
    whole: dict[str, Any] = {
        "at": Place("moment", 0, (100, 0)), "microseconds": 100, "watts": watts, "all_cards_watts": watts,
        "stated": False, "beyond_formula": False, "promised_watts": 1275.0, "own_column_watts": 1275.0,
        "large_column_watts": 1700.0,
    }
    return MomentLoad(**(whole | given))


def wall(**given: Any) -> Wall:
    """Return the mains side at 120 V."""
    whole: dict[str, Any] = {
        "watts": 900.0, "amps": 8.0, "volt_amperes": 960.0, "efficiency_percent": 88.0, "efficiency_basis": "level",
        "power_factor": 0.95, "mains_volts": 120.0, "continuous_rule": True, "circuit_amps": 15.0, "inlet_amps": 15.0,
        "plug_fuse_amps": None, "ups_watts": None, "ups_volt_amperes": None, "ups_transfer_milliseconds": None,
    }
    return Wall(**(whole | given))


def promises(**given: Any) -> Promises:
    """Return what an 850 W supply built to ATX 3.0 promises in a room that takes nothing of it."""
    whole: dict[str, Any] = {
        "room_watts": 850.0, "hold_up_milliseconds": 17.0, "easy_hold_up_milliseconds": None, "low_load_watts": 17.0,
    }
    return Promises(**(whole | given))


def header(amps: float, most: float | None, connector: str = "fan-4") -> HeaderLoad:
    """Return the fullest header of a board that is unit 1."""
    return HeaderLoad(Place("header", 1, (connector,)), connector, amps, most)


def heard(rule_id: str, given: Case) -> list[Said]:
    """Return what a rule says of a case; every finding must fill the rule's message."""
    rule = by_id()[rule_id]
    said = list(rule.check(given))
    for finding in _findings(said):
        values = {"measured": finding.measured, "limit": finding.limit, "unit": finding.unit} | dict(finding.values)
        text = rule.message.format(**values)
        assert "None" not in text, f"{rule_id}: {text}"
    return said


def outcome(rule_id: str, given: Case) -> list[tuple[str, Place]]:
    """Return what a rule says of a case as (breaks or the missing field, place)."""
    return [("breaks" if isinstance(one, Finding) else one.missing, one.at) for one in heard(rule_id, given)]


def _findings(said: list[Said]) -> Iterator[Finding]:
    for one in said:
        if not isinstance(one, Unknown):
            yield one
