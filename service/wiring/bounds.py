"""Lower bounds for the search: what the open needs of a state cost at the least, whatever is decided.

The bound is the exact optimum of an easier problem. There every need is asked only what it costs alone on each plug,
and what it costs to leave it without a source; cables are opened whole, within what is left of them and of the sockets;
adapters are put in use whole, and their inputs are needs again, of which only the points of their plugs are charged;
and what needs do to each other on one cable is charged as a toll (``crowding``). For each number of adapters and of
cables the needs go to plugs at the least cost, as goods to markets (``transport``). Currents only grow while a wiring is
completed, and where needs meet, so no wiring costs less than that.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import product
from math import prod
from operator import itemgetter
from typing import NamedTuple

from service.wiring.clusters import CLEAN, NEVER, UNFED, UNIT, Cluster, Line, Need, joined, unfed_cost, worth
from service.wiring.crowding import FREELY, PAIR, Crowd, Guest, Share, crowd
from service.wiring.families import Family, families, reached
from service.wiring.objective import ADAPTER_LEVEL, BOUGHT_LEVEL, CABLES_LEVEL, LOOSE_LEVEL, POINTS_LEVEL
from service.wiring.patterns import Counted, same_plugs
from service.wiring.problem import NOTHING, Problem
from service.wiring.transport import Goods, Tolls, least
from service.wiring.ways import Way, Ways, rounded

MOST_USES = 300
"""Ways to use adapters that are looked through; with more none is counted."""
MOST_NUMBERS = 600
"""Numbers of cables of a family that are looked through; with more no cables are counted."""

Choices = tuple[tuple[int, tuple[int, ...]], ...]
"""Costs, each with the sockets that are taken for it."""


class Ask(NamedTuple):
    """A need as it counts here: as goods, and as a guest of each cable kind of several plugs that it may hang on."""

    goods: int
    guests: tuple[tuple[int, Guest], ...]


class Asked(NamedTuple):
    """What a cluster asks: a cost that is sure, and asks by number, each so many times."""

    cost: int
    asks: tuple[tuple[int, int], ...]


class Offer(NamedTuple):
    """What so many cables of each kind of a family cost, what they take of each socket type, and what they give."""

    cost: int
    takes: tuple[int, ...]
    numbers: tuple[int, ...]
    places: tuple[int, ...]
    plugs: int
    room: int


class Used(NamedTuple):
    """Adapters put in use: what they cost, how many of each (kind, option), and their inputs as asks."""

    cost: int
    numbers: tuple[int, ...]
    inputs: Counted


class Bounds:
    """Bounds of one problem, remembered by what decides them."""

    def __init__(self, problem: Problem, clusters: Sequence[Cluster]) -> None:
        """Take the clusters by number; the sequence may grow."""
        self.problem = problem
        self.clusters = clusters
        self.ways = Ways(problem)
        self.families = _families(problem)
        self.family_of = {of: number for number, family in enumerate(self.families) for of in family.types}
        self.markets: list[tuple[int, int]] = []
        self.market_of: dict[tuple[int, int], int] = {}
        self._group_plugs()
        self.outputs = [
            (kind, option) for kind, found in enumerate(problem.adapters) for option in range(len(found.inputs))
        ]
        kinds = len(problem.cables)
        self.town_of = [kind for kind, _ in self.markets] + [kinds + place for place in range(len(self.outputs))]
        self.rooms = [sum(number for kind, number in self.markets if kind == of) for of in range(kinds)]
        self.goods: list[Goods] = []
        self.goods_numbers: dict[Goods, int] = {}
        self.asks: list[Ask] = []
        self.ask_numbers: dict[Ask, int] = {}
        self.asked: dict[tuple[int, int], Asked] = {}
        self.inputs: dict[int, int | None] = {}
        self.uses: dict[tuple[int, ...], tuple[Used, ...]] = {}
        self.offers: dict[tuple[int, tuple[int, ...]], tuple[Offer, ...]] = {}
        self.crowds: dict[tuple[object, ...], Crowd] = {}
        self.by_asks: dict[tuple[int, Counted, tuple[int, ...], tuple[int, ...]], Choices] = {}
        self.by_goods: dict[tuple[object, ...], Choices] = {}
        self.shared = self._shared_sockets()
        self.none = Used(0, (0,) * len(self.outputs), ())

    def _group_plugs(self) -> None:
        """Number the plugs that may be exchanged as markets: (cable kind, needs that one cable's take at once)."""
        fitting: dict[tuple[int, int], int] = {}
        for of in reached(self.problem):
            for fit in self.problem.port_types[of].fits:
                at = (fit.cable, fit.plug)
                fitting[at] = max(self.problem.cables[fit.cable].halves[fit.plug] // fit.halves, fitting.get(at, 0))
        for kind in range(len(self.problem.cables)):
            numbers: dict[int, int] = {}
            for plug, first in enumerate(same_plugs(self.problem, kind)):
                if first not in numbers:
                    numbers[first] = len(self.markets)
                    self.markets.append((kind, 0))
                at_market = self.market_of[kind, plug] = numbers[first]
                self.markets[at_market] = (kind, self.markets[at_market][1] + fitting.get((kind, plug), 0))

    def _shared_sockets(self) -> list[int]:
        """Return the socket types that cables of several families take."""
        takers = [{n for kind in family.kinds for n, taken in enumerate(self.problem.cables[kind].takes) if taken} for family in self.families]
        times = Counter(socket for taken in takers for socket in taken)
        return [socket for socket in range(len(self.problem.sockets)) if times[socket] > 1]

    def available(self, cables: Sequence[int], sockets: Sequence[int]) -> list[int]:
        """Return how many cables of each kind can still be opened, taken alone."""
        found = []
        for kind, left in zip(self.problem.cables, cables, strict=True):
            for socket, taken in enumerate(kind.takes):
                if taken:
                    left = min(left, sockets[socket] // taken)
            found.append(left)
        return found

    def alone(self, counts: Counted, adapters: int) -> int:
        """Return the bound of clusters, each so many times, that looks at no capacity."""
        cost = 0
        for cluster, times in counts:
            asked = self._asked(cluster, adapters)
            cost += times * asked.cost
            cost += times * sum(self.goods[self.asks[ask].goods].least * number for ask, number in asked.asks)
        return cost

    def completion(self, counts: Counted, cables: Sequence[int], sockets: Sequence[int]) -> int:
        """Return the bound of a state in which only cables are still to be decided."""
        cost, wanted = self._wanted([(counts, 0)])
        if cost >= NEVER:
            return NEVER
        return cost + self._of_uses(wanted, (self.none,), self.available(cables, sockets), sockets)

    def fitting(
        self,
        asking: Sequence[tuple[Counted, int]],
        cables: Sequence[int],
        sockets: Sequence[int],
        adapters: Sequence[int],
    ) -> int:
        """Return the bound of a state in which adapters may still be put in use, so many of each kind.

        ``asking``: clusters with the adapter kinds, a bit mask, that may feed them.
        """
        cost, wanted = self._wanted(asking)
        uses = self._uses(tuple(adapters))
        if cost >= NEVER or not uses:
            return cost
        return cost + self._of_uses(wanted, uses, self.available(cables, sockets), sockets)

    def _of_uses(
        self, wanted: list[Counter[int]], uses: Sequence[Used], available: Sequence[int], sockets: Sequence[int]
    ) -> int:
        """Return the least cost of all ways to use adapters.

        Families that are not asked for inputs cost the same for many of these, so they are looked at first, and the
        others only where that leaves room for something better.
        """
        begun = []
        for number, used in enumerate(uses):
            asked = {self.goods[self.asks[ask].goods].family for ask, _ in used.inputs}
            plain = [family for family, counted in enumerate(wanted) if counted and family not in asked]
            each = [self._of_asks(family, wanted[family], used.numbers, available, sockets) for family in plain]
            begun.append((used.cost + sum(min(choice[0] for choice in choices) for choices in each), number, each, asked))
        begun.sort(key=itemgetter(0, 1))
        best = NEVER
        for floor, number, each, asked in begun:
            if floor >= best:
                break
            used = uses[number]
            further = {family: wanted[family].copy() for family in asked}
            for ask, times in used.inputs:
                further[self.goods[self.asks[ask].goods].family][ask] += times
            each = each + [
                self._of_asks(family, counted, used.numbers, available, sockets) for family, counted in further.items()
            ]
            best = min(best, used.cost + self._together(each, sockets))
        return best

    # What is wanted.

    def _wanted(self, asking: Sequence[tuple[Counted, int]]) -> tuple[int, list[Counter[int]]]:
        """Return what is sure to be paid, and by family the asks."""
        cost = 0
        wanted: list[Counter[int]] = [Counter() for _ in self.families]
        for counts, adapters in asking:
            for cluster, times in counts:
                asked = self._asked(cluster, adapters)
                cost += asked.cost * times
                for ask, number in asked.asks:
                    wanted[self.goods[self.asks[ask].goods].family][ask] += number * times
        return cost, wanted

    def _asked(self, cluster: int, adapters: int) -> Asked:
        key = (cluster, adapters)
        found = self.asked.get(key)
        if found is None:
            found = self.asked[key] = self._ask(self.clusters[cluster], adapters)
        return found

    def _ask(self, cluster: Cluster, adapters: int) -> Asked:
        """Ask each need of a cluster.

        A need with a line of its own pays there what each way is worth; needs that share lines pay these together, at
        the least what the dearest of them must.
        """
        sharing = Counter(line for need in cluster.needs for line in need.lines)
        ways = [self._ways(need, adapters) for need in cluster.needs]
        own = [len(need.lines) == 1 and sharing[need.lines[0]] == 1 for need in cluster.needs]
        sure = [0] * len(cluster.lines)
        for need, each, alone in zip(cluster.needs, ways, own, strict=True):
            for line in () if alone else need.lines:
                sure[line] = max(sure[line], min((self._more(cluster.lines[line], way) for _, way in each), default=0))
        open_ports = Counter(cluster.lines[need.lines[0]].unit for need in cluster.needs if not need.must)
        cost = sum(sure)
        asks: Counter[int] = Counter()
        for need, each, alone in zip(cluster.needs, ways, own, strict=True):
            first = cluster.lines[need.lines[0]]
            kept = NEVER if need.must else _unfed(cluster, first, open_ports[first.unit])
            costs = [(market, self._more(first, way) if alone else 0) for market, way in each]
            if not costs:
                cost += kept
                continue
            goods = self._goods(need.type, kept, costs)
            shares = [
                Share(cluster.lines[line].verdict, sure[line], sharing[line]) for line in need.lines if not alone
            ]
            asks[self._ask_number(goods, need, [Share(first.verdict, 0, 1)] if alone else shares)] += 1
        return Asked(cost, tuple(asks.items()))

    def _ask_number(self, goods: int, need: Need, lines: list[Share]) -> int:
        """Return the number of an ask; each kind of cable charges a line of its own at least what it says here."""
        guests = []
        dearest: dict[int, int] = {}
        for market, cost in self.goods[goods].costs:
            if market < len(self.markets):
                kind = self.markets[market][0]
                dearest[kind] = max(cost, dearest.get(kind, 0))
        for kind, cost in dearest.items():
            if self.rooms[kind] >= PAIR:
                guests.append((kind, Guest(need.load, tuple(line._replace(charged=line.charged + cost) for line in lines))))
        ask = Ask(goods, tuple(guests))
        found = self.ask_numbers.get(ask)
        if found is None:
            found = self.ask_numbers[ask] = len(self.asks)
            self.asks.append(ask)
        return found

    def _ways(self, need: Need, adapters: int) -> list[tuple[int, Way]]:
        """Return the markets that feed a need, each with how the need is then judged and what it pays there itself."""
        found = [(self.market_of[fit.cable, fit.plug], way) for fit, way in self.ways.plugs(need, -1)]
        if adapters:
            for market, (kind, option) in enumerate(self.outputs, len(self.markets)):
                if adapters >> kind & 1:
                    found += [(market, way) for way in self.ways.outer(need, kind, option, adapters)]
        return found

    def _more(self, line: Line, way: Way) -> int:
        after = joined(joined(line.verdict, CLEAN), way.verdict)
        return worth(self.problem, after) - worth(self.problem, line.verdict) + way.points * UNIT[POINTS_LEVEL]

    def _goods(self, of: int, kept: int, costs: Iterable[tuple[int, int]]) -> int:
        by_market: dict[int, int] = {}
        for market, cost in costs:
            by_market[market] = min(cost, by_market.get(market, cost))
        goods = Goods(self.family_of[of], kept, tuple(sorted(by_market.items())), min(kept, *by_market.values()))
        found = self.goods_numbers.get(goods)
        if found is None:
            found = self.goods_numbers[goods] = len(self.goods)
            self.goods.append(goods)
        return found

    # Adapters put in use.

    def _uses(self, adapters: tuple[int, ...]) -> tuple[Used, ...]:
        """Return the ways to put up to so many adapters of each kind in use, none where there are too many."""
        found = self.uses.get(adapters)
        if found is None:
            each = [
                [numbers for numbers in product(range(count + 1), repeat=len(kind.inputs)) if sum(numbers) <= count]
                for kind, count in zip(self.problem.adapters, adapters, strict=True)
            ]
            many = prod(len(numbers) for numbers in each) > MOST_USES
            made = () if many else (self._use(tuple(n for each in numbers for n in each)) for numbers in product(*each))
            found = self.uses[adapters] = tuple(used for used in made if used is not None)
        return found

    def _use(self, numbers: tuple[int, ...]) -> Used | None:
        cost = 0
        inputs: Counter[int] = Counter()
        for number, (kind, option) in zip(numbers, self.outputs, strict=True):
            if number:
                adapter = self.problem.adapters[kind]
                ask = self._input(adapter.input_type)
                if ask is None:
                    return None
                cost += number * UNIT[ADAPTER_LEVEL + adapter.rank]
                inputs[ask] += number * adapter.inputs[option]
        return Used(cost, numbers, tuple(inputs.items()))

    def _input(self, of: int) -> int | None:
        """Return an adapter's input as an ask, None where nothing feeds it.

        It pays the points of its plug, for at least one connection passes it.
        """
        if of not in self.inputs:
            need = Need(of, NOTHING, 0, True, ())
            costs = [(market, way.at_fit * UNIT[POINTS_LEVEL]) for market, way in self._ways(need, -1)]
            self.inputs[of] = self._ask_number(self._goods(of, NEVER, costs), need, []) if costs else None
        return self.inputs[of]

    # What there is for it.

    def _together(self, each: list[Choices], sockets: Sequence[int]) -> int:
        """Return the least cost of one choice of each family that the sockets allow together."""
        if not self.shared:
            return sum(min(cost for cost, _ in choices) for choices in each)
        so_far = {tuple([sockets[socket] for socket in self.shared]): 0}
        for choices in each:
            further: dict[tuple[int, ...], int] = {}
            for left, spent in so_far.items():
                for cost, takes in choices:
                    after = tuple([one - other for one, other in zip(left, takes, strict=True)])
                    if min(after) >= 0 and spent + cost < further.get(after, NEVER):
                        further[after] = spent + cost
            so_far = further
        return min(so_far.values(), default=NEVER)

    def _of_asks(
        self,
        number: int,
        wanted: Counter[int],
        adapters: tuple[int, ...],
        available: Sequence[int],
        sockets: Sequence[int],
    ) -> Choices:
        """Return the least costs for what a family is asked, each with the shared sockets that are taken for it.

        Only such as may be best. ``left`` are the cables of its kinds, then the sockets.
        """
        left = (*[available[kind] for kind in self.families[number].kinds], *sockets)
        counted = tuple(sorted(wanted.items()))
        key = (number, counted, adapters, left)
        found = self.by_asks.get(key)
        if found is None:
            found = self.by_asks[key] = self._of_goods(number, counted, adapters, left)
        return found

    def _of_goods(self, number: int, wanted: Counted, adapters: tuple[int, ...], left: tuple[int, ...]) -> Choices:
        goods: Counter[int] = Counter()
        for ask, times in wanted:
            goods[self.asks[ask].goods] += times
        counted = tuple(sorted(goods.items()))
        kinds = self.families[number].kinds
        paid = tuple([self._crowd(kind, cables, wanted) for kind, cables in zip(kinds, left, strict=False)])
        key = (number, counted, adapters, left, paid)
        found = self.by_goods.get(key)
        if found is None:
            found = self.by_goods[key] = self._least(number, counted, adapters, left, paid)
        return found

    def _crowd(self, kind: int, cables: int, wanted: Counted) -> Crowd:
        """Return what those who are wanted pay on cables of one kind."""
        room = self.rooms[kind]
        if room < PAIR or not cables:
            return FREELY
        most = room * cables
        guests = [
            (guest, min(times, most)) for ask, times in wanted for of, guest in self.asks[ask].guests if of == kind
        ]
        key = (kind, cables, tuple(guests))
        found = self.crowds.get(key)
        if found is None:
            trunk = self.problem.cables[kind].segments[0]
            found = self.crowds[key] = crowd(self.problem, trunk, room, cables, guests)
        return found

    def _least(
        self,
        number: int,
        wanted: Counted,
        adapters: tuple[int, ...],
        left: tuple[int, ...],
        paid: tuple[Crowd, ...],
    ) -> Choices:
        kinds = self.families[number].kinds
        if prod(each + 1 for each in left[: len(kinds)]) > MOST_NUMBERS:
            return ((sum(self.goods[one].least * times for one, times in wanted), (0,) * len(self.shared)),)
        goods = [(self.goods[one], times) for one, times in wanted]
        given = [each * self.problem.adapters[kind].outputs for each, (kind, _) in zip(adapters, self.outputs, strict=True)]
        total = sum(times for _, times in wanted)
        towns: list[Tolls] = [()] * (len(self.problem.cables) + len(given))
        best: list[tuple[int, tuple[int, ...]]] = []
        for floor, offer in self._ranked(number, left, goods, total, sum(given)):
            if any(cost <= floor and _within(takes, offer.takes) for cost, takes in best):
                continue
            for kind, crowd_of, cables in zip(kinds, paid, offer.numbers, strict=True):
                towns[kind] = crowd_of.tolls(cables)
            cost, fed = least(goods, [*offer.places, *given], self.town_of, towns)
            cost += offer.cost + max(0, offer.plugs - fed) * UNIT[LOOSE_LEVEL]
            if not any(other <= cost and _within(takes, offer.takes) for other, takes in best):
                best = [each for each in best if not (cost <= each[0] and _within(offer.takes, each[1]))]
                best.append((cost, offer.takes))
        return tuple(best)

    def _ranked(
        self, number: int, left: tuple[int, ...], goods: list[tuple[Goods, int]], total: int, outputs: int
    ) -> list[tuple[int, Offer]]:
        """Return the offers for goods with what they cost at the least, the cheapest first."""
        sure = sum(each.least * times for each, times in goods)
        missing = min((each.kept - each.least for each, _ in goods), default=0)
        found = []
        for offer in self._offers(number, left):
            floor = sure + offer.cost + max(0, offer.plugs - total) * UNIT[LOOSE_LEVEL]
            found.append((floor + max(0, total - outputs - offer.room) * missing, offer))
        found.sort(key=itemgetter(0))
        return found

    def _offers(self, number: int, left: tuple[int, ...]) -> tuple[Offer, ...]:
        key = (number, left)
        found = self.offers.get(key)
        if found is None:
            family = self.families[number]
            kinds = len(family.kinds)
            made = (self._offer(family, each, left[kinds:]) for each in product(*(range(n + 1) for n in left[:kinds])))
            found = self.offers[key] = tuple(offer for offer in made if offer is not None)
        return found

    def _offer(self, family: Family, numbers: tuple[int, ...], sockets: tuple[int, ...]) -> Offer | None:
        """Return what so many cables are; None where the sockets do not suffice."""
        cost = plugs = 0
        takes = [0] * len(self.problem.sockets)
        for kind, number in zip(family.kinds, numbers, strict=True):
            if number:
                cable = self.problem.cables[kind]
                cost += number * (UNIT[CABLES_LEVEL] + cable.bought * UNIT[BOUGHT_LEVEL])
                plugs += number * len(cable.halves)
                for socket, taken in enumerate(cable.takes):
                    takes[socket] += number * taken
        if not _within(takes, sockets):
            return None
        by_kind = dict(zip(family.kinds, numbers, strict=True))
        places = tuple([by_kind.get(kind, 0) * number for kind, number in self.markets])
        return Offer(cost, tuple([takes[socket] for socket in self.shared]), numbers, places, plugs, sum(places))


def _within(one: Sequence[int], other: Sequence[int]) -> bool:
    return all(a <= b for a, b in zip(one, other, strict=True))


def _unfed(cluster: Cluster, line: Line, ports: int) -> int:
    """Return what a port costs unfed; what a card costs once is divided over its open ports."""
    unit = cluster.units[line.unit]
    own = unfed_cost(unit) - UNFED
    return UNFED + (rounded(own // ports) if unit.role == "card" else own)


def _families(problem: Problem) -> tuple[Family, ...]:
    """Return the families, and each port type that no cable serves by itself."""
    found = families(problem)
    served = {of for family in found for of in family.types}
    alone = (Family((of,), ()) for of in range(len(problem.port_types)) if of not in served)
    return (*found, *alone)
