"""What to buy where a plan leaves stops: cables of the supply's own family, and adapters only for what these leave.

A plug of the supply itself is the better cure, so adapters are looked at after the cables, and as few as will do; never
those that no plan may use, nor moulded ones, of which nobody can see whether they are sound. What is promised of a
purchase is what the build with that purchase gives.
"""

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import NamedTuple

from service.case.case import Case, Purchase
from service.demand.demand import Demand
from service.demand.ends import Ends
from service.parts.build import Build, Unit
from service.parts.canonical import digest
from service.parts.records import Adapter, Cable, PowerSupply
from service.parts.words import CARD, OWN_FAMILY
from service.wiring.components import least_stops, solve
from service.wiring.mates import mate
from service.wiring.objective import Connection, judge
from service.wiring.pieces import is_never
from service.wiring.pose import Frame, Offered, pose
from service.wiring.problem import Solution

MOST_KINDS = 6
MOST_FOR_A_PORT = 3
"""JUDGEMENT: kinds of adapters that are tried, in all and for one kind of port; each kind widens the search much."""
MOST_OF_A_KIND = 16
"""JUDGEMENT: of one kind nobody buys more for one machine."""
OFFER_BUDGET = 3_000
"""What the search for adapters may weigh: a tenth of a second. Past it what is found may not be the least."""
_NO_RAIL, _TOO_SHORT = "no_such_rail", "too_short"
_STOPS = frozenset({"stop", "start_stop"})


class Lot(NamedTuple):
    """Equal pieces of what is bought; an adapter that is sold in packs counts by packs."""

    part: Cable | Adapter
    count: int  # type: ignore[assignment]  # hides tuple.count, which nobody calls here


Lots = tuple[Lot, ...]


def to_buy(
    build: Build, unit: int, demand: Demand, case: Case, ends: Callable[[], Ends], judged: Callable[[Build], Case]
) -> tuple[Purchase, ...]:
    """Return the least purchase that lessens the stops of a proven plan, () where none does."""
    supply = build.units[unit].part
    assert isinstance(supply, PowerSupply)
    if not case.proven or build.wiring is not None or supply.cables is None:
        return ()
    lots: Lots = ()
    then = case
    for offered in (False, True):
        if not then.objective[0]:
            break
        more = _lots(build, unit, demand, ends(), lots, then, offered=offered)
        after = judged(_with(build, more)) if more else then
        if offered:
            more, after = _slimmer(build, more, after, judged)
        if after.objective[0] < then.objective[0]:
            lots, then = more, after
    still = {port.at for port in then.open_ports}
    fed = tuple(port.at for port in case.open_ports if port.required and port.at not in still)
    return tuple(Purchase(lot.part, lot.count, then.objective[0], fed) for lot in lots)


def _lots(
    build: Build, unit: int, demand: Demand, ends: Ends, lots: Lots, then: Case, *, offered: bool
) -> Lots:
    """Return what to buy in all, if that is to be less bad than what is there ``then``, with the lots so far."""
    adapters = tuple(_on_offer(build, demand, then)) if offered else ()
    if offered and not adapters:
        return ()
    frame = pose(_with(build, lots), unit, demand, ends, virtual=True, offered=adapters)
    stops, unfed = then.objective[:2]
    if not unfed and least_stops(frame.problem) >= stops:
        return ()
    supply = build.units[unit].part
    assert isinstance(supply, PowerSupply)
    solution = solve(frame.problem, OFFER_BUDGET) if offered else solve(frame.problem)
    return _bought(frame, solution, len(build.units), supply.cable_family or OWN_FAMILY)


def _slimmer(build: Build, lots: Lots, after: Case, judged: Callable[[Build], Case]) -> tuple[Lots, Case]:
    """Return the lots and the case with them, less what is not in use if that does as well."""
    slim = _in_use(lots, after, len(build.units))
    if slim == lots:
        return lots, after
    then = judged(_with(build, slim))
    return (slim, then) if then.objective[0] <= after.objective[0] else (lots, after)


def _in_use(lots: Lots, after: Case, there: int) -> Lots:
    """Return what a plan uses of the lots that it has: packs hold more than was asked for."""
    pieces = {(plug.unit, plug.copy) for joint in after.joints for plug in joint.plugs}
    pieces |= {(adapter.unit, adapter.copy) for joint in after.joints for adapter in joint.adapters}
    used = Counter(unit - there for unit, _ in pieces)
    counts = [-(-used[at] // lot.part.quantity) for at, lot in enumerate(lots)]
    return tuple(Lot(lot.part, count) for lot, count in zip(lots, counts, strict=True) if count)


def _with(build: Build, lots: Lots) -> Build:
    """Return a build with all lots on lines of their own."""
    bought = [
        Unit(replace(part, quantity=part.quantity * count), "", len(build.units) + at, 0)
        for at, (part, count) in enumerate(lots)
    ]
    return replace(build, units=(*build.units, *bought)) if bought else build


def _bought(frame: Frame, solution: Solution, there: int, family: str) -> Lots:
    """Return what a plan uses and is not among the units that are ``there``."""
    judgement = judge(frame.problem, solution.wiring)
    sound = [each for each in judgement.connections if not (each.overloaded and _offered(frame, each))]
    counts: Counter[Cable | Adapter] = Counter()
    for kind, number in sorted(Counter(kind for kind, _ in _used(sound, "segment")).items()):
        of = frame.cables[kind]
        missing = number - sum(0 <= piece.unit < there for piece in of.pieces)
        if missing > 0:
            counts[replace(of.cable, family=family, captive=None, quantity=1)] += missing
    for kind, number in sorted(Counter(kind for kind, _ in _used(sound, "adapter")).items()):
        adapter = frame.adapters[kind].adapter
        if frame.adapters[kind].offered:
            counts[adapter] += -(-number // adapter.quantity)
    return tuple(Lot(part, number) for part, number in counts.items())


def _offered(frame: Frame, connection: Connection) -> bool:
    return any(frame.adapters[kind].offered for kind, _ in _used([connection], "adapter"))


def _used(connections: list[Connection], sort: str) -> set[tuple[int, int]]:
    """Return kind and copy of each cable or adapter on the way to ports."""
    places = (each.place for connection in connections for each in connection.places)
    return {(place.of, place.number) for place in places if place.sort == sort}


def _on_offer(build: Build, demand: Demand, then: Case) -> Iterator[Offered]:
    """Yield the adapters that give a plug for a port with a stop, the better made first, and how many may be of use."""
    known: dict[Adapter, Adapter] = {}
    for adapter in _known(build):
        known.setdefault(replace(adapter, name=""), adapter)
    plugs = _plugs(build, demand)
    chosen: dict[Adapter, int] = {}
    for (port, is_short), number in sorted(Counter(_wanted(then)).items()):
        of_use = [each for each in known.values() if _is_of_use(each, port, plugs, is_short=is_short)]
        for adapter in sorted(of_use, key=_make)[:MOST_FOR_A_PORT]:
            chosen[adapter] = min(chosen.get(adapter, 0) + number, MOST_OF_A_KIND)
    yield from sorted(chosen.items(), key=lambda each: _make(each[0]))[:MOST_KINDS]


def _is_of_use(adapter: Adapter, port: str, plugs: set[str], *, is_short: bool) -> bool:
    """Say whether an adapter may help a port: it fits, some plug goes in, and that plug alone would not do as well."""
    takes, gives = adapter.takes, adapter.gives
    if mate(gives.connector, port) != "full" or adapter.moulded or is_never(adapter):
        return False
    into = [plug for plug in plugs if mate(plug, takes.connector) == "full"]
    more = is_short or gives.count > 1
    return bool(into) and (more or any(mate(plug, port) != "full" for plug in into))


def _wanted(then: Case) -> Iterator[tuple[str, bool]]:
    """Yield the connector of each port with a stop, and whether that is for want of length."""
    for port in then.open_ports:
        if port.required and port.reason != _NO_RAIL:
            yield port.connector, port.reason == _TOO_SHORT
    for joint in then.joints:
        if any(strain.level in _STOPS for strain in joint.strains):
            yield joint.connector, False


def _plugs(build: Build, demand: Demand) -> set[str]:
    """Return the plugs that an adapter may take: of cables that are there, and of those that may be bought."""
    found = {port.connector for feed in demand.feeds for port in feed.ports}
    for entry in build.units:
        cables = (entry.part,) if isinstance(entry.part, Cable) else getattr(entry.part, "cables", None) or ()
        found |= {plug.connector for cable in cables for plug in cable.plugs}
    return found


def _known(build: Build) -> Iterator[Adapter]:
    """Yield the adapters that can be named: those of the catalogue, then those that the sheet states itself."""
    yield from build.adapters_on_offer
    for entry in build.units:
        stated = (entry.part,) if isinstance(entry.part, Adapter) else getattr(entry.part, "adapters", ())
        yield from (replace(adapter, name="") for adapter in stated)


def _make(adapter: Adapter) -> tuple[bool, int, str]:
    """Return what orders adapters: card plugs made of peripheral ones last, then by inputs."""
    takes, gives = adapter.takes, adapter.gives
    of_drives = takes.connector == "peripheral-4" and gives.connector in CARD
    return of_drives, takes.count, digest(adapter)
