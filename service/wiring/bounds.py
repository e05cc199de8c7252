"""Lower bounds for the search: what the open needs of a state cost at the least, whatever is decided.

Why they hold. Currents only grow while a wiring is completed, so a line alone on the best source left is a bound, and
lines add up. A port that cannot be fed costs what an unfed port costs. Where plugs run out, so many ports more stay
unfed: those for which this costs the least beside what they would cost fed, which may be as an overloaded port. Any
further unfed port, and any way to feed one that is not the cheapest, costs a unit of a level above the number of cables
and so more than all cables: these are counted for the cheapest alone.

Over 300 lines: every bound adds to the same sum, and what one counts another must not count again.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from service.wiring.clusters import (
    CLEAN,
    NEVER,
    PORT,
    UNFED,
    UNIT,
    Cluster,
    Line,
    Need,
    joined,
    unfed_cost,
    worth,
)
from service.wiring.families import Family, families, kinds, reached, serves
from service.wiring.objective import BOUGHT_LEVEL, CABLES_LEVEL, COMFORT_LEVEL, LOOSE_LEVEL, PER_MILLE, POINTS_LEVEL
from service.wiring.problem import COMFORT_FROM, NO_LIMIT, Problem
from service.wiring.rooms import NOT_AT_ALL, Guest, Pairs, free_room, larger, pairs, tolerance
from service.wiring.ways import PLUG, Way, Ways, rounded

MOST_PAIRED = 2
Counted = tuple[tuple[int, int], ...]


class Floor(NamedTuple):
    """A bound for one cluster, and what it asks for.

    ``cost``, ports that cannot be fed, needs that can be, needs that must be. ``least`` gives by port type the plugs,
    in parts of PLUG, that these take at the least, ``likely`` the same when no need is fed in a way that costs more
    than it must above the number of cables. ``heaviest``: the most plugs of ``least`` that one need takes;
    ``choice``: whether one may go by an adapter. ``allowed``: what of the cost is each line's; ``unfed``: what it
    costs more to leave a need without a source, for each that may be.
    """

    cost: int
    forced: int
    fed: int
    must: int
    least: dict[int, int]
    likely: dict[int, int]
    heaviest: int
    choice: bool
    allowed: tuple[int, ...] = ()
    unfed: tuple[int, ...] = ()


class Currents(NamedTuple):
    """Needs that can be fed, as (port type, 12 V current, use that is charged anyhow); how many share a connection."""

    needs: tuple[tuple[int, int, int], ...]
    shared: int


class Bounds:
    """Bounds of one problem, remembered by cluster and by what is still to be had."""

    def __init__(self, problem: Problem, clusters: Sequence[Cluster]) -> None:
        """Take the clusters by number; the sequence may grow."""
        self.problem = problem
        self.clusters = clusters
        types = range(len(problem.port_types))
        met = reached(problem)
        self.served = [[serves(problem, kind, (of,)) for of in types] for kind in kinds(problem)]
        self.room = [serves(problem, kind, met) for kind in kinds(problem)]
        self.families = families(problem)
        self.floors: dict[tuple[int, int, int], Floor] = {}
        self.ways = Ways(problem)
        self.currents: dict[tuple[int, int], Currents] = {}
        self.guests: dict[tuple[int, int], list[tuple[int, Guest]]] = {}

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
        shared = Counter(line for need in cluster.needs for line in need.lines)
        lines = [0] * len(cluster.lines)
        forced = cost = heaviest = 0
        least: Counter[int] = Counter()
        likely: Counter[int] = Counter()
        choice = False
        missing: set[int] = set()
        open_ports: list[Need] = []
        for need in cluster.needs:
            ways = self.ways.of(need, kinds, adapters)
            if ways:
                costs = [[self._more(cluster.lines[line], way) for way in ways] for line in need.lines]
                if need.depth == PORT and not need.must:
                    open_ports.append(need)
                asked = _plugs_of(ways)
                least.update(asked)
                heaviest = max(heaviest, *asked.values(), 1)
                choice = choice or any(way.plugs != PLUG or way.type != need.type for way in ways)
                if len(need.lines) == 1 and shared[need.lines[0]] == 1:
                    whole = [more + way.price for more, way in zip(costs[0], ways, strict=True)]
                    lines[need.lines[0]] = min(whole)
                    ways = tuple(way for way, each in zip(ways, whole, strict=True) if each == min(whole))
                else:
                    cost += min(way.price for way in ways)
                    for line, each in zip(need.lines, costs, strict=True):
                        lines[line] = max(lines[line], min(each))
                likely.update(_plugs_of(ways))
            elif need.must:
                return Floor(NEVER, 0, 0, 0, {}, {}, 1, False)
            else:
                unit = cluster.lines[need.lines[0]].unit
                cost += UNFED if unit in missing else unfed_cost(cluster.units[unit])
                forced += 1
                if cluster.units[unit].role == "card":
                    missing.add(unit)
        must = sum(need.must for need in cluster.needs)
        fed = len(cluster.needs) - forced
        unfed = self._unfed(cluster, lines, open_ports, missing)
        return Floor(
            cost + sum(lines), forced, fed, must, dict(least), dict(likely), heaviest, choice, tuple(lines), unfed
        )

    def _unfed(self, cluster: Cluster, lines: list[int], ports: list[Need], missing: set[int]) -> tuple[int, ...]:
        """Return what each of these ports costs more unfed; what a card costs once is divided over its ports."""
        found = []
        of = Counter(cluster.lines[need.lines[0]].unit for need in ports)
        for need in ports:
            unit = cluster.lines[need.lines[0]].unit
            own = unfed_cost(cluster.units[unit]) - UNFED
            if cluster.units[unit].role == "card":
                own = 0 if unit in missing else rounded(own // of[unit])
            found.append(UNFED + own - lines[need.lines[0]])
        return tuple(found)

    def _more(self, line: Line, way: Way) -> int:
        after = joined(joined(line.verdict, CLEAN), way.verdict)
        return worth(self.problem, after) - worth(self.problem, line.verdict) + way.points * UNIT[POINTS_LEVEL]

    def cheapest(self, clusters: Counted, kinds: int, adapters: int) -> int:
        """Return the bound of clusters, each so many times, that looks at no capacity."""
        return sum(self.floor(cluster, kinds, adapters).cost * times for cluster, times in clusters)

    def fitting(
        self,
        clusters: Counted,
        settled: Counted,
        cables: Sequence[int],
        sockets: Sequence[int],
        adapters: Sequence[int],
        further: int,
    ) -> int:
        """Return the bound of a state in which adapters may still be put in use, so many of each kind.

        What is ``settled`` may have only the ``further`` ones, a bit mask. What must be fed ends at plugs: only an
        adapter with more outputs than inputs makes fewer needs out of many. Where adapters may feed adapters only stops
        and unfed ports are bounded: below, the least ways through two of them were found to cost more than some plan.
        """
        left = sum(1 << kind for kind, number in enumerate(adapters) if number > 0)
        available = self.available(cables, sockets)
        kinds = sum(1 << kind for kind, number in enumerate(available) if number > 0)
        gain = 0
        for kind, number in zip(self.problem.adapters, adapters, strict=True):
            gain += number * max(0, kind.outputs - kind.inputs[0])
        floors = [(self.floor(cluster, kinds, left), times) for cluster, times in clusters]
        floors += [(self.floor(cluster, kinds, left & further), times) for cluster, times in settled]
        must = sum(floor.must * times for floor, times in floors)
        if must - gain > self._capacity(dict(enumerate(self.room)), available, sockets):
            return NEVER
        whole = self._whole(floors, available, sockets, None)
        return whole - whole % UNIT[BOUGHT_LEVEL - 1] if further else whole

    def completion(self, clusters: Counted, cables: Sequence[int], sockets: Sequence[int]) -> int:
        """Return the bound of a state in which only cables are still to be decided."""
        available = self.available(cables, sockets)
        kinds = sum(1 << kind for kind, left in enumerate(available) if left > 0)
        floors = [(self.floor(cluster, kinds, 0), times) for cluster, times in clusters]
        return self._whole(floors, available, sockets, (clusters, kinds))

    def _free_rooms(self, clusters: Counted, kinds: int) -> list[int]:
        """Return for each cable kind how many of the open needs one such cable takes freely."""
        guests: dict[int, list[tuple[Guest, int]]] = {}
        for cluster, times in clusters:
            for kind, guest in self._guests(cluster, kinds):
                guests.setdefault(kind, []).append((guest, times))
        return [room if room <= 1 else free_room(room, guests.get(kind, ())) for kind, room in enumerate(self.room)]

    def _guests(self, cluster: int, kinds: int) -> list[tuple[int, Guest]]:
        """Return the needs of a cluster as guests of cable kinds with room for several."""
        key = (cluster, kinds)
        found = self.guests.get(key)
        if found is None:
            content, allowed = self.clusters[cluster], self.floor(cluster, kinds, 0).allowed
            found = self.guests[key] = [
                (kind, guest)
                for need in content.needs
                for kind in range(len(self.room))
                if kinds >> kind & 1 and self.room[kind] > 1
                for guest in self._guest(content, need, kind, allowed)
            ]
        return found

    def _guest(self, cluster: Cluster, need: Need, kind: int, allowed: tuple[int, ...]) -> Iterator[Guest]:
        """Yield a need as a guest of one cable kind, if it can be one freely."""
        lines = [(cluster.lines[line], allowed[line]) for line in need.lines]
        trunk = self.problem.cables[kind].segments[0]
        best = NOT_AT_ALL
        for way in self.ways.of(need, 1 << kind, 0):
            best = larger(best, tolerance(self.problem, trunk, lines, way.verdict, way.points))
        if best != NOT_AT_ALL:
            yield Guest(need.load, best)

    def _whole(
        self,
        floors: list[tuple[Floor, int]],
        available: list[int],
        sockets: Sequence[int],
        guests: tuple[Counted, int] | None,
    ) -> int:
        """Return the bound that floors, each so many times, make with what plugs and cables there are.

        A way that costs more than it must above the number of cables costs more than all cables, so these may be
        counted for the other ways alone. Loose plugs are only known where nothing is left to choose.
        """
        cost = forced = fed = must = 0
        heaviest = PLUG
        choice = False
        least: dict[int, int] = {}
        likely: dict[int, int] = {}
        for floor, times in floors:
            cost += floor.cost * times
            forced += floor.forced * times
            fed += floor.fed * times
            must += floor.must * times
            heaviest = max(heaviest, floor.heaviest)
            choice = choice or floor.choice
            for of, number in floor.least.items():
                least[of] = least.get(of, 0) + number * times
            for of, number in floor.likely.items():
                likely[of] = likely.get(of, 0) + number * times
        if cost >= NEVER:
            return NEVER
        short = self._short({of: number // PLUG for of, number in least.items()}, available, sockets)
        if short:
            short = -(-short * PLUG // heaviest)
            extra = sorted((each, times) for floor, times in floors for each in floor.unfed)
            if short > sum(times for _, times in extra):
                return NEVER
            cost += -_most([(-each, times) for each, times in extra], short)
        surely = {of: -(-number // PLUG) for of, number in least.items()}
        mostly = {of: -(-number // PLUG) for of, number in likely.items()}
        without = -(-short * heaviest // PLUG)
        free = self._free_rooms(*guests) if guests else []
        return cost + sum(
            self._cables(family, surely, mostly, available, sockets, choice, free, without, guests)
            for family in self.families
        )

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

    def _cables(
        self,
        family: Family,
        surely: dict[int, int],
        mostly: dict[int, int],
        available: list[int],
        sockets: Sequence[int],
        choice: bool,
        free: list[int],
        without: int,
        shared: tuple[Counted, int] | None,
    ) -> int:
        """Return the least that cables for all needs of a family but so many cost: bought, number, loose plugs.

        Where not all needs can hang freely on cables, some level above the number of cables has one unit more.
        """
        at_most = sum(mostly.get(of, 0) for of in family.types)
        total = at_most - without
        if total <= 0:
            return 0
        least = sum(surely.get(of, 0) for of in family.types) - without
        owned = sum(self.room[kind] * available[kind] for kind in family.kinds if not self.problem.cables[kind].bought)
        largest = max(self.room[kind] for kind in family.kinds)
        bought = max(0, -(-(least - owned) // largest))
        rooms = {kind: self.room[kind] for kind in family.kinds}
        cost = bought * UNIT[BOUGHT_LEVEL]
        number = 0
        if shared is not None:
            extra, number, rooms = self._shared(family, shared, total, rooms, available, sockets, free)
            cost += extra * UNIT[COMFORT_LEVEL]
        number = max(number, self._number(total, [(room, available[kind]) for kind, room in rooms.items()]))
        for of in family.types:
            served = [(min(self.served[kind][of], room), available[kind]) for kind, room in rooms.items()]
            number = max(number, self._number(mostly.get(of, 0) - without, served))
        cost += number * UNIT[CABLES_LEVEL]
        if choice:
            return cost
        fed = total if len(self.families) == 1 else at_most
        lengths = [(-len(self.problem.cables[kind].halves), available[kind]) for kind in family.kinds]
        return cost + max(0, -_most(lengths, number) - fed) * UNIT[LOOSE_LEVEL]

    def _shared(
        self,
        family: Family,
        shared: tuple[Counted, int],
        total: int,
        rooms: dict[int, int],
        available: list[int],
        sockets: Sequence[int],
        free: list[int],
    ) -> tuple[int, int, dict[int, int]]:
        """Return what sharing cables costs in comfort at the least, and for that cost the cables, and the room in each.

        The counts hold only for solutions that cost no more than is said here; all others cost a unit more, which is
        more than all cables. So the free rooms may be counted only where nothing is said to be paid.
        """
        most = None
        if max(rooms.values(), default=0) <= MOST_PAIRED:
            ends = self._capacity(dict.fromkeys(rooms, 1), available, sockets)
            most = self._pairs(family, shared, total - ends)
            if most is not None and most.comfort:
                return most.comfort, total - most.most, rooms
        freely = {kind: min(room, free[kind]) for kind, room in rooms.items()}
        if freely != rooms and self._capacity(freely, available, sockets) < total:
            return 1, 0, rooms
        return 0, 0 if most is None else total - most.most, freely

    def _pairs(self, family: Family, shared: tuple[Counted, int], excess: int) -> Pairs | None:
        """Return what pairs of needs cost, of which there are so many more than cables to open."""
        doubles = [kind for kind in family.kinds if self.room[kind] > 1]
        comfort_ma = max((self.problem.cables[kind].segments[0][0].comfort for kind in doubles), default=NO_LIMIT)
        if comfort_ma >= NO_LIMIT:
            return None
        clusters, kinds = shared
        charges: list[tuple[int, int]] = []
        lines = 1
        for cluster, times in clusters:
            found = self._currents(cluster, kinds)
            lines = max(lines, found.shared)
            for of, current, use in found.needs:
                if of in family.types:
                    charges.append((2 * PER_MILLE * current - use * comfort_ma, times))
        return pairs(excess, charges, comfort_ma, lines)

    def _currents(self, cluster: int, kinds: int) -> Currents:
        key = (cluster, kinds)
        found = self.currents.get(key)
        if found is None:
            content, allowed = self.clusters[cluster], self.floor(cluster, kinds, 0).allowed
            needs = [need for need in content.needs if self.ways.of(need, kinds, 0)]
            times = Counter(line for need in needs for line in need.lines)
            uses = [
                max(line.verdict.use, COMFORT_FROM) + more % UNIT[COMFORT_LEVEL - 1] // UNIT[COMFORT_LEVEL]
                for line, more in zip(content.lines, allowed, strict=True)
            ]
            found = self.currents[key] = Currents(
                tuple((need.type, need.load[0], uses[need.lines[0]]) for need in needs), max(times.values(), default=1)
            )
        return found

    def _number(self, wanted: int, rooms: list[tuple[int, int]]) -> int:
        number = 0
        for room, left in sorted(rooms, reverse=True):
            if wanted <= 0 or room == 0:
                break
            used = min(left, -(-wanted // room))
            number += used
            wanted -= used * room
        return number


def _plugs_of(ways: Sequence[Way]) -> dict[int, int]:
    """Return by port type the plugs that each of these ways takes at the least; none where they differ in type."""
    types = {way.type for way in ways}
    return {types.pop(): min(way.plugs for way in ways)} if len(types) == 1 else {}


def _most(values: list[tuple[int, int]], number: int) -> int:
    """Return the largest sum of so many of the values, each of which is there several times."""
    found = 0
    for value, left in sorted(values, reverse=True):
        used = min(left, number)
        found += used * value
        number -= used
    return found
