"""Amps that were measured, put in the place of what a part is assumed or stated to draw.

A reading within the range of a figure, or where none is stated, replaces it. One above what the sheet states widens the
range so far that both are in it, for either may be wrong; one below it is told and not used, for a part that is not at
work takes less. Amps are watts at nominal volts, as everywhere.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import NamedTuple

from service.demand import draws
from service.demand.current import VOLTS_12
from service.demand.ends import Ends
from service.demand.needs import needs_of
from service.demand.processors import processor
from service.facts.processor import CLASS_AMPS
from service.parts.figures import End, Range, exactly
from service.parts.readings import Reading, Taken
from service.parts.records import (
    Cooler,
    Drive,
    ExpansionCard,
    Fan,
    GraphicsCard,
    Lighting,
    Motherboard,
    Need,
    OpticalDrive,
    Part,
    Processor,
    Pump,
)
from service.parts.words import MAIN

_MILLI = 1000
_RAIL = {"12v": ("v12", 0), "5v": ("v5", 1), "3v3": ("v3_3", 2)}
_LIGHT_RAIL = {12: "12v", 5: "5v"}
_ENDS: tuple[End, End] = ("favourable", "unfavourable")


class Figure(NamedTuple):
    """A figure of a part that is a current: its field, its ends [A], whether the sheet states it, how to set it."""

    field: str
    low: float
    high: float
    is_stated: bool
    put: Callable[[Range], Part]


def measured(part: Part, readings: Iterable[Reading]) -> tuple[Part, list[Taken]]:
    """Return a part with the amps that were measured at it, and what became of each reading, in their order."""
    found = []
    for reading in readings:
        figure = None if reading.amps is None else figure_of(part, reading)
        if figure is None or reading.amps is None:
            found.append(Taken(reading=reading))
            continue
        stated = Range(figure.low, figure.high) if figure.is_stated else None
        found.append(Taken(reading=reading, field=figure.field, stated=stated))
        settled = _settled(stated, reading.amps)
        if settled != stated:
            part = figure.put(settled)
    if isinstance(part, Motherboard | GraphicsCard | ExpansionCard):
        return _with_plug_watts(part, found)
    return part, found


def _settled(stated: Range | None, amps: float) -> Range:
    """Return the amps that a figure is taken to have after a reading of it."""
    if stated is None or stated.low <= amps <= stated.high:
        return exactly(amps)
    return Range(stated.low, amps) if amps > stated.high else stated


def figure_of(part: Part, reading: Reading) -> Figure | None:
    """Return the figure of a part that is the current of a reading; None where none is."""
    rail, at_port = reading.rail, reading.connector is not None
    match part:
        case Motherboard() if rail == "5vsb" and (not at_port or reading.connector in MAIN):
            return _standby(part)
        case Processor() if rail == "12v":
            return _at_plugs(part)
        case Drive() | OpticalDrive() if rail in _RAIL and (not at_port or _is_whole(part)):
            return _running(part, rail)
        case Cooler() | Pump() | Fan() if rail == "12v" and (not at_port or _is_whole(part)):
            return _turning(part)
        case Lighting() if rail == _LIGHT_RAIL[part.volts] and (not at_port or _is_whole(part)):
            return _lit(part, rail)
        case _:
            return None


def _is_whole(part: Part) -> bool:
    """Say whether all that a part takes goes through one port."""
    return sum(need.count for need in needs_of(part) if need.connector != "sata-data") == 1


def _standby(part: Motherboard) -> Figure:
    low, high = (draws.board(0, part, Ends(end))[1] / _MILLI for end in _ENDS)
    return Figure("own_amps/5vsb", low, high, part.own_amps.v5sb is not None,
                  lambda amps: replace(part, own_amps=replace(part.own_amps, v5sb=amps)))


def _at_plugs(part: Processor) -> Figure:
    low, high = (processor(0, part, Ends(end)).sustained / _MILLI for end in _ENDS)
    is_stated = part.plug_watts is not None or part.turbo_watts is not None or part.class_watts in CLASS_AMPS
    return Figure("plug_watts", low, high, is_stated,
                  lambda amps: replace(part, plug_watts=Range(amps.low * VOLTS_12, amps.high * VOLTS_12)))


def _running(part: Drive | OpticalDrive, rail: str) -> Figure:
    name, place = _RAIL[rail]
    low, high = (_draw(part, Ends(end)).sustained[place] / _MILLI for end in _ENDS)
    is_stated = getattr(part.running_amps, name) is not None
    return Figure(f"running_amps/{rail}", low, high, is_stated,
                  lambda amps: replace(part, running_amps=replace(part.running_amps, **{name: amps})))


def _draw(part: Drive | OpticalDrive, ends: Ends) -> draws.Draw:
    return draws.drive(0, part, ends) if isinstance(part, Drive) else draws.optical(0, part, ends)


def _turning(part: Cooler | Pump | Fan) -> Figure:
    low, high = (draws.turning(0, part, Ends(end)).sustained[0] / _MILLI for end in _ENDS)
    return Figure("amps", low, high, part.amps is not None, lambda amps: replace(part, amps=amps))


def _lit(part: Lighting, rail: str) -> Figure:
    place = _RAIL[rail][1]
    low, high = (draws.lighting(0, part, Ends(end)).sustained[place] / _MILLI for end in _ENDS)
    return Figure("amps", low, high, part.amps is not None, lambda amps: replace(part, amps=amps))


def _with_plug_watts(
    part: Motherboard | GraphicsCard | ExpansionCard, found: list[Taken]
) -> tuple[Part, list[Taken]]:
    """Set the watts of the plugs that were measured, where all plugs of an entry were; the greatest stands for all."""
    at_ports = {
        (one.reading.connector, one.reading.number): place for place, one in enumerate(found)
        if one.reading.rail == "12v" and one.reading.amps is not None
    }
    needs, numbers = list(part.needs), dict[str, int]()
    for at, need in enumerate(needs):
        first = numbers.get(need.connector, 0)
        numbers[need.connector] = first + need.count
        places = [at_ports.get((need.connector, first + number)) for number in range(need.count)]
        if need.connector not in MAIN and None not in places:
            needs[at] = _read_need(need, at, [place for place in places if place is not None], found)
    return replace(part, needs=tuple(needs)), found


def _read_need(need: Need, at: int, places: list[int], found: list[Taken]) -> Need:
    """Return a need with the watts that were measured, and note with each reading what it settled."""
    watts = need.watts
    stated = None if watts is None else Range(watts.low / VOLTS_12, watts.high / VOLTS_12)
    for place in places:
        found[place] = Taken(reading=found[place].reading, field=f"needs/{at}/watts", stated=stated)
    amps = _settled(stated, max(found[place].reading.amps or 0.0 for place in places))
    return replace(need, watts=Range(amps.low * VOLTS_12, amps.high * VOLTS_12))
