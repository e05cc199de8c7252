"""The exact search: branch and bound over states that only count what is equal, with a memo of finished states.

Three kinds of decision, in this order, so that currents are known as soon as something is opened and never shrink:
which optional ports want a source; which adapters are in use and what hangs on their outputs; then whole cables, each
time the one that feeds the first open need (or that need stays unfed). What a state costs to complete does not depend
on how it was reached, so it is remembered. A step that costs no more than the bound of its state is taken at once, for
nothing can be better; where that does not lead to the end soon, a plan is made in haste, so that there is one, and the
search goes on below its cost. Over the budget of work the best plan so far is given back as not proven.

Over 300 lines: the descent, the steps and the exact part share one path, one memo and one budget.
"""

from collections.abc import Iterable, Iterator
from itertools import islice, product
from math import prod
from typing import NamedTuple

from service.wiring.bounds import Bounds
from service.wiring.clusters import INPUT, LAST_INPUT, NEVER, PORT, UNIT, Cluster, levels_of, of_device
from service.wiring.decisions import (
    DEVICE,
    OUTPUTS,
    PLUGS,
    Decision,
    Decisions,
    Effect,
    Origin,
    moved,
    spelled,
    unfed_decision,
)
from service.wiring.patterns import Counted, Filling, Patterns
from service.wiring.plugs import Plugs
from service.wiring.problem import Device, Problem, Solution

NODE_BUDGET = 30_000
"""Decisions weighed, at most; about half a second."""
DIVE = 5000
"""Decisions weighed before a plan is made in haste: as a rule the bound leads straight to the best."""
PORTS_A_NODE = 2
"""Ports wired by one decision that make it count twice."""
HASTE_PART = 2
"""What part of the budget a plan in haste may take; then it goes on by cost alone, without bounds."""
MOST_CHOICES = 4096
"""Ways to choose the optional ports of one device that are looked at; with more nothing is proven."""

MOST_LOOKED_AT = 16
"""Choices of optional ports of which a bound is the least; with more nothing is said."""
MOST_STOPS = 1 << 20
"""More than any problem has; stands for a problem that has no wiring."""

Left = tuple[int, ...]


class Cabling(NamedTuple):
    """A state in which only cables are still to be decided: open clusters, what is left, group currents so far."""

    open: Counted
    cables: Left
    sockets: Left
    groups: Left


class Fitting(NamedTuple):
    """A state in which adapters may still be put in use, none before ``stage`` (depth, kind).

    The first to be decided are those that feed device ports, cluster by cluster; ``settled`` ones get no more.
    """

    open: Counted
    settled: Counted
    adapters: Left
    stage: tuple[int, int]


State = Cabling | Fitting


class Move(NamedTuple):
    """A step to another state: what it costs, the bound of what follows, and the decision, if it is one."""

    cost: int
    floor: int
    decision: Decision | None
    state: State


class Known(NamedTuple):
    """What is known of a state: its cost, or when ``exact`` is false a bound of it; and the best step."""

    cost: int
    exact: bool
    move: Move | None = None


class Plan(NamedTuple):
    """A complete plan."""

    cost: int
    start: tuple[tuple[int, Origin], ...]
    chain: tuple[Decision, ...]


class OverBudget(Exception):
    """The node budget is used up."""


class NoWiring(Exception):
    """Ports that must have a source cannot all have one; without such ports there is always a wiring."""


def solve(problem: Problem, node_budget: int = NODE_BUDGET) -> Solution:
    """Return the best wiring, proven so unless the budget of nodes ran out."""
    search = Search(problem, node_budget)
    proven = search.run()
    plan = search.best
    if plan is None:
        raise NoWiring(f"no wiring was found, and {'there is none' if proven else 'the budget of nodes ran out'}")
    wiring = spelled(search.decisions, plan.start, plan.chain)
    return Solution(wiring, levels_of(plan.cost), proven, search.nodes)


def least_stops(problem: Problem) -> int:
    """Return a bound of the stops of any wiring, found without a search; 0 where there is too much to choose."""
    search = Search(problem, 0)
    if prod(len(each) for each in search.choices) > MOST_LOOKED_AT:
        return 0
    floors = [search.floor_of(chosen) for chosen in product(*(range(len(each)) for each in search.choices))]
    return min(min(floors) // UNIT[0], MOST_STOPS)


class Search:
    """One search of one problem."""

    def __init__(self, problem: Problem, node_budget: int) -> None:
        self.problem = problem
        self.budget = self.most = node_budget
        self.nodes = self.counted = 0
        self.by_cost = False
        self.width = GREEDY_WIDTH
        self.decisions = Decisions(problem)
        plugs = Plugs(problem)
        self.patterns = Patterns(problem, self.decisions.clusters, plugs)
        self.bounds = Bounds(problem, self.decisions.clusters, plugs)
        self.best: Plan | None = None
        self.start: tuple[tuple[int, Origin], ...] = ()
        self.path: list[Move] = []
        self.known: dict[State, Known] = {}
        self.floors: dict[State, int] = {}
        self.likely: dict[State, list[int]] = {}
        self.bare: dict[State, list[int]] = {}
        self.ranks: dict[int, tuple[object, ...]] = {}
        self.supply = (tuple(kind.count for kind in problem.cables), problem.sockets, (0,) * len(problem.groups))
        choices = {
            device: tuple(islice(_choices_of(device), MOST_CHOICES + 1)) for device in dict.fromkeys(problem.devices)
        }
        self.choices = [choices[device] for device in problem.devices]
        self.opened: dict[tuple[Device, tuple[int, ...]], list[tuple[int, list[int]]]] = {}
        self.roomiest = sorted(range(len(problem.cables)), key=lambda kind: (-self.bounds.markets.rooms[kind], kind))
        self.feeding = [
            sum(1 << kind for kind in {fit.adapter for fit in of.adapter_fits}) for of in problem.port_types
        ]
        self.chained = 0
        for adapter in problem.adapters:
            self.chained |= self.feeding[adapter.input_type] if adapter.count else 0
        self.begun: dict[tuple[int, int], tuple[tuple[int, Origin], ...]] = {}

    def run(self) -> bool:
        """Search; return whether the best plan is proven."""
        if not self._exhausted(DIVE):
            self._descend()
            if not self._exhausted(self.budget):
                return False
        return all(len(each) <= MOST_CHOICES for each in self.choices)

    def floor_of(self, chosen: tuple[int, ...]) -> int:
        """Return the bound of all wirings with this choice of optional ports."""
        return self._floor(self._opening(self._start_of(chosen)))

    def _exhausted(self, budget: int) -> bool:
        """Say whether so much work is enough to look through all that may be better than the best plan."""
        self.most = min(budget, self.budget)
        try:
            self._choose_fed(0, ())
        except OverBudget:
            self.path.clear()
            return False
        return True

    # Which optional ports want a source.

    def _choose_fed(self, number: int, chosen: tuple[int, ...]) -> None:
        if number == len(self.problem.devices):
            self._begin(chosen)
            return
        same = number > 0 and self.problem.devices[number - 1] == self.problem.devices[number]
        for option in range(chosen[-1] if same else 0, len(self.choices[number])):
            several = len(self.choices[number]) > 1
            self._count(len(self.problem.devices[number].ports) if several else 0)
            further = (*chosen, option)
            if self._promising(further):
                self._choose_fed(number + 1, further)

    def _promising(self, chosen: tuple[int, ...]) -> bool:
        """Say whether the devices decided so far may still beat the best; ports to come may yet fill loose plugs."""
        if self.best is None or len(self.choices[len(chosen) - 1]) == 1:
            return True
        opening = self._opening(self._start_of(chosen))
        if len(chosen) == len(self.problem.devices):
            return self._floor(opening) < self.best.cost
        adapters = sum(1 << kind for kind, found in enumerate(self.problem.adapters) if found.count > 0)
        return self.bounds.alone(opening.open, adapters) < self.best.cost

    def _start_of(self, chosen: tuple[int, ...]) -> tuple[tuple[int, Origin], ...]:
        return tuple(each for number, option in enumerate(chosen) for each in self._begun(number, option))

    def _begun(self, number: int, option: int) -> tuple[tuple[int, Origin], ...]:
        """Return the clusters of one device with one choice of its optional ports."""
        found = self.begun.get((number, option))
        if found is None:
            untouched = self._untouched_of(self.problem.devices[number], self.choices[number][option])
            found = self.begun[number, option] = tuple(
                [(cluster, tuple([(DEVICE, number, place) for place in places])) for cluster, places in untouched]
            )
        return found

    def _untouched_of(self, device: Device, fed: tuple[int, ...]) -> list[tuple[int, list[int]]]:
        """Return the clusters of an untouched device by number, with the port of each of their needs."""
        found = self.opened.get((device, fed))
        if found is None:
            made = of_device(self.problem, device, fed)
            found = [(self.decisions.number(cluster), [place for _, place in tags]) for cluster, tags in made]
            self.opened[device, fed] = found
        return found

    def _opening(self, start: tuple[tuple[int, Origin], ...]) -> State:
        counts = moved((), (), (cluster for cluster, _ in start))
        return self._fitting(counts, (), tuple(kind.count for kind in self.problem.adapters))

    def _begin(self, chosen: tuple[int, ...]) -> None:
        self.start = self._start_of(chosen)
        limit = NEVER if self.best is None else self.best.cost
        self._complete(self._opening(self.start), 0, limit)

    # The exact part.

    def _complete(self, state: State, spent: int, limit: int) -> int:
        """Return the least cost to complete a state if it is below the limit, else some bound of it that is not."""
        known = self.known.get(state)
        if known is not None and (known.exact or known.cost >= limit):
            if known.exact and known.cost < limit:
                self._note(spent + known.cost, state)
            return known.cost
        if not state.open:
            return self._finish(state, spent, limit)
        floor = self._floor(state)
        if floor >= limit:
            return floor
        best: Move | None = None
        low = NEVER
        for move in self._moves(state, floor):
            if move.cost + move.floor >= limit:
                low = min(low, move.cost + move.floor)
                continue
            self.path.append(move)
            cost = move.cost + self._complete(move.state, spent + move.cost, limit - move.cost)
            self.path.pop()
            if cost < limit:
                limit, best = cost, move
                if cost <= floor:
                    break
            else:
                low = min(low, cost)
        self.known[state] = Known(low, False) if best is None else Known(limit, True, best)
        return self.known[state].cost

    def _finish(self, state: State, spent: int, limit: int) -> int:
        self.known[state] = Known(0, True)
        if limit > 0:
            self._note(spent, state)
        return 0

    def _note(self, cost: int, state: State) -> None:
        """Keep the plan that the path and what is known of its last state make, if it is the best so far."""
        if self.best is not None and cost >= self.best.cost:
            return
        chain = [move.decision for move in self.path if move.decision]
        known = self.known[state]
        while known.move is not None:
            if known.move.decision:
                chain.append(known.move.decision)
            known = self.known[known.move.state]
        self.best = Plan(cost, self.start, tuple(chain))

    def _moves(self, state: State, floor: int) -> Iterator[Move]:
        """Yield the steps from a state: at once those that may cost no more than its floor, then the most promising.

        Of steps to the same state only a cheaper one is yielded again.
        """
        found: dict[State, Move] = {}
        for cost, decision, after in self._steps(state):
            self._count(len(decision.filling.taken) if decision else 0)
            if decision is None:
                self._pass_on(state, floor, after)
            other = found.get(after)
            if other is None or cost < other.cost:
                move = found[after] = Move(cost, self._floor(after) if other is None else other.floor, decision, after)
                if cost + move.floor <= floor:
                    yield move
        yield from sorted(
            (move for move in found.values() if move.cost + move.floor > floor),
            key=lambda move: move.cost + move.floor,
        )

    def _count(self, ports: int) -> None:
        """Count one decision weighed, as more where it takes more ports, for that takes longer."""
        self.nodes += 1 + ports // PORTS_A_NODE
        if self.nodes > self.most:
            raise OverBudget

    def _steps(self, state: State) -> Iterator[tuple[int, Decision | None, State]]:
        if isinstance(state, Fitting):
            yield from self._adapter_steps(state)
            return
        cluster, place = self._first(state.open)
        for kind in self._open_kinds(state):
            for filling in self.patterns.cables(state.open, cluster, place, kind):
                yield self._wired(state, kind, filling)
        if not self.decisions.clusters[cluster].needs[place].must:
            yield self._unfed(state, cluster, place)

    def _floor(self, state: State) -> int:
        found = self.floors.get(state)
        if found is None:
            if isinstance(state, Fitting):
                left = sum(1 << kind for kind, number in enumerate(state.adapters) if number > 0)
                asking = ((state.open, left), (state.settled, left & self.chained))
                found = self.bounds.fitting(asking, *self.supply[:2], state.adapters)
                if self.bounds.bare:
                    self.bare[state] = self.bounds.likely
            elif not state.open:
                found = 0
            elif self._is_last(state):
                found = min([cost for cost, _, _ in self._steps(state)], default=NEVER)
            else:
                found = self.bounds.completion(state.open, state.cables, state.sockets, state.groups)
                self.likely[state] = self.bounds.likely
            self.floors[state] = found
            self.nodes += self.bounds.menus.work.done - self.counted
            self.counted = self.bounds.menus.work.done
        return found

    def _pass_on(self, state: State, floor: int, after: State) -> None:
        """Let a state with one adapter less to choose from have the same bound, where that uses none."""
        likely = self.bare.get(state)
        if likely is None or after in self.floors:
            return
        if isinstance(after, Fitting):
            self.floors[after], self.bare[after] = floor, likely
        elif not self.problem.groups:
            self.floors[after], self.likely[after] = floor, likely

    def _is_last(self, state: Cabling) -> bool:
        """Say whether a state has one need open, so that each step from it is its last."""
        cluster, times = state.open[0]
        return len(state.open) == times == 1 and len(self.decisions.clusters[cluster].needs) == 1

    # Adapters.

    def _fitting(self, counts: Counted, settled: Counted, adapters: Left) -> State:
        """Return the state in which the next adapter is decided, or the cables where there is none to decide."""
        if self._first_askable(counts, adapters) is not None:
            return Fitting(counts, settled, adapters, (INPUT, 0))
        merged = moved(settled, (), (cluster for cluster, times in counts for _ in range(times)))
        left = sum(1 << kind for kind, number in enumerate(adapters) if number > 0)
        if left & self.chained and any(self._has_inputs(cluster) for cluster, _ in merged):
            return Fitting(merged, (), adapters, (LAST_INPUT, 0))
        return Cabling(merged, *self.supply)

    def _has_inputs(self, cluster: int) -> bool:
        return any(need.depth == INPUT for need in self.decisions.clusters[cluster].needs)

    def _first_askable(self, counts: Counted, adapters: Left) -> int | None:
        """Return the first cluster with a device port that one of the adapters left can feed."""
        left = sum(1 << kind for kind, number in enumerate(adapters) if number > 0)
        for cluster, _ in counts:
            for need in self.decisions.clusters[cluster].needs if left else ():
                if need.depth == PORT and left & self.feeding[need.type]:
                    return cluster
        return None

    def _adapter_steps(self, state: Fitting) -> Iterator[tuple[int, Decision | None, State]]:
        """Yield the ways on: for adapters at device ports each with the first cluster, or none with it any more."""
        depth, first_kind = state.stage
        if depth == LAST_INPUT:
            yield 0, None, Cabling(state.open, *self.supply)
            for kind, left in enumerate(state.adapters):
                if left > 0 and kind >= first_kind:
                    yield from self._openings(state, depth, kind, None)
            return
        first = self._first_askable(state.open, state.adapters)
        assert first is not None, "such a state has a cluster to decide"
        rest = tuple(entry for entry in state.open if entry[0] != first)
        times = dict(state.open)[first]
        yield 0, None, self._fitting(rest, moved(state.settled, (), (first,) * times), state.adapters)
        for kind, left in enumerate(state.adapters):
            if left > 0:
                yield from self._openings(state, depth, kind, first)

    def _openings(
        self, state: Fitting, depth: int, kind: int, first: int | None
    ) -> Iterator[tuple[int, Decision | None, State]]:
        adapters = _less(state.adapters, kind)
        for filling in self.patterns.adapters(state.open, kind, depth, first):
            for option in range(len(self.problem.adapters[kind].inputs)):
                decision = Decision(OUTPUTS, kind, filling, option, depth)
                effect = self.decisions.effect(decision)
                after = moved(state.open, filling.touched, effect.left)
                if first is None:
                    yield effect.cost, decision, Fitting(after, (), adapters, (depth, kind))
                else:
                    yield effect.cost, decision, self._fitting(after, state.settled, adapters)

    # Cables.

    def _first(self, counts: Counted) -> tuple[int, int]:
        """Return the need to decide next: inputs of adapters, then what must be fed, is begun, is hard to serve."""
        return min((self._rank(cluster), cluster) for cluster, _ in counts)[1], 0

    def _rank(self, cluster: int) -> tuple[object, ...]:
        found = self.ranks.get(cluster)
        if found is None:
            content = self.decisions.clusters[cluster]
            need = content.needs[0]
            begun = need.depth == PORT and self._untouched(content, cluster)
            choice = len({fit.cable for fit in self.problem.port_types[need.type].fits})
            found = (-need.depth, not need.must, begun, choice, tuple(-current for current in need.load), cluster)
            self.ranks[cluster] = found
        return found

    def _untouched(self, content: Cluster, cluster: int) -> bool:
        return any(cluster == number for number, _ in self.start) and len(content.units) == 1

    def _open_kinds(self, state: Cabling) -> list[int]:
        available = self.bounds.available(state.cables, state.sockets)
        first = self.likely.get(state, ())
        kinds = [kind for kind in self.roomiest if available[kind] > 0]
        return [kind for kind in kinds if kind in first] + [kind for kind in kinds if kind not in first]

    def _wired(self, state: Cabling, kind: int, filling: Filling) -> tuple[int, Decision, Cabling]:
        decision = Decision(PLUGS, kind, filling)
        effect = self.decisions.effect(decision)
        groups, over = self._grouped(state.groups, kind, effect)
        takes = self.problem.cables[kind].takes
        sockets = (
            tuple(left - taken for left, taken in zip(state.sockets, takes, strict=True)) if takes else state.sockets
        )
        after = Cabling(moved(state.open, filling.touched, effect.left), _less(state.cables, kind), sockets, groups)
        return effect.cost + over * UNIT[0], decision, after

    def _grouped(self, groups: Left, kind: int, effect: Effect) -> tuple[Left, int]:
        """Return the groups' currents with one more cable, and how many of them that takes over their limit."""
        named = self.problem.cables[kind].groups
        if not named:
            return groups, 0
        carried = list(groups)
        over = 0
        for group in set(named):
            rail, limit = self.problem.groups[group]
            drawn = -(-effect.drawn[rail] * named.count(group) // len(named))
            over += carried[group] <= limit < carried[group] + drawn
            carried[group] = min(carried[group] + drawn, limit + 1)
        return tuple(carried), over

    def _unfed(self, state: Cabling, cluster: int, place: int) -> tuple[int, Decision, Cabling]:
        decision = unfed_decision(cluster, place)
        effect = self.decisions.effect(decision)
        return effect.cost, decision, state._replace(open=moved(state.open, (cluster,), effect.left))

    # The first descent: a decent plan before anything is proven.

    def _descend(self) -> None:
        """Make a plan without adapters and optional ports, which works out unless ports must be fed, then one with."""
        self.start = self._start_of((0,) * len(self.problem.devices))
        opening = self._opening(self.start)
        self.width = NARROW_WIDTH if len(opening.open) > MOST_WIDE else GREEDY_WIDTH
        self._descend_from(Cabling(opening.open, *self.supply))
        if isinstance(opening, Fitting):
            self._descend_from(opening)

    def _descend_from(self, state: State) -> None:
        cost = 0
        while state.open and cost < NEVER:
            self.by_cost = self.nodes > self.budget // HASTE_PART
            move = self._greedy_adapter(state) if isinstance(state, Fitting) else self._greedy_cable(state)
            self.path.append(move)
            cost += move.cost
            state = move.state
        if cost < NEVER:
            self.known[state] = Known(0, True)
            self._note(cost, state)
        self.path.clear()

    def _greedy_adapter(self, state: Fitting) -> Move:
        found = [self._move(step) for step in self._few(state)]
        return min(found, key=lambda move: move.cost + move.floor)

    def _few(self, state: Fitting) -> Iterator[tuple[int, Decision | None, State]]:
        for number, step in enumerate(self._steps(state)):
            if number > self.width:
                return
            yield step

    def _greedy_cable(self, state: Cabling) -> Move:
        """Return the best step among a cable with the first need, filled one by one while that helps, and no cable."""
        cluster, place = self._first(state.open)
        found = []
        if not self.decisions.clusters[cluster].needs[place].must:
            found.append(self._move(self._unfed(state, cluster, place)))
        alone = ((cluster, 1),)
        for kind in self._open_kinds(state):
            lone = [each for each in self.patterns.cables(alone, cluster, place, kind) if len(each.taken) == 1]
            if lone:
                found.append(self._filled(state, kind, lone))
        return min(found, key=lambda move: move.cost + move.floor, default=Move(NEVER, 0, None, state))

    def _filled(self, state: Cabling, kind: int, fillings: Iterable[Filling]) -> Move:
        """Return the step with the best of these fillings, made fuller while that helps."""
        best: tuple[Move, Filling] | None = None
        while True:
            moves = [(self._move(self._wired(state, kind, each)), each) for each in islice(fillings, self.width)]
            fuller = min(moves, key=lambda pair: pair[0].cost + pair[0].floor, default=None)
            if fuller is None or (best is not None and _better(best[0], fuller[0])):
                assert best is not None, "there is at least one filling to begin with"
                return best[0]
            best = fuller
            fillings = self.patterns.additions(state.open, kind, best[1])

    def _move(self, step: tuple[int, Decision | None, State]) -> Move:
        cost, decision, after = step
        return Move(cost, 0 if self.by_cost else self._floor(after), decision, after)


GREEDY_WIDTH = 24
"""Steps that the first descent weighs at one place."""
NARROW_WIDTH = 6
"""The same where many different things are open."""
MOST_WIDE = 64
"""Different open clusters up to which it weighs many steps."""


def _better(one: Move, other: Move) -> bool:
    return one.cost + one.floor < other.cost + other.floor


def _less(left: Left, kind: int) -> Left:
    return (*left[:kind], left[kind] - 1, *left[kind + 1 :])


def _choices_of(device: Device) -> Iterator[tuple[int, ...]]:
    """Yield which optional ports want a source, as few as may be first; of equal ports the first ones."""
    always = tuple(place for place, port in enumerate(device.ports) if port.must and not port.required)
    alike: dict[tuple[int, int], list[int]] = {}
    for place, port in enumerate(device.ports):
        if not port.required and not port.must:
            alike.setdefault((port.type, port.weight), []).append(place)
    for numbers in product(*(range(len(places) + 1) for places in alike.values())):
        some = (place for number, places in zip(numbers, alike.values(), strict=True) for place in places[:number])
        yield (*always, *some)
