"""Where needs may go, numbered: plugs that may be exchanged as one market, and the outputs of each adapter and option.

A cable kind is the town of its plugs: what crowds on it pays there. Families of port types do not meet in any market of
plugs.
"""

from service.wiring.families import Family, families, reached
from service.wiring.plugs import Plugs
from service.wiring.problem import Problem


class Markets:
    """The markets of one problem, plugs first.

    ``plugs``: (cable kind, needs that one cable's take at once) by market. ``of_plug``: the market of (kind, plug).
    ``outputs``: (adapter kind, option) of the markets that follow, ``of_output`` the way back. ``rooms``: needs that
    one cable takes, by kind. ``halves``: of plugs, that a need takes at the least, by port type.
    ``splits``: whether a kind has plugs that split.
    """

    def __init__(self, problem: Problem, plugs: Plugs) -> None:
        self.problem = problem
        self.families = _families(problem)
        self.family_of = {of: number for number, family in enumerate(self.families) for of in family.types}
        self.plugs: list[tuple[int, int]] = []
        self.of_plug: dict[tuple[int, int], int] = {}
        self._number_plugs(plugs)
        self.outputs = [
            (kind, option) for kind, found in enumerate(problem.adapters) for option in range(len(found.inputs))
        ]
        self.of_output = {output: market for market, output in enumerate(self.outputs, len(self.plugs))}
        kinds = len(problem.cables)
        self.town_of = [kind for kind, _ in self.plugs] + [kinds + place for place in range(len(self.outputs))]
        self.towns = kinds + len(self.outputs)
        self.rooms = [sum(number for kind, number in self.plugs if kind == of) for of in range(kinds)]
        self.shared = self._shared_sockets()
        self.splits = [max(cable.halves, default=1) > 1 for cable in problem.cables]
        self.halves = [self._halves(of) for of in range(len(problem.port_types))]

    def _halves(self, of: int) -> int:
        """Return how many halves of a plug a need of a type takes at the least; a plug that does not split has two."""
        cables = self.problem.cables
        fits = self.problem.port_types[of].fits
        return min([2 * fit.halves // cables[fit.cable].halves[fit.plug] for fit in fits], default=0)

    def _number_plugs(self, alike: Plugs) -> None:
        at_once: dict[tuple[int, int], int] = {}
        for of in reached(self.problem):
            for fit in self.problem.port_types[of].fits:
                at = (fit.cable, fit.plug)
                at_once[at] = max(self.problem.cables[fit.cable].halves[fit.plug] // fit.halves, at_once.get(at, 0))
        for kind in range(len(self.problem.cables)):
            numbers: dict[int, int] = {}
            for plug, first in enumerate(alike.alike[kind]):
                if first not in numbers:
                    numbers[first] = len(self.plugs)
                    self.plugs.append((kind, 0))
                market = self.of_plug[kind, plug] = numbers[first]
                self.plugs[market] = (kind, self.plugs[market][1] + at_once.get((kind, plug), 0))

    def _shared_sockets(self) -> list[int]:
        """Return the socket types that cables of several families take."""
        cables = self.problem.cables
        takers = [
            {socket for kind in family.kinds for socket, taken in enumerate(cables[kind].takes) if taken}
            for family in self.families
        ]
        sockets = range(len(self.problem.sockets))
        return [socket for socket in sockets if sum(socket in taken for taken in takers) > 1]


def _families(problem: Problem) -> tuple[Family, ...]:
    """Return the families, and each port type that no cable serves by itself."""
    found = families(problem)
    served = {of for family in found for of in family.types}
    alone = (Family((of,), ()) for of in range(len(problem.port_types)) if of not in served)
    return (*found, *alone)
