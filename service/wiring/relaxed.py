"""A bound that counts exactly: the problem without what needs do to each other by hanging on one cable.

Every open need is asked only what it costs alone on each plug, and what it costs to leave it unfed; cables are opened
whole, within what is left of them and of the sockets. The least cost of that is found exactly: for each number of
cables of each kind the needs are sent to plugs at the least cost, as goods to markets. Currents only grow where needs
meet, so no plan of the true problem costs less.
"""

from collections import Counter
from collections.abc import Sequence
from itertools import product
from math import prod
from typing import NamedTuple

from service.wiring.clusters import CLEAN, NEVER, UNFED, UNIT, Cluster, Line, Need, joined, unfed_cost, worth
from service.wiring.families import Family, families, reached
from service.wiring.objective import BOUGHT_LEVEL, CABLES_LEVEL, LOOSE_LEVEL, POINTS_LEVEL
from service.wiring.patterns import same_plugs
from service.wiring.problem import Problem
from service.wiring.transport import Goods, least
from service.wiring.ways import Way, Ways, rounded

MOST_NUMBERS = 600
"""Numbers of cables of a family that are looked through; with more nothing is said of it."""
Counted = tuple[tuple[int, int], ...]


class Asked(NamedTuple):
    """What a cluster asks: a cost that is sure, and goods, each so many times."""

    cost: int
    goods: tuple[tuple[int, int], ...]


class Offer(NamedTuple):
    """What so many cables of each kind of a family cost, what they take of each socket type, and their places."""

    cost: int
    takes: tuple[int, ...]
    places: tuple[int, ...]
    plugs: int


class Relaxed:
    """The counting bound of one problem."""

    def __init__(self, problem: Problem, clusters: Sequence[Cluster], ways: Ways) -> None:
        """Take the clusters by number; the sequence may grow."""
        self.problem = problem
        self.clusters = clusters
        self.ways = ways
        self.families = families(problem)
        self.family_of = {of: number for number, family in enumerate(self.families) for of in family.types}
        self.places: list[tuple[int, int]] = []
        self.group_of: dict[tuple[int, int], int] = {}
        self._group_plugs()
        self.goods: list[Goods] = []
        self.numbers: dict[Goods, int] = {}
        self.asked: dict[int, Asked] = {}
        self.found: dict[tuple[int, Counted, tuple[int, ...]], tuple[tuple[int, tuple[int, ...]], ...]] = {}

    def _group_plugs(self) -> None:
        """Number the plugs that may be exchanged: (cable kind, needs that one cable's take at once)."""
        met = reached(self.problem)
        fitting: dict[tuple[int, int], int] = {}
        for of in met:
            for fit in self.problem.port_types[of].fits:
                at_once = self.problem.cables[fit.cable].halves[fit.plug] // fit.halves
                at = (fit.cable, fit.plug)
                fitting[at] = max(at_once, fitting.get(at, 0))
        for kind in range(len(self.problem.cables)):
            numbers: dict[int, int] = {}
            for plug, first in enumerate(same_plugs(self.problem, kind)):
                if first not in numbers:
                    numbers[first] = len(self.places)
                    self.places.append((kind, 0))
                at = numbers[first]
                self.group_of[kind, plug] = at
                self.places[at] = (kind, self.places[at][1] + fitting.get((kind, plug), 0))

    def of_cables(self, counts: Counted, available: Sequence[int], sockets: Sequence[int]) -> int:
        """Return the bound of a state in which only cables are still to be decided."""
        cost = 0
        wanted: list[Counter[int]] = [Counter() for _ in self.families]
        for cluster, times in counts:
            asked = self._asked(cluster)
            cost += asked.cost * times
            for goods, number in asked.goods:
                wanted[self.goods[goods].family][goods] += number * times
        if cost >= NEVER:
            return NEVER
        each = [
            self._family(number, tuple(sorted(counted.items())), available)
            for number, counted in enumerate(wanted)
            if counted
        ]
        return cost + _together(each, tuple(sockets))

    def _asked(self, cluster: int) -> Asked:
        found = self.asked.get(cluster)
        if found is None:
            found = self.asked[cluster] = self._ask(self.clusters[cluster])
        return found

    def _ask(self, cluster: Cluster) -> Asked:
        shared = Counter(line for need in cluster.needs for line in need.lines)
        of_unit = Counter(cluster.lines[need.lines[0]].unit for need in cluster.needs if not need.must)
        sure = [0] * len(cluster.lines)
        goods: Counter[int] = Counter()
        cost = 0
        for need in cluster.needs:
            line = cluster.lines[need.lines[0]]
            own = len(need.lines) == 1 and shared[need.lines[0]] == 1
            unfed = NEVER if need.must else _unfed(cluster, line, of_unit[line.unit])
            if need.type not in self.family_of:
                cost += unfed
                continue
            ways = self.ways.plugs(need, -1)
            if own:
                costs = [(self.group_of[fit.cable, fit.plug], self._more(line, way)) for fit, way in ways]
            else:
                costs = [(self.group_of[fit.cable, fit.plug], 0) for fit, _ in ways]
                for number in need.lines:
                    more = min((self._more(cluster.lines[number], way) for _, way in ways), default=0)
                    sure[number] = max(sure[number], more)
            goods[self._number(Goods(self.family_of[need.type], unfed, _least_of_each(costs)))] += 1
        return Asked(cost + sum(sure), tuple(goods.items()))

    def _more(self, line: Line, way: Way) -> int:
        after = joined(joined(line.verdict, CLEAN), way.verdict)
        return worth(self.problem, after) - worth(self.problem, line.verdict) + way.points * UNIT[POINTS_LEVEL]

    def _number(self, goods: Goods) -> int:
        found = self.numbers.get(goods)
        if found is None:
            found = self.numbers[goods] = len(self.goods)
            self.goods.append(goods)
        return found

    def _family(
        self, number: int, wanted: Counted, available: Sequence[int]
    ) -> tuple[tuple[int, tuple[int, ...]], ...]:
        """Return the least costs for these goods, each with the sockets that it takes; only such as may be best."""
        family = self.families[number]
        left = tuple([available[kind] for kind in family.kinds])
        key = (number, wanted, left)
        found = self.found.get(key)
        if found is None:
            found = self.found[key] = self._least(family, wanted, left)
        return found

    def _least(
        self, family: Family, wanted: Counted, left: tuple[int, ...]
    ) -> tuple[tuple[int, tuple[int, ...]], ...]:
        total = sum(times for _, times in wanted)
        if prod(each + 1 for each in left) > MOST_NUMBERS:
            return ((0, (0,) * len(self.problem.sockets)),)
        goods = [(self.goods[number], times) for number, times in wanted]
        sure = sum(each.least * times for each, times in goods)
        missing = min((each.unfed - each.least for each, _ in goods), default=0)
        offers = []
        for numbers in product(*(range(each + 1) for each in left)):
            offer = self._offer(family, numbers)
            short = total - sum(offer.places)
            floor = sure + offer.cost + (short * missing if short > 0 else 0)
            floor += max(0, offer.plugs - total) * UNIT[LOOSE_LEVEL]
            offers.append((floor, numbers, offer))
        offers.sort(key=lambda entry: entry[0])
        best: list[tuple[int, tuple[int, ...]]] = []
        for floor, _, offer in offers:
            if any(cost <= floor and _within(takes, offer.takes) for cost, takes in best):
                continue
            cost, fed = least(goods, offer.places)
            cost += offer.cost + max(0, offer.plugs - fed) * UNIT[LOOSE_LEVEL]
            if not any(other <= cost and _within(takes, offer.takes) for other, takes in best):
                best = [each for each in best if not (cost <= each[0] and _within(offer.takes, each[1]))]
                best.append((cost, offer.takes))
        return tuple(best)

    def _offer(self, family: Family, numbers: tuple[int, ...]) -> Offer:
        by_kind = dict(zip(family.kinds, numbers, strict=True))
        cost = plugs = 0
        takes = [0] * len(self.problem.sockets)
        for kind, number in by_kind.items():
            if number:
                cable = self.problem.cables[kind]
                cost += number * (UNIT[CABLES_LEVEL] + cable.bought * UNIT[BOUGHT_LEVEL])
                plugs += number * len(cable.halves)
                for socket, taken in enumerate(cable.takes):
                    takes[socket] += number * taken
        places = tuple([by_kind.get(kind, 0) * number for kind, number in self.places])
        return Offer(cost, tuple(takes), places, plugs)


def _together(each: list[tuple[tuple[int, tuple[int, ...]], ...]], sockets: tuple[int, ...]) -> int:
    """Return the least cost of one of each family that the sockets allow together."""
    if not sockets:
        return sum(min(cost for cost, _ in choices) for choices in each)
    so_far = {sockets: 0}
    for choices in each:
        further: dict[tuple[int, ...], int] = {}
        for left, spent in so_far.items():
            for cost, takes in choices:
                after = tuple([one - other for one, other in zip(left, takes, strict=True)])
                if min(after) >= 0 and spent + cost < further.get(after, NEVER):
                    further[after] = spent + cost
        so_far = further
    return min(so_far.values(), default=NEVER)


def _within(one: tuple[int, ...], other: tuple[int, ...]) -> bool:
    return all(a <= b for a, b in zip(one, other, strict=True))


def _unfed(cluster: Cluster, line: Line, ports: int) -> int:
    """Return what a port costs unfed; what a card costs once is divided over its open ports."""
    unit = cluster.units[line.unit]
    own = unfed_cost(unit) - UNFED
    return UNFED + (rounded(own // ports) if unit.role == "card" else own)


def _least_of_each(costs: list[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    found: dict[int, int] = {}
    for place, cost in costs:
        found[place] = min(cost, found.get(place, cost))
    return tuple(sorted(found.items()))
