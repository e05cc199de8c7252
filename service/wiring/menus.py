"""What a family is asked, at the least cost for each number of the sockets that several families take.

Cables are opened whole; for each number of cables of each kind, an *offer*, the goods go to markets at the least cost.
Of most offers it is enough to know what they cost at the least, so they are looked at one by one, as long as they may
be the best for the sockets that they take.
"""

from bisect import bisect_left
from collections import Counter
from collections.abc import Sequence
from itertools import product
from math import prod
from typing import NamedTuple

from service.wiring import transport
from service.wiring.asks import Asks
from service.wiring.clusters import NEVER, UNIT
from service.wiring.crowding import FREELY, PAIR, Crowd, crowd, is_one_card
from service.wiring.markets import Markets
from service.wiring.objective import BOUGHT_LEVEL, CABLES_LEVEL, LOOSE_LEVEL
from service.wiring.overcurrent import lightest
from service.wiring.patterns import Counted
from service.wiring.problem import NO_LIMIT, Problem
from service.wiring.transport import Goods, Tolls

MOST_OFFERS = 600
"""Numbers of cables of a family that are looked through; with more no cables are counted."""
MENU_WORK, OFFERS_A_WORK, PAIRS_A_WORK = 2, 5, 40
"""What a menu counts as work, one being a decision weighed; how many offers, or pairs of goods and places, add one."""
Takes = tuple[int, ...]


class Left(NamedTuple):
    """Cables of each kind and sockets of each type that are left; how many needs a kind may take, if limited."""

    cables: tuple[int, ...]
    sockets: tuple[int, ...]
    most: tuple[int, ...] = ()


class Offer(NamedTuple):
    """So many cables of each kind: what they cost, the shared sockets that they take, their places and plugs.

    ``halves``: of their plugs, two each, whether or not ``plugs`` that stay loose are to be paid for.
    """

    cost: int
    takes: Takes
    numbers: tuple[int, ...]
    places: tuple[int, ...]
    plugs: int
    halves: int


class Wanted(NamedTuple):
    """Goods, each so many times; outputs of adapters beside the offers; what crowds on each kind pays; the limits."""

    goods: tuple[tuple[Goods, int], ...]
    outputs: tuple[int, ...]
    crowds: tuple[Crowd, ...]
    most: tuple[int, ...]


class Work:
    """Counts what has been worked out, so that it can be bounded without a clock."""

    def __init__(self) -> None:
        self.done = 0


class Menu:
    """The offers for what is wanted, by the shared sockets that they take."""

    def __init__(
        self, markets: Markets, kinds: Sequence[int], wanted: Wanted, offers: Sequence[Offer], work: Work
    ) -> None:
        self.markets = markets
        self.work = work
        self.pairs = len(wanted.goods) * len(markets.town_of)
        work.done += MENU_WORK + len(offers) // OFFERS_A_WORK
        self.kinds = kinds
        self.wanted = wanted
        self.most = wanted.most or (NO_LIMIT,) * len(kinds)
        self.total = sum(times for _, times in wanted.goods)
        self.best: dict[Takes, int] = {}
        self.numbers: dict[Takes, tuple[int, ...]] = {}
        self.waiting: dict[Takes, list[tuple[int, Offer]]] = {}
        self.raised = False
        self._front: list[tuple[int, Takes]] | None = None
        for floor, offer in self._floors(offers):
            self.waiting.setdefault(offer.takes, []).append((floor, offer))
        for each in self.waiting.values():
            each.sort(key=_floor_of, reverse=True)

    def front(self) -> list[tuple[int, Takes]]:
        """Return what is known of the least cost for the sockets taken, where no fewer do for as little."""
        if self._front is None:
            lows = sorted((self.low(takes), takes) for takes in self.waiting)
            self._front = []
            for low, takes in lows:
                if not any(_within(other, takes) for _, other in self._front):
                    self._front.append((low, takes))
        return self._front

    def least(self) -> int:
        """Return a bound of the least cost for any sockets."""
        return min(self.low(takes) for takes in self.waiting)

    def low(self, takes: Takes) -> int:
        """Return a bound of the least cost for these sockets; the cost itself once it is settled."""
        waiting = self.waiting[takes]
        best = self.best.get(takes, NEVER)
        return min(best, waiting[-1][0]) if waiting else best

    def settle(self, takes: Takes) -> bool:
        """Find the least cost for these sockets; return false where it is known already."""
        waiting = self.waiting[takes]
        if not waiting or waiting[-1][0] >= self.best.get(takes, NEVER):
            return False
        while waiting and waiting[-1][0] < self.best.get(takes, NEVER):
            floor, offer = waiting.pop(self._next(waiting, self.best.get(takes, NEVER)))
            sent, fed = self._sent(offer.numbers, offer.places)
            cost = sent + offer.cost + self._loose(offer, fed)
            if cost < self.best.get(takes, NEVER):
                self.best[takes], self.numbers[takes] = cost, offer.numbers
            if cost > floor:
                if not self.raised:
                    self._raise_all()
                self._raise(sent, offer.numbers)
        return True

    def _next(self, waiting: Sequence[tuple[int, Offer]], best: int) -> int:
        """Return the place of the offer to look at: the cheapest, or once that was no good the middle one in question.

        If that costs the goods more than others, so do all of fewer cables; if not, all that cost more are out.
        """
        if not self.raised:
            return -1
        return (bisect_left(waiting, -best, key=lambda entry: -entry[0]) + len(waiting)) // 2

    def settled(self) -> int:
        """Return the least cost where no sockets are shared."""
        self.settle(())
        return self.low(())

    def opened(self, takes: Takes) -> list[int]:
        """Return the kinds of cables of the best offer for these sockets, once it is settled."""
        return [kind for kind, number in zip(self.kinds, self.numbers.get(takes, ()), strict=False) if number]

    def _raise_all(self) -> None:
        """Raise all floors to what the goods cost with all the cables."""
        self.raised = True
        offers = [offer for waiting in self.waiting.values() for _, offer in waiting]
        if offers:
            most = [max(each) for each in zip(*(offer.numbers for offer in offers), strict=True)]
            places = [max(each) for each in zip(*(offer.places for offer in offers), strict=True)]
            self._raise(self._sent(most, places)[0], most)

    def _raise(self, sent: int, numbers: Sequence[int]) -> None:
        """Raise the floors of offers of no more cables than these, with which the goods cost so much."""
        self._front = None
        for waiting in self.waiting.values():
            for place, (floor, offer) in enumerate(waiting):
                raised = sent + offer.cost + self._loose(offer, self.total)
                if raised > floor and _within(offer.numbers, numbers):
                    waiting[place] = (raised, offer)
            waiting.sort(key=_floor_of, reverse=True)

    def _loose(self, offer: Offer, fed: int) -> int:
        return max(0, offer.plugs - fed) * UNIT[LOOSE_LEVEL]

    def _sent(self, numbers: Sequence[int], places: Sequence[int]) -> tuple[int, int]:
        self.work.done += 1 + self.pairs // PAIRS_A_WORK
        towns: list[Tolls] = [()] * self.markets.towns
        for kind, paid, cables, most in zip(self.kinds, self.wanted.crowds, numbers, self.most, strict=True):
            towns[kind] = _up_to(most, paid.tolls(cables))
        return transport.least(self.wanted.goods, [*places, *self.wanted.outputs], self.markets.town_of, towns)

    def _floors(self, offers: Sequence[Offer]) -> list[tuple[int, Offer]]:
        """Return the offers with what they cost at the least: what goods cost by themselves, and what too many do."""
        sure = sum(each.least * times for each, times in self.wanted.goods)
        kept = min((each.kept - each.least for each, _ in self.wanted.goods), default=0)
        toll = min((paid.least for paid in self.wanted.crowds if paid is not FREELY), default=0)
        many = self.total - sum(self.wanted.outputs)
        places, free = self._rooms(offers)
        halved = self._halved()
        found = []
        for offer in offers:
            floor = sure + offer.cost + self._loose(offer, self.total)
            out = many - sum([places[at][number] for at, number in enumerate(offer.numbers)])
            if halved:
                out = max(out, many - lightest(halved, offer.halves))
            if out > 0:
                floor += out * kept
            if toll:
                crowding = many - max(0, out) - sum([free[at][number] for at, number in enumerate(offer.numbers)])
                floor += max(0, crowding) * min(toll, kept)
            found.append((floor, offer))
        return found

    def _halved(self) -> list[tuple[int, int]]:
        """Return the least halves of plugs that needs take, each so many times, where there are plugs that split."""
        if not any(self.markets.splits[kind] for kind in self.kinds):
            return []
        return [(goods.halves, times) for goods, times in sorted(self.wanted.goods, key=_halves_of)]

    def _rooms(self, offers: Sequence[Offer]) -> tuple[list[list[int]], list[list[int]]]:
        """Return for each kind how many needs so many cables take, and how many of them without a toll."""
        places, free = [], []
        numbers = zip(*(offer.numbers for offer in offers), strict=True)
        for kind, paid, most, number_of in zip(self.kinds, self.wanted.crowds, self.most, numbers, strict=True):
            each = range(max(number_of) + 1)
            places.append([min(most, number * self.markets.rooms[kind]) for number in each])
            free.append([min(most, paid.free(number, self.markets.rooms[kind])) for number in each])
        return places, free


class Menus:
    """The menus of one problem, remembered by what is wanted of which cables."""

    def __init__(self, problem: Problem, markets: Markets, asks: Asks) -> None:
        self.problem = problem
        self.markets = markets
        self.asks = asks
        self._offers: dict[tuple[object, ...], tuple[Offer, ...]] = {}
        self._crowds: dict[tuple[object, ...], Crowd] = {}
        self._by_asks: dict[tuple[object, ...], Menu] = {}
        self._by_goods: dict[tuple[object, ...], Menu] = {}
        self.work = Work()

    def menu(self, family: int, wanted: Counter[int], adapters: tuple[int, ...], left: Left) -> Menu:
        """Return the menu of a family for what is asked of it, with so many adapters in use and so much left."""
        kinds = self.markets.families[family].kinds
        mine = Left(
            tuple([left.cables[kind] for kind in kinds]),
            left.sockets,
            tuple([left.most[kind] for kind in kinds]) if left.most else (),
        )
        counted = tuple(sorted(wanted.items()))
        key = (family, counted, adapters, mine)
        found = self._by_asks.get(key)
        if found is None:
            found = self._by_asks[key] = self._of_goods(family, counted, adapters, mine)
        return found

    def _of_goods(self, family: int, asked: Counted, adapters: tuple[int, ...], left: Left) -> Menu:
        """Return the menu for asks, which is the same for asks that are the same goods and crowd alike."""
        goods: Counter[int] = Counter()
        for ask, times in asked:
            goods[self.asks.asks[ask].goods] += times
        kinds = self.markets.families[family].kinds
        crowds = tuple([self._crowd(kind, cables, asked) for kind, cables in zip(kinds, left.cables, strict=True)])
        counted = tuple(sorted(goods.items()))
        key = (family, counted, adapters, left, crowds)
        found = self._by_goods.get(key)
        if found is None:
            given = zip(adapters, self.markets.outputs, strict=True)
            outputs = tuple([number * self.problem.adapters[kind].outputs for number, (kind, _) in given])
            goods_of = tuple([(self.asks.goods[one], times) for one, times in counted])
            wanted = Wanted(goods_of, outputs, crowds, left.most)
            offers = self._offers_of(family, left)
            found = self._by_goods[key] = Menu(self.markets, kinds, wanted, offers, self.work)
        return found

    def _crowd(self, kind: int, cables: int, asked: Counted) -> Crowd:
        """Return what those who ask pay on cables of one kind."""
        room = self.markets.rooms[kind]
        if room < PAIR or not cables:
            return FREELY
        most = room * cables
        found_of = [(guest, times) for ask, times in asked for of, guest in self.asks.asks[ask].guests if of == kind]
        one_card = is_one_card(found_of)
        guests = tuple([(guest, min(times, most)) for guest, times in found_of])
        key = (kind, cables, one_card, guests)
        found = self._crowds.get(key)
        if found is None:
            trunk = self.problem.cables[kind].segments[0]
            found = self._crowds[key] = crowd(self.problem, trunk, room, cables, guests, one_card)
        return found

    def _offers_of(self, family: int, left: Left) -> tuple[Offer, ...]:
        key = (family, left.cables, left.sockets)
        found = self._offers.get(key)
        if found is None:
            found = self._offers[key] = tuple(self._made(family, left))
        return found

    def _made(self, family: int, left: Left) -> list[Offer]:
        kinds = self.markets.families[family].kinds
        if prod(number + 1 for number in left.cables) > MOST_OFFERS:
            return [self._boundless(kinds, left)]
        every = product(*(range(number + 1) for number in left.cables))
        made = (self._offer(kinds, numbers, left.sockets) for numbers in every)
        return [offer for offer in made if offer is not None]

    def _boundless(self, kinds: Sequence[int], left: Left) -> Offer:
        """Return all cables at once, for nothing."""
        cables = self.problem.cables
        halves = 2 * sum([len(cables[kind].halves) * number for kind, number in zip(kinds, left.cables, strict=True)])
        return Offer(0, (0,) * len(self.markets.shared), left.cables, self._places(kinds, left.cables), 0, halves)

    def _offer(self, kinds: Sequence[int], numbers: tuple[int, ...], sockets: Sequence[int]) -> Offer | None:
        """Return what so many cables are; None where the sockets do not suffice."""
        cost = plugs = 0
        takes = [0] * len(sockets)
        for kind, number in zip(kinds, numbers, strict=True):
            if number:
                cable = self.problem.cables[kind]
                cost += number * (UNIT[CABLES_LEVEL] + cable.bought * UNIT[BOUGHT_LEVEL])
                plugs += number * len(cable.halves)
                for socket, taken in enumerate(cable.takes):
                    takes[socket] += number * taken
        if not _within(takes, sockets):
            return None
        shared = tuple([takes[socket] for socket in self.markets.shared])
        return Offer(cost, shared, numbers, self._places(kinds, numbers), plugs, 2 * plugs)

    def _places(self, kinds: Sequence[int], numbers: Sequence[int]) -> tuple[int, ...]:
        by_kind = dict(zip(kinds, numbers, strict=True))
        return tuple([by_kind.get(kind, 0) * number for kind, number in self.markets.plugs])


def _halves_of(entry: tuple[Goods, int]) -> int:
    return entry[0].halves


def _floor_of(entry: tuple[int, Offer]) -> int:
    return entry[0]


def _up_to(most: int, tolls: Tolls) -> Tolls:
    """Return tolls where no more than so many are let in."""
    if most >= NO_LIMIT:
        return tolls
    return (*(step for step in tolls if step[0] < most), (most, next((toll for end, toll in tolls if end >= most), 0)))


def _within(one: Sequence[int], other: Sequence[int]) -> bool:
    return all(a <= b for a, b in zip(one, other, strict=True))
