"""What the search moves about: needs still open, the connections that hang on them, what one decision makes of them.

A *cluster* is the least set of open needs that must be looked at together: the inputs of one adapter, or the ports of
one device as long as its objective does not add up over them. Devices that are equal give equal clusters, so a state of
the search only counts them; that is where symmetry goes. A decision (a cable with all that hangs on it, an adapter
with all that it feeds, a port left unfed) takes clusters in, and gives a cost and smaller clusters out.

Costs are one integer: the sixteen levels side by side, ``LEVEL_BITS`` each, so that adding and comparing them is plain.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from service.wiring.objective import (
    ADAPTER_LEVEL,
    BOUGHT_LEVEL,
    CABLES_LEVEL,
    CARD_LEVEL,
    COMFORT_LEVEL,
    LOOSE_LEVEL,
    OPTIONAL_LEVEL,
    POINTS_LEVEL,
    ROLE_LEVEL,
    Verdict,
    added,
    divided,
    judged,
)
from service.wiring.problem import COMFORT_FROM, LEVELS, NOTHING, Device, Load, Objective, Problem, RailLimits, Role

LEVEL_BITS = 72
UNIT = tuple(1 << LEVEL_BITS * (LEVELS - 1 - level) for level in range(LEVELS))
UNFED = UNIT[0] + UNIT[1]
NEVER = 1 << LEVEL_BITS * (LEVELS + 1)
PORT, INPUT, LAST_INPUT = 0, 1, 2

Tag = tuple[int, int]


class Unit(NamedTuple):
    """A device, as far as its open connections hang together; ``optional`` counts ports left out, not yet charged."""

    role: Role
    missing: bool
    optional: int


class Line(NamedTuple):
    """A connection not yet complete: its card current [mA] where sharing counts, and how its feed is judged so far."""

    unit: int
    card_ma: int
    verdict: Verdict


class Need(NamedTuple):
    """A port or an adapter's input that lacks a source. ``depth``: PORT, INPUT, LAST_INPUT (for a plug only)."""

    type: int
    load: Load
    depth: int
    must: bool
    lines: tuple[int, ...]


class Cluster(NamedTuple):
    """Open needs with the lines that they carry and the units that these belong to."""

    units: tuple[Unit, ...]
    lines: tuple[Line, ...]
    needs: tuple[Need, ...]


class Outcome(NamedTuple):
    """What a decision costs and leaves, clusters with the tags of their needs; ``drawn`` from the supply."""

    cost: int
    left: tuple[tuple[Cluster, tuple[Tag, ...]], ...]
    drawn: Load = NOTHING


CLEAN = Verdict(False, False, False, COMFORT_FROM)


def levels_of(cost: int) -> Objective:
    """Return a cost as an objective."""
    mask = UNIT[LEVELS - 2] - 1
    return tuple(cost >> LEVEL_BITS * (LEVELS - 1 - level) & mask for level in range(LEVELS))


def joined(one: Verdict, other: Verdict) -> Verdict:
    """Judge two stretches of a feed together. An overloaded feed is not asked for its bands any more."""
    overloaded = one.overloaded or other.overloaded
    if other.use <= one.use and not (other.overloaded or other.banded or other.start_banded):
        return one
    return Verdict(
        overloaded,
        not overloaded and (one.banded or other.banded),
        not overloaded and (one.start_banded or other.start_banded),
        max(one.use, other.use),
    )


def worth(problem: Problem, verdict: Verdict) -> int:
    """Return what a connection judged so costs."""
    cost = (verdict.use - COMFORT_FROM) * UNIT[COMFORT_LEVEL]
    if verdict.overloaded:
        return cost + UNIT[0]
    points = problem.points.band * verdict.banded + problem.points.start * verdict.start_banded
    return cost + points * UNIT[POINTS_LEVEL]


def unfed_cost(unit: Unit) -> int:
    """Return what one more unfed port of a device costs."""
    if unit.role == "card":
        return UNFED + (0 if unit.missing else UNIT[CARD_LEVEL])
    return UNFED + UNIT[ROLE_LEVEL[unit.role]]


def of_device(problem: Problem, device: Device, fed: Sequence[int]) -> tuple[tuple[Cluster, tuple[Tag, ...]], ...]:
    """Return the clusters of an untouched device; all required ports and these optional ones want a source."""
    wanted = [place for place, port in enumerate(device.ports) if port.required or place in fed]
    whole = sum(device.ports[place].weight for place in wanted)
    shares = device.role == "card" and problem.points.share > 0
    unit = Unit(device.role, False, len(device.ports) - len(wanted))
    if len(wanted) == 1:
        return (_of_one_port(device, unit, wanted[0]),)
    table = Table(problem)
    table.units.append(unit)
    for place in wanted:
        port = device.ports[place]
        load = divided(device.load, port.weight, whole)
        table.needs.append(
            (Need(port.type, load, PORT, port.must or not port.required, (len(table.lines),)), (0, place))
        )
        table.lines.append(Line(0, load[0] if shares else 0, CLEAN))
    return table.sorted_out()


def _of_one_port(device: Device, unit: Unit, place: int) -> tuple[Cluster, tuple[Tag, ...]]:
    port = device.ports[place]
    need = Need(port.type, device.load, PORT, port.must or not port.required, (0,))
    return Cluster((unit,), (Line(0, 0, CLEAN),), (need,)), ((0, place),)


class Table:
    """A working copy of some clusters, on which one decision is carried out."""

    def __init__(self, problem: Problem, clusters: Iterable[Cluster] = ()) -> None:
        self.problem = problem
        self.cost = 0
        self.units: list[Unit] = []
        self.lines: list[Line] = []
        self.needs: list[tuple[Need, Tag]] = []
        self.first_need: list[int] = []
        for number, cluster in enumerate(clusters):
            self._lay(number, cluster)

    def _lay(self, number: int, cluster: Cluster) -> None:
        units, lines = len(self.units), len(self.lines)
        self.first_need.append(len(self.needs))
        self.units.extend(cluster.units)
        if not lines:
            self.lines.extend(cluster.lines)
            self.needs.extend([(need, (number, place)) for place, need in enumerate(cluster.needs)])
            return
        self.lines.extend([Line(unit + units, card_ma, verdict) for unit, card_ma, verdict in cluster.lines])
        for place, (of, load, depth, must, of_need) in enumerate(cluster.needs):
            moved = Need(of, load, depth, must, tuple([line + lines for line in of_need]))
            self.needs.append((moved, (number, place)))

    def need(self, tag: Tag) -> Need:
        """Return the need that was at this place of this cluster."""
        return self.needs[self.first_need[tag[0]] + tag[1]][0]

    def judge(self, lines: Iterable[int], verdict: Verdict, points: int) -> None:
        """Charge what some lines are worth more now that more of their feed is known."""
        for number in lines:
            line = self.lines[number]
            after = joined(line.verdict, verdict)
            self.cost += points * UNIT[POINTS_LEVEL]
            if after is line.verdict:
                continue
            self.cost += worth(self.problem, after) - worth(self.problem, line.verdict)
            self.lines[number] = Line(line.unit, line.card_ma, after)
            unit = self.units[line.unit]
            if unit.optional and after.use > COMFORT_FROM:
                self.cost += unit.optional * UNIT[OPTIONAL_LEVEL]
                self.units[line.unit] = unit._replace(optional=0)

    def charge_sharing(self, lines: set[int]) -> None:
        """Charge the cards of which one cable feeds too much."""
        currents: dict[int, list[int]] = {}
        for number in lines:
            currents.setdefault(self.lines[number].unit, []).append(self.lines[number].card_ma)
        for each in currents.values():
            if len(each) > 1 and sum(each) > self.problem.points.share_limit:
                self.cost += self.problem.points.share * UNIT[POINTS_LEVEL]

    def drop(self, tags: Iterable[Tag]) -> None:
        """Take away needs that are settled."""
        gone = set(tags)
        self.needs = [(need, tag) for need, tag in self.needs if tag not in gone]

    def sorted_out(self) -> tuple[tuple[Cluster, tuple[Tag, ...]], ...]:
        """Return what is left as separate clusters, each in its own canonical order."""
        open_lines = {number for need, _ in self.needs for number in need.lines}
        members: dict[int, list[int]] = {}
        for number in sorted(open_lines):
            members.setdefault(self.lines[number].unit, []).append(number)
        bonds = [numbers for unit, numbers in members.items() if self._hangs_together(unit, numbers)]
        return tuple(self._cluster(part) for part in _parts(self.needs, bonds))

    def _hangs_together(self, unit: int, numbers: list[int]) -> bool:
        several = len(numbers) > 1
        crowds = several and sum(self.lines[number].card_ma for number in numbers) > self.problem.points.share_limit
        if not crowds:
            for number in numbers:
                self.lines[number] = self.lines[number]._replace(card_ma=0)
        found = self.units[unit]
        return several and (crowds or found.optional > 0 or (found.role == "card" and not found.missing))

    def _cluster(self, part: list[tuple[Need, Tag]]) -> tuple[Cluster, tuple[Tag, ...]]:
        if len(part) > 1:
            part.sort(key=self._rank)
        lines: dict[int, int] = {}
        units: dict[int, int] = {}
        for need, _ in part:
            for number in need.lines:
                lines.setdefault(number, len(lines))
                units.setdefault(self.lines[number].unit, len(units))
        return (
            Cluster(
                tuple([self.units[unit] for unit in units]),
                tuple(
                    [
                        Line(units[unit], card_ma, verdict)
                        for unit, card_ma, verdict in map(self.lines.__getitem__, lines)
                    ]
                ),
                tuple([Need(*need[:-1], tuple(sorted([lines[number] for number in need.lines]))) for need, _ in part]),
            ),
            tuple([tag for _, tag in part]),
        )

    def _rank(self, entry: tuple[Need, Tag]) -> tuple[object, ...]:
        need = entry[0]
        lines = sorted(
            (self.units[self.lines[n].unit], self.lines[n].card_ma, self.lines[n].verdict) for n in need.lines
        )
        return (-need.depth, need.type, tuple(-entry for entry in need.load), need.must, lines)


def _parts(needs: list[tuple[Need, Tag]], bonds: list[list[int]]) -> list[list[tuple[Need, Tag]]]:
    """Return the needs in the least parts that share no line and no bond between lines."""
    parts: list[tuple[set[int], list[tuple[Need, Tag]]]] = []
    for entry in needs:
        lines = set(entry[0].lines)
        lines.update(*(bond for bond in bonds if not lines.isdisjoint(bond)))
        content = [entry]
        apart = []
        for other, others in parts:
            if other.isdisjoint(lines):
                apart.append((other, others))
            else:
                lines |= other
                content = others + content
        parts = [*apart, (lines, content)]
    return [content for _, content in parts]


def wire_cable(
    problem: Problem, kind: int, clusters: Sequence[Cluster], plugs: Sequence[tuple[int, int, Tag]]
) -> Outcome:
    """Wire one whole cable: each (plug, fit, need) hangs a need on it."""
    cable = problem.cables[kind]
    table = Table(problem, clusters)
    drawn = [NOTHING] * len(cable.halves)
    for plug, _, tag in plugs:
        drawn[plug] = added(drawn[plug], table.need(tag).load)
    for plug in reversed(range(len(drawn) - 1)):
        drawn[plug] = added(drawn[plug], drawn[plug + 1])
    reach = _verdicts_along(cable.segments, drawn)
    carried: set[int] = set()
    for plug, fit, tag in plugs:
        need = table.need(tag)
        taken = problem.port_types[need.type].fits[fit]
        table.judge(need.lines, joined(judged(need.load, taken.limits), reach[plug]), taken.points)
        carried.update(need.lines)
    table.charge_sharing(carried)
    table.drop(tag for _, _, tag in plugs)
    loose = len(cable.halves) - len({plug for plug, _, _ in plugs})
    own = UNIT[CABLES_LEVEL] + loose * UNIT[LOOSE_LEVEL] + cable.bought * UNIT[BOUGHT_LEVEL]
    return Outcome(table.cost + own, table.sorted_out(), drawn[0])


def _verdicts_along(segments: Sequence[RailLimits], drawn: Sequence[Load]) -> list[Verdict]:
    """Judge all stretches up to each plug; one that allows what the last did carries no more than it."""
    found = []
    so_far = CLEAN
    last: RailLimits | None = None
    for limits, load in zip(segments, drawn, strict=True):
        if limits is not last:
            so_far = joined(so_far, judged(load, limits))
        last = limits
        found.append(so_far)
    return found


def open_adapter(
    problem: Problem,
    kind: int,
    option: int,
    clusters: Sequence[Cluster],
    outputs: Sequence[tuple[int, Tag]],
    depth: int,
) -> Outcome:
    """Put one adapter in use: each (adapter fit, need) takes an output; its inputs become needs, tagged (-1, input)."""
    adapter = problem.adapters[kind]
    table = Table(problem, clusters)
    carried = NOTHING
    for _, tag in outputs:
        carried = added(carried, table.need(tag).load)
    through = judged(carried, adapter.limits_by_inputs[option])
    lines: set[int] = set()
    for fit, tag in outputs:
        need = table.need(tag)
        taken = problem.port_types[need.type].adapter_fits[fit]
        table.judge(need.lines, joined(judged(need.load, taken.limits), through), taken.points)
        lines.update(need.lines)
    table.judge(sorted(lines), CLEAN, adapter.points)
    table.drop(tag for _, tag in outputs)
    share = divided(carried, 1, adapter.inputs[option])
    for number in range(adapter.inputs[option]):
        table.needs.append((Need(adapter.input_type, share, depth, True, tuple(sorted(lines))), (-1, number)))
    return Outcome(table.cost + UNIT[ADAPTER_LEVEL + adapter.rank], table.sorted_out())


def leave_unfed(problem: Problem, cluster: Cluster, place: int) -> Outcome:
    """Leave a required port without a source."""
    table = Table(problem, (cluster,))
    unit_number = cluster.lines[cluster.needs[place].lines[0]].unit
    unit = table.units[unit_number]
    table.units[unit_number] = unit._replace(missing=unit.role == "card")
    table.drop([(0, place)])
    return Outcome(unfed_cost(unit), table.sorted_out())
