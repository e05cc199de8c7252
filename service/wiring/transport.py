"""Goods sent to markets at the least cost: successive shortest ways, exact."""

from collections.abc import Sequence
from typing import NamedTuple

from service.wiring.clusters import NEVER

NOWHERE = -1


class Goods(NamedTuple):
    """Equal things to send: the family that they belong to, what keeping one costs, and (market, cost) by market."""

    family: int
    unfed: int
    costs: tuple[tuple[int, int], ...]

    @property
    def least(self) -> int:
        """Return what one costs at the least."""
        return min((cost for _, cost in self.costs), default=self.unfed)


def least(goods: list[tuple[Goods, int]], room: Sequence[int]) -> tuple[int, int]:
    """Return the least cost to send goods, each so many times, where markets have room for so many; and how many go."""
    options = [[(at, cost) for at, cost in each.costs if room[at]] for each, _ in goods]
    free = list(room)
    sent: list[dict[int, int]] = [{} for _ in goods]
    costs = [dict(each.costs) for each, _ in goods]
    total = fed = 0
    for number, (_, times) in enumerate(goods):
        rest = times
        while rest:
            price, way = _shortest(number, goods, options, costs, free, sent)
            if price >= NEVER:
                return NEVER, 0
            many, ends = _carry(way, rest, free, sent)
            total += price * many
            fed += many if ends else 0
            rest -= many
    return total, fed


def _shortest(
    start: int,
    goods: list[tuple[Goods, int]],
    options: list[list[tuple[int, int]]],
    costs: list[dict[int, int]],
    free: list[int],
    sent: list[dict[int, int]],
) -> tuple[int, list[tuple[int, int]]]:
    """Return the cheapest way to send one more: (goods, market) steps, each pushing the next goods out of the market."""
    price = {start: 0}
    before: dict[int, tuple[int, int]] = {}
    best, last = NEVER, (start, NOWHERE)
    waiting = [start]
    while waiting:
        at = waiting.pop()
        spent = price[at]
        if spent + goods[at][0].unfed < best:
            best, last = spent + goods[at][0].unfed, (at, NOWHERE)
        for market, cost in options[at]:
            if free[market]:
                if spent + cost < best:
                    best, last = spent + cost, (at, market)
                continue
            for other, through in enumerate(sent):
                if other != at and through.get(market):
                    then = spent + cost - costs[other][market]
                    if then < price.get(other, NEVER):
                        price[other] = then
                        before[other] = (at, market)
                        waiting.append(other)
    way = [last]
    while way[-1][0] != start:
        way.append(before[way[-1][0]])
    return best, way[::-1]


def _carry(
    way: list[tuple[int, int]], most: int, free: list[int], sent: list[dict[int, int]]
) -> tuple[int, bool]:
    """Send as many as may go this way; return how many, and whether it ends at a market."""
    many = most
    for (_, market), (pushed, _) in zip(way, way[1:], strict=False):
        many = min(many, sent[pushed][market])
    end = way[-1][1]
    if end != NOWHERE:
        many = min(many, free[end])
        free[end] -= many
    for (mover, market), (pushed, _) in zip(way, way[1:], strict=False):
        sent[mover][market] = sent[mover].get(market, 0) + many
        sent[pushed][market] -= many
    mover, market = way[-1]
    if market != NOWHERE:
        sent[mover][market] = sent[mover].get(market, 0) + many
    return many, end != NOWHERE
