"""The exact search for ports: all ways in which hosts hang on one another, and how equal needs are counted out.

Needs of hosts are placed one by one, then every class of equal needs of other devices is counted out over the ports it
mates with, the heaviest first, each time first to ports that carry it. A branch is left when what it has come to is no
better than the best found. The answer is the best by ``Worth``, the first found of several; or, where the budget of
steps runs out, the best so far, which says that it is not proven.
"""

from collections.abc import Sequence
from itertools import combinations
from typing import NamedTuple

from service.demand.demand import Triple
from service.demand.wants import NO_LIMIT, SIGNALS, Placed, Spot, Want, family

STEPS = 3_000
STEPS_FOR_ALL = 1_500
MOST_OUTCOMES = 32
_MOST_KINDS = 8
_LEFT = -1

Six = tuple[int, ...]


class Worth(NamedTuple):
    """What is minimised, level by level; the statement is in ``hosts``."""

    headless: int
    of_hosts: int
    plugs: int
    pins: int
    over: int
    optional: int


FIXED = 3
"""So many levels of a worth hang on no current."""


class Pins(NamedTuple):
    """Drive plugs by which a host hangs on the supply: its own load, how many, what one carries on a rail [mA]."""

    own: Six
    plugs: int
    limit: int

    def pass_with(self, hung: Sequence[int]) -> bool:
        """Say whether a plug carries more than its pins may, with what hangs on the host."""
        most = self.limit * self.plugs
        return any(own + more > most for own, more in zip(self.own, hung, strict=True))


class Found(NamedTuple):
    """A placing, and whether it is proven to be a best one."""

    placed: Placed
    worth: Worth
    proven: bool


class _Class(NamedTuple):
    """Equal needs of devices that are no hosts.

    ``must``: as many get a port as there are ports. ``light``: nothing of this family draws anything.
    """

    wants: list[Want]
    family: str
    load: Six
    most: int
    must: bool
    light: bool


class Problem(NamedTuple):
    """Wants in order, what is offered in order, the board that has all (or None), hosts and their drive plugs."""

    wants: list[Want]
    spots: list[Spot]
    ready: Spot | None
    hosts: frozenset[int]
    pins: dict[int, Pins]
    has_board: bool


def best(problem: Problem) -> Found:
    """Return the best placing."""
    search = _Search(problem, every=False)
    search.run()
    assert search.best is not None
    return Found(search.expand(search.kept[()]), search.best, search.steps > 0)


def outcomes(problem: Problem) -> tuple[list[Found], bool]:
    """Return a placing for each different load on the hosts, of those that leave fewest without a header.

    Of each the one with the fewest kinds of header overloaded; and whether these are all.
    """
    search = _Search(problem, every=True)
    search.run()
    found = [Found(search.expand(kept), kept.worth, proven=True) for kept in search.kept.values()]
    return found, search.steps > 0 and len(found) < MOST_OUTCOMES


class _Kept(NamedTuple):
    """A placing as the search keeps it: the spot of each need of a host, and the counts of each class by spot."""

    worth: Worth
    hung: tuple[int, ...]
    counts: tuple[tuple[tuple[int, int], ...], ...]


class _Search:
    """The search; ``every``: gather all outcomes instead of the best one."""

    def __init__(self, problem: Problem, *, every: bool) -> None:
        self.problem = problem
        self.every = every
        self.steps = STEPS_FOR_ALL if every else STEPS
        self.spots = problem.spots if problem.ready is None else [*problem.spots, problem.ready]
        self.free = [spot.ports for spot in self.spots]
        self.by_family: dict[str, list[int]] = {}
        for at, spot in enumerate(problem.spots):
            self.by_family.setdefault(family(spot.connector), []).append(at)
        self.of_hosts = [want for want in problem.wants if want.unit in problem.hosts]
        self.classes = _classes([want for want in problem.wants if want.unit not in problem.hosts])
        self.best: Worth | None = None
        self.kept: dict[tuple[object, ...], _Kept] = {}
        self.hung = [_LEFT] * len(self.of_hosts)
        self.above: dict[int, list[int]] = {}
        self.counts: list[dict[int, int]] = [{} for _ in self.classes]
        self.totals: dict[int, list[int]] = {}
        self.chains: dict[int, tuple[int, ...]] = {}
        self.unserved: dict[str, int] = {}
        self.over: dict[tuple[int, str], int] = {}
        self.hanging: list[tuple[int, Triple, int, tuple[int, str]]] = []
        self.standing: list[tuple[int, Pins]] = []
        self.fixed = (0, 0, 0)
        self.optional = self.optional_of_hosts = 0
        self.satisfied = False

    def run(self) -> None:
        """Go through all trees of hosts."""
        self._tree(0, 0, 0)

    def _step(self) -> bool:
        """Use up a step; the first placing is always finished, whatever it takes."""
        self.steps = max(0, self.steps - 1)
        return self.steps > 0 or self.best is None

    # --- how hosts hang on one another ---

    def _tree(self, at: int, headless: int, plugs: int) -> None:
        if self.best is not None and (headless, headless) > (self.best.headless, self.best.of_hosts):
            return
        if at == len(self.of_hosts):
            self._start(headless, plugs)
            return
        want = self.of_hosts[at]
        options = self._options(want, want.only)
        for spot in sorted(options, key=lambda spot: self.spots[spot].limit < max(want.sustained)):
            if self.free[spot] and not self._reaches(self.spots[spot].unit, want.unit):
                if not self._step():
                    return
                self.free[spot] -= 1
                self.hung[at] = spot
                self.above.setdefault(want.unit, []).append(self.spots[spot].unit)
                self._tree(at + 1, headless, plugs)
                self.above[want.unit].pop()
                self.hung[at] = _LEFT
                self.free[spot] += 1
        if self._step():
            optional = bool(options) and want.signal and want.optional
            self.optional_of_hosts += optional
            self._tree(at + 1, headless + want.only, plugs + (bool(options) and not want.signal))
            self.optional_of_hosts -= optional

    def _options(self, want: Want, only: bool) -> list[int]:
        """Return the spots that a need mates with; the board that has everything takes what no cable serves."""
        found = [at for at in self.by_family.get(family(want.connector), ()) if self.spots[at].unit != want.unit]
        return [*found, len(self.spots) - 1] if only and self.problem.ready is not None else found

    def _reaches(self, unit: int, other: int) -> bool:
        """Say whether a host is another one or is served by it, over however many between."""
        return unit == other or any(self._reaches(each, other) for each in self.above.get(unit, ()))

    # --- one tree: its loads and bounds, then its classes ---

    def _start(self, headless: int, plugs: int) -> None:
        """Count out all classes under the tree that now stands, unless its bound says that none is better."""
        must: dict[str, int] = {}
        may: dict[str, int] = {}
        for each in self.classes:
            counted = must if each.must else may
            counted[each.family] = counted.get(each.family, 0) + len(each.wants)
        room = {name: sum(self.free[at] for at in spots) for name, spots in self.by_family.items()}
        self.unserved = {name: self._short(name, count - room.get(name, 0)) for name, count in must.items()}
        short = sum(count for name, count in self.unserved.items() if name in SIGNALS)
        left = sum(count for name, count in self.unserved.items() if name not in SIGNALS and name in room)
        spare = {name: max(0, free - must.get(name, 0)) for name, free in room.items()}
        least = sum(max(0, count - spare[name]) for name, count in may.items() if name in room)
        self.fixed = (headless + short, headless, plugs + left)
        if self.best is not None and self.fixed > self.best[:FIXED]:
            return
        if self.problem.ready is not None:
            least = 0
        self._bear_hosts()
        bound = Worth(*self.fixed, 0, self._least_over(), self.optional_of_hosts + least)
        if self.best is not None and not self.every and bound >= self.best:
            return
        self.optional = self.optional_of_hosts
        self.over = {}
        self.satisfied = False
        self._class(0, bound)

    def _short(self, name: str, missing: int) -> int:
        """Return how many of a family go without, where ports for so many are missing."""
        return 0 if self.problem.ready is not None and name in SIGNALS else max(0, missing)

    def _bear_hosts(self) -> None:
        """Set the way up from every host, and what hosts that hang bring along."""
        bearing = [(w, at) for w, at in zip(self.of_hosts, self.hung, strict=True) if w.carries and at != _LEFT]
        up = {want.unit: self.spots[at].unit for want, at in bearing}
        spots = [(want, self.spots[at]) for want, at in bearing]
        self.hanging = [(want.unit, want.sustained, spot.limit, spot.kind) for want, spot in spots]
        self.standing = [(unit, plug) for unit, plug in self.problem.pins.items() if unit not in up]
        self.totals = {spot.unit: [0] * 6 for spot in self.spots} | {unit: [0] * 6 for unit in self.problem.hosts}
        self.chains = {}
        for unit in self.totals:
            chain, at = [unit], unit
            while at in up:
                at = up[at]
                chain.append(at)
            self.chains[unit] = tuple(chain)
        for want, at in bearing:
            self._bear(self.spots[at].unit, (*want.sustained, *want.starting), 1)

    def _bear(self, unit: int, load: Six, count: int) -> None:
        for each in self.chains[unit]:
            total = self.totals[each]
            for entry, amount in enumerate(load):
                total[entry] += amount * count

    def _least_over(self) -> int:
        """Return how many kinds of header are overloaded at least, by what is put on them directly."""
        ready = self.problem.ready is not None
        return sum(self._least_of(name) for name in self.unserved if not (ready and name in SIGNALS))

    def _least_of(self, name: str) -> int:
        """Return the least number of kinds without whose limits the lightest that must be served find a port each."""
        loads = sorted(each.most for each in self.classes if each.must and each.family == name for _ in each.wants)
        loads = sorted(loads[: len(loads) - self.unserved[name]], reverse=True)
        spots = [(self.spots[at].kind, self.spots[at].limit, self.free[at]) for at in self.by_family.get(name, ())]
        kinds = sorted({kind for kind, _, _ in spots})
        for size in range(len(kinds) if len(kinds) <= _MOST_KINDS else 2):
            for freed in combinations(kinds, size):
                limits = sorted(
                    (
                        NO_LIMIT if kind in freed else limit
                        for kind, limit, free in spots
                        for _ in range(min(free, len(loads)))
                    ),
                    reverse=True,
                )
                if all(load <= limit for load, limit in zip(loads, limits, strict=False)):
                    return size
        return min(len(kinds), 2) if len(kinds) > _MOST_KINDS else len(kinds)

    # --- classes of equal needs, counted out ---

    def _class(self, at: int, bound: Worth) -> None:
        if at == len(self.classes):
            self._end(bound)
            return
        of = self.classes[at]
        spots = self._options(of.wants[0], of.wants[0].only)
        carrying = [spot for spot in spots if of.most <= self.spots[spot].limit]
        others = sorted((spot for spot in spots if of.most > self.spots[spot].limit), key=self._weakness)
        self._count_out(at, [*carrying, _LEFT, *others], 0, len(of.wants), bound)

    def _weakness(self, spot: int) -> tuple[bool, int]:
        """Order ports that are too weak: kinds already overloaded first, then what is good for most."""
        return (not self.over.get(self.spots[spot].kind), -self.spots[spot].limit)

    def _count_out(self, at: int, options: list[int], step: int, rest: int, bound: Worth) -> None:
        """Put as many of a class as may be on one option, then fewer, the rest on what follows."""
        if step == len(options):
            if not rest:
                self._class(at + 1, bound)
            return
        of, option = self.classes[at], options[step]
        most = min(rest, self._room(of, option, rest))
        least = max(0, rest - sum(self._room(of, other, rest) for other in options[step + 1 :]))
        for count in range(most, least - 1, -1):
            if not self._step():
                return
            self._put(at, option, count)
            if not count or self.every or self.best is None or self._worth() < self.best:
                self._count_out(at, options, step + 1, rest - count, bound)
            self._put(at, option, -count)
            if self.satisfied or of.light:
                return

    def _room(self, of: _Class, option: int, rest: int) -> int:
        if option != _LEFT:
            return self.free[option]
        return self.unserved[of.family] if of.must else rest

    def _put(self, at: int, option: int, count: int) -> None:
        of, counts = self.classes[at], self.counts[at]
        counts[option] = counts.get(option, 0) + count
        if option == _LEFT:
            if of.must:
                self.unserved[of.family] -= count
            elif of.family in self.by_family:
                self.optional += count
            return
        self.free[option] -= count
        if any(of.load) and count:
            spot = self.spots[option]
            self._bear(spot.unit, of.load, count)
            if of.most > spot.limit:
                self.over[spot.kind] = self.over.get(spot.kind, 0) + count
                if not self.over[spot.kind]:
                    del self.over[spot.kind]

    # --- what it comes to ---

    def _worth(self) -> Worth:
        over = len(self.over)
        if self.hanging:
            found = {kind for unit, own, limit, kind in self.hanging if self._fullest(unit, own) > limit}
            over += len(found.difference(self.over))
        pins = sum(plug.pass_with(self.totals[unit]) for unit, plug in self.standing)
        return Worth(*self.fixed, pins, over, self.optional)

    def _fullest(self, unit: int, own: Triple) -> int:
        total = self.totals[unit]
        return max(own[0] + total[0], own[1] + total[1], own[2] + total[2])

    def _end(self, bound: Worth) -> None:
        """Keep what has been counted out, if it is better or an outcome of its own."""
        worth = self._worth()
        key = self._outcome() if self.every else ()
        if self.best is None or worth[:FIXED] < self.best[:FIXED]:
            self.kept.clear()
        known = self.kept.get(key)
        if known is None or _order(worth, every=self.every) < _order(known.worth, every=self.every):
            counts = tuple(tuple(c.items()) for c in self.counts)
            self.kept[key] = _Kept(worth, tuple(self.hung), counts)
        self.best = worth if self.best is None else min(self.best, worth)
        self.satisfied = not self.every and worth == bound
        if len(self.kept) >= MOST_OUTCOMES:
            self.steps = 0

    def _outcome(self) -> tuple[object, ...]:
        """Return all that the wiring sees of a placing: loads of hosts, what hangs, what power needs are left."""
        roots = [unit for unit, chain in self.chains.items() if len(chain) == 1]
        loads = tuple((unit, *self.totals[unit]) for unit in roots if any(self.totals[unit]))
        hung = tuple(at >= 0 for at, want in zip(self.hung, self.of_hosts, strict=True) if want.carries)
        left = tuple(c.get(_LEFT, 0) for c, of in zip(self.counts, self.classes, strict=True) if of.wants[0].carries)
        return (loads, hung, left)

    def expand(self, kept: _Kept) -> Placed:
        """Return a kept placing want by want: of equal ones, the first get the first ports."""
        placed: Placed = [(w, self._spot(at)) for w, at in zip(self.of_hosts, kept.hung, strict=True)]
        for of, counts in zip(self.classes, kept.counts, strict=True):
            served = dict(counts)
            order = [at for at in (*range(len(self.spots)), _LEFT) for _ in range(served.get(at, 0))]
            placed += [(want, self._spot(at)) for want, at in zip(of.wants, order, strict=True)]
        return placed

    def _spot(self, at: int) -> Spot | None:
        return None if at == _LEFT else self.spots[at]


def _order(worth: Worth, *, every: bool) -> tuple[int, ...]:
    """Order placings: by their worth, or, of those that load the supply alike, by headers overloaded first."""
    return (worth.over, *worth) if every else worth


def _classes(wants: list[Want]) -> list[_Class]:
    """Return the needs in classes of equal ones, required ones first, then heaviest first."""
    alike: dict[tuple[object, ...], list[Want]] = {}
    for want in wants:
        key = (want.only, want.connector, want.sustained, want.starting, want.carries)
        alike.setdefault(key, []).append(want)
    heavy = {family(want.connector) for want in wants if any(want.sustained) or any(want.starting)}
    found = [_class_of(same, heavy) for same in alike.values()]
    return sorted(found, key=lambda each: (not each.must, -each.most))


def _class_of(wants: list[Want], heavy: set[str]) -> _Class:
    first = wants[0]
    name = family(first.connector)
    load = (*first.sustained, *first.starting)
    return _Class(wants, name, load, max(first.sustained), first.only or not first.signal, name not in heavy)


def depth(problem: Problem) -> int:
    """Return how many steps deep the search goes at most."""
    spots: dict[str, int] = {}
    for spot in problem.spots:
        spots[family(spot.connector)] = spots.get(family(spot.connector), 0) + 1
    devices = [want for want in problem.wants if want.unit not in problem.hosts]
    classes = _classes(devices)
    return len(problem.wants) - len(devices) + sum(spots.get(each.family, 0) + 4 for each in classes)
