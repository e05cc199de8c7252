"""The ways to feed an open need, as far as they can be told before anything is decided: at the least what each costs.

A way is a plug, or an adapter with so many inputs and, at each of these, a way again. What hangs beside the need on the
same cable or adapter is left out, and currents only grow, so a way never costs less than is said here. An adapter's
price is divided over its outputs, and so are the plugs that it takes.
"""

from functools import lru_cache
from typing import NamedTuple

from service.wiring.clusters import CLEAN, INPUT, LAST_INPUT, LEVEL_BITS, UNIT, Need, joined
from service.wiring.objective import ADAPTER_LEVEL, CABLES_LEVEL, Verdict, divided, judged
from service.wiring.problem import LEVELS, Fit, Problem

PLUG = 1 << 20
"""One plug, so that a part of one can be told as a whole number, rounded down."""

_GRAIN = LEVEL_BITS * (LEVELS - CABLES_LEVEL)


class Way(NamedTuple):
    """How the feed is judged, points, the price of adapters, and how much of how many plugs of which port type."""

    verdict: Verdict
    points: int
    price: int
    type: int
    plugs: int


class Ways:
    """The ways of one problem."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.stretches = [
            [tuple(dict.fromkeys(cable.segments[: plug + 1])) for plug in range(len(cable.segments))]
            for cable in problem.cables
        ]
        self.of = lru_cache(maxsize=None)(self._of)

    def _of(self, need: Need, kinds: int, adapters: int) -> tuple[Way, ...]:
        """Return the ways to feed a need when the cable kinds and adapter kinds of two bit masks are to be had."""
        found = [way for _, way in self.plugs(need, kinds)]
        if adapters and need.depth != LAST_INPUT:
            found += self._outputs(need, kinds, adapters)
        return tuple(dict.fromkeys(found))

    def plugs(self, need: Need, kinds: int) -> list[tuple[Fit, Way]]:
        """Return the plugs that feed a need when the cable kinds of a bit mask are to be had."""
        found = []
        for fit in self.problem.port_types[need.type].fits:
            cable = self.problem.cables[fit.cable]
            if kinds >> fit.cable & 1 and fit.halves <= cable.halves[fit.plug]:
                verdict = joined(CLEAN, judged(need.load, fit.limits))
                for limits in self.stretches[fit.cable][fit.plug]:
                    verdict = joined(verdict, judged(need.load, limits))
                found.append((fit, Way(verdict, fit.points, 0, need.type, PLUG)))
        return found

    def _outputs(self, need: Need, kinds: int, adapters: int) -> list[Way]:
        found = []
        for fit in self.problem.port_types[need.type].adapter_fits:
            if adapters >> fit.adapter & 1 and self.problem.adapters[fit.adapter].outputs > 0:
                own = joined(CLEAN, judged(need.load, fit.limits))
                for option in range(len(self.problem.adapters[fit.adapter].inputs)):
                    found += self._through(need, fit.adapter, option, own, fit.points, kinds, adapters)
        return found

    def _through(
        self, need: Need, number: int, option: int, own: Verdict, points: int, kinds: int, adapters: int
    ) -> list[Way]:
        """Return the ways through one adapter.

        Where its inputs are fed in different ways, the one of these that has the least points and price, at all of the
        inputs, costs no more.
        """
        kind = self.problem.adapters[number]
        inputs = kind.inputs[option]
        through = joined(own, judged(need.load, kind.limits_by_inputs[option]))
        depth = INPUT if need.depth < INPUT else LAST_INPUT
        each = Need(kind.input_type, divided(need.load, 1, inputs), depth, True, ())
        return [
            Way(
                joined(through, way.verdict),
                points + kind.points + inputs * way.points,
                rounded((UNIT[ADAPTER_LEVEL + kind.rank] + inputs * way.price) // kind.outputs),
                way.type,
                inputs * way.plugs // kind.outputs,
            )
            for way in self.of(each, kinds, adapters)
        ]


def rounded(price: int) -> int:
    """Round a part of a price down to the last level above the number of cables, so that prices differ by as much."""
    return price >> _GRAIN << _GRAIN
