"""Lower bounds for the search: what the open needs of a state cost at the least, whatever is decided.

The bound is the exact optimum of an easier problem. There every need is asked only what it costs alone on each plug,
and what it costs to leave it without a source (``asks``); cables are opened whole, within what is left of them and of
the sockets (``menus``); adapters are put in use whole, and their inputs are needs again, that pay only the points of
their plugs; and what needs do to each other on one cable is a toll (``crowding``). For each number of adapters and of
cables the needs go to plugs at the least cost, as goods to markets (``transport``). Currents only grow while a wiring
is completed, and where needs meet, so no wiring costs less than that.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from itertools import combinations, product
from math import prod
from operator import itemgetter
from typing import NamedTuple

from service.wiring.asks import Asks
from service.wiring.clusters import NEVER, UNIT, Cluster
from service.wiring.markets import Markets
from service.wiring.menus import Left, Menu, Menus
from service.wiring.objective import ADAPTER_LEVEL, CARD_LEVEL
from service.wiring.overcurrent import Held, Overcurrent, Wants, lightest
from service.wiring.patterns import Counted
from service.wiring.plugs import Plugs
from service.wiring.problem import NO_LIMIT, Problem

MOST_USES = 300
"""Ways to use adapters that are looked through; with more only what needs cost by themselves is counted."""
USES_A_WORK = 2
"""Ways to use adapters that count as work, about as a decision weighed does."""
GROUPS_WORK = 2
"""What each group within its limit counts as work, for all sets that it is in."""
MOST_GROUPS = 4
"""Groups within their limits of which all sets are looked through; with more nothing is said of them."""
PART = UNIT[CARD_LEVEL] >> 16
"""All parts of a card are more than this, and all that is counted on lower levels is less."""


class Used(NamedTuple):
    """Adapters put in use: what they cost, how many of each (kind, option), and how many inputs each of these has."""

    cost: int
    numbers: tuple[int, ...]
    inputs: tuple[int, ...]


class Bounds:
    """Bounds of one problem, remembered by what decides them.

    Of the last bound, ``likely`` are the kinds of cables that it opens, a hint where to begin; ``bare`` says that it
    uses no adapter, so that it is no less where none is to be had.
    """

    def __init__(self, problem: Problem, clusters: Sequence[Cluster], plugs: Plugs) -> None:
        """Take the clusters by number; the sequence may grow."""
        self.problem = problem
        self.markets = Markets(problem, plugs)
        self.asks = Asks(problem, self.markets, clusters)
        self.menus = Menus(problem, self.markets, self.asks)
        self.overcurrent = Overcurrent(problem, self.asks)
        self.uses: dict[tuple[int, ...], tuple[Used, ...]] = {}
        self.likely: list[int] = []
        self.bare = False
        self.none = self._use((0,) * len(self.markets.outputs))
        self.unchained = all(not problem.port_types[kind.input_type].adapter_fits for kind in problem.adapters)

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
            asked = self.asks.asked(cluster, adapters)
            cost += times * (asked.cost + sum(self.asks.least(ask) * number for ask, number in asked.asks))
        return cost

    def completion(self, counts: Counted, cables: Sequence[int], sockets: Sequence[int], groups: Sequence[int]) -> int:
        """Return the bound of a state in which only cables are still to be decided, and groups carry so much [mA]."""
        left = self._left(cables, sockets)
        within = [at for at, group in enumerate(self.problem.groups) if groups[at] <= group.limit]

        def bound(cards: bool) -> int:
            cost, wants = self._wants([(counts, 0)], cards)
            if cost >= NEVER:
                return NEVER
            plain = self._of_uses(wants, (self.none,), left)
            if plain >= NEVER or not within:
                return cost + plain
            return cost + self._of_groups(wants, plain, left, within, groups)

        return _whole_cards(bound)

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
        uses = self._uses(tuple(adapters))
        left = self._left(cables, sockets)
        self.bare = bool(uses)

        def bound(cards: bool) -> int:
            cost, wants = self._wants(asking, cards)
            if cost >= NEVER:
                return NEVER
            plain = self._of_uses(wants, uses, left) if uses else self._least(wants)
            return cost + self._of_full_groups(wants, plain, adapters)

        return _whole_cards(bound)

    def _left(self, cables: Sequence[int], sockets: Sequence[int]) -> Left:
        return Left(tuple(self.available(cables, sockets)), tuple(sockets))

    def _wants(self, asking: Sequence[tuple[Counted, int]], cards: bool) -> tuple[int, Wants]:
        """Return what is sure to be paid, and what is asked."""
        cost = 0
        wants: Wants = [Counter() for _ in self.markets.families]
        for counts, adapters in asking:
            for cluster, times in counts:
                asked = self.asks.asked(cluster, adapters, cards)
                cost += asked.cost * times
                for ask, number in asked.asks:
                    wants[self.asks.family(ask)][ask] += number * times
        return cost, wants

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
            found = self.uses[adapters] = tuple(made)
        return found

    def _use(self, numbers: tuple[int, ...]) -> Used:
        cost = 0
        inputs = []
        for number, (kind, option) in zip(numbers, self.markets.outputs, strict=True):
            adapter = self.problem.adapters[kind]
            cost += number * UNIT[ADAPTER_LEVEL + adapter.rank]
            inputs.append(number * adapter.inputs[option])
        return Used(cost, numbers, tuple(inputs))

    def _inputs(self, wants: Wants) -> list[int | None]:
        """Return an input of each (kind, option) as an ask, None where nothing feeds it.

        Where adapters may feed adapters nothing is known of what an input carries.
        """
        feeds: list[list[int]] = [[] for _ in self.markets.outputs]
        for counted in wants if self.unchained else ():
            for ask in counted:
                for market, _ in self.asks.goods[self.asks.asks[ask].goods].costs:
                    if market >= len(self.markets.plugs):
                        feeds[market - len(self.markets.plugs)].append(ask)
        outputs = zip(self.markets.outputs, feeds, strict=True)
        return [self.asks.input(kind, option, each) for (kind, option), each in outputs]

    def _of_uses(self, wants: Wants, uses: Sequence[Used], left: Left) -> int:
        """Return the least cost of all ways to use adapters, none of them first: as a rule that is the best.

        Families that are not asked for inputs cost the same for many of these, so they are looked at first, and the
        others only where that leaves room for something better.
        """
        best = self._together([self.menus.menu(*each, self.none.numbers, left) for each in _asked(wants)], left.sockets)
        likely = self.likely
        sure = self._least(wants)
        uses = [used for used in uses if any(used.numbers) and sure + used.cost < best]
        if not uses:
            return best
        inputs = self._inputs(wants)
        begun = []
        for number, used in enumerate(uses):
            if any(many and ask is None for ask, many in zip(inputs, used.inputs, strict=True)):
                continue
            wired = zip(inputs, used.inputs, strict=True)
            fed = {self.asks.family(ask) for ask, many in wired if many and ask is not None}
            plain = [self.menus.menu(*each, used.numbers, left) for each in _asked(wants) if each[0] not in fed]
            begun.append((used.cost + sum(menu.least() for menu in plain), number, plain, fed))
        begun.sort(key=itemgetter(0, 1))
        self.menus.work.done += len(uses) // USES_A_WORK
        for floor, number, plain, fed in begun:
            if floor >= best:
                break
            used = uses[number]
            further = {family: wants[family].copy() for family in fed}
            for ask, times in zip(inputs, used.inputs, strict=True):
                if times and ask is not None:
                    further[self.asks.family(ask)][ask] += times
            more = [self.menus.menu(family, counted, used.numbers, left) for family, counted in further.items()]
            found = used.cost + self._together([*plain, *more], left.sockets)
            if found < best:
                best, self.bare = found, False
        if self.bare:
            self.likely = likely
        return best

    def _least(self, wants: Wants) -> int:
        """Return what all asks cost at the least, each by itself."""
        return sum(self.asks.least(ask) * times for counted in wants for ask, times in counted.items())

    def _together(self, menus: Sequence[Menu], sockets: Sequence[int]) -> int:
        """Return the least cost of one offer of each family that the sockets allow together."""
        if not self.markets.shared:
            cost = sum(menu.settled() for menu in menus)
            self.likely = [kind for menu in menus for kind in menu.opened(())]
            return cost
        shared = tuple([sockets[socket] for socket in self.markets.shared])
        while True:
            self.menus.work.done += 1
            cost, chosen = _cheapest(menus, shared)
            open_yet = [menu.settle(takes) for menu, takes in zip(menus, chosen, strict=False)]
            if not any(open_yet):
                self.likely = [kind for menu, takes in zip(menus, chosen, strict=False) for kind in menu.opened(takes)]
                return cost

    # Groups.

    def _of_groups(self, wants: Wants, plain: int, left: Left, within: Sequence[int], groups: Sequence[int]) -> int:
        """Return the least cost where groups pass their limit, or their cables carry no more than the lightest needs.

        ``plain`` is what it costs where groups count for nothing.
        """
        best = NEVER
        few = len(within) <= MOST_GROUPS
        self.menus.work.done += GROUPS_WORK * len(within)
        extra = self._of_held(wants, left, self.overcurrent.held(wants, within, groups)) if few else {}
        for number in range(len(within) + 1 if few else 0):
            if plain + number * UNIT[0] >= best:
                break
            for over in combinations(within, number):
                held = [group for group in within if group not in over]
                most = tuple([self._most(kind, wants, held, groups) for kind in range(len(self.problem.cables))])
                cost = plain
                if min(most, default=NO_LIMIT) < NO_LIMIT:
                    cost = self._of_uses(wants, (self.none,), left._replace(most=most))
                cost = max(cost, _without(extra, over))
                best = min(best, cost + number * UNIT[0])
        return plain if best >= NEVER else best

    def _of_full_groups(self, wants: Wants, plain: int, adapters: Sequence[int]) -> int:
        """Return the least cost where no cable is in use yet and adapters may be, whatever groups pass their limit."""
        groups = range(len(self.problem.groups))
        if not groups or len(groups) > MOST_GROUPS:
            return plain
        self.menus.work.done += GROUPS_WORK * len(groups)
        sure = self._least(wants)
        held = self.overcurrent.held(wants, groups, [0] * len(groups), adapters)
        extra = {some: sure + each.cost for some, each in held.items()}
        if not extra:
            return plain
        best = NEVER
        for number in range(len(groups) + 1):
            if plain + number * UNIT[0] >= best:
                break
            for over in combinations(groups, number):
                best = min(best, max(plain, _without(extra, over)) + number * UNIT[0])
        if best > plain:
            self.bare = False
        return best

    def _of_held(self, wants: Wants, left: Left, held: dict[tuple[int, ...], Held]) -> dict[tuple[int, ...], int]:
        """Return the least cost where some groups are held: asks of families that pay for it, menus of all others."""
        found = {}
        for some, (cost, families) in held.items():
            for family, counted in _asked(wants):
                if family in families:
                    cost += sum([self.asks.least(ask) * times for ask, times in counted.items()])
                else:
                    cost += self.menus.menu(family, counted, self.none.numbers, left).least()
            found[some] = cost
        return found

    def _most(self, kind: int, wants: Wants, held: Sequence[int], groups: Sequence[int]) -> int:
        """Return how many needs hang on the cables of a kind at the most, if these groups stay within their limits."""
        named = self.problem.cables[kind].groups
        found = NO_LIMIT
        for group in held:
            if group in named:
                rail, limit = self.problem.groups[group]
                room = (limit - groups[group]) * len(named) // named.count(group)
                found = min(found, self._lightest_within(kind, wants, rail, room))
        return found

    def _lightest_within(self, kind: int, wants: Wants, rail: int, room: int) -> int:
        """Return how many of the lightest needs that fit a kind stay within a current; NO_LIMIT where all do."""
        asks = self.asks
        loads = sorted(
            (asks.asks[ask].load[rail], times)
            for counted in wants
            for ask, times in counted.items()
            if kind in asks.kinds_of[asks.asks[ask].goods]
        )
        found = lightest(loads, room)
        return found if found < sum([times for _, times in loads]) else NO_LIMIT


def _without(extra: dict[tuple[int, ...], int], over: Sequence[int]) -> int:
    """Return the most that it costs to hold some groups, none of these."""
    return max([cost for some, cost in extra.items() if not set(some) & set(over)], default=0)


def _asked(wants: Wants) -> list[tuple[int, Counter[int]]]:
    """Return the families that are asked for something, each with what."""
    return [(family, counted) for family, counted in enumerate(wants) if counted]


def _whole_cards(bound: Callable[[bool], int]) -> int:
    """Return a bound in which a card that is not whole counts once, though its ports each pay a part of it.

    A part of a card is far more than all that is counted below that level, which may be less than nothing where an
    overload ends a band; so where there is a part the next whole card is sure. Below it, it costs at least what it
    would if cards did not count, if no less is unfed then.
    """
    found = bound(True)
    if found >= NEVER or not PART < found % UNIT[CARD_LEVEL] < UNIT[CARD_LEVEL] - PART:
        return found
    whole = found - found % UNIT[CARD_LEVEL] + UNIT[CARD_LEVEL]
    above, below = divmod(bound(False) + PART, UNIT[CARD_LEVEL - 1])
    same = above == found // UNIT[CARD_LEVEL - 1] and below < 2 * PART
    return whole + (below - PART if same else -PART)


def _cheapest(menus: Sequence[Menu], sockets: tuple[int, ...]) -> tuple[int, tuple[tuple[int, ...], ...]]:
    """Return the least cost of one entry of each menu that the sockets allow together, and the entries."""
    so_far: dict[tuple[int, ...], tuple[int, tuple[tuple[int, ...], ...]]] = {sockets: (0, ())}
    for menu in menus:
        further: dict[tuple[int, ...], tuple[int, tuple[tuple[int, ...], ...]]] = {}
        for left, (spent, chosen) in so_far.items():
            for cost, takes in menu.front():
                after = tuple([one - other for one, other in zip(left, takes, strict=True)])
                if min(after) >= 0 and (after not in further or spent + cost < further[after][0]):
                    further[after] = (spent + cost, (*chosen, takes))
        so_far = further
    return min(so_far.values(), default=(NEVER, ()))
