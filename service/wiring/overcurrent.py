"""What overcurrent groups that stay within their limits leave without a source, at the least.

Some needs can only be fed by cables that put a part of the current on certain groups, by themselves or through
adapters. Together these needs take no more from the groups than there is room for; the others go without. Adapters that
lead to other cables let as many needs escape as they have outputs.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations
from typing import NamedTuple

from service.wiring.asks import Asks
from service.wiring.problem import Problem
from service.wiring.transport import Goods

Wants = list[Counter[int]]
"""Asks by family."""
Some = tuple[int, ...]
"""Some groups."""


class Held(NamedTuple):
    """What it costs, at the least, beyond what each need costs by itself; and the families whose needs pay it."""

    cost: int
    families: frozenset[int]


NOTHING_LEFT = Held(0, frozenset())


class Overcurrent:
    """The groups of one problem, and which part of what a need takes is sure to come from some of them."""

    def __init__(self, problem: Problem, asks: Asks) -> None:
        self.problem = problem
        self.asks = asks
        self._kinds_behind: dict[int, frozenset[int]] = {}
        self._kinds_adapted: dict[int, frozenset[int]] = {}
        self._parts: dict[tuple[int, Some], tuple[Fraction, bool]] = {}

    def held(
        self, wants: Wants, within: Sequence[int], carried: Sequence[int], adapters: Sequence[int] = ()
    ) -> dict[Some, Held]:
        """Return what it costs to hold some groups to their limits, only where that is anything.

        ``within``: the groups that may be held; ``carried``: what each group carries so far [mA]; ``adapters``: how
        many of each kind may still be put in use.
        """
        outputs = sum([left * kind.outputs for left, kind in zip(adapters, self.problem.adapters, strict=False)])
        limits = self.problem.groups
        found: dict[Some, Held] = {}
        for some in _subsets(within):
            if len({limits[group].rail for group in some}) == 1:
                held = self._held(wants, some, [limits[group].limit - carried[group] for group in some], outputs)
                if held.cost:
                    found[some] = held
        return found

    def _held(self, wants: Wants, some: Some, rooms: Sequence[int], outputs: int) -> Held:
        """Return the cost of those needs that find no room: as few as may be, and the cheapest to leave."""
        asks, rail = self.asks, self.problem.groups[some[0]].rail
        taken = []
        families = set()
        whole = True
        for family, counted in enumerate(wants):
            for ask, times in counted.items():
                of = asks.asks[ask]
                part, escapes = self._part(of.goods, some)
                if part and of.load[rail]:
                    families.add(family)
                    whole = whole and not self._adapted(of.goods)
                    load = of.load[rail] * part.numerator // part.denominator
                    taken.append((load, times, asks.goods[of.goods], escapes))
        if sum([load * times for load, times, _, _ in taken]) <= min(rooms):
            return NOTHING_LEFT
        taken.sort()
        loads = _without_heaviest(taken, outputs)
        most = lightest(loads, sum(rooms))
        if whole and len(some) > 1 and self._are_apart(some):  # an adapter may divide a need over several groups
            most = min(most, sum([lightest(loads, room) for room in rooms]))
        left = sum([times for _, times in loads]) - most
        if left <= 0:
            return NOTHING_LEFT
        return Held(left * min([goods.kept - goods.least for _, _, goods, _ in taken]), frozenset(families))

    def _are_apart(self, some: Some) -> bool:
        """Say whether each cable of some groups is of one of them alone."""
        named = [set(cable.groups) for cable in self.problem.cables]
        return all(len(each) == 1 for each in named if each & set(some))

    def _part(self, goods: int, some: Some) -> tuple[Fraction, bool]:
        """Return the part of what goods take that plugs surely take from some groups; whether adapters take less."""
        found = self._parts.get((goods, some))
        if found is None:
            straight, behind = self.asks.kinds_of[goods], self._adapted(goods)
            part, other = self._least(straight or behind, some), self._least(straight | behind, some)
            found = self._parts[goods, some] = (part, other < part)
        return found

    def _least(self, kinds: frozenset[int], some: Some) -> Fraction:
        """Return the least part that cables of these kinds take from some groups."""
        named = [self.problem.cables[kind].groups for kind in kinds]
        each = [Fraction(sum(group in some for group in groups), len(groups) or 1) for groups in named]
        return min(each, default=Fraction(0))

    def _adapted(self, goods: int) -> frozenset[int]:
        """Return the cable kinds that feed goods through adapters."""
        found = self._kinds_adapted.get(goods)
        if found is None:
            markets = self.asks.markets
            behind = [
                self._behind(self.problem.adapters[markets.outputs[market - len(markets.plugs)][0]].input_type)
                for market, _ in self.asks.goods[goods].costs
                if market >= len(markets.plugs)
            ]
            found = self._kinds_adapted[goods] = frozenset[int]().union(*behind)
        return found

    def _behind(self, of: int) -> frozenset[int]:
        """Return the cable kinds that feed a port type, by themselves or through adapters."""
        found = self._kinds_behind.get(of)
        if found is None:
            types, waiting = {of}, [of]
            while waiting:
                for fit in self.problem.port_types[waiting.pop()].adapter_fits:
                    inner = self.problem.adapters[fit.adapter].input_type
                    if inner not in types:
                        types.add(inner)
                        waiting.append(inner)
            kinds = (kind for each in types for kind in self.asks.kinds_by_type[each])
            found = self._kinds_behind[of] = frozenset(kinds)
        return found


def _without_heaviest(taken: Sequence[tuple[int, int, Goods, bool]], outputs: int) -> list[tuple[int, int]]:
    """Return loads, each so many times, without as many of the heaviest as may escape through outputs of adapters."""
    loads = []
    for load, times, _, escapes in reversed(taken):
        gone = min(times, outputs) if escapes else 0
        outputs -= gone
        loads.append((load, times - gone))
    return loads[::-1]


def lightest(loads: Sequence[tuple[int, int]], room: int) -> int:
    """Return how many of the lightest, of loads that each stand so many times, a current has room for."""
    found = 0
    for load, times in loads:
        each = times if load * times <= room else max(0, room // load)
        found += each
        room -= each * load
        if each < times:
            break
    return found


def _subsets(groups: Sequence[int]) -> Iterator[Some]:
    for number in range(1, len(groups) + 1):
        yield from combinations(groups, number)
