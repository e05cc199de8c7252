"""Readings beside what they are compared with: a rail's span of volts, and the amps that the sheet leads to."""

from collections.abc import Iterator, Sequence

from service.case.case import Joint, RailLoad, ReadingLoad
from service.case.place import Place
from service.facts import rails as facts
from service.facts.fact import WHOLE
from service.facts.supply import DESIGN_WITHOUT_ENVELOPE, NOMINAL_12_VOLTS
from service.parts.build import Build
from service.parts.readings import Taken
from service.parts.records import PowerSupply
from service.parts.words import CARD

_JOINT_RAILS = ("12v", "5v", "3v3")
_PORT_DETAIL = 2


def raised(loads: Sequence[RailLoad], build: Build) -> tuple[RailLoad, ...]:
    """Return the rails with at least the amps that were measured of them."""
    read = {
        one.reading.rail: one.reading.amps for one in build.readings
        if one.reading.amps is not None and isinstance(_part(build, one), PowerSupply)
    }
    return tuple(
        load._replace(sustained_amps=max(load.sustained_amps, read.get(load.rail) or 0.0)) for load in loads
    )


def readings(
    build: Build, part: PowerSupply | None, loads: Sequence[RailLoad], joints: Sequence[Joint]
) -> Iterator[ReadingLoad]:
    """Yield each reading with what it is compared with; ``loads`` are rails as the sheet leads to them."""
    for one in build.readings:
        reading = one.reading
        unit = _unit(build, one)
        at = _place(build, one, unit)
        lowest, highest = _span(reading.rail, reading.connector, part)
        most = one.stated.high if one.stated else _reckoned(one, at, loads, joints)
        least = one.stated.low if one.stated else None
        yield ReadingLoad(at, reading.rail, reading.volts, lowest, highest, reading.amps, least, most)


def _reckoned(one: Taken, at: Place, loads: Sequence[RailLoad], joints: Sequence[Joint]) -> float | None:
    """Return the amps that the sheet leads to at a rail or a port; None where they are not told apart."""
    if one.field is not None:
        return None
    if at.kind == "rail":
        return next((load.sustained_amps for load in loads if load.rail == one.reading.rail), None)
    port = at._replace(detail=at.detail[:_PORT_DETAIL])
    joint = next((joint for joint in joints if joint.at == port), None)
    if joint is None or one.reading.rail not in _JOINT_RAILS:
        return None
    return joint.sustained_amps[_JOINT_RAILS.index(one.reading.rail)]


def _span(rail: str, connector: str | None, part: PowerSupply | None) -> tuple[float, float]:
    """Return the lowest and highest volts of a rail; a card's own plugs may have less."""
    if rail != "12v":
        lowest, highest = facts.OTHERS[rail]
        return lowest.value, highest.value
    is_old = part is None or part.design == DESIGN_WITHOUT_ENVELOPE
    if connector in CARD and not is_old:
        return NOMINAL_12_VOLTS * facts.LOWEST_12_AT_CARD.value / WHOLE, facts.HIGHEST_12.value
    return (facts.LOWEST_12 if is_old else facts.LOWEST_12_NEW).value, facts.HIGHEST_12.value


def _place(build: Build, one: Taken, unit: int) -> Place:
    reading = one.reading
    if reading.connector is not None:
        return Place("port", unit, (reading.connector, reading.number, reading.rail))
    return Place("rail" if isinstance(build.units[unit].part, PowerSupply) else "unit", unit, (reading.rail,))


def _unit(build: Build, one: Taken) -> int:
    key = (one.reading.line, one.reading.copy)
    return next(at for at, unit in enumerate(build.units) if (unit.line, unit.copy) == key)


def _part(build: Build, one: Taken) -> object:
    return build.units[_unit(build, one)].part
