"""Does a wiring as plugged speak of things that are there, and of each no more than once?

Whether a plug fits its port is no question here: a wrong mate is judged, not refused.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from service.demand.needs import needs_of
from service.intake.faults import Fault
from service.parts.build import Plugged, PluggedAdapter, PluggedPlug
from service.parts.records import Adapter, Cable, Part, PowerSupply
from service.parts.words import SPLIT_PLUGS

_HALF_PORTS = {"cpu-4+4": frozenset({"cpu-4"})}
_NO_LINE = "points at a line that the sheet does not have"


class _Listed(NamedTuple):
    """What the sheet lists: parts and quantities by line."""

    parts: Sequence[Part]
    quantities: Sequence[int]


class _Fed(NamedTuple):
    """How an adapter is fed: inputs in use, adapters on the first of them, and all plugs in order."""

    inputs: int
    behind: tuple[PluggedAdapter, ...]
    plugs: tuple[PluggedPlug, ...]


class _Taken:
    """What earlier connections use."""

    def __init__(self) -> None:
        self.ports: set[tuple[int, int, str, int]] = set()
        self.halves: dict[tuple[int, int | None, int, int], int] = {}
        self.sockets: dict[tuple[int, int | None, int], tuple[str, ...]] = {}
        self.adapters: dict[tuple[int, int | None, int], _Fed] = {}
        self.outputs: dict[tuple[int, int | None, int], int] = {}

    def take(self, one: PluggedAdapter, fed: _Fed, listed: _Listed) -> bool | None:
        """Take an output of an adapter; None: it was not in use, False: it is fed in another way, or has no more."""
        key = (one.line, one.entry, one.copy)
        earlier, adapter = self.adapters.setdefault(key, fed), _adapter(one, listed)
        self.outputs[key] = self.outputs.get(key, 0) + 1
        if self.outputs[key] == 1:
            return None
        return earlier == fed and adapter is not None and self.outputs[key] <= adapter.gives.count


def wiring_faults(wiring: Sequence[Plugged], parts: Sequence[Part], quantities: Sequence[int]) -> Iterator[Fault]:
    """Yield each reference to what is not there, and each thing that is used twice; lines are already resolved."""
    listed, taken = _Listed(parts, quantities), _Taken()
    for index, plugged in enumerate(wiring):
        at = f"/wiring/{index}"
        faults = [*_device_faults(at, plugged, listed), *_way_faults(at, plugged, listed)]
        yield from faults if faults else _use(at, plugged, listed, taken)


def _device_faults(at: str, plugged: Plugged, listed: _Listed) -> Iterator[Fault]:
    """Yield what is wrong with the device, its copy and its port."""
    if plugged.line >= len(listed.parts):
        yield Fault(f"{at}/part", _NO_LINE)
        return
    if plugged.copy >= listed.quantities[plugged.line]:
        yield Fault(f"{at}/copy", f"is above the quantity of the line, {listed.quantities[plugged.line]}")
    needs = needs_of(listed.parts[plugged.line])
    ports = sum(need.count for need in needs if need.connector == plugged.connector)
    if ports == 0:
        yield Fault(f"{at}/port/connector", "is not a port of this part")
    elif plugged.number >= ports:
        yield Fault(f"{at}/port/number", f"is above the number of such ports of this part, {ports}")


def _way_faults(at: str, plugged: Plugged, listed: _Listed) -> Iterator[Fault]:
    """Yield what is wrong with the adapters and plugs on the way to the port."""
    faults = [
        *(fault for place, one in enumerate(plugged.adapters)
          for fault in _adapter_faults(f"{at}/adapters/{place}", one, listed)),
        *(fault for place, one in enumerate(plugged.plugs)
          for fault in _plug_faults(f"{at}/plugs/{place}", one, listed)),
    ]
    yield from faults
    if faults:
        return
    if plugged.adapters and len(plugged.adapters) > 1 + plugged.adapters[0].inputs:
        yield Fault(f"{at}/adapters", "has more adapters behind the first one than inputs of it are in use")
        return
    due = len(_served(plugged, listed))
    if due != len(plugged.plugs):
        yield Fault(f"{at}/plugs", f"must list {due}: one for the port, or one for each input in use")


def _adapter_faults(at: str, one: PluggedAdapter, listed: _Listed) -> Iterator[Fault]:
    """Yield what is wrong with one adapter on the way."""
    if one.line >= len(listed.parts):
        yield Fault(f"{at}/adapter", _NO_LINE)
        return
    adapter = _adapter(one, listed)
    if adapter is None:
        yield Fault(f"{at}/adapter", "points at no adapter")
        return
    copies = listed.quantities[one.line] * adapter.quantity
    if one.copy >= copies:
        yield Fault(f"{at}/copy", f"is above the number of such adapters, {copies}")
    if one.inputs > adapter.takes.count:
        yield Fault(f"{at}/inputs", f"is above the number of inputs of this adapter, {adapter.takes.count}")


def _plug_faults(at: str, one: PluggedPlug, listed: _Listed) -> Iterator[Fault]:
    """Yield what is wrong with one plug on the way."""
    if one.line >= len(listed.parts):
        yield Fault(f"{at}/cable", _NO_LINE)
        return
    cable = _cable(one, listed)
    if cable is None:
        yield Fault(f"{at}/cable", "points at no cable")
        return
    copies = listed.quantities[one.line] * cable.quantity
    if one.copy >= copies:
        yield Fault(f"{at}/copy", f"is above the number of such cables, {copies}")
    if one.plug >= len(cable.plugs):
        yield Fault(f"{at}/plug", f"is above the number of plugs of this cable, {len(cable.plugs)}")
    labels = {
        socket.label for part in listed.parts if isinstance(part, PowerSupply) for socket in part.sockets
    }
    for place, label in enumerate(one.sockets):
        if label not in labels:
            yield Fault(f"{at}/sockets/{place}", "names a socket that the supply does not list")


def _adapter(one: PluggedAdapter, listed: _Listed) -> Adapter | None:
    """Return the adapter that is the line, or the bundled one."""
    part = listed.parts[one.line]
    if one.entry is None:
        return part if isinstance(part, Adapter) else None
    bundled: tuple[Adapter, ...] = getattr(part, "adapters", ())
    return bundled[one.entry] if one.entry < len(bundled) else None


def _cable(one: PluggedPlug, listed: _Listed) -> Cable | None:
    """Return the cable that is the line, or the boxed one."""
    part = listed.parts[one.line]
    if one.cable is None:
        return part if isinstance(part, Cable) else None
    boxed = part.cables or () if isinstance(part, PowerSupply) else ()
    return boxed[one.cable] if one.cable < len(boxed) else None


def _served(plugged: Plugged, listed: _Listed) -> list[str]:
    """Return the connectors that the plugs serve, in order: inputs of adapters behind the first, then its own."""
    if not plugged.adapters:
        return [plugged.connector]
    served: list[str] = []
    first, *behind = plugged.adapters
    for one, inputs in [*((one, one.inputs) for one in behind), (first, first.inputs - len(behind))]:
        adapter = _adapter(one, listed)
        served += [adapter.takes.connector if adapter else ""] * inputs
    return served


def _use(at: str, plugged: Plugged, listed: _Listed, taken: _Taken) -> Iterator[Fault]:
    """Take the port, adapters and plugs of a connection; yield what is taken already."""
    port = (plugged.line, plugged.copy, plugged.connector, plugged.number)
    if port in taken.ports:
        yield Fault(f"{at}/port", "is fed by an earlier connection already")
    taken.ports.add(port)
    used: Sequence[int] = range(len(plugged.plugs))
    if plugged.adapters:
        used, twice = _use_adapters(plugged, listed, taken)
        for place in twice:
            yield Fault(f"{at}/adapters/{place}", "is in use already, with no output left or fed in another way")
    served = _served(plugged, listed)
    for place in used:
        yield from _use_plug(f"{at}/plugs/{place}", plugged.plugs[place], served[place], listed, taken)


def _use_adapters(plugged: Plugged, listed: _Listed, taken: _Taken) -> tuple[Sequence[int], list[int]]:
    """Take the adapters of a connection; return which plugs are not in them yet, and which adapters cannot be had.

    An adapter of several outputs may serve several ports, or ports and other adapters, if it is fed the same each time.
    """
    first, *behind = plugged.adapters
    whole = _Fed(first.inputs, tuple(behind), plugged.plugs)
    known = taken.take(first, whole, listed)
    if known is not None:
        return (), [] if known else [0]
    used: list[int] = []
    twice: list[int] = []
    start = 0
    for place, one in enumerate(behind, start=1):
        mine = range(start, start + one.inputs)
        start += one.inputs
        known = taken.take(one, _Fed(one.inputs, (), plugged.plugs[mine.start : mine.stop]), listed)
        if known is None:
            used += mine
        elif not known:
            twice.append(place)
    return [*used, *range(start, len(plugged.plugs))], twice


def _use_plug(at: str, one: PluggedPlug, served: str, listed: _Listed, taken: _Taken) -> Iterator[Fault]:
    """Take a plug, or half of one that splits."""
    cable = _cable(one, listed)
    connector = cable.plugs[one.plug].connector if cable else ""
    whole = 2 if connector in SPLIT_PLUGS else 1
    key = (one.line, one.cable, one.copy)
    halves = 1 if served in _HALF_PORTS.get(connector, ()) else whole
    taken.halves[*key, one.plug] = taken.halves.get((*key, one.plug), 0) + halves
    if taken.halves[*key, one.plug] > whole:
        yield Fault(at, "is a plug that is in use already")
    named = tuple(sorted(one.sockets))
    if named and taken.sockets.setdefault(key, named) != named:
        yield Fault(f"{at}/sockets", "differ from the sockets named for this cable before")
