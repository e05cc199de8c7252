"""What a build asks, with its headers filled and its plugs wired in the way that is best for both together.

What hangs on headers loads the plugs of hub, cage and board, so how headers are filled (``demand.hosts``) and how the
supply's cables are used (``wiring.problem``) are one question wherever there is a choice. They are weighed together by
what the score counts: stops; then points, of kinds of header overloaded (AUX102) and of the wiring, those of the wiring
only where nothing is stopped; then as the wiring does. In all ways that are weighed the fewest needs are without a
header and the fewest power plugs left to a cable, so neither hangs on a current, and the best way never looks better
for more load.

As long as neither headers nor plugs give cause for a word the first way will do, and none could be better. Else the
first way is held against the floor: the wiring if hosts carried nothing and only the lightest plugs were left to
cables. Only where that is better are all ways gone through that load the supply's plugs differently, up to
``MOST_WAYS``, fewer where there is much to wire or wiring takes much work, counted in nodes of its search; where there
are more, or a wiring is not proven, the best so far is not proven either. A stop that stands on the floor stands
whatever way is taken.
"""

from dataclasses import replace
from typing import NamedTuple

from service.demand.ask import demand as ask
from service.demand.ask import headers
from service.demand.demand import Demand
from service.demand.ends import Ends, Settled
from service.demand.hosts import Hung, floor, others
from service.facts.points import HEADER_POINTS
from service.parts.build import Build, Plugged
from service.parts.figures import End
from service.parts.records import Motherboard, PowerSupply
from service.wiring.components import solve
from service.wiring.objective import POINTS_LEVEL, Judgement, judge
from service.wiring.plugged import pose_plugged
from service.wiring.pose import Frame, pose
from service.wiring.problem import Wiring
from service.wiring.search import NoWiring

MOST_WAYS = 16
MOST_PORTS = 320
MOST_NODES = 5_000
_HEADER = int(HEADER_POINTS.value)


class Wired(NamedTuple):
    """A wiring judged, with the way back to the parts."""

    frame: Frame
    wiring: Wiring
    judgement: Judgement
    proven: bool
    nodes: int = 0


class Asked(NamedTuple):
    """What a build asks with its headers filled in one way, and how that is wired; None without a supply.

    ``points`` of the headers that are overloaded. ``stopped``: however headers are filled, the wiring has a stop.
    """

    ends: Ends
    demand: Demand
    wired: Wired | None
    points: int
    stopped: bool = False

    @property
    def proven(self) -> bool:
        """Say whether no wiring is better."""
        return self.wired is None or self.wired.proven

    @property
    def nodes(self) -> int:
        """Return how many nodes the search for a wiring took."""
        return 0 if self.wired is None else self.wired.nodes


class Asker(NamedTuple):
    """A build, and all that is asked of it besides its headers."""

    build: Build
    unit: int | None
    end: End
    settled: Settled
    worn: tuple[Plugged, ...]

    def ask(self, hung: Hung | None) -> Asked:
        """Return what the build asks with its headers filled as in ``hung``; None: by themselves."""
        ends = Ends(self.end, self.settled)
        demand = ask(self.build, ends, hung)
        wired = None if self.unit is None else _wire(self.build, self.unit, demand, ends, self.worn)
        return Asked(ends, demand, wired, demand.over * self.weight)

    @property
    def weight(self) -> int:
        """Return the points of one kind of header overloaded: none where nobody looks at headers."""
        build = self.build
        looked_at = build.aspects is None or "signals" in build.aspects
        return _HEADER if looked_at and any(isinstance(unit.part, Motherboard) for unit in build.units) else 0


def asked(build: Build, unit: int | None, end: End, settled: Settled, worn: tuple[Plugged, ...]) -> Asked:
    """Return the demand of a build and the wiring of the supply that is its ``unit``."""
    asker = Asker(build, unit, end, settled, worn)
    first = asker.ask(None)
    if not first.demand.hung_choice or not first.proven or not any(said(first)):
        return first
    problem = headers(build, Ends(end, settled))
    least = asker.ask(floor(problem))
    stopped = least.proven and said(least)[0] > 0
    if least.proven and _no_better(first, least):
        return first._replace(stopped=stopped)
    found = others(problem)
    return _weighed(asker, first, least, found.hung, complete=found.complete)._replace(stopped=stopped)


def _no_better(first: Asked, least: Asked) -> bool:
    """Say whether nothing is better than the first way, without a look at others.

    A host's drive plugs that are overloaded stop the wiring, so without a stop the headers stand at their least.
    """
    stops, points = said(first)
    if stops:
        return (stops, points) == said(least)
    return first.demand.hung_proven and (0, points - first.points) == said(least)


def _weighed(asker: Asker, first: Asked, least: Asked, ways: list[Hung], *, complete: bool) -> Asked:
    """Return the best of several ways, the earliest of equals."""
    fewest = min((hung.worth.over for hung in ways), default=0) if complete else 0
    bound = (said(least)[0], said(least)[1] + fewest * asker.weight)
    most = min(MOST_WAYS, MOST_PORTS // (1 + sum(len(feed.ports) for feed in first.demand.feeds)))
    proven = complete and len(ways) <= most
    best, nodes = first, first.nodes + least.nodes
    for hung in ways[:most]:
        if least.proven and said(best) <= bound:
            return best
        if nodes > MOST_NODES:
            proven = False
            break
        one = asker.ask(hung)
        nodes += one.nodes
        proven = proven and one.proven
        best = min(best, one, key=_key)
    return best if proven else best._replace(demand=replace(best.demand, hung_proven=False))


def said(asked: Asked) -> tuple[int, int]:
    """Return stops and points, as the score counts them: beside a stop it leaves out the cautions of the wiring."""
    if asked.wired is None:
        return (0, asked.points)
    objective = asked.wired.judgement.objective
    return (objective[0], asked.points if objective[0] else asked.points + objective[POINTS_LEVEL])


def _key(asked: Asked) -> tuple[int, ...]:
    """Return what is said, then the levels of the wiring, the points of headers beside those of the wiring."""
    if asked.wired is None:
        return said(asked)
    objective = asked.wired.judgement.objective
    points = objective[POINTS_LEVEL] + asked.points
    return (*said(asked), *objective[1:POINTS_LEVEL], points, asked.demand.over, *objective[POINTS_LEVEL + 1 :])


def _wire(build: Build, unit: int, demand: Demand, ends: Ends, worn: tuple[Plugged, ...]) -> Wired:
    """Return the wiring of a build: planned, as it is plugged, or as plugged with the rest planned.

    Where what is plugged leaves no legal way to plan the rest, it is judged by itself, and the plan is not proven.
    """
    if build.wiring is None:
        part = build.units[unit].part
        assert isinstance(part, PowerSupply)
        nothing_known = part.cables is None and not ends.worst(unit, "cables")
        return _planned(pose(build, unit, demand, ends, virtual=nothing_known, worn=worn))
    rest_planned = build.wiring_rest == "plan"
    frame = pose_plugged(build, unit, demand, ends, build.wiring)
    assert frame.plugged is not None
    as_plugged = Wired(frame, frame.plugged, judge(frame.problem, frame.plugged), proven=not rest_planned)
    if not rest_planned:
        return as_plugged
    try:
        return _planned(frame)
    except NoWiring:
        return as_plugged


def _planned(frame: Frame) -> Wired:
    solution = solve(frame.problem)
    return Wired(frame, solution.wiring, judge(frame.problem, solution.wiring), solution.proven, solution.nodes)
