"""From a build and its demand to the formal problem, and the frame that leads back from its indices to parts.

A problem to be planned holds only what a plan may use: full mates, the supply's own family, plugs that are not known
to be too short. Where a wiring is given, each piece named in it is a kind of its own, and the ports named in it have
just that as their source.
"""

from dataclasses import dataclass, field, replace
from typing import Literal, NamedTuple

from service.demand.demand import Demand, Feed
from service.demand.ends import Ends
from service.facts import adapters as adapter_facts
from service.facts import card as card_facts
from service.facts import points, volts
from service.facts.supply import as_printed
from service.parts.build import Build, Plugged
from service.parts.records import Adapter, Cable, Drive, Plug, PowerSupply
from service.parts.words import CARD, DRIVE, POWER_CONNECTORS, SIXTEEN_PIN, Function
from service.wiring import allowances as allow
from service.wiring.allowances import Allowance, merged
from service.wiring.box import FitInfo, Ready, box_of, fit_of, is_unprinted
from service.wiring.mates import function_of, mate
from service.wiring.pieces import AdapterKindOf, CableKindOf, Piece, adapters, below, cables, is_captive, is_never
from service.wiring.problem import (
    AdapterFit,
    AdapterKind,
    Device,
    Fit,
    GroupLimit,
    Points,
    Port,
    PortType,
    Problem,
    Wiring,
)
from service.wiring.reach import REACHES, Reach, Routes, lead_of
from service.wiring.volts import Lead, allowed, allowed_in_a_row, beside

_RAIL = {"12v": 0, "5v": 1, "3v3": 2}
_TWELVE_VOLT_ONLY = "atx12vo"
THREE_VOLT = frozenset({"sata-power"})
"""Plugs of drives that have contacts for 3.3 V."""
OFFERED_POINTS = 10_000
"""JUDGEMENT: more than the cautions of any plan, so that no adapter is bought to be rid of them."""
PortKey = tuple[object, ...]
Offered = tuple[Adapter, int]
Reason = Literal["not_made_for", "no_such_rail", "no_3v3"]
"""Why a plug cannot feed a port: it does not go in, or what is behind it lacks a rail that the device asks."""


class Impossible(NamedTuple):
    """A connection as plugged that does not go together: its unit, what was plugged, the pieces, and why."""

    unit: int
    plugged: Plugged
    plugs: tuple[Piece, ...]
    connectors: tuple[str, ...]
    adapters: tuple[Piece, ...]
    reason: Reason


@dataclass(slots=True)
class Frame:
    """The problem and the way back: index for index the feeds, kinds, fits and adapter fits that it was made of.

    ``too_short`` gives, by port type, the least that the longest plug of the right kind falls short.
    ``without_3v3``: port types for which there are plugs, on cables of which none is known to carry 3.3 V.
    ``no_rail``: the port type of devices that ask a rail that the supply does not have.
    ``is_unlisted``: the sheet does not say which cables the supply has.
    """

    problem: Problem
    feeds: tuple[Feed, ...]
    cables: list[CableKindOf]
    adapters: list[AdapterKindOf]
    segments: list[tuple[tuple[Allowance, ...], ...]]
    sockets: list[tuple[str, ...]]
    adapter_allowances: list[tuple[tuple[Allowance, ...], ...]]
    fits: list[list[FitInfo]]
    adapter_fits: list[list[tuple[Allowance, ...]]]
    too_short: dict[int, float] = field(default_factory=dict)
    without_3v3: set[int] = field(default_factory=set)
    impossible: tuple[Impossible, ...] = ()
    plugged: Wiring | None = None
    no_rail: int | None = None
    is_unlisted: bool = False


class Poser:
    """Builds one problem."""

    def __init__(
        self,
        build: Build,
        supply: int,
        demand: Demand,
        ends: Ends,
        plugged: tuple[Plugged, ...],
        worn: tuple[Plugged, ...] = (),
    ) -> None:
        part = build.units[supply].part
        assert isinstance(part, PowerSupply)
        self.build, self.unit, self.supply, self.ends = build, supply, part, ends
        self.demand = demand
        self.routes = Routes(build, ends)
        self.box = box_of(part, supply)
        self.lines = {(entry.line, entry.copy): unit for unit, entry in enumerate(build.units)}
        self.plugged = plugged
        self.worn = {
            (piece, plug.plug): plug.open_contacts
            for p in worn
            for piece, plug in zip(self.plug_pieces(p), p.plugs, strict=True)
            if plug.open_contacts
        }
        named = frozenset(piece for p in plugged for piece in (*self.plug_pieces(p), *self.adapter_pieces(p)))
        named |= {piece for piece, _ in self.worn}
        self.cables = cables(build, part, self.box.kinds, ends, named)
        self._tell_assumed()
        self.adapters = adapters(build, named)
        self.types: dict[PortKey, int] = {}
        self.port_types: list[PortType] = []
        self.fits: list[list[FitInfo]] = []
        self.adapter_fits: list[list[tuple[Allowance, ...]]] = []
        self.too_short: dict[int, float] = {}
        self.without_3v3: set[int] = set()
        self.fixed_inputs: dict[int, int] = {}
        self.missing_rails = missing_rails(part)
        self.whole_box = all(self.is_boxed(at) for at in range(len(self.box.kinds)))
        asking = filter(asks_three_volt, demand.feeds)
        self.three_volt = any(p.connector in THREE_VOLT for f in asking for p in f.ports)
        self.sixteen = any(p.connector in SIXTEEN_PIN for f in demand.feeds for p in f.ports)

    def _tell_assumed(self) -> None:
        """Keep note of what is taken of cables that do not say: once for the box, once for each beside it."""
        notes = [(self.unit, taken) for taken in self.box.assumed]
        for unit, entry in enumerate(self.build.units):
            if isinstance(entry.part, Cable):
                notes += [(unit, taken) for taken in self.box.assumed_of([("", entry.part)])]
        for unit, taken in notes:
            self.ends.note(unit, taken.field, taken.low, taken.high, taken.used, taken.assumption)

    # -- pieces ---------------------------------------------------------------------------------------------------

    def unit_of(self, line: int, copy: int, quantity: int) -> tuple[int, int]:
        """Return the unit and the copy within it of a piece that is counted through the whole line."""
        return self.lines[line, copy // quantity], copy % quantity

    def plug_pieces(self, plugged: Plugged) -> list[Piece]:
        """Return the cables of a connection, one for each plug."""
        found = []
        for plug in plugged.plugs:
            if plug.cable is not None:
                found.append(Piece(self.unit, plug.cable, plug.copy))
                continue
            part = self.build.units[self.lines[plug.line, 0]].part
            assert isinstance(part, Cable)
            unit, copy = self.unit_of(plug.line, plug.copy, part.quantity)
            found.append(Piece(unit, -1, copy))
        return found

    def adapter_pieces(self, plugged: Plugged) -> list[Piece]:
        """Return the adapters of a connection, the one at the port first."""
        found = []
        for adapter in plugged.adapters:
            part = self.build.units[self.lines[adapter.line, 0]].part
            entry = part if adapter.entry is None else part.adapters[adapter.entry]  # type: ignore[union-attr]
            assert isinstance(entry, Adapter)
            unit, copy = self.unit_of(adapter.line, adapter.copy, entry.quantity)
            found.append(Piece(unit, -1 if adapter.entry is None else adapter.entry, copy))
        return found

    # -- cables ---------------------------------------------------------------------------------------------------

    def sockets_of(self, at: int) -> list[str]:
        """Return the labels of the sockets that a cable of a kind takes, one for each."""
        taken = () if self.takes_none(at) else self.box.occupied(self.cables[at].cable)
        return [label for label, count in taken for _ in range(count)]

    def takes_none(self, at: int) -> bool:
        """Say whether the sockets of a kind are only assumed, and it is looked at as if it took none.

        So it is at the favourable end, and of what a box that is not listed may hold.
        """
        of = self.cables[at]
        if self.box.is_known_place(of.cable) or not self.box.occupied(of.cable):
            return False
        piece = of.pieces[0]
        return self.supply.cables is None or not self.ends.worst(piece.unit, f"{below(piece)}occupies")

    def is_boxed(self, at: int) -> bool:
        """Say whether a kind is one of the box as it was remembered."""
        return at < len(self.box.kinds) and self.cables[at] is self.box.kinds[at]

    def ready(self, at: int) -> Ready:
        """Return the formal kind; where a 16-pin plug is due, a cable without a printed rating has one assumed."""
        of = self.cables[at]
        takes_none = self.takes_none(at)
        if self.is_boxed(at) and not takes_none and not (self.sixteen and self.box.unprinted[at]):
            return self.box.ready[at]
        if takes_none:
            of = of._replace(cable=replace(of.cable, captive=True))  # what takes no socket
        assumed = None
        if self.sixteen and is_unprinted(of.cable):
            piece = of.pieces[0]
            assumed = self.ends.rating(None, piece.unit, f"{below(piece)}rated_watts", card_facts.UNPRINTED_WATTS)
        return self.box.made_ready(of, self.box.stretches(of.cable, assumed))

    # -- adapters -------------------------------------------------------------------------------------------------

    def adapter_limits(self, of: AdapterKindOf) -> tuple[tuple[int, ...], tuple[tuple[Allowance, ...], ...]]:
        """Return how many inputs may be used and what is then allowed."""
        adapter = of.adapter
        rated: dict[int, float | None] = dict(adapter.rated_watts_by_inputs)
        rated = rated or {adapter.takes.count: adapter.rated_watts}
        lead = self._lead(of)
        found = [
            (inputs, beside(
                (self._rating(of, inputs, watts),), allowed(lead._replace(inputs=inputs), adapter.gives.connector),
            ))
            for inputs, watts in sorted(rated.items())
        ]
        return tuple(inputs for inputs, _ in found), tuple(limits for _, limits in found)

    def fixed_limits(self, at: int, inputs: int) -> tuple[tuple[int, ...], tuple[tuple[Allowance, ...], ...]]:
        """Return the same for an adapter that is plugged with so many inputs; too few inputs are good for nothing."""
        allowed, limits = self.adapter_limits(self.adapters[at])
        enough = [limit for count, limit in zip(allowed, limits, strict=True) if count <= inputs]
        return (inputs,), (enough[-1] if enough else (allow.adapter(0.0),),)

    def _lead(self, of: AdapterKindOf) -> Lead:
        """Return an adapter's lead with the fewest inputs in use, thin and long at worst."""
        lead = lead_of(of)
        length = self.ends.load_of(lead.length_mm, lead.unit, lead.field, lead.usual)
        field = f"{below(of.pieces[0], 'adapters')}awg"
        awg = self.ends.load_of(of.adapter.awg, lead.unit, field, volts.USUAL_ADAPTER_AWG)
        adapter = of.adapter
        inputs = min((count for count, _ in adapter.rated_watts_by_inputs), default=adapter.takes.count)
        return Lead(adapter.takes.connector, inputs, int(awg), length)

    def _rating(self, of: AdapterKindOf, inputs: int, watts: float | None) -> Allowance:
        adapter, piece = of.adapter, of.pieces[0]
        takes, gives = adapter.takes.connector, adapter.gives.connector
        scale = 1 if gives in DRIVE else inputs
        usual = adapter_facts.usual_watts(takes, gives)
        rating = self.ends.rating(watts, piece.unit, f"{below(piece, 'adapters')}rated_watts", usual, scale)
        most = card_facts.PERIPHERAL_ADAPTER_WATTS
        if takes == "peripheral-4" and gives in CARD and rating > most.value:
            return allow.adapter(most.value, most.key)
        return allow.adapter(rating, allow.PRINTED_ON_ADAPTER if watts is not None else usual.key)

    def adapter_kind(
        self, of: AdapterKindOf, inputs: tuple[int, ...], limits: tuple[tuple[Allowance, ...], ...], input_type: int
    ) -> AdapterKind:
        """Return the formal kind."""
        adapter = of.adapter
        extra = int(points.MOULDED_POINTS.value) if adapter.moulded else 0
        if adapter.takes.connector == "peripheral-4" and adapter.gives.connector in CARD:
            extra += int(points.PERIPHERAL_CARD_ADAPTER_POINTS.value)
        if of.offered:
            extra += OFFERED_POINTS
        rank = 0 if adapter.moulded else 2 if of.bundled else 1
        return AdapterKind(
            len(of.pieces), rank, adapter.gives.count, input_type, inputs, tuple(merged(each) for each in limits), extra
        )

    # -- port types -----------------------------------------------------------------------------------------------

    def port_type(
        self, connector: str, stays_off: bool, through: int | None = None, three_volt: bool = False
    ) -> int:
        """Return the type of a port that is planned: of a device, or of the inputs of the adapter ``through``.

        ``three_volt``: its device draws 3.3 V there, which a cable without it, and an adapter from a plug without it,
        do not give.
        """
        key = (connector, stays_off, self._apart(through), three_volt)
        if key in self.types:
            return self.types[key]
        at = self.types[key] = len(self.port_types)
        self.reserve()
        boxed = len(self.box.kinds) if self.whole_box and connector in self.box.candidates else 0
        fits = self._boxed_fits(connector, stays_off, at, through) if boxed else []
        for kind in range(boxed, len(self.cables)):
            fits += self._fits(kind, connector, stays_off, at, through)
        into = self._adapter_fits(connector, stays_off, through)
        if three_volt:
            with_it = [(fit, info) for fit, info in fits if not self.lacks_3v3(fit.cable)]
            if fits and not with_it:
                self.without_3v3.add(at)
            fits = with_it
            into = [found for found in into if self.adapters[found[0].adapter].adapter.takes.connector in THREE_VOLT]
        self.fits[at] = [info for _, info in fits]
        self.adapter_fits[at] = [allowances for _, allowances in into]
        self.port_types[at] = PortType(tuple(fit for fit, _ in fits), tuple(fit for fit, _ in into))
        return at

    def _apart(self, through: int | None) -> int | None:
        """Return what tells the inputs of an adapter from those of others: nothing where no length or wire counts.

        That is where no case is listed, no gauge is given, and no other adapter can feed them.
        """
        if through is None or self.routes.case is not None or self.adapters[through].adapter.awg is not None:
            return through
        takes = self.adapters[through].adapter.takes.connector
        return through if any(mate(of.adapter.gives.connector, takes) == "full" for of in self.adapters) else -1

    def unfed_type(self) -> int:
        """Return the type of a port that nothing of this supply can feed: its device asks a rail that is not there."""
        if ("unfed",) not in self.types:
            self.types["unfed",] = len(self.port_types)
            self.reserve()
        return self.types["unfed",]

    def lacks_rail(self, feed: Feed) -> bool:
        """Say whether a feed asks current of a rail that the supply does not have."""
        return any(feed.sustained[rail] or feed.starting[rail] for rail in self.missing_rails)

    def reserve(self) -> None:
        """Make room for one more port type."""
        self.port_types.append(PortType(()))
        self.fits.append([])
        self.adapter_fits.append([])

    def _fits(
        self, kind: int, connector: str, stays_off: bool, at: int, through: int | None
    ) -> list[tuple[Fit, FitInfo]]:
        of = self.cables[kind]
        if of.foreign:
            return []
        found = []
        for number, plug in enumerate(of.cable.plugs):
            if mate(plug.connector, connector) == "full":
                reach = self._reaching(kind, number, connector, at, through)
                if reach is not None:
                    worn = self.worn.get((of.pieces[0], number), 0)
                    found.append(self.fit(kind, number, connector, reach, stays_off, worn, through))
        return found

    def _boxed_fits(
        self, connector: str, stays_off: bool, at: int, through: int | None
    ) -> list[tuple[Fit, FitInfo]]:
        """Return the same for all kinds of a whole box: as remembered, where a plug reaches and costs nothing."""
        found = []
        plain = not stays_off and (through is None or self.adapters[through].adapter.awg is None)
        for kind, number, ready in self.box.candidates[connector]:
            reach = self._reaching(kind, number, connector, at, through)
            if reach is not None:
                as_it_is = plain and reach == REACHES
                found.append(ready if as_it_is else self.fit(kind, number, connector, reach, stays_off, 0, through))
        return found

    def _reaching(self, kind: int, number: int, connector: str, at: int, through: int | None) -> Reach | None:
        """Return how a plug reaches, or note by how much it is known to be short."""
        reach = self.reach_of(self.cables[kind], number, connector, () if through is None else (through,))
        if not reach.short_by_mm:
            return reach
        self.too_short[at] = min(reach.short_by_mm, self.too_short.get(at, reach.short_by_mm))
        return None

    def reach_of(self, of: CableKindOf, number: int, connector: str, through: tuple[int, ...] = ()) -> Reach:
        """Return how far a plug of a kind falls short of a port, or of that to which adapters lead on from it.

        Of two adapters in a row, the one at the plug first, the first has to bring the plug to where itself could feed
        a port. That is all that a plan looks at; it is not held against a wiring in which both together reach.
        """
        if of.bought:
            return REACHES
        if len(through) > 1:
            reach = self.reach_of(of, number, connector, through[:1])
            if not reach.short_by_mm and self.leads_on(*through):
                return reach
        leads = tuple(lead_of(self.adapters[at]) for at in through)
        port = self.adapters[through[-1]].adapter.gives.connector if through else connector
        piece = of.pieces[0]
        return self.routes.reach(of.cable.plugs[number], piece.unit, f"{below(piece)}plugs/{number}", port, leads)

    def leads_on(self, behind: int, ahead: int) -> bool:
        """Say whether an adapter leads on to its port from where the one behind it could feed one itself."""
        here, there = self.adapters[behind].adapter.gives, self.adapters[ahead].adapter.gives
        return self.routes.leads_on(here.connector, there.connector, lead_of(self.adapters[ahead]))

    def fit(
        self,
        kind: int,
        number: int,
        connector: str,
        reach: Reach,
        stays_off: bool,
        open_contacts: int,
        through: int | None = None,
    ) -> tuple[Fit, FitInfo]:
        """Return a plug in a port as the formal fit, and what stands behind it."""
        cable = self.cables[kind].cable
        extra = int(points.THREE_VOLT_POINTS.value) if stays_off and self.carries_3v3(kind) else 0
        beyond = () if through is None else _wires_of(self.adapters[through].adapter, connector)
        return fit_of(cable, kind, number, connector, reach, cable.open_contacts + open_contacts, extra, beyond)

    def carries_3v3(self, kind: int) -> bool:
        """Say whether a cable carries 3.3 V; where it is not said, at worst it does."""
        of = self.cables[kind]
        if of.cable.carries_3v3 is not None:
            return of.cable.carries_3v3
        piece = of.pieces[0]
        return self.ends.worst(piece.unit, f"{below(piece)}carries_3v3")

    def lacks_3v3(self, kind: int) -> bool:
        """Say whether a cable carries no 3.3 V; where it is not said, at worst it does not."""
        of = self.cables[kind]
        if of.cable.carries_3v3 is not None:
            return not of.cable.carries_3v3
        piece = of.pieces[0]
        return self.ends.worst(piece.unit, f"{below(piece)}carries_3v3")

    def _adapter_fits(
        self, connector: str, stays_off: bool, through: int | None
    ) -> list[tuple[AdapterFit, tuple[Allowance, ...]]]:
        return [
            self.adapter_fit(kind, connector, self._three_volt_points(of.adapter) if stays_off else 0, through)
            for kind, of in enumerate(self.adapters)
            if mate(of.adapter.gives.connector, connector) == "full"
            and not is_never(of.adapter)
            and (through is None or self.leads_on(kind, through))
        ]

    def _three_volt_points(self, adapter: Adapter) -> int:
        """Return what an adapter costs at a drive that 3.3 V keeps off: the points of the worst cable it may be on."""
        kinds = (
            kind for kind, of in enumerate(self.cables)
            if adapter.takes.connector in THREE_VOLT
            and any(plug.connector == adapter.takes.connector for plug in of.cable.plugs)
        )
        return int(points.THREE_VOLT_POINTS.value) if any(map(self.carries_3v3, kinds)) else 0

    def adapter_fit(
        self, kind: int, connector: str, extra: int = 0, through: int | None = None
    ) -> tuple[AdapterFit, tuple[Allowance, ...]]:
        """Return an adapter in a port, or in an input of the one ``through`` which it leads on, as the formal fit.

        Beside it what the joint, the adapter's wires, and both leads together allow.
        """
        adapter = self.adapters[kind].adapter
        allowances = allow.joint(adapter.gives.connector, connector, 0) + _wires_of(adapter, adapter.gives.connector)
        if through is not None:
            behind, ahead = self._lead(self.adapters[kind]), self._lead(self.adapters[through])
            gives = self.adapters[through].adapter.gives.connector
            allowances = beside(allowances, allowed_in_a_row(behind, ahead, gives))
        return AdapterFit(kind, merged(allowances), extra), allowances

    # -- devices --------------------------------------------------------------------------------------------------

    def device(self, feed: Feed, given: dict[tuple[int, str, int], int]) -> Device:
        """Return the formal device; ports in ``given`` have the type that was made for what is plugged in them."""
        part = self.build.units[feed.unit].part
        stays_off = isinstance(part, Drive) and part.power_disable
        ports = []
        for port in feed.ports:
            key = (feed.unit, port.connector, port.number)
            if key in given:
                ports.append(Port(given[key], port.required, port.weight, must=True))
            elif self.lacks_rail(feed):
                ports.append(Port(self.unfed_type(), port.required, port.weight))
            else:
                needs_care = stays_off and port.connector == "sata-power"
                asks_3v3 = port.connector in THREE_VOLT and asks_three_volt(feed)
                of = self.port_type(port.connector, needs_care, three_volt=asks_3v3)
                ports.append(Port(of, port.required, port.weight))
        return Device(feed.role, tuple(ports), (*feed.sustained, *feed.starting))

    def finish(self, given: dict[tuple[int, str, int], int] | None = None) -> Frame:
        """Return the frame of all that was entered."""
        limits = [
            self.fixed_limits(at, self.fixed_inputs[at]) if at in self.fixed_inputs else self.adapter_limits(of)
            for at, of in enumerate(self.adapters)
        ]
        devices = tuple(self.device(feed, given or {}) for feed in self.demand.feeds)
        kinds = [self.adapter_kind(of, *limits[at], self.input_type(at)) for at, of in enumerate(self.adapters)]
        cables = [self.ready(at) for at in range(len(self.cables))]
        problem = Problem(
            devices,
            tuple(self.port_types),
            tuple(each.kind for each in cables),
            tuple(s.count for s in self.supply.sockets),
            tuple(kinds),
            tuple(GroupLimit(_RAIL[g.rail], int(as_printed(g.max_amps) * 1000)) for g in self.supply.groups),
            _points(),
        )
        return Frame(
            problem,
            self.demand.feeds,
            self.cables,
            self.adapters,
            [each.stretches for each in cables],
            [each.sockets for each in cables],
            [each for _, each in limits],
            self.fits,
            self.adapter_fits,
            self.too_short,
            self.without_3v3,
            no_rail=self.types.get(("unfed",)),
            is_unlisted=self.supply.cables is None,
        )

    def input_type(self, adapter: int) -> int:
        """Return the port type of an adapter's inputs."""
        fixed = self.types.get(("input of", adapter))
        if fixed is not None:
            return fixed
        connector = self.adapters[adapter].adapter.takes.connector
        return self.port_type(connector, False, adapter, self.three_volt and connector in THREE_VOLT)


def pose(
    build: Build,
    supply: int,
    demand: Demand,
    ends: Ends,
    *,
    virtual: bool = False,
    worn: tuple[Plugged, ...] = (),
    offered: tuple[Offered, ...] = (),
) -> Frame:
    """Return the problem of planning a build.

    ``virtual``: cables of the supply's own family may be bought. ``offered``: so many of these adapters too. ``worn``:
    a wiring as plugged, of which nothing is kept but the contacts that it states open.
    """
    poser = Poser(build, supply, demand, ends, (), worn)
    if virtual:
        poser.cables += _to_be_bought(poser, demand)
    for adapter, count in offered:
        poser.adapters.append(AdapterKindOf(adapter, tuple(Piece(-1, -1, n) for n in range(count)), False, True))
    return poser.finish()


def _to_be_bought(poser: Poser, demand: Demand) -> list[CableKindOf]:
    """Return, for each kind of port, as many single cables of the supply's own family as there are such ports.

    What may lie in a box that is not listed carries 3.3 V where a drive asks it; what is to be bought does not.
    """
    counts: dict[str, int] = {}
    for feed in demand.feeds:
        for port in feed.ports:
            counts[port.connector] = counts.get(port.connector, 0) + 1
    unknown = poser.supply.cables is None and poser.three_volt
    return [
        CableKindOf(
            _plain_cable(connector, carries_3v3=unknown), tuple(Piece(-1, -1, n) for n in range(count)), bought=True
        )
        for connector, count in sorted(counts.items())
        if connector in POWER_CONNECTORS and _has_place(poser, function_of(connector))
    ]


def _has_place(poser: Poser, function: Function) -> bool:
    """Say whether a supply has a place for one more cable of a function: a socket, as far as is known.

    Captive cables have none: all of a supply without sockets, main and processor cables of a semi-modular one, and
    those that are said to be. Of a box that is not listed, the cables that it may hold are looked at.
    """
    if poser.supply.cables is None:
        return True
    if poser.box.labels:
        return function in poser.box.by_function
    boxed = [of.cable for of in poser.box.kinds if function_of(of.cable.plugs[0].connector) == function]
    return not all(cable.captive for cable in boxed) if boxed else not is_captive(poser.supply, function)


def _plain_cable(connector: str, *, carries_3v3: bool) -> Cable:
    rated = card_facts.PLUG_WATTS[connector].value if connector in SIXTEEN_PIN else None
    plugs = card_facts.SINGLE_CABLE_PLUGS.get(connector, 1)
    return Cable(
        plugs=tuple(Plug(connector=connector) for _ in range(plugs)),
        rated_watts=rated,
        captive=False,
        carries_3v3=carries_3v3,
    )


def asks_three_volt(feed: Feed) -> bool:
    """Say whether a device draws current from 3.3 V."""
    rail = _RAIL["3v3"]
    return bool(feed.sustained[rail] or feed.starting[rail])


def missing_rails(supply: PowerSupply) -> tuple[int, ...]:
    """Return the rails, as indices, that a 12 V only supply does not have: 5 V and 3.3 V unless it states them."""
    if supply.design != _TWELVE_VOLT_ONLY:
        return ()
    given = {limit.rail for limit in supply.rails}
    return tuple(at for name, at in _RAIL.items() if name != "12v" and name not in given)


def _wires_of(adapter: Adapter, connector: str) -> tuple[Allowance, ...]:
    """Return what the wires of an adapter at one of its connectors allow; unless their gauge is given, its rating."""
    return () if adapter.awg is None else allow.wires((connector,), adapter.awg, None)


def _points() -> Points:
    share_limit = allow.in_milliamps(card_facts.SHARED_CABLE_WATTS.value)
    return Points(
        int(points.BAND_POINTS.value), int(points.START_WIRE_POINTS.value), int(points.SHARE_POINTS.value), share_limit
    )

