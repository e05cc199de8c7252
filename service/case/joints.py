"""Every fed port with what lies between it and the supply, read back from the judged wiring."""

from typing import Literal

from service.case.case import (
    CardShare,
    FeedAdapter,
    FeedPlug,
    Joint,
    Loose,
    OpenPort,
    Spare,
    Spot,
    Strain,
    Stretch,
)
from service.case.place import Place
from service.case.splits import equal_watts
from service.case.survey import SPOTS, Survey
from service.case.ways import RAILS, stretches
from service.parts.build import Build
from service.wiring.allowances import Allowance
from service.wiring.objective import Connection, Judgement, inputs_of
from service.wiring.pose import Frame, Impossible
from service.wiring.problem import COMFORT_FROM, Fit, Load, PlugSource, Source, Wiring

_MILLI = 1000
MOST_ADAPTERS_IN_A_ROW = 2
_PER_MILLE_TO_PERCENT = 10
Level = Literal["stop", "band", "start_stop", "start_band"]


class Reader:
    """Reads joints, open ports, shares and leftovers out of one judged wiring."""

    def __init__(self, build: Build, frame: Frame, wiring: Wiring, judgement: Judgement) -> None:
        self.build = build
        self.frame = frame
        self.problem = frame.problem
        self.wiring = wiring
        self.judgement = judgement
        self.inputs = inputs_of(wiring)
        self.survey = Survey(frame, wiring, judgement)

    def place_of(self, device: int, port: int) -> Place:
        """Return the place of a device's port."""
        feed = self.frame.feeds[device]
        at = feed.ports[port]
        return Place("port", feed.unit, (at.connector, at.number))

    def joints(self) -> list[Joint]:
        """Return every connection of the wiring."""
        return [self._joint(connection) for connection in self.judgement.connections]

    def _joint(self, connection: Connection) -> Joint:
        feed = self.frame.feeds[connection.device]
        port = feed.ports[connection.port]
        source = self.wiring.sources[connection.device][connection.port]
        assert source is not None
        type_at = self.problem.devices[connection.device].ports[connection.port].type
        plugs: list[FeedPlug] = []
        adapters: list[FeedAdapter] = []
        self._follow(type_at, source, plugs, adapters)
        load = connection.load
        past = connection.overloaded or connection.banded or connection.start_banded
        surveyed = self.survey.of(connection, port.connector)
        return Joint(
            self.place_of(connection.device, connection.port),
            feed.role,
            port.connector,
            port.required,
            _amps(load[:3]),
            _amps(load[3:]),
            load[0] * 12 / _MILLI,
            connection.use / _PER_MILLE_TO_PERCENT,
            tuple(self._strains(connection)) if past else (),
            tuple(plugs),
            tuple(adapters),
            equal_watts=equal_watts(
                self.build.units[feed.unit].part,
                self.problem.devices[connection.device],
                self.wiring.sources[connection.device],
                connection.port,
            ),
            way=surveyed.way,
            drops=surveyed.drops,
            heats=surveyed.heats,
        )

    def stretches(self) -> list[Stretch]:
        """Return what passes each stretch of each cable in use."""
        return stretches(self.frame, self.survey.along)

    # -- the way of the current -------------------------------------------------------------------------------------

    def _follow(self, type_at: int, source: Source, plugs: list[FeedPlug], adapters: list[FeedAdapter]) -> None:
        if isinstance(source, PlugSource):
            plugs.append(self._plug(type_at, source))
            return
        kind = self.problem.port_types[type_at].adapter_fits[source.fit].adapter
        behind = self.inputs[kind, source.copy]
        adapters.append(self._adapter(kind, source.copy, len(behind)))
        of = self.problem.adapters[kind].input_type
        for further in behind:
            if not isinstance(further, PlugSource):
                self._follow(of, further, plugs, adapters)
        straight = [self._plug(of, further) for further in behind if isinstance(further, PlugSource)]
        plugs += sorted(straight, key=lambda plug: plug[:4])

    def _plug(self, type_at: int, source: PlugSource) -> FeedPlug:
        fit = self.problem.port_types[type_at].fits[source.fit]
        info = self.frame.fits[type_at][source.fit]
        of = self.frame.cables[fit.cable]
        piece = of.pieces[source.copy]
        return FeedPlug(
            piece.unit,
            piece.entry,
            piece.copy,
            fit.plug,
            of.cable.plugs[fit.plug].connector,
            "half" if info.mate == "half" else "full",
            self.frame.sockets[fit.cable],
            info.open_contacts - of.cable.open_contacts,
            of.cable.rated_watts,
            of.foreign,
            of.cable.carries_3v3,
            info.reach.short_by_mm,
            info.reach.assumed_short_by_mm,
            put_in=info.put_in,
        )

    def _adapter(self, kind: int, copy: int, inputs: int) -> FeedAdapter:
        of = self.frame.adapters[kind]
        piece = of.pieces[copy]
        adapter = of.adapter
        return FeedAdapter(
            piece.unit,
            piece.entry,
            piece.copy,
            inputs,
            adapter.moulded,
            of.bundled,
            adapter.takes.connector,
            adapter.gives.connector,
            dict(adapter.rated_watts_by_inputs).get(inputs, adapter.rated_watts),
        )

    # -- what is past a limit ---------------------------------------------------------------------------------------

    def _strains(self, connection: Connection) -> list[Strain]:
        return [
            strain
            for place in connection.places
            for allowance in self.survey.allowances(connection, place)
            for strain in _strain(allowance, place.load, SPOTS[place.place.sort])
        ]

    # -- what is left -------------------------------------------------------------------------------------------------

    def open_ports(self) -> list[OpenPort]:
        """Return every port without a source, with the reason."""
        warm = {c.device for c in self.judgement.connections if c.use > COMFORT_FROM}
        return [
            OpenPort(
                self.place_of(device, port),
                feed.role,
                at.connector,
                at.required,
                device in warm and not at.required,
                *self._reason(device, port),
            )
            for device, feed in enumerate(self.frame.feeds)
            for port, at in enumerate(feed.ports)
            if self.wiring.sources[device][port] is None
        ]

    def _reason(self, device: int, port: int) -> tuple[str, float]:
        at = self.problem.devices[device].ports[port].type
        kind = self.problem.port_types[at]
        if at == self.frame.no_rail:
            return "no_such_rail", 0.0
        types = self._behind(at)
        if not any(self.problem.port_types[of].fits for of in types):
            if any(of in self.frame.without_3v3 for of in types):
                return "without_3v3", 0.0
            short = min((self.frame.too_short[of] for of in types if of in self.frame.too_short), default=0.0)
            return ("too_short" if short else "not_listed" if self.frame.is_unlisted else "no_such_plug"), short
        left = [fit for fit in kind.fits if self._is_left(fit)]
        if not left:
            return "none_left", 0.0
        if not any(self._has_sockets(fit.cable) for fit in left):
            return "no_socket_left", 0.0
        return ("not_plugged" if self.wiring is self.frame.plugged else "left_out"), 0.0

    def _behind(self, at: int) -> list[int]:
        """Return a port type and those of the inputs of adapters that may lead to it."""
        found = [at]
        for _ in range(MOST_ADAPTERS_IN_A_ROW):
            into = {fit.adapter for of in found for fit in self.problem.port_types[of].adapter_fits}
            found = sorted({at, *found, *(self.problem.adapters[kind].input_type for kind in into)})
        return found

    def _is_left(self, fit: Fit) -> bool:
        """Say whether any cable of a kind has its plug free."""
        of = self.problem.cables[fit.cable]
        return any((fit.cable, copy, fit.plug) not in self.judgement.plugs for copy in range(of.count))

    def _has_sockets(self, kind: int) -> bool:
        """Say whether one more cable of a kind finds its sockets free."""
        free = list(self.problem.sockets)
        for used, _ in {key[:2] for key in self.judgement.segments}:
            free = [count - taken for count, taken in zip(free, self.problem.cables[used].takes, strict=True)]
        return all(count >= due for count, due in zip(free, self.problem.cables[kind].takes, strict=True))

    def shares(self) -> list[CardShare]:
        """Return each cable that feeds two or more ports of one card past the limit of sharing."""
        found = []
        for device, kind, copy in self.judgement.crowded:
            feed = self.frame.feeds[device]
            through = [
                c.load[0]
                for c in self.judgement.connections
                if c.device == device
                and any(p.place.sort == "segment" and (p.place.of, p.place.number) == (kind, copy) for p in c.places)
            ]
            piece = self.frame.cables[kind].pieces[copy]
            cable = Place("cable", piece.unit, (piece.entry, piece.copy))
            found.append(CardShare(Place("unit", feed.unit), cable, len(through), sum(through) * 12 / _MILLI))
        return found

    def spare(self) -> list[Spare]:
        """Return the cables that are not used."""
        used = {key[:2] for key in self.judgement.segments}
        return sorted(
            Spare(piece.unit, piece.entry, piece.copy)
            for kind, of in enumerate(self.frame.cables)
            for copy, piece in enumerate(of.pieces)
            if (kind, copy) not in used and not of.bought
        )

    def foreign_spare(self) -> list[Place]:
        """Return the cables of another family that lie unused."""
        foreign = {(p.unit, p.entry) for of in self.frame.cables if of.foreign for p in of.pieces}
        return [Place("cable", s.unit, (s.cable, s.copy)) for s in self.spare() if (s.unit, s.cable) in foreign]

    def loose(self) -> list[Loose]:
        """Return the plugs of used cables that feed nothing."""
        found = []
        for kind, copy in sorted({key[:2] for key in self.judgement.segments}):
            of = self.frame.cables[kind]
            piece = of.pieces[copy]
            found += [
                Loose(piece.unit, piece.entry, piece.copy, at, plug.connector)
                for at, plug in enumerate(of.cable.plugs)
                if (kind, copy, at) not in self.judgement.plugs
            ]
        return sorted(found)


def impossible(of: Impossible) -> Joint:
    """Return the joint of a connection that does not go together."""
    at = Place("port", of.unit, (of.plugged.connector, of.plugged.number))
    plugs = tuple(
        FeedPlug(
            piece.unit,
            piece.entry,
            piece.copy,
            plug.plug,
            connector,
            "impossible",
            plug.sockets,
            plug.open_contacts,
            None,
            foreign=False,
            carries_3v3=None,
            short_by_mm=0.0,
            assumed_short_by_mm=0.0,
            put_in=(),
        )
        for piece, plug, connector in zip(of.plugs, of.plugged.plugs, of.connectors, strict=True)
    )
    adapters = tuple(
        FeedAdapter(
            piece.unit,
            piece.entry,
            piece.copy,
            used.inputs,
            moulded=False,
            bundled=False,
            takes="",
            gives="",
            rated_watts=None,
        )
        for piece, used in zip(of.adapters, of.plugged.adapters, strict=True)
    )
    return Joint(
        at,
        "rest",
        of.plugged.connector,
        True,
        (0.0, 0.0, 0.0),
        (0.0, 0.0, 0.0),
        0.0,
        0.0,
        (),
        plugs,
        adapters,
        of.reason,
    )


def _strain(allowance: Allowance, load: Load, spot: Spot) -> list[Strain]:
    """Return what of one limit is passed: the sustained stop or else the band, the start-up stop or else its band."""
    limits = allowance.limits
    sustained, starting = load[allowance.rail], load[allowance.rail + 3]
    found: list[tuple[Level, int, int]] = []
    if sustained > limits.stop:
        found.append(("stop", sustained, limits.stop))
    elif sustained > limits.band:
        found.append(("band", sustained, limits.band))
    if starting > limits.start_stop:
        found.append(("start_stop", starting, limits.start_stop))
    elif starting > limits.start_band:
        found.append(("start_band", starting, limits.start_band))
    each = max(1, allowance.contacts) * _MILLI
    return [
        Strain(
            allowance.cause,
            level,
            RAILS[allowance.rail],
            current / each,
            limit / each,
            allowance.contacts,
            allowance.sixteen_pin,
            spot,
        )
        for level, current, limit in found
    ]


def _amps(current: tuple[int, ...]) -> tuple[float, float, float]:
    return (current[0] / _MILLI, current[1] / _MILLI, current[2] / _MILLI)
