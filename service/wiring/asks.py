"""What open needs ask for where only bounds count: what each costs by itself on each market, or without a source."""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from service.wiring.clusters import CLEAN, NEVER, UNFED, UNIT, Cluster, Line, Need, joined, unfed_cost, worth
from service.wiring.crowding import PAIR, Guest, Share
from service.wiring.markets import Markets
from service.wiring.objective import OPTIONAL_LEVEL, POINTS_LEVEL, divided
from service.wiring.problem import COMFORT_FROM, NOTHING, Load, Problem
from service.wiring.transport import Goods
from service.wiring.ways import Way, Ways, rounded

NO_CARD = (-1, 0)


class Ask(NamedTuple):
    """A need as goods, by number; as a load; and as a guest of each kind of several plugs that it may hang on.

    ``new``: whether it has a line of its own on which nothing has been judged yet.
    """

    goods: int
    load: Load
    new: bool
    guests: tuple[tuple[int, Guest], ...]


class Asked(NamedTuple):
    """What a cluster asks: a cost that is sure, and asks by number, each so many times."""

    cost: int
    asks: tuple[tuple[int, int], ...]


class Asks:
    """The asks of one problem, each numbered once."""

    def __init__(self, problem: Problem, markets: Markets, clusters: Sequence[Cluster]) -> None:
        """Take the clusters by number; the sequence may grow."""
        self.problem = problem
        self.markets = markets
        self.clusters = clusters
        self.ways = Ways(problem)
        self.kinds_by_type = [
            {fit.cable for fit in of.fits if fit.halves <= problem.cables[fit.cable].halves[fit.plug]}
            for of in problem.port_types
        ]
        self.goods: list[Goods] = []
        self.kinds_of: list[frozenset[int]] = []
        self.asks: list[Ask] = []
        self._goods_numbers: dict[Goods, int] = {}
        self._ask_numbers: dict[Ask, int] = {}
        self._asked: dict[tuple[int, int, bool], Asked] = {}

    def asked(self, cluster: int, adapters: int, cards: bool = True) -> Asked:
        """Return what a cluster asks when the adapter kinds of a bit mask may feed it.

        ``cards``: whether an unfed port pays its part of what a card costs that is not whole.
        """
        key = (cluster, adapters, cards)
        found = self._asked.get(key)
        if found is None:
            found = self._asked[key] = self._ask(cluster, adapters, cards)
        return found

    def family(self, ask: int) -> int:
        """Return the family of an ask."""
        return self.goods[self.asks[ask].goods].family

    def least(self, ask: int) -> int:
        """Return what an ask costs at the least."""
        return self.goods[self.asks[ask].goods].least

    def input(self, kind: int, option: int, feeds: Sequence[int]) -> int | None:
        """Return an input of an adapter as an ask, when these asks may be fed by it; None where nothing feeds it.

        It pays the points of its plug, for at least one connection passes it; it carries its part of the least load;
        and it crowds on a cable as the one of them that is charged most anyhow.
        """
        adapter = self.problem.adapters[kind]
        inputs = adapter.inputs[option]
        market = self.markets.of_output[kind, option]
        load, shares = NOTHING, []
        if feeds and all(self.asks[ask].new for ask in feeds):
            load = divided(_least([self.asks[ask].load for ask in feeds]), 1, inputs)
            charged = max(dict(self.goods[self.asks[ask].goods].costs)[market] for ask in feeds)
            shares = [Share(CLEAN, charged, inputs)]
        of = adapter.input_type
        need = Need(of, load, 0, True, ())
        costs = [(at, way.at_fit * UNIT[POINTS_LEVEL]) for at, way in self._ways(need, -1)]
        return self._number(self._goods(of, NEVER, costs), need, shares, new=False) if costs else None

    def _ask(self, number: int, adapters: int, cards: bool) -> Asked:
        """Ask each need of a cluster.

        A need with a line of its own pays there what each way is worth; needs that share lines pay these together, at
        the least what the dearest of them must.
        """
        cluster = self.clusters[number]
        sharing = Counter(line for need in cluster.needs for line in need.lines)
        ways = [self._ways(need, adapters) for need in cluster.needs]
        own = [len(need.lines) == 1 and sharing[need.lines[0]] == 1 for need in cluster.needs]
        sure = [0] * len(cluster.lines)
        for need, each, alone in zip(cluster.needs, ways, own, strict=True):
            for line in () if alone else need.lines:
                sure[line] = max(sure[line], min((self._more(cluster.lines[line], way) for _, way in each), default=0))
        open_ports = Counter(cluster.lines[need.lines[0]].unit for need in cluster.needs if not need.must)
        lines_of = Counter(line.unit for line in cluster.lines)
        cost = sum(sure)
        asks: Counter[int] = Counter()
        for need, each, alone in zip(cluster.needs, ways, own, strict=True):
            first = cluster.lines[need.lines[0]]
            kept = NEVER if need.must else _unfed(cluster, first, open_ports[first.unit], cards)
            optional = cluster.units[first.unit].optional if lines_of[first.unit] == 1 else 0
            costs = [(market, self._more(first, way, optional) if alone else 0) for market, way in each]
            if not costs:
                cost += kept
                continue
            shares = [
                Share(cluster.lines[line].verdict, 0 if alone else sure[line], sharing[line]) for line in need.lines
            ]
            new = alone and first.verdict == CLEAN
            card_ma = first.card_ma if alone else 0
            asks[self._number(self._goods(need.type, kept, costs), need, shares, new, (number, card_ma))] += 1
        return Asked(cost, tuple(asks.items()))

    def _ways(self, need: Need, adapters: int) -> list[tuple[int, Way]]:
        """Return the markets that feed a need, each with how the need is then judged and what it pays there itself."""
        found = [(self.markets.of_plug[fit.cable, fit.plug], way) for fit, way in self.ways.plugs(need.type, need.load)]
        if adapters:
            found += [(self.markets.of_output[at], way) for at, way in self.ways.outer(need, adapters)]
        return found

    def _more(self, line: Line, way: Way, optional: int = 0) -> int:
        """Return what a line pays for one way; also for ports left out beside it, where it alone may be to blame."""
        after = joined(joined(line.verdict, CLEAN), way.verdict)
        found = worth(self.problem, after) - worth(self.problem, line.verdict) + way.points * UNIT[POINTS_LEVEL]
        return found + optional * UNIT[OPTIONAL_LEVEL] if after.use > COMFORT_FROM else found

    def _goods(self, of: int, kept: int, costs: Iterable[tuple[int, int]]) -> int:
        by_market: dict[int, int] = {}
        for market, cost in costs:
            by_market[market] = min(cost, by_market.get(market, cost))
        least = min(kept, *by_market.values())
        markets = self.markets
        goods = Goods(markets.family_of[of], kept, tuple(sorted(by_market.items())), least, markets.halves[of])
        found = self._goods_numbers.get(goods)
        if found is None:
            found = self._goods_numbers[goods] = len(self.goods)
            self.goods.append(goods)
            plugs = self.markets.plugs
            self.kinds_of.append(frozenset(plugs[market][0] for market in by_market if market < len(plugs)))
        return found

    def _number(
        self, goods: int, need: Need, lines: Sequence[Share], new: bool, card: tuple[int, int] = NO_CARD
    ) -> int:
        """Return the number of an ask; on each kind of cable a line is charged up to the dearest plug anyhow.

        ``card``: which cluster it is of, and its current where ports of one card on one cable are a caution.
        """
        plugs = self.markets.plugs
        dearest: dict[int, int] = {}
        for market, cost in self.goods[goods].costs:
            if market < len(plugs):
                kind = plugs[market][0]
                dearest[kind] = max(cost, dearest.get(kind, 0))
        guests = []
        for kind, cost in dearest.items():
            if self.markets.rooms[kind] >= PAIR:
                shares = tuple([Share(line.verdict, line.charged + cost, line.needs) for line in lines])
                guests.append((kind, self._guest(need, shares, kind, *card)))
        ask = Ask(goods, need.load, new, tuple(guests))
        found = self._ask_numbers.get(ask)
        if found is None:
            found = self._ask_numbers[ask] = len(self.asks)
            self.asks.append(ask)
        return found

    def _guest(self, need: Need, shares: tuple[Share, ...], kind: int, cluster: int, card_ma: int) -> Guest:
        if not card_ma:
            return Guest(need.load, shares)
        content = self.clusters[cluster]
        fitting = self.kinds_by_type
        number = sum(kind in fitting[each.type] and content.lines[each.lines[0]].card_ma > 0 for each in content.needs)
        return Guest(need.load, shares, card_ma, (cluster, number))


def _unfed(cluster: Cluster, line: Line, ports: int, cards: bool) -> int:
    """Return what a port costs unfed; what a card costs once is divided over its open ports, or left out."""
    unit = cluster.units[line.unit]
    own = unfed_cost(unit) - UNFED
    if unit.role == "card":
        own = rounded(own // ports) if cards else 0
    return UNFED + own


def _least(loads: Sequence[Load]) -> Load:
    a, b, c, d, e, f = (min(each) for each in zip(*loads, strict=True))
    return a, b, c, d, e, f
