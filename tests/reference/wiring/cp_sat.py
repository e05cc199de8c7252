"""The wiring problem once more, for OR-Tools CP-SAT: each word of the docstring as an equivalence.

Where the mixed-integer program holds loads and flags from one side, here every load, flag, use and count *is* what the
docstring says, in both directions; each port and each numbered input of an adapter chooses its source by itself.
"""

import time
from itertools import product
from typing import NamedTuple

from ortools.sat.python import cp_model

from service.wiring.problem import (
    COMFORT_FROM,
    LEVELS,
    NO_LIMIT,
    AdapterSource,
    Device,
    PlugSource,
    Problem,
    RailLimits,
    Source,
    Wiring,
)
from tests.reference.wiring.stages import Proof

Bool = cp_model.IntVar
Term = cp_model.LinearExprT
Copy = tuple[int, int]
RAILS = range(3)


class Choice(NamedTuple):
    """One source that a consumer may have."""

    chosen: Bool
    source: Source
    plug: tuple[int, int, int] | None
    adapter: Copy | None
    halves: int
    limits: RailLimits
    points: int


class Consumer(NamedTuple):
    """A device port or a numbered adapter input: its choices and its six loads."""

    choices: list[Choice]
    loads: list[Bool]
    fed: Bool


class Place(NamedTuple):
    """What is said of a place, or of all places up to it: overloaded, banded, start-banded, use."""

    flags: tuple[Bool, Bool, Bool]
    use: Bool


class Model:
    """The constraint model of one problem."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.model = cp_model.CpModel()
        self.no = self.model.new_constant(0)
        self.levels: list[list[Term]] = [[] for _ in range(LEVELS)]
        ports = sum(len(device.ports) for device in problem.devices)
        slack = 4 * ports + 8
        self.most: list[int] = []
        for entry in range(6):
            total = sum(device.load[entry] for device in problem.devices)
            self.most.append(total + slack if total else 0)
        self.cables = [(kind, copy) for kind, each in enumerate(problem.cables) for copy in range(each.count)]
        self.copies = [(kind, copy) for kind, each in enumerate(problem.adapters) for copy in range(each.count)]
        self.number = {each: [self.bool() for _ in problem.adapters[each[0]].inputs] for each in self.copies}
        self.inputs = {each: self._inputs(each) for each in self.copies}
        self.ports = [self._ports(device) for device in problem.devices]
        self.consumers = [one for each in self.inputs.values() for one in each]
        self.consumers += [one for each in self.ports for one in each]
        self.onto_plug: dict[tuple[int, int, int], list[tuple[Consumer, Choice]]] = {}
        self.onto_adapter: dict[Copy, list[tuple[Consumer, Choice]]] = {}
        for consumer in self.consumers:
            for choice in consumer.choices:
                if choice.plug is not None:
                    self.onto_plug.setdefault(choice.plug, []).append((consumer, choice))
                elif choice.adapter is not None:
                    self.onto_adapter.setdefault(choice.adapter, []).append((consumer, choice))
        self._carry_adapters()
        self._carry_cables()
        self.feeds: dict[Copy, Place] = {}
        self.feed_points: dict[Copy, Bool] = {}
        for copy in self.copies:
            self.feeds[copy] = Place((self.bool(), self.bool(), self.bool()), self.whole(_MOST_USE))
            self.feed_points[copy] = self.whole(_MOST_POINTS)
        for copy in self.copies:
            self._feed(copy)
        for device, found in zip(problem.devices, self.ports, strict=True):
            self._device(device, found)

    # Words.

    def bool(self) -> Bool:
        """Return a new yes or no."""
        return self.model.new_bool_var("")

    def whole(self, most: int) -> Bool:
        """Return a new number from 0."""
        return self.model.new_int_var(0, most, "")

    def any_of(self, parts: list[Bool]) -> Bool:
        """Return whether one of them holds."""
        parts = [each for each in parts if each is not self.no]
        if len(parts) < 2:
            return parts[0] if parts else self.no
        found = self.bool()
        self.model.add_max_equality(found, parts)
        return found

    def both(self, one: Bool, other: Bool) -> Bool:
        """Return whether both hold."""
        if one is self.no or other is self.no:
            return self.no
        found = self.bool()
        self.model.add_min_equality(found, [one, other])
        return found

    def over(self, term: Term, limit: int, most: int) -> Bool:
        """Return whether a sum is more than a limit."""
        if most <= limit:
            return self.no
        found = self.bool()
        self.model.add(term >= limit + 1).only_enforce_if(found)
        self.model.add(term <= limit).only_enforce_if(~found)
        return found

    def when(self, chosen: Bool, term: Bool, most: int) -> Bool:
        """Return a number where something is chosen, else 0."""
        if term is self.no or not most:
            return self.no
        found = self.whole(most)
        self.model.add(found == term).only_enforce_if(chosen)
        self.model.add(found == 0).only_enforce_if(~chosen)
        return found

    def ceil(self, term: cp_model.LinearExpr, by: int, most: int) -> Bool:
        """Return a sum divided, rounded up."""
        found = self.whole(-(-most // by))
        self.model.add_division_equality(found, term + by - 1, by)
        return found

    # Choices.

    def _choices(self, port_type: int) -> list[Choice]:
        found = []
        for at, fit in enumerate(self.problem.port_types[port_type].fits):
            for copy in range(self.problem.cables[fit.cable].count):
                plug = (fit.cable, copy, fit.plug)
                found.append(
                    Choice(self.bool(), PlugSource(at, copy), plug, None, fit.halves, fit.limits, fit.points)
                )
        for at, other in enumerate(self.problem.port_types[port_type].adapter_fits):
            for copy in range(self.problem.adapters[other.adapter].count):
                adapter = (other.adapter, copy)
                found.append(
                    Choice(self.bool(), AdapterSource(at, copy), None, adapter, 0, other.limits, other.points)
                )
        return found

    def _consumer(self, port_type: int, fed: Bool) -> Consumer:
        choices = self._choices(port_type)
        self.model.add(sum(each.chosen for each in choices) == fed)
        return Consumer(choices, [self.whole(most) for most in self.most], fed)

    def _inputs(self, copy: Copy) -> list[Consumer]:
        """Return the inputs of an adapter; the first so many are used."""
        kind = self.problem.adapters[copy[0]]
        found = []
        for at in range(max(kind.inputs)):
            used = self.any_of(
                [use for use, many in zip(self.number[copy], kind.inputs, strict=True) if many > at]
            )
            found.append(self._consumer(kind.input_type, used))
        self.model.add_at_most_one(self.number[copy])
        return found

    def _ports(self, device: Device) -> list[Consumer]:
        """Return the ports of a device, each with its load at each choice of the optional ones that are fed."""
        found = [self._consumer(port.type, self.bool()) for port in device.ports]
        for port, one in zip(device.ports, found, strict=True):
            if port.must:
                self.model.add(one.fed == 1)
        optional = [at for at, port in enumerate(device.ports) if not port.required]
        for fed in product((False, True), repeat=len(optional)):
            chosen = dict(zip(optional, fed, strict=True))
            case = [found[at].fed if yes else ~found[at].fed for at, yes in chosen.items()]
            counted = [at for at, port in enumerate(device.ports) if port.required or chosen[at]]
            total = sum(device.ports[at].weight for at in counted)
            for at, one in enumerate(found):
                for entry in range(6):
                    load = -(-device.load[entry] * device.ports[at].weight // total) if at in counted else 0
                    self.model.add(one.loads[entry] == load).only_enforce_if([*case, one.fed])
        for one in found:
            for carried in one.loads:
                self.model.add(carried == 0).only_enforce_if(~one.fed)
        return found

    # What is carried.

    def _sum(self, onto: list[tuple[Consumer, Choice]], entry: int) -> Term:
        return sum(self.when(choice.chosen, one.loads[entry], self.most[entry]) for one, choice in onto)

    def _carry_adapters(self) -> None:
        self.adapter_loads: dict[Copy, list[Bool]] = {}
        for copy in self.copies:
            kind = self.problem.adapters[copy[0]]
            onto = self.onto_adapter.get(copy, [])
            works = sum(self.number[copy])
            self.model.add(sum(choice.chosen for _, choice in onto) <= kind.outputs * works)
            self.model.add(sum(choice.chosen for _, choice in onto) >= works)
            self.adapter_loads[copy] = [self.whole(most) for most in self.most]
            for entry, load in enumerate(self.adapter_loads[copy]):
                self.model.add(load == self._sum(onto, entry))
            self._divide(copy)
            upper = self.any_of([c.chosen for one in self.inputs[copy] for c in one.choices if c.adapter is not None])
            for one, choice in onto:
                if any(one is each for each in self.inputs[copy]):
                    self.model.add(choice.chosen == 0)
                elif any(one is each for some in self.inputs.values() for each in some):
                    self.model.add_bool_or(~choice.chosen, ~upper)
            if copy[1]:
                self.model.add(sum(self.number[copy[0], copy[1] - 1]) >= works)
            self.levels[9 + kind.rank].append(works)

    def _divide(self, copy: Copy) -> None:
        kind = self.problem.adapters[copy[0]]
        for entry in range(6):
            for use, many in zip(self.number[copy], kind.inputs, strict=True):
                part = self.ceil(self.adapter_loads[copy][entry], many, self.most[entry] + many)
                for one in self.inputs[copy][:many]:
                    self.model.add(one.loads[entry] == part).only_enforce_if(use)
            for one in self.inputs[copy]:
                self.model.add(one.loads[entry] == 0).only_enforce_if(~one.fed)

    def _carry_cables(self) -> None:
        self.way: dict[tuple[int, int, int], Place] = {}
        self.first: dict[Copy, list[Bool]] = {}
        self.used = {each: self._cable(*each) for each in self.cables}
        for kind, copy in self.cables:
            if copy:
                self.model.add_implication(self.used[kind, copy], self.used[kind, copy - 1])
        for socket, number in enumerate(self.problem.sockets):
            taken = [self.used[each] * self.problem.cables[each[0]].takes[socket] for each in self.cables]
            self.model.add(sum(taken) <= number)
        for at, group in enumerate(self.problem.groups):
            parts: list[Term] = []
            for each in self.cables:
                names = self.problem.cables[each[0]].groups
                if at in names:
                    load = self.first[each][group.rail]
                    times, most = names.count(at), self.most[group.rail] * len(names)
                    parts.append(self.ceil(load * times, len(names), most))
            most = (self.most[group.rail] + 1) * max(1, len(parts))
            self.levels[0].append(self.over(sum(parts), group.limit, most))

    def _cable(self, kind: int, copy: int) -> Bool:
        each = self.problem.cables[kind]
        taken = []
        behind = [self.no] * 6
        segments = []
        for plug in reversed(range(len(each.halves))):
            onto = self.onto_plug.get((kind, copy, plug), [])
            self.model.add(sum(choice.chosen * choice.halves for _, choice in onto) <= each.halves[plug])
            taken.append(self.any_of([choice.chosen for _, choice in onto]))
            loads = [self.whole(most) for most in self.most]
            for entry in range(6):
                self.model.add(loads[entry] - behind[entry] == self._sum(onto, entry))
            behind = loads
            segments.append(loads)
        segments.reverse()
        self.first[kind, copy] = segments[0]
        before = Place((self.no, self.no, self.no), self.no)
        for plug, loads in enumerate(segments):
            before = self._worst([before, self._judge(loads, each.segments[plug])])
            self.way[kind, copy, plug] = before
        used = self.any_of(taken)
        self.levels[14].append(used)
        self.levels[15].extend((used * len(taken), -sum(taken)))
        if each.bought:
            self.levels[7].append(used)
        return used

    # What is said of places.

    def _judge(self, loads: list[Bool], limits: RailLimits) -> Place:
        stop, band, start, uses = [], [], [], []
        for rail in RAILS:
            each = limits[rail]
            stop.append(self.over(loads[rail], each.stop, self.most[rail]))
            stop.append(self.over(loads[rail + 3], each.start_stop, self.most[rail + 3]))
            band.append(self.over(loads[rail], each.band, self.most[rail]))
            start.append(self.over(loads[rail + 3], each.start_band, self.most[rail + 3]))
            if each.comfort != NO_LIMIT and self.most[rail]:
                uses.append(self.ceil(loads[rail] * 1000, each.comfort, min(1000 * self.most[rail], _CAP)))
        return Place((self.any_of(stop), self.any_of(band), self.any_of(start)), self._largest(uses))

    def _largest(self, uses: list[Bool]) -> Bool:
        uses = [each for each in uses if each is not self.no]
        if not uses:
            return self.no
        found = self.whole(_MOST_USE)
        self.model.add_max_equality(found, uses)
        return found

    def _worst(self, places: list[Place]) -> Place:
        flags = [self.any_of([each.flags[at] for each in places]) for at in RAILS]
        return Place((flags[0], flags[1], flags[2]), self._largest([each.use for each in places]))

    def _under(self, chosen: Bool, place: Place) -> Place:
        """Return what is said of a place where it is on the way, else nothing."""
        flags = [self.both(chosen, flag) for flag in place.flags]
        return Place((flags[0], flags[1], flags[2]), self.when(chosen, place.use, _MOST_USE))

    def _passed(self, one: Consumer) -> Place:
        """Return the worst of the feed of a consumer."""
        places = []
        for choice in one.choices:
            places.append(self._under(choice.chosen, self._judge(one.loads, choice.limits)))
            beyond = self.feeds[choice.adapter] if choice.adapter is not None else self.way[choice.plug or (0, 0, 0)]
            places.append(self._under(choice.chosen, beyond))
        return self._worst(places)

    def _feed(self, copy: Copy) -> None:
        kind = self.problem.adapters[copy[0]]
        own = [
            self._under(use, self._judge(self.adapter_loads[copy], limits))
            for use, limits in zip(self.number[copy], kind.limits_by_inputs, strict=True)
        ]
        worst = self._worst([*own, *(self._passed(one) for one in self.inputs[copy])])
        for flag, found in zip(self.feeds[copy].flags, worst.flags, strict=True):
            self.model.add(flag == found)
        self.model.add(self.feeds[copy].use == worst.use)
        points: list[Term] = [kind.points * sum(self.number[copy])]
        below: dict[Copy, list[Bool]] = {}
        for one in self.inputs[copy]:
            for choice in one.choices:
                points.append(choice.chosen * choice.points)
                if choice.adapter is not None:
                    below.setdefault(choice.adapter, []).append(choice.chosen)
        for other, chosen in below.items():
            if other != copy:
                points.append(self.when(self.any_of(chosen), self.feed_points[other], _MOST_POINTS))
        self.model.add(self.feed_points[copy] == sum(points))

    # Devices.

    def _device(self, device: Device, found: list[Consumer]) -> None:
        unfed: list[Term] = []
        hot = []
        for port, one in zip(device.ports, found, strict=True):
            if port.required:
                unfed.append(1 - one.fed)
            hot.append(self._connection(one))
        self.levels[0].extend(unfed)
        self.levels[1].extend(unfed)
        roles = {"main": 2, "processor": 3, "drive": 5, "rest": 6}
        if device.role != "card":
            self.levels[roles[device.role]].extend(unfed)
        elif unfed:
            self.levels[4].append(self.over(sum(unfed), 0, len(unfed)))
        optional = [one.fed for port, one in zip(device.ports, found, strict=True) if not port.required]
        for fed in optional:
            self.levels[13].append(self.both(self.any_of(hot), self._not(fed)))
        if device.role == "card" and len(found) > 1:
            for cable in self.cables:
                self._share(found, cable)

    def _not(self, one: Bool) -> Bool:
        found = self.bool()
        self.model.add(found == 1 - one)
        return found

    def _connection(self, one: Consumer) -> Bool:
        """Count a connection; return whether its use is above COMFORT_FROM."""
        passed = self._passed(one)
        stopped, band, start = passed.flags
        self.levels[0].append(stopped)
        spared = self._not(stopped)
        self.levels[8].append(self.problem.points.band * self.both(band, spared))
        self.levels[8].append(self.problem.points.start * self.both(start, spared))
        for choice in one.choices:
            self.levels[8].append(choice.points * choice.chosen)
            if choice.adapter is not None:
                self.levels[8].append(self.when(choice.chosen, self.feed_points[choice.adapter], _MOST_POINTS))
        if passed.use is self.no:
            return self.no
        more = self.whole(_MOST_USE)
        self.model.add_max_equality(more, [passed.use - COMFORT_FROM, 0])
        self.levels[12].append(more)
        return self.over(passed.use, COMFORT_FROM, _MOST_USE)

    def _plugged(self, one: Consumer, cable: Copy, depth: int) -> Bool:
        """Return whether a plug of a cable is in the feed of a consumer."""
        found = []
        for choice in one.choices:
            if choice.plug is not None and choice.plug[:2] == cable:
                found.append(choice.chosen)
            elif choice.adapter is not None and depth:
                inner = [self._plugged(each, cable, depth - 1) for each in self.inputs[choice.adapter]]
                found.append(self.both(choice.chosen, self.any_of(inner)))
        return self.any_of(found)

    def _share(self, found: list[Consumer], cable: Copy) -> None:
        touching = [self._plugged(one, cable, 2) for one in found]
        current = [self.when(each, one.loads[0], self.most[0]) for each, one in zip(touching, found, strict=True)]
        several = self.over(sum(touching), 1, sum(each is not self.no for each in touching))
        heavy = self.over(sum(current), self.problem.points.share_limit, self.most[0])
        self.levels[8].append(self.problem.points.share * self.both(several, heavy))

    # The way back.

    def wiring(self, solver: cp_model.CpSolver) -> Wiring:
        """Return the wiring of the last solution."""

        def source(one: Consumer) -> Source | None:
            return next((each.source for each in one.choices if solver.value(each.chosen)), None)

        inputs = []
        for copy in self.copies:
            sources = tuple(found for one in self.inputs[copy] if (found := source(one)) is not None)
            if sources:
                inputs.append((*copy, sources))
        return Wiring(tuple(tuple(source(one) for one in each) for each in self.ports), tuple(inputs))


_CAP = 1 << 40
_MOST_USE = 1 << 26
_MOST_POINTS = 10_000


def solve(problem: Problem, seconds: float) -> Proof:
    """Return the optimum as CP-SAT finds it, level by level; its objective is None where time ran out."""
    until = time.monotonic() + seconds
    built = Model(problem)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    found: list[int] = []
    for level in built.levels:
        total = sum(level)
        if isinstance(total, int):
            found.append(total)
            continue
        built.model.minimize(total)
        solver.parameters.max_time_in_seconds = max(0.01, until - time.monotonic())
        status = solver.solve(built.model)
        if status == cp_model.INFEASIBLE:
            return Proof(None, None, feasible=False)
        if status != cp_model.OPTIMAL:
            return Proof(None, None)
        found.append(round(solver.objective_value))
        built.model.add(total == found[-1])
    return Proof(tuple(found), built.wiring(solver))
