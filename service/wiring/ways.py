"""The ways to feed an open need, as far as they can be told before anything is decided: at the least what each costs.

A way is a plug, or an adapter with so many inputs and, at each of these, a way again. What hangs beside the need on the
same cable or adapter is left out, and currents only grow, so a way never costs less than is said here. An adapter's
price is divided over its outputs, and so are the plugs that it takes.
"""

from collections.abc import Iterator
from itertools import accumulate
from typing import NamedTuple

from service.wiring.clusters import CLEAN, INPUT, LAST_INPUT, LEVEL_BITS, UNIT, Need, joined
from service.wiring.objective import ADAPTER_LEVEL, CABLES_LEVEL, Verdict, divided, judged, tighter
from service.wiring.problem import LEVELS, Fit, Load, Problem, RailLimits

PLUG = 1 << 20
"""One plug, so that a part of one can be told as a whole number, rounded down."""

_GRAIN = LEVEL_BITS * (LEVELS - CABLES_LEVEL)


class Way(NamedTuple):
    """How the feed is judged, points, the price of adapters, and how much of how many plugs of which port type.

    Of the points ``at_fit`` are those of the fit at the need itself; the others are paid once for up to ``outputs``
    inputs of one adapter.
    """

    verdict: Verdict
    points: int
    price: int
    type: int
    plugs: int
    at_fit: int
    outputs: int = 1


class Ways:
    """The ways of one problem."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.stretches = [tuple(accumulate(cable.segments, tighter)) for cable in problem.cables]
        self.paths: dict[tuple[int, int], RailLimits] = {}
        self._of: dict[tuple[Need, int], tuple[Way, ...]] = {}
        self._plugs: dict[tuple[int, Load], tuple[tuple[Fit, Way], ...]] = {}

    def of(self, need: Need, adapters: int) -> tuple[Way, ...]:
        """Return the ways to feed a need when the adapter kinds of a bit mask are to be had."""
        found = self._of.get((need, adapters))
        if found is None:
            each = [way for _, way in self.plugs(need.type, need.load)]
            if adapters and need.depth != LAST_INPUT:
                each += self._outputs(need, adapters)
            found = self._of[need, adapters] = tuple(dict.fromkeys(each))
        return found

    def plugs(self, of: int, load: Load) -> tuple[tuple[Fit, Way], ...]:
        """Return the plugs that feed a need of a port type with such a load."""
        found = self._plugs.get((of, load))
        if found is None:
            found = self._plugs[of, load] = tuple(self._fitting(of, load))
        return found

    def _fitting(self, of: int, load: Load) -> list[tuple[Fit, Way]]:
        found = []
        for number, fit in enumerate(self.problem.port_types[of].fits):
            if fit.halves <= self.problem.cables[fit.cable].halves[fit.plug]:
                verdict = joined(CLEAN, judged(load, self._path(of, number, fit)))
                found.append((fit, Way(verdict, fit.points, 0, of, PLUG, fit.points)))
        return found

    def _path(self, of: int, number: int, fit: Fit) -> RailLimits:
        """Return the limits of a plug and of all stretches before it, for a need that hangs there alone."""
        found = self.paths.get((of, number))
        if found is None:
            found = self.paths[of, number] = tighter(self.stretches[fit.cable][fit.plug], fit.limits)
        return found

    def _outputs(self, need: Need, adapters: int) -> list[Way]:
        """Return the ways through one adapter.

        Where its inputs are fed in different ways, the one of these that has the least points and price, at all of the
        inputs, costs no more; what an adapter before this one pays once is divided over the inputs that it may feed.
        """
        found = []
        for number, option, own in self._opened(need, adapters):
            kind = self.problem.adapters[number]
            inputs = kind.inputs[option]
            for way in self.of(self._input(need, number, option), adapters):
                once = inputs * (way.points - way.at_fit) // way.outputs
                price = rounded((UNIT[ADAPTER_LEVEL + kind.rank] + inputs * way.price) // kind.outputs)
                found.append(
                    own._replace(
                        verdict=joined(own.verdict, way.verdict),
                        points=own.points + inputs * way.at_fit + once,
                        price=price,
                        type=way.type,
                        plugs=inputs * way.plugs // kind.outputs,
                    )
                )
        return found

    def outer(self, need: Need, adapters: int) -> Iterator[tuple[tuple[int, int], Way]]:
        """Yield the ways through one adapter (kind, option) as far as the need itself pays for them, not its inputs."""
        for number, option, own in self._opened(need, adapters):
            for verdict in {way.verdict for way in self.of(self._input(need, number, option), adapters)}:
                yield (number, option), own._replace(verdict=joined(own.verdict, verdict))

    def _opened(self, need: Need, adapters: int) -> Iterator[tuple[int, int, Way]]:
        """Yield each adapter and option, and how the need is judged at its output and by the adapter."""
        for fit in self.problem.port_types[need.type].adapter_fits:
            kind = self.problem.adapters[fit.adapter]
            if adapters >> fit.adapter & 1 and kind.outputs > 0:
                at_port = joined(CLEAN, judged(need.load, fit.limits))
                for option, limits in enumerate(kind.limits_by_inputs):
                    verdict = joined(at_port, judged(need.load, limits))
                    points = fit.points + kind.points
                    yield fit.adapter, option, Way(verdict, points, 0, need.type, 0, fit.points, kind.outputs)

    def _input(self, need: Need, number: int, option: int) -> Need:
        kind = self.problem.adapters[number]
        depth = INPUT if need.depth < INPUT else LAST_INPUT
        return Need(kind.input_type, divided(need.load, 1, kind.inputs[option]), depth, True, ())


def rounded(price: int) -> int:
    """Round a part of a price down to the last level above the number of cables, so that prices differ by as much."""
    return price >> _GRAIN << _GRAIN
