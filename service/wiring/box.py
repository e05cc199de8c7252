"""What a supply says of the cables in its box, whatever they are to feed: made once for each supply and remembered.

Nothing here hangs on a range or on what is listed beside the supply, so the same supply gives the same box in each
build. It is remembered by the whole record: digests leave names out, and groups are told apart by their names.
"""

from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from service.facts import card as card_facts
from service.facts import points
from service.facts.box import CABLE_16_PIN_AWG, CABLE_AWG, CABLE_SOCKET, CABLE_WIRES, NO_CABLE_SOCKET
from service.facts.contacts import WIRES
from service.facts.fact import Assumption
from service.parts.records import Cable, PowerSupply
from service.parts.words import POWER_CONNECTORS, SIXTEEN_PIN, Function
from service.wiring import allowances as allow
from service.wiring.allowances import Allowance, merged
from service.wiring.mates import function_of, halves_of, halves_taken, mate
from service.wiring.pieces import CableKindOf, in_the_box
from service.wiring.problem import CableKind, Fit
from service.wiring.reach import REACHES, Reach

REMEMBERED = 64
"""JUDGEMENT: a usual box takes about 25 KiB, the largest that may be sent 475 KiB, so all of them 30 MiB at most."""

_LIKE: dict[Function, Function] = {"card": "processor", "processor": "card"}
ALL_TAKEN = ("all_taken",)
"""Where a cable is put whose sockets all have another cable in them."""
Stretches = tuple[tuple[Allowance, ...], ...]


class FitInfo(NamedTuple):
    """What stands behind a fit: what the joint allows, how far the plug is short, how it mates, contacts known open.

    ``put_in``: the sockets that are not the cable's own in which it is said to stand, or ``ALL_TAKEN``; () where it
    stands well.
    """

    allowances: tuple[Allowance, ...]
    reach: Reach
    mate: str
    open_contacts: int
    put_in: tuple[str, ...] = ()


class Ready(NamedTuple):
    """A kind of cable put formally, what each of its stretches allows, and the sockets that one of it takes."""

    kind: CableKind
    stretches: Stretches
    sockets: tuple[str, ...]


class Candidate(NamedTuple):
    """A plug of the box that mates fully with a port, and its fit where it reaches."""

    kind: int
    plug: int
    fit: tuple[Fit, FitInfo]


class Taken(NamedTuple):
    """A figure of a cable that is not stated: its field below the part, its range, and what of it is taken."""

    field: str
    low: float
    high: float
    used: float
    assumption: Assumption


class Box:
    """One supply: its sockets, its groups, its cables by kind."""

    def __init__(self, supply: PowerSupply, unit: int) -> None:
        self.supply = supply
        self.labels = {socket.label: at for at, socket in enumerate(supply.sockets)}
        self.groups = {group.name: at for at, group in enumerate(supply.groups)}
        self.by_function = self._sockets_by_function()
        self.kinds = in_the_box(supply, unit)
        self.ready = tuple(self.made_ready(of, self.stretches(of.cable)) for of in self.kinds)
        own = ((f"cables/{of.pieces[0].entry}/", of.cable) for of in self.kinds)
        self.assumed = self.assumed_of(own)
        self.unprinted = tuple(is_unprinted(of.cable) for of in self.kinds)
        self.candidates: dict[str, tuple[Candidate, ...]] = {port: self._candidates(port) for port in POWER_CONNECTORS}

    def _sockets_by_function(self) -> dict[str, tuple[tuple[str, int], ...]]:
        found: dict[str, tuple[tuple[str, int], ...]] = {}
        for cable in self.supply.cables or ():
            if cable.occupies:
                found.setdefault(function_of(cable.plugs[0].connector), cable.occupies)
        return found

    def _candidates(self, connector: str) -> tuple[Candidate, ...]:
        return tuple(
            Candidate(kind, number, fit_of(of.cable, kind, number, connector, REACHES, of.cable.open_contacts))
            for kind, of in enumerate(self.kinds)
            for number, plug in enumerate(of.cable.plugs)
            if mate(plug.connector, connector) == "full"
        )

    def made_ready(self, of: CableKindOf, stretches: Stretches) -> Ready:
        """Return a kind of cable, of this box or beside it, with all that does not hang on what it feeds."""
        taken = self.occupied(of.cable)
        takes = [0] * len(self.labels)
        for label, count in taken:
            takes[self.labels[label]] = count
        kind = CableKind(
            len(of.pieces),
            tuple(takes),
            tuple(halves_of(plug.connector) for plug in of.cable.plugs),
            tuple(merged(stretch) for stretch in stretches),
            self.groups_of(of.cable, taken),
            of.bought,
        )
        return Ready(kind, stretches, tuple(label for label, count in taken for _ in range(count)))

    def occupied(self, cable: Cable) -> tuple[tuple[str, int], ...]:
        """Return the sockets a cable takes: its own, else those that a boxed cable for the same purpose takes.

        Failing both, one of the label that fits; none where no label does.
        """
        if cable.captive or not self.labels:
            return ()
        own = cable.occupies or self.by_function.get(function_of(cable.plugs[0].connector)) or self._fitting(cable)
        return tuple((label, count) for label, count in own if label in self.labels)

    def is_known_place(self, cable: Cable) -> bool:
        """Say whether the sockets that a cable takes, or that it takes none, are stated and not only assumed."""
        stated = cable.occupies or self.by_function.get(function_of(cable.plugs[0].connector))
        return bool(cable.captive or not self.labels or stated)

    def _fitting(self, cable: Cable) -> tuple[tuple[str, int], ...]:
        """Return one socket of the only label that no boxed cable names; of several of these none can be told.

        Where each is named: of the only label there is, else what a processor's cable takes, for a card's, and the
        other way round, since these often share their sockets.
        """
        named = {label for boxed in self.supply.cables or () for label, _ in boxed.occupies}
        open_to = [label for label in self.labels if label not in named]
        if not open_to and len(self.labels) > 1:
            other = _LIKE.get(function_of(cable.plugs[0].connector))
            return self.by_function.get(other, ()) if other else ()
        labels = open_to or list(self.labels)
        return ((labels[0], 1),) if len(labels) == 1 else ()

    def assumed_of(self, cables: Iterable[tuple[str, Cable]]) -> tuple[Taken, ...]:
        """Return what is taken of cables that do not say; each kind of figure once, at the first of them.

        The cables come with the field that each stands in, below its part.
        """
        found: dict[str, Taken] = {}
        for field, cable in cables:
            for taken in self._assumed(field, cable):
                found.setdefault(taken.assumption.key, taken)
        return tuple(found.values())

    def _assumed(self, field: str, cable: Cable) -> Iterator[Taken]:
        wires = WIRES.get(cable.plugs[0].connector)
        if wires is not None and cable.awg is None:
            gauge = CABLE_16_PIN_AWG if cable.plugs[0].connector in SIXTEEN_PIN else CABLE_AWG
            yield Taken(f"{field}awg", gauge.low, gauge.high, gauge.low, gauge)
        if wires is not None and cable.supply_wires_12v is None:
            yield Taken(f"{field}supply_wires_12v", wires[0], wires[0], wires[0], CABLE_WIRES)
        if self.labels and not cable.occupies and not cable.captive:
            count = sum(count for _, count in self.occupied(cable))
            least = count if self.is_known_place(cable) else 0
            yield Taken(f"{field}occupies", least, max(1, count), count, CABLE_SOCKET if count else NO_CABLE_SOCKET)

    def groups_of(self, cable: Cable, taken: tuple[tuple[str, int], ...]) -> tuple[int, ...]:
        """Return the overcurrent groups of a cable: its own, its sockets', or the one that feeds its function."""
        if not self.groups:
            return ()
        if cable.group is not None and cable.group in self.groups:
            return (self.groups[cable.group],)
        of_socket = {socket.label: socket.group for socket in self.supply.sockets}
        named = tuple(
            self.groups[group]
            for label, count in taken
            for _ in range(count)
            if (group := of_socket[label]) is not None
        )
        if named:
            return named
        function = function_of(cable.plugs[0].connector)
        return tuple(at for at, group in enumerate(self.supply.groups) if function in group.feeds)[:1]

    def stretches(self, cable: Cable, assumed_watts: float | None = None) -> Stretches:
        """Return what each segment allows; ``assumed_watts``: what a 16-pin cable without print is taken for."""
        names = tuple(plug.connector for plug in cable.plugs)
        first = allow.wires(names, cable.awg, cable.supply_wires_12v) + self._supply_end(cable, assumed_watts)
        return (first, *(allow.wires(names[at:], cable.awg, None) for at in range(1, len(names))))

    def _supply_end(self, cable: Cable, assumed_watts: float | None) -> tuple[Allowance, ...]:
        """Return what the supply's end allows: the printed rating, which replaces a guess at contacts, or these.

        Where contacts are stated, not even a printed rating asks more of one than of the best there is.
        """
        if cable.rated_watts is not None and _has_sixteen_pin(cable):
            return (allow.printed(cable.rated_watts), *self._socket_contacts(cable, allow.best_socket))
        contacts = self._socket_contacts(cable, allow.socket)
        if assumed_watts is None:
            return contacts
        return (allow.printed(assumed_watts, card_facts.UNPRINTED_WATTS.key), *contacts)

    def _socket_contacts(self, cable: Cable, allowed: Callable[[int], Allowance]) -> tuple[Allowance, ...]:
        counts = {socket.label: socket.contacts_12v for socket in self.supply.sockets}
        contacts = [(counts[label], count) for label, count in self.occupied(cable)]
        if not contacts or any(each is None for each, _ in contacts):
            return ()
        return (allowed(sum((each or 0) * count for each, count in contacts)),)


@lru_cache(maxsize=REMEMBERED)
def box_of(supply: PowerSupply, unit: int) -> Box:
    """Return the box of a supply that is this unit of a build."""
    return Box(supply, unit)


def is_unprinted(cable: Cable) -> bool:
    """Say whether a cable has a 16-pin plug and no printed rating."""
    return cable.rated_watts is None and _has_sixteen_pin(cable)


def fit_of(
    cable: Cable,
    kind: int,
    number: int,
    connector: str,
    reach: Reach,
    open_contacts: int,
    extra: int = 0,
    beyond: tuple[Allowance, ...] = (),
) -> tuple[Fit, FitInfo]:
    """Return the fit of a plug in a port; ``extra`` points on top of what a plug that may be short costs.

    ``beyond``: what the wires behind the port allow, where it is an adapter's.
    """
    name = cable.plugs[number].connector
    allowances = allow.joint(name, connector, open_contacts) + beyond
    if reach.assumed_short_by_mm:
        extra += int(points.ASSUMED_SHORT_POINTS.value)
    fit = Fit(kind, number, halves_taken(name, connector), merged(allowances), extra)
    return fit, FitInfo(allowances, reach, mate(name, connector), open_contacts)


def _has_sixteen_pin(cable: Cable) -> bool:
    return any(plug.connector in SIXTEEN_PIN for plug in cable.plugs)
