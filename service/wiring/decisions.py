"""Decisions of the search, each worked out once, and the wiring that a chain of them spells."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from service.wiring.clusters import Cluster, Outcome, Tag, leave_unfed, open_adapter, wire_cable
from service.wiring.patterns import Counted, Filling
from service.wiring.problem import AdapterSource, Load, PlugSource, Problem, Source, Wiring

PLUGS, OUTPUTS, NONE = "plugs", "outputs", "none"
DEVICE = -1
Target = tuple[int, int, int]
"""(DEVICE, device, port) or (adapter kind, copy, input)."""
Origin = tuple[Target, ...]


class Decision(NamedTuple):
    """A cable filled; an adapter filled, its inputs (by ``option``) being needs of ``depth``; or a port left unfed."""

    sort: str
    kind: int
    filling: Filling
    option: int = 0
    depth: int = 0


class Effect(NamedTuple):
    """What a decision costs, draws from the supply, and leaves: clusters by number, with where each need came from."""

    cost: int
    drawn: Load
    left: tuple[int, ...]
    tags: tuple[tuple[Tag, ...], ...]


class Decisions:
    """The effects of decisions in one problem; clusters are numbered in the order in which they are met."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.clusters: list[Cluster] = []
        self.numbers: dict[Cluster, int] = {}
        self.effects: dict[Decision, Effect] = {}

    def number(self, cluster: Cluster) -> int:
        """Return the number of a cluster."""
        found = self.numbers.get(cluster)
        if found is None:
            found = self.numbers[cluster] = len(self.clusters)
            self.clusters.append(cluster)
        return found

    def effect(self, decision: Decision) -> Effect:
        """Return what a decision amounts to."""
        found = self.effects.get(decision)
        if found is None:
            outcome = self._outcome(decision)
            left = tuple(self.number(cluster) for cluster, _ in outcome.left)
            found = Effect(outcome.cost, outcome.drawn, left, tuple(tags for _, tags in outcome.left))
            self.effects[decision] = found
        return found

    def _outcome(self, decision: Decision) -> Outcome:
        touched = [self.clusters[number] for number in decision.filling.touched]
        taken = decision.filling.taken
        if decision.sort == PLUGS:
            return wire_cable(self.problem, decision.kind, touched, taken)
        if decision.sort == OUTPUTS:
            outputs = [(fit, tag) for _, fit, tag in taken]
            return open_adapter(self.problem, decision.kind, decision.option, touched, outputs, decision.depth)
        return leave_unfed(self.problem, touched[0], taken[0][2][1])


def unfed_decision(cluster: int, place: int) -> Decision:
    """Return the decision to leave a port without a source."""
    return Decision(NONE, 0, Filling((cluster,), ((0, 0, (0, place)),)))


def moved(counts: Counted, touched: Iterable[int], left: Iterable[int]) -> Counted:
    """Return the clusters of a state after some were taken and others came."""
    times = dict(counts)
    for cluster in touched:
        times[cluster] -= 1
    for cluster in left:
        times[cluster] = times.get(cluster, 0) + 1
    return tuple(sorted((cluster, number) for cluster, number in times.items() if number))


def spelled(decisions: Decisions, start: Sequence[tuple[int, Origin]], chain: Iterable[Decision]) -> Wiring:
    """Return the wiring that a chain of decisions makes of the clusters at the start."""
    replay = _Replay(decisions, start)
    for decision in chain:
        replay.carry_out(decision)
    problem = decisions.problem
    sources = tuple(
        tuple(replay.ports.get((number, place)) for place in range(len(device.ports)))
        for number, device in enumerate(problem.devices)
    )
    inputs: dict[tuple[int, int], list[Source]] = {}
    for (kind, copy, _), source in sorted(replay.inputs.items()):
        inputs.setdefault((kind, copy), []).append(source)
    return Wiring(sources, tuple((kind, copy, tuple(each)) for (kind, copy), each in sorted(inputs.items())))


class _Replay:
    """Carries decisions out on real ports, adapters and cables, numbered in the order in which they are opened."""

    def __init__(self, decisions: Decisions, start: Sequence[tuple[int, Origin]]) -> None:
        self.decisions = decisions
        self.pool: dict[int, list[Origin]] = {}
        self.cables = [0] * len(decisions.problem.cables)
        self.adapters = [0] * len(decisions.problem.adapters)
        self.ports: dict[tuple[int, int], Source] = {}
        self.inputs: dict[tuple[int, int, int], Source] = {}
        for cluster, origin in start:
            self.pool.setdefault(cluster, []).append(origin)

    def carry_out(self, decision: Decision) -> None:
        effect = self.decisions.effect(decision)
        origins = [self.pool[cluster].pop(0) for cluster in decision.filling.touched]
        opened: list[Target] = []
        if decision.sort == PLUGS:
            copy = self.cables[decision.kind]
            self.cables[decision.kind] += 1
            for _, fit, (number, place) in decision.filling.taken:
                self._give(origins[number][place], PlugSource(fit, copy))
        elif decision.sort == OUTPUTS:
            copy = self.adapters[decision.kind]
            self.adapters[decision.kind] += 1
            inputs = self.decisions.problem.adapters[decision.kind].inputs[decision.option]
            opened = [(decision.kind, copy, number) for number in range(inputs)]
            for _, fit, (number, place) in decision.filling.taken:
                self._give(origins[number][place], AdapterSource(fit, copy))
        for cluster, tags in zip(effect.left, effect.tags, strict=True):
            origin = tuple(opened[place] if number < 0 else origins[number][place] for number, place in tags)
            self.pool.setdefault(cluster, []).append(origin)

    def _give(self, target: Target, source: Source) -> None:
        kind, owner, place = target
        if kind == DEVICE:
            self.ports[owner, place] = source
        else:
            self.inputs[kind, owner, place] = source
