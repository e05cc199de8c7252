"""A wiring as it is plugged, put into the terms of the formal problem so that the same judge weighs it.

What cannot go into a port at all stays outside of the problem and is named; half mates, plugs that are too short and
cables of another family go in, for they can be plugged, and are marked for the rules.
"""

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from service.demand.demand import Demand
from service.demand.ends import Ends
from service.parts.build import Build, Plugged, PluggedPlug
from service.wiring import allowances as allow
from service.wiring.box import ALL_TAKEN, FitInfo
from service.wiring.mates import mate
from service.wiring.pieces import Piece
from service.wiring.pose import THREE_VOLT, Frame, Impossible, Poser, Reason, asks_three_volt
from service.wiring.problem import AdapterFit, AdapterSource, Fit, PlugSource, PortType, Source, Wiring

PortAt = tuple[int, str, int]


class _Placed(NamedTuple):
    """A port's type and source as plugged."""

    type: int
    source: Source


def pose_plugged(build: Build, supply: int, demand: Demand, ends: Ends, plugged: tuple[Plugged, ...]) -> Frame:
    """Return the problem in which ``plugged`` is all that its ports can have; the others may be planned.

    The frame's ``plugged`` is the wiring with just what was given, its ``impossible`` what fits into no port.
    """
    poser = Poser(build, supply, demand, ends, plugged)
    room = _Room(poser, plugged)
    placed: dict[PortAt, _Placed] = {}
    starved = {
        (feed.unit, port.connector, port.number)
        for feed in poser.demand.feeds
        if poser.lacks_rail(feed)
        for port in feed.ports
    }
    three_volt = {
        (feed.unit, port.connector, port.number)
        for feed in poser.demand.feeds
        if asks_three_volt(feed)
        for port in feed.ports
        if port.connector in THREE_VOLT
    }
    impossible = []
    for each in plugged:
        at = (poser.lines[each.line, each.copy], each.connector, each.number)
        reason: Reason | None = None
        if not _is_possible(poser, each):
            reason = "not_made_for"
        elif at in starved:
            reason = "no_such_rail"
        elif at in three_volt and _lacks_three_volt(poser, each):
            reason = "no_3v3"
        if reason is None:
            placed[at] = room.place(each)
        else:
            impossible.append(_impossible(poser, at[0], each, reason))
    frame = poser.finish({at: found.type for at, found in placed.items()})
    frame.impossible = tuple(impossible)
    sources = tuple(
        tuple(_source(placed.get((feed.unit, port.connector, port.number))) for port in feed.ports)
        for feed in frame.feeds
    )
    frame.plugged = Wiring(sources, tuple(sorted((kind, 0, inputs) for kind, inputs in room.inputs.items())))
    return frame


def _source(placed: _Placed | None) -> Source | None:
    return None if placed is None else placed.source


def _lacks_three_volt(poser: Poser, plugged: Plugged) -> bool:
    """Say whether a connection has a cable that carries no 3.3 V, or an adapter from a plug without it."""
    cables = [_kind(poser, piece) for piece in poser.plug_pieces(plugged)]
    adapters = [poser.adapters[_adapter_kind(poser, piece)].adapter for piece in poser.adapter_pieces(plugged)]
    return any(map(poser.lacks_3v3, cables)) or any(
        adapter.takes.connector not in THREE_VOLT for adapter in adapters
    )


def _is_possible(poser: Poser, plugged: Plugged) -> bool:
    """Say whether every plug and adapter of a connection goes in where it is said to be."""
    plugs = [
        poser.cables[_kind(poser, piece)].cable.plugs[p.plug].connector
        for piece, p in zip(poser.plug_pieces(plugged), plugged.plugs, strict=True)
    ]
    if not plugged.adapters:
        return mate(plugs[0], plugged.connector) != "impossible"
    kinds = [poser.adapters[_adapter_kind(poser, piece)].adapter for piece in poser.adapter_pieces(plugged)]
    first, inner = kinds[0], kinds[1:]
    if mate(first.gives.connector, plugged.connector) == "impossible":
        return False
    if any(mate(adapter.gives.connector, first.takes.connector) == "impossible" for adapter in inner):
        return False
    ends = [
        adapter.takes.connector
        for adapter, used in zip(inner, plugged.adapters[1:], strict=True)
        for _ in range(used.inputs)
    ]
    ends += [first.takes.connector] * (len(plugs) - len(ends))
    return len(ends) == len(plugs) and all(mate(p, e) != "impossible" for p, e in zip(plugs, ends, strict=True))


def _impossible(poser: Poser, unit: int, plugged: Plugged, reason: Reason) -> Impossible:
    pieces = tuple(poser.plug_pieces(plugged))
    connectors = tuple(
        poser.cables[_kind(poser, piece)].cable.plugs[p.plug].connector
        for piece, p in zip(pieces, plugged.plugs, strict=True)
    )
    return Impossible(unit, plugged, pieces, connectors, tuple(poser.adapter_pieces(plugged)), reason)


def _kind(poser: Poser, piece: Piece) -> int:
    return next(at for at, of in enumerate(poser.cables) if of.pieces == (piece,))


def _adapter_kind(poser: Poser, piece: Piece) -> int:
    return next(at for at, of in enumerate(poser.adapters) if of.pieces == (piece,))


class _Plugged(NamedTuple):
    """A plug in use and the kind of its cable."""

    kind: int
    plug: PluggedPlug


class _Room:
    """Makes port types for what is plugged; an adapter that feeds several ports, or others, is entered once.

    ``ways``: the adapters that each leads through on its way to ports, itself first.
    """

    def __init__(self, poser: Poser, plugged: Iterable[Plugged]) -> None:
        self.poser = poser
        self.ways: dict[int, set[tuple[int, ...]]] = {}
        for each in plugged:
            first, *behind = [_adapter_kind(poser, piece) for piece in poser.adapter_pieces(each)] or [-1]
            for kind in (first, *behind):
                self.ways.setdefault(kind, set()).add((kind,) if kind == first else (kind, first))
        self.inputs: dict[int, tuple[Source, ...]] = {}
        self.free = Counter({socket.label: socket.count for socket in poser.supply.sockets})
        self.seated: set[int] = set()

    def place(self, plugged: Plugged) -> _Placed:
        """Return the port type and source of one connection."""
        plugs = [
            _Plugged(_kind(self.poser, piece), p)
            for piece, p in zip(self.poser.plug_pieces(plugged), plugged.plugs, strict=True)
        ]
        if not plugged.adapters:
            return _Placed(self._type([self._fit(plugs[0], plugged.connector)], []), PlugSource(0, 0))
        kinds = [_adapter_kind(self.poser, piece) for piece in self.poser.adapter_pieces(plugged)]
        if kinds[0] not in self.inputs:
            self._enter(kinds, [used.inputs for used in plugged.adapters], plugs)
        return _Placed(self._type([], [self.poser.adapter_fit(kinds[0], plugged.connector)]), AdapterSource(0, 0))

    def _enter(self, kinds: list[int], inputs: list[int], plugs: list[_Plugged]) -> None:
        """Enter the adapters of a connection: inner ones on the first inputs of the first, plugs in order."""
        inner_sources: list[Source] = []
        into = []
        for place, (kind, count) in enumerate(zip(kinds[1:], inputs[1:], strict=True)):
            mine, plugs = plugs[:count], plugs[count:]
            takes = self.poser.adapters[kind].adapter.takes.connector
            if kind not in self.inputs:
                fits = [self._fit(plug, takes, kind) for plug in mine]
                self._fix(kind, fits, [], [PlugSource(n, 0) for n in range(len(mine))])
            ahead = self.poser.adapters[kinds[0]].adapter.takes.connector
            into.append(self.poser.adapter_fit(kind, ahead, through=kinds[0]))
            inner_sources.append(AdapterSource(place, 0))
        takes = self.poser.adapters[kinds[0]].adapter.takes.connector
        direct: list[Source] = [PlugSource(n, 0) for n in range(len(plugs))]
        fits = [self._fit(plug, takes, kinds[0]) for plug in plugs]
        self._fix(kinds[0], fits, into, [*inner_sources, *direct])

    def _fix(
        self,
        kind: int,
        fits: list[tuple[Fit, FitInfo]],
        into: list[tuple[AdapterFit, tuple[allow.Allowance, ...]]],
        sources: list[Source],
    ) -> None:
        self.inputs[kind] = tuple(sources)
        self.poser.fixed_inputs[kind] = len(sources)
        self.poser.types["input of", kind] = self._type(fits, into)

    def _type(self, fits: list[tuple[Fit, FitInfo]], into: list[tuple[AdapterFit, tuple[allow.Allowance, ...]]]) -> int:
        poser = self.poser
        at = len(poser.port_types)
        poser.reserve()
        poser.port_types[at] = PortType(tuple(fit for fit, _ in fits), tuple(fit for fit, _ in into))
        poser.fits[at] = [info for _, info in fits]
        poser.adapter_fits[at] = [allowances for _, allowances in into]
        return at

    def _fit(self, plug: _Plugged, connector: str, into: int | None = None) -> tuple[Fit, FitInfo]:
        """Return a plug in a port, or in an adapter, by whichever of the ways on from it leaves it shortest."""
        kind, number = plug.kind, plug.plug.plug
        of = self.poser.cables[kind]
        ways = [()] if into is None else sorted(self.ways[into])
        reach = max(self.poser.reach_of(of, number, connector, way) for way in ways)
        fit, info = self.poser.fit(kind, number, connector, reach, False, plug.plug.open_contacts, into)
        return fit, info._replace(put_in=self._wrongly_in(kind, plug.plug.sockets))

    def _wrongly_in(self, kind: int, sockets: tuple[str, ...]) -> tuple[str, ...]:
        """Return the sockets not its own in which a cable stands, ``ALL_TAKEN`` where none is left, else ()."""
        cable = self.poser.cables[kind].cable
        own = self.poser.sockets_of(kind)
        if kind not in self.seated:
            self.seated.add(kind)
            self.free.subtract(own)
        if sorted(sockets) != sorted(own) and self.poser.box.is_known_place(cable) and sockets:
            return sockets
        return ALL_TAKEN if any(self.free[label] < 0 for label in own) else ()
