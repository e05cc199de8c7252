"""Lower bounds for the search: what the open needs of a state cost at the least, whatever is decided.

Why they hold. Currents only grow while a wiring is completed, so a line alone on the best source left is a bound, and
lines add up. A port that cannot be fed costs what an unfed port costs. Where plugs run out, so many ports more stay
unfed: they may be the overloaded ones, hence the larger of the two counts at level 0. An extra unfed port that was not
forced raises level 1, which is why the bounds on the levels below may take every other port as fed.
"""

from collections.abc import Sequence
from typing import NamedTuple

from service.wiring.clusters import (
    CLEAN,
    LAST_INPUT,
    LEVEL_BITS,
    NEVER,
    UNFED,
    UNIT,
    Cluster,
    Line,
    Need,
    joined,
    unfed_cost,
    worth,
)
from service.wiring.objective import BOUGHT_LEVEL, CABLES_LEVEL, LOOSE_LEVEL, POINTS_LEVEL, Verdict, judged
from service.wiring.problem import LEVELS, Problem

Counted = tuple[tuple[int, int], ...]
TOP = LEVEL_BITS * (LEVELS - 1)


class Floor(NamedTuple):
    """A bound for one cluster: its cost, ports that cannot be fed, needs by port type that can, needs that must be."""

    cost: int
    forced: int
    wanted: dict[int, int]
    must: int


class Family(NamedTuple):
    """Port types that cable kinds serve together."""

    types: tuple[int, ...]
    kinds: tuple[int, ...]


class Bounds:
    """Bounds of one problem, remembered by cluster and by what is still to be had."""

    def __init__(self, problem: Problem, clusters: Sequence[Cluster]) -> None:
        """Take the clusters by number; the sequence may grow."""
        self.problem = problem
        self.clusters = clusters
        types = range(len(problem.port_types))
        reached = _reached(problem)
        self.served = [[_serves(problem, kind, (of,)) for of in types] for kind in _kinds(problem)]
        self.room = [_serves(problem, kind, reached) for kind in _kinds(problem)]
        self.families = _families(problem)
        self.floors: dict[tuple[int, int, int], Floor] = {}

    def available(self, cables: Sequence[int], sockets: Sequence[int]) -> list[int]:
        """Return how many cables of each kind can still be opened, taken alone."""
        found = []
        for kind, left in zip(self.problem.cables, cables, strict=True):
            for socket, taken in enumerate(kind.takes):
                if taken:
                    left = min(left, sockets[socket] // taken)
            found.append(left)
        return found

    def floor(self, cluster: int, kinds: int, adapters: int) -> Floor:
        """Return the bound of a cluster when the cable kinds and adapter kinds of two bit masks are to be had."""
        key = (cluster, kinds, adapters)
        found = self.floors.get(key)
        if found is None:
            found = self.floors[key] = self._floor(self.clusters[cluster], kinds, adapters)
        return found

    def _floor(self, cluster: Cluster, kinds: int, adapters: int) -> Floor:
        least = [0] * len(cluster.lines)
        forced = 0
        cost = 0
        wanted: dict[int, int] = {}
        missing: set[int] = set()
        for need in cluster.needs:
            options = [*self._plugs(need, kinds), *self._outputs(need, adapters)]
            if options:
                wanted[need.type] = wanted.get(need.type, 0) + 1
                for line in need.lines:
                    least[line] = max(least[line], min(self._more(cluster.lines[line], *option) for option in options))
            elif need.must:
                return Floor(NEVER, 0, {}, 0)
            else:
                unit = cluster.lines[need.lines[0]].unit
                cost += UNFED if unit in missing else unfed_cost(cluster.units[unit])
                forced += 1
                if cluster.units[unit].role == "card":
                    missing.add(unit)
        return Floor(cost + sum(least), forced, wanted, sum(need.must for need in cluster.needs))

    def _plugs(self, need: Need, kinds: int) -> list[tuple[Verdict, int]]:
        found = []
        for fit in self.problem.port_types[need.type].fits:
            if kinds >> fit.cable & 1 and fit.halves <= self.problem.cables[fit.cable].halves[fit.plug]:
                verdict = judged(need.load, fit.limits)
                for limits in self.problem.cables[fit.cable].segments[: fit.plug + 1]:
                    verdict = joined(verdict, judged(need.load, limits))
                found.append((verdict, fit.points))
        return found

    def _outputs(self, need: Need, adapters: int) -> list[tuple[Verdict, int]]:
        found: list[tuple[Verdict, int]] = []
        if need.depth == LAST_INPUT:
            return found
        for fit in self.problem.port_types[need.type].adapter_fits:
            if adapters >> fit.adapter & 1:
                own = judged(need.load, fit.limits)
                kind = self.problem.adapters[fit.adapter]
                found.extend(
                    (joined(own, judged(need.load, limits)), fit.points + kind.points)
                    for limits in kind.limits_by_inputs
                )
        return found

    def _more(self, line: Line, verdict: Verdict, points: int) -> int:
        after = joined(joined(line.verdict, CLEAN), verdict)
        return worth(self.problem, after) - worth(self.problem, line.verdict) + points * UNIT[POINTS_LEVEL]

    def cheapest(self, clusters: Counted, kinds: int, adapters: int) -> int:
        """Return the bound of clusters, each so many times, that looks at no capacity."""
        return sum(self.floor(cluster, kinds, adapters).cost * times for cluster, times in clusters)

    def fitting(self, clusters: Counted, cables: Sequence[int], sockets: Sequence[int], adapters: Sequence[int]) -> int:
        """Return the bound of a state in which adapters may still be put in use, so many of each kind.

        What must be fed ends at plugs: only an adapter with more outputs than inputs makes fewer needs out of many.
        """
        left = sum(1 << kind for kind, number in enumerate(adapters) if number > 0)
        available = self.available(cables, sockets)
        kinds = sum(1 << kind for kind, number in enumerate(available) if number > 0)
        gain = 0
        for kind, number in zip(self.problem.adapters, adapters, strict=True):
            gain += number * max(0, kind.outputs - kind.inputs[0])
        must = 0
        for cluster, times in clusters:
            must += self.floor(cluster, kinds, left).must * times
        if must - gain > self._capacity(dict(enumerate(self.room)), available, sockets):
            return NEVER
        on_plugs = self._on_plugs(clusters, left)
        if on_plugs and self._short(on_plugs, available, sockets):
            return NEVER
        return self.cheapest(clusters, kinds, left)

    def _on_plugs(self, clusters: Counted, adapters: int) -> dict[int, int]:
        """Return by type the needs that must be fed and that no adapter can feed any more."""
        found: dict[int, int] = {}
        for cluster, times in clusters:
            for need in self.clusters[cluster].needs:
                if need.must and not self._outputs(need, adapters):
                    found[need.type] = found.get(need.type, 0) + times
        return found

    def completion(self, clusters: Counted, cables: Sequence[int], sockets: Sequence[int]) -> int:
        """Return the bound of a state in which only cables are still to be decided."""
        available = self.available(cables, sockets)
        kinds = sum(1 << kind for kind, left in enumerate(available) if left > 0)
        cost = forced = must = 0
        wanted: dict[int, int] = {}
        for cluster, times in clusters:
            floor = self.floor(cluster, kinds, 0)
            cost += floor.cost * times
            forced += floor.forced * times
            must += floor.must * times
            for of, number in floor.wanted.items():
                wanted[of] = wanted.get(of, 0) + number * times
        if cost >= NEVER:
            return NEVER
        short = self._short(wanted, available, sockets)
        if short:
            return NEVER if short > sum(wanted.values()) - must else _with_short(cost, forced, short)
        return cost + sum(self._cables(family, wanted, available) for family in self.families)

    def _short(self, wanted: dict[int, int], available: list[int], sockets: Sequence[int]) -> int:
        """Return how many needs must go without because plugs or sockets run out."""
        by_family = 0
        for family in self.families:
            total = sum(wanted.get(of, 0) for of in family.types)
            if total:
                rooms = {kind: self.room[kind] for kind in family.kinds}
                by_type = 0
                for of in family.types:
                    served = {kind: self.served[kind][of] for kind in family.kinds}
                    by_type += max(0, wanted.get(of, 0) - self._capacity(served, available, sockets))
                by_family += max(by_type, total - self._capacity(rooms, available, sockets))
        rooms = dict(enumerate(self.room))
        return max(by_family, sum(wanted.values()) - self._capacity(rooms, available, sockets))

    def _capacity(self, served: dict[int, int], available: list[int], sockets: Sequence[int]) -> int:
        """Return how many needs so many cables can serve, each socket type taken alone and fractions rounded down."""
        best = sum(available[kind] * number for kind, number in served.items())
        for socket, left in enumerate(sockets):
            best = min(best, self._capacity_of(socket, left, served, available))
        return best

    def _capacity_of(self, socket: int, left: int, served: dict[int, int], available: list[int]) -> int:
        free = 0
        takers = []
        for kind, number in served.items():
            taken = self.problem.cables[kind].takes[socket]
            if not taken:
                free += available[kind] * number
            elif number:
                takers.append((number / taken, kind, taken, number))
        for _, kind, taken, number in sorted(takers, reverse=True):
            if left < taken * available[kind]:
                return free + left * number // taken
            left -= taken * available[kind]
            free += available[kind] * number
        return free

    def _cables(self, family: Family, wanted: dict[int, int], available: list[int]) -> int:
        """Return the least that cables for all needs of a family cost: bought, number, loose plugs."""
        total = sum(wanted.get(of, 0) for of in family.types)
        if not total:
            return 0
        number = self._number(total, [(self.room[kind], available[kind]) for kind in family.kinds])
        for of in family.types:
            served = [(self.served[kind][of], available[kind]) for kind in family.kinds]
            number = max(number, self._number(wanted.get(of, 0), served))
        owned = sum(self.room[kind] * available[kind] for kind in family.kinds if not self.problem.cables[kind].bought)
        largest = max(self.room[kind] for kind in family.kinds)
        bought = max(0, -(-(total - owned) // largest))
        lengths = [(-len(self.problem.cables[kind].halves), available[kind]) for kind in family.kinds]
        loose = max(0, -_most(lengths, number) - total)
        return bought * UNIT[BOUGHT_LEVEL] + number * UNIT[CABLES_LEVEL] + loose * UNIT[LOOSE_LEVEL]

    def _number(self, wanted: int, rooms: list[tuple[int, int]]) -> int:
        number = 0
        for room, left in sorted(rooms, reverse=True):
            if wanted <= 0 or room == 0:
                break
            used = min(left, -(-wanted // room))
            number += used
            wanted -= used * room
        return number


def _most(values: list[tuple[int, int]], number: int) -> int:
    """Return the largest sum of so many of the values, each of which is there several times."""
    found = 0
    for value, left in sorted(values, reverse=True):
        used = min(left, number)
        found += used * value
        number -= used
    return found


def _with_short(cost: int, forced: int, short: int) -> int:
    stops = cost >> TOP
    overloaded = stops - forced
    return (forced + max(short, overloaded)) * UNIT[0] + (forced + short) * UNIT[1]


def _kinds(problem: Problem) -> range:
    return range(len(problem.cables))


def _reached(problem: Problem) -> list[int]:
    """Return the port types that a device's port, or an input of an adapter that may come before it, is of."""
    found = {port.type for device in problem.devices for port in device.ports}
    for _ in range(LAST_INPUT):
        taken = {fit.adapter for of in found for fit in problem.port_types[of].adapter_fits}
        found.update(problem.adapters[kind].input_type for kind in taken)
    return sorted(found)


def _serves(problem: Problem, kind: int, types: Sequence[int]) -> int:
    """Return how many needs of these port types one cable serves."""
    by_plug: dict[int, int] = {}
    for of in types:
        for fit in problem.port_types[of].fits:
            if fit.cable == kind:
                at_once = problem.cables[kind].halves[fit.plug] // fit.halves
                by_plug[fit.plug] = max(by_plug.get(fit.plug, 0), at_once)
    return sum(by_plug.values())


def _families(problem: Problem) -> tuple[Family, ...]:
    parts: list[tuple[set[int], set[int]]] = []
    for kind in _kinds(problem):
        types = {of for of, found in enumerate(problem.port_types) if any(fit.cable == kind for fit in found.fits)}
        kinds = {kind}
        apart = []
        for others, other_kinds in parts:
            if others.isdisjoint(types):
                apart.append((others, other_kinds))
            else:
                types |= others
                kinds |= other_kinds
        parts = [*apart, (types, kinds)]
    return tuple(Family(tuple(sorted(types)), tuple(sorted(kinds))) for types, kinds in parts if types)
