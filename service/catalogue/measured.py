"""Do readings speak of things that are there? And the pieces of a build with what was measured at them."""

from collections.abc import Iterator, Sequence

from service.demand.needs import needs_of
from service.demand.readings import figure_of, measured
from service.intake.faults import Fault
from service.parts.build import Unit
from service.parts.canonical import digest
from service.parts.readings import Reading, Taken
from service.parts.records import Part, PowerSupply

_NO_LINE = "points at a line that the sheet does not have"
_NO_PORT = "must be given: without one only a supply is read, and amps of a part that has a figure for them"


def reading_faults(
    readings: Sequence[Reading], parts: Sequence[Part], quantities: Sequence[int]
) -> Iterator[Fault]:
    """Yield each reference to what is not there, and each thing that is read twice; lines are already resolved."""
    seen: set[tuple[object, ...]] = set()
    for index, reading in enumerate(readings):
        at = f"/readings/{index}"
        if reading.line >= len(parts):
            yield Fault(f"{at}/part", _NO_LINE)
            continue
        if reading.copy >= quantities[reading.line]:
            yield Fault(f"{at}/copy", f"is above the quantity of the line, {quantities[reading.line]}")
        yield from _port_faults(at, reading, parts[reading.line])
        for what in ("volts", "amps"):
            key = (reading.line, reading.copy, reading.connector, reading.number, reading.rail, what)
            if getattr(reading, what) is not None:
                if key in seen:
                    yield Fault(f"{at}/{what}", "is read by an earlier reading")
                seen.add(key)


def _port_faults(at: str, reading: Reading, part: Part) -> Iterator[Fault]:
    """Yield what is wrong with the port of a reading, or with there being none."""
    if reading.connector is not None:
        ports = sum(need.count for need in needs_of(part) if need.connector == reading.connector)
        if ports == 0:
            yield Fault(f"{at}/port/connector", "is not a port of this part")
        elif reading.number >= ports:
            yield Fault(f"{at}/port/number", f"is above the number of such ports of this part, {ports}")
    elif not isinstance(part, PowerSupply) and (reading.volts is not None or figure_of(part, reading) is None):
        yield Fault(f"{at}/port", _NO_PORT)


def with_readings(
    units: tuple[Unit, ...], readings: Sequence[Reading]
) -> tuple[tuple[Unit, ...], tuple[Taken, ...]]:
    """Return the units, in canonical order, with what was measured at them, and what became of each reading."""
    if not readings:
        return units, ()
    at: dict[tuple[int, int], list[int]] = {}
    for index, reading in enumerate(readings):
        at.setdefault((reading.line, reading.copy), []).append(index)
    taken: dict[int, Taken] = {}
    found = []
    for unit in units:
        mine = at.get((unit.line, unit.copy), [])
        if mine:
            part, became = measured(unit.part, [readings[index] for index in mine])
            found.append(Unit(part, digest(part), unit.line, unit.copy))
            taken |= dict(zip(mine, became, strict=True))
        else:
            found.append(unit)
    ordered = sorted(found, key=lambda unit: (unit.digest, unit.line, unit.copy))
    return tuple(ordered), tuple(taken[index] for index in range(len(readings)))
