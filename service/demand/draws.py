"""What the small devices draw: drives, coolers, pumps, fans, controllers, lights, memory, boards.

Every function returns a ``Draw`` of one unit at the end that ``Ends`` chooses; where a device plugs in is settled
later. A rail that is not given is assumed, each by itself, so that leaving one out never makes a device lighter than
usual.
"""

from collections.abc import Mapping
from typing import NamedTuple

from service.demand.current import milliamps, milliamps_at, most
from service.demand.demand import NONE, Role, Triple
from service.demand.ends import Ends
from service.demand.needs import needs_of
from service.facts import drives, rest
from service.facts.fact import Assumption
from service.facts.headers import PLAIN_LIGHT_VOLTS
from service.parts.figures import Range
from service.parts.records import (
    Backplane,
    Controller,
    Cooler,
    Drive,
    Fan,
    Lighting,
    Memory,
    Motherboard,
    Need,
    OpticalDrive,
    Pump,
    RailRange,
)

_FIELDS = (("v12", "12v"), ("v5", "5v"), ("v3_3", "3v3"))


class Draw(NamedTuple):
    """A device's own draw [mA on 12 V, 5 V, 3.3 V], its needs, and the role its plugs have in a plan.

    ``starting``: while drives spin up, for seconds. ``moment``: what it takes on top of that for a second at most,
    which counts for the supply as a whole, and warms no contact and no wire.
    """

    unit: int
    role: Role
    needs: tuple[Need, ...]
    sustained: Triple
    starting: Triple
    moment: Triple = NONE


def drive(unit: int, part: Drive, ends: Ends) -> Draw:
    """Return the draw of a disk or solid-state drive; unknown size is taken as the heaviest, 3.5 inch."""
    size = part.size or drives.HEAVIEST_SIZE
    running = _by_rail(part.running_amps, unit, "running_amps", drives.RUNNING_AMPS[size], ends)
    starting = _by_rail(part.starting_amps, unit, "starting_amps", drives.STARTING_AMPS[size], ends)
    return Draw(unit, "drive", needs_of(part), running, most(running, starting))


def optical(unit: int, part: OpticalDrive, ends: Ends) -> Draw:
    """Return the draw of a drive for discs; it starts when it is used, so its start-up is its running draw."""
    running = _by_rail(part.running_amps, unit, "running_amps", drives.OPTICAL_AMPS, ends)
    return Draw(unit, "drive", needs_of(part), running, running)


def turning(unit: int, part: Cooler | Pump | Fan, ends: Ends) -> Draw:
    """Return the draw of a thing with a motor on 12 V; a fan has started within a second, a pump takes longer."""
    is_pump = isinstance(part, Pump)
    usual = rest.PUMP_AMPS if is_pump else rest.FAN_AMPS
    start = rest.PUMP_STARTING_AMPS if is_pump else rest.FAN_STARTING_AMPS
    running = milliamps(ends.load(part.amps, unit, "amps", usual))
    starting = max(running, milliamps(ends.load(part.starting_amps, unit, "starting_amps", start)))
    at_plugs = starting if is_pump else running
    return Draw(unit, "rest", needs_of(part), (running, 0, 0), (at_plugs, 0, 0), (starting - at_plugs, 0, 0))


def controller(unit: int, part: Controller, ends: Ends) -> Draw:
    """Return a hub's own draw, without what hangs on it."""
    own = (milliamps(ends.load(part.amps, unit, "amps", rest.CONTROLLER_AMPS)), 0, 0)
    return Draw(unit, "rest", needs_of(part), own, own)


def lighting(unit: int, part: Lighting, ends: Ends) -> Draw:
    """Return the draw of a light: amps if given, else all its lights full on."""
    if part.amps is not None or part.leds is None:
        amps = ends.load(part.amps, unit, "amps", rest.LIGHT_AMPS)
    else:
        amps = part.leds * ends.load(None, unit, "amps", rest.LED_AMPS)
    own = (milliamps(amps), 0, 0) if part.volts == PLAIN_LIGHT_VOLTS.value else (0, milliamps(amps), 0)
    return Draw(unit, "rest", needs_of(part), own, own)


def memory(unit: int, part: Memory, ends: Ends) -> Draw:
    """Return the draw of a kit of memory, from 5 V where its modules convert 5 V themselves, else from 12 V."""
    watts = ends.load(part.watts, unit, "watts", rest.MEMORY_MODULE_WATTS, part.modules)
    fed_from_5 = (part.type or "").lower() in rest.MEMORY_TYPES_ON_5_VOLTS
    own = (0, milliamps_at(watts, 5.0), 0) if fed_from_5 else (milliamps_at(watts, 12.0), 0, 0)
    return Draw(unit, "rest", (), own, own)


def backplane(unit: int, part: Backplane) -> Draw:
    """Return a drive cage, which draws nothing itself."""
    return Draw(unit, "drive", needs_of(part), NONE, NONE)


def board(unit: int, part: Motherboard, ends: Ends) -> tuple[Triple, int]:
    """Return what a board draws itself on 12 V, 5 V and 3.3 V, and on 5 V standby."""
    own = _by_rail(part.own_amps, unit, "own_amps", rest.BOARD_AMPS, ends)
    standby = milliamps(ends.load(part.own_amps.v5sb, unit, "own_amps/5vsb", rest.BOARD_STANDBY_AMPS))
    return own, standby


def _by_rail(given: RailRange, unit: int, field: str, usual: Mapping[str, Assumption], ends: Ends) -> Triple:
    amps = [_rail(getattr(given, name), unit, f"{field}/{rail}", usual[rail], ends) for name, rail in _FIELDS]
    return (amps[0], amps[1], amps[2])


def _rail(given: Range | None, unit: int, field: str, usual: Assumption, ends: Ends) -> int:
    if given is None and usual.low == usual.high == 0:
        return 0
    return milliamps(ends.load(given, unit, field, usual))
