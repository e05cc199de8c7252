"""Goods sent to markets at the least cost, by successive shortest ways; exact.

A market has room for so many. Markets belong to towns, and what goes to a town pays a toll that never falls from one
piece to the next.
"""

from collections.abc import Sequence
from typing import NamedTuple

from service.wiring.clusters import NEVER

NOWHERE = -1


class Goods(NamedTuple):
    """Equal things to send: their family, what keeping one costs, (market, cost) by market, and the least of it all.

    ``halves``: of plugs, that one takes at the least; a plug that does not split counts as two.
    """

    family: int
    kept: int
    costs: tuple[tuple[int, int], ...]
    least: int
    halves: int = 0


Tolls = tuple[tuple[int, int], ...]
"""What pieces pay that come to a town, one after the other: (up to which piece, toll); nothing more is let in."""


def least(
    goods: Sequence[tuple[Goods, int]], room: Sequence[int], town_of: Sequence[int], towns: Sequence[Tolls]
) -> tuple[int, int]:
    """Return the least cost to send goods, each so many times; and how many of them go to a market."""
    sending = _Sending(goods, list(room), town_of, towns)
    total = 0
    for number, (_, times) in enumerate(goods):
        rest = times
        while rest:
            price = sending.find(number)
            if price >= NEVER:
                return NEVER, 0
            many = sending.carry(rest)
            total += price * many
            rest -= many
    return total, sum(sending.come)


class _Sending:
    def __init__(
        self, goods: Sequence[tuple[Goods, int]], free: list[int], town_of: Sequence[int], towns: Sequence[Tolls]
    ) -> None:
        self.free = free
        self.town_of = town_of
        self.towns = towns
        self.come = [0] * len(towns)
        self.kept = [each.kept for each, _ in goods]
        self.options = [[(at, cost) for at, cost in each.costs if free[at]] for each, _ in goods]
        self.prices = [dict(options) for options in self.options]
        self.inside: list[dict[int, int]] = [{} for _ in free]
        self.way: list[tuple[int, int, int]] = []

    def _toll(self, town: int) -> tuple[int, int]:
        """Return what the next piece pays in a town, and how many pay that; where no tolls are set nobody does."""
        if not self.towns[town]:
            return 0, NEVER
        come = self.come[town]
        return next(((toll, end - come) for end, toll in self.towns[town] if come < end), (NEVER, 0))

    def find(self, start: int) -> int:
        """Find the cheapest way to send one more piece, which may push others out of markets; return what it costs.

        A piece that comes to a market pushes another out of it, or out of another market of the same town, which then
        goes a way of its own; the last of them comes to a free place or is kept.
        """
        free, kept, prices, inside, towns = self.free, self.kept, self.prices, self.inside, self.towns
        price = {start: 0}
        before: dict[int, tuple[int, int, int]] = {}
        best, last = NEVER, (start, NOWHERE, NOWHERE)
        waiting = [start]
        while waiting:
            at = waiting.pop()
            spent = price[at]
            if spent + kept[at] < best:
                best, last = spent + kept[at], (at, NOWHERE, NOWHERE)
            for market, cost in self.options[at]:
                then = spent + cost
                pushed: Sequence[int] = (market,)
                if free[market]:
                    town = self.town_of[market]
                    toll = self._toll(town)[0] if towns[town] else 0
                    if then + toll < best:
                        best, last = then + toll, (at, market, NOWHERE)
                    if not toll:
                        continue
                    pushed = self._town(market)
                for left in pushed:
                    for other in inside[left]:
                        further = then - prices[other][left]
                        if further < price.get(other, NEVER):
                            price[other] = further
                            before[other] = (at, market, left)
                            waiting.append(other)
        self.way = [last]
        while self.way[-1][0] != start:
            self.way.append(before[self.way[-1][0]])
        self.way.reverse()
        return best

    def _town(self, market: int) -> Sequence[int]:
        """Return the markets of the same town."""
        town = self.town_of[market]
        return [other for other, of in enumerate(self.town_of) if of == town]

    def carry(self, most: int) -> int:
        """Send as many as may go the way that was found; return how many."""
        many = most
        pushes = [(step, self.way[number + 1][0]) for number, step in enumerate(self.way[:-1])]
        for (_, market, left), pushed in pushes:
            many = min(many, self.inside[left][pushed])
            if left != market:
                many = min(many, self.free[market])
        goods, end, _ = self.way[-1]
        if end != NOWHERE:
            many = min(many, self.free[end], self._toll(self.town_of[end])[1])
        for (mover, market, left), pushed in pushes:
            self._send(pushed, left, -many)
            self._send(mover, market, many)
        if end != NOWHERE:
            self._send(goods, end, many)
            self.come[self.town_of[end]] += many
        return many

    def _send(self, goods: int, market: int, many: int) -> None:
        inside = self.inside[market]
        inside[goods] = inside.get(goods, 0) + many
        if not inside[goods]:
            del inside[goods]
        self.free[market] -= many
