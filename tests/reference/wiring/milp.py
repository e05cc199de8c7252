"""The wiring problem as a mixed-integer program, written from the docstring of ``service.wiring.problem`` alone.

Each copy of a cable and of an adapter is there by itself; a device with optional ports chooses which of them it feeds;
devices that are equal and have one required port are counted together. Every level rises with every load, so a load, a
flag or a nested ceil need only be held from below: the optimum pushes it down onto what it stands for. (An overloaded
connection is spared its band points, but a flag set for that alone costs a stop, which comes first.)
Nothing of the model is left out: nested ceils, groups over several sockets and depth two are integer variables.
"""

from collections import Counter
from collections.abc import Callable
from itertools import combinations, pairwise
from typing import NamedTuple

from service.wiring.problem import (
    COMFORT_FROM,
    LEVELS,
    NO_LIMIT,
    AdapterSource,
    Device,
    Load,
    PlugSource,
    Port,
    Problem,
    RailLimits,
    Source,
    Wiring,
)
from tests.reference.wiring.stages import Infeasible, Linear, Program, Proof

RAILS = range(3)
BOTH = range(6)
ROLE_LEVEL = {"main": 2, "processor": 3, "drive": 5, "rest": 6}
MOULDED = 9

Copy = tuple[int, int]
"""A kind and the number of one of its copies."""

Judge = Callable[[RailLimits, int], int]
"""What a load entry may reach at a place before one of the flags goes up."""


def _stop(limits: RailLimits, entry: int) -> int:
    rail = limits[entry % 3]
    return rail.stop if entry in RAILS else rail.start_stop


def _band(limits: RailLimits, entry: int) -> int:
    return limits[entry].band if entry in RAILS else NO_LIMIT


def _start(limits: RailLimits, entry: int) -> int:
    return NO_LIMIT if entry in RAILS else limits[entry % 3].start_band


JUDGES: tuple[Judge, ...] = (_stop, _band, _start)


def _ceil(number: int, by: int) -> int:
    return -(-number // by)


class Share(NamedTuple):
    """One choice of the optional ports that a device feeds: the load of each port in it, and how many it leaves out."""

    loads: dict[int, Load]
    left_out: int


class Draw(NamedTuple):
    """One possible source of one consumer; ``use`` is 1 where it is chosen."""

    use: int
    plug: tuple[int, int, int] | None  # cable kind, copy, plug
    adapter: Copy | None
    halves: int
    limits: RailLimits
    points: int
    load: tuple[Linear, ...]
    most: Load
    fit: int


def shares(device: Device) -> list[Share]:
    """Return the ways to feed the optional ports of a device; a port that is ``must`` is in each."""
    ports = range(len(device.ports))
    fixed = [at for at in ports if device.ports[at].required or device.ports[at].must]
    free = [at for at in ports if at not in fixed]
    found = []
    for size in range(len(free) + 1):
        for chosen in combinations(free, size):
            fed = sorted([*fixed, *chosen])
            total = sum(device.ports[at].weight for at in fed)
            loads = {}
            for at in fed:
                one = [_ceil(each * device.ports[at].weight, total) for each in device.load]
                loads[at] = (one[0], one[1], one[2], one[3], one[4], one[5])
            found.append(Share(loads, len(free) - size))
    return found


def _top(loads: list[Load]) -> Load:
    one = [max((load[entry] for load in loads), default=0) for entry in BOTH]
    return one[0], one[1], one[2], one[3], one[4], one[5]


class Model:
    """The program of one problem."""

    def __init__(self, problem: Problem, program: Program, *, together: bool = True) -> None:
        self.problem = problem
        self.together = together
        self.program = program
        self.levels = [Linear() for _ in range(LEVELS)]
        self.cables = [(kind, copy) for kind, each in enumerate(problem.cables) for copy in range(each.count)]
        self.copies = [(kind, copy) for kind, each in enumerate(problem.adapters) for copy in range(each.count)]
        self.used = {each: self.program.var() for each in self.cables}
        self.works = {
            (kind, copy): [self.program.var() for _ in problem.adapters[kind].inputs] for kind, copy in self.copies
        }
        self.on_plug: dict[tuple[int, int, int], list[Draw]] = {
            (kind, copy, plug): []
            for kind, copy in self.cables for plug in range(len(problem.cables[kind].halves))
        }
        self.on_adapter: dict[Copy, list[Draw]] = {each: [] for each in self.copies}
        self.input_draws: dict[Copy, list[Draw]] = {each: [] for each in self.copies}
        self.ports: list[tuple[list[int], list[dict[int, list[Draw]]]]] = []
        self.excess_of_device: dict[int, list[int]] = {}
        self._most_from_adapters()
        self._merge()
        self._inputs()
        self._devices()
        self._capacity()
        self._depth()
        self._adapter_loads()
        self._cable_loads()
        self._groups()
        self._adapter_feeds()
        self._connections()
        self._sharing()
        self._counts()

    # What an adapter can carry at most.

    def _most_from_adapters(self) -> None:
        kinds = range(len(self.problem.adapters))
        of_devices: list[list[Load]] = [[] for _ in kinds]
        for device in self.problem.devices:
            for share in shares(device):
                for at, load in share.loads.items():
                    for fit in self.problem.port_types[device.ports[at].type].adapter_fits:
                        of_devices[fit.adapter].append(load)
        first = [self._input_most(kind, _top(of_devices[kind])) for kind in kinds]
        onto: list[list[Load]] = [list(each) for each in of_devices]
        for kind in kinds:
            for fit in self.problem.port_types[self.problem.adapters[kind].input_type].adapter_fits:
                onto[fit.adapter].append(first[kind])
        self.output_most = [_top(onto[kind]) for kind in kinds]
        self.input_most = [self._input_most(kind, self.output_most[kind]) for kind in kinds]

    def _input_most(self, kind: int, output: Load) -> Load:
        each = self.problem.adapters[kind]
        return _top([_times(output, each.outputs, min(each.inputs))])

    # Sources.

    def _sources(self, port_type: int, load: Callable[[int], tuple[Linear, ...]], most: Load, times: int) -> list[Draw]:
        """Return the draws of one consumer, or of ``times`` equal ones, each unit of a source by itself."""
        found = []
        of = self.problem.port_types[port_type]
        for at, fit in enumerate(of.fits):
            kind = self.problem.cables[fit.cable]
            for copy in range(kind.count):
                units = [self.program.var() for _ in range(min(times, kind.halves[fit.plug] // fit.halves))]
                self._descend(units)
                for use in units:
                    draw = Draw(
                        use, (fit.cable, copy, fit.plug), None, fit.halves, fit.limits, fit.points, load(use), most, at,
                    )
                    self.on_plug[fit.cable, copy, fit.plug].append(draw)
                    found.append(draw)
        for at, other in enumerate(of.adapter_fits):
            adapter = self.problem.adapters[other.adapter]
            for copy in range(adapter.count):
                units = [self.program.var() for _ in range(min(times, adapter.outputs))]
                self._descend(units)
                for use in units:
                    draw = Draw(
                        use, None, (other.adapter, copy), 0, other.limits, other.points, load(use), most, at,
                    )
                    self.on_adapter[other.adapter, copy].append(draw)
                    found.append(draw)
        return found

    def _descend(self, variables: list[int]) -> None:
        for one, other in pairwise(variables):
            self.program.at_least(Linear().add(one).add(other, -1), 0)

    def _merge(self) -> None:
        """Count equal devices of one required port together, unless each is to stand alone."""
        alone = [
            device if self.together and len(device.ports) == 1 and _plain(device.ports[0]) else at
            for at, device in enumerate(self.problem.devices)
        ]
        self.merged: dict[object, list[int]] = {}
        for at, each in enumerate(alone):
            self.merged.setdefault(each, []).append(at)

    def _devices(self) -> None:
        for places in self.merged.values():
            device = self.problem.devices[places[0]]
            options = []
            choices = shares(device)
            chosen = [self.program.var() for _ in choices]
            self.program.equal(Linear.total(chosen), 1)
            unfed_any = self.program.var()
            for choice, share in zip(chosen, choices, strict=True):
                draws = {}
                for at, load in share.loads.items():
                    draws[at] = self._feed(device, at, load, choice, len(places), unfed_any)
                options.append(draws)
            if device.role == "card" and len(places) == 1:
                self.levels[4].add(unfed_any)
            self.ports.append((places, options))
            hot = self.program.var()
            self.excess_of_device[places[0]] = [hot]
            if len(choices) > 1:
                missed = self.program.var(max(share.left_out for share in choices), whole=False)
                row = Linear().add(missed).add(hot, -max(share.left_out for share in choices))
                for choice, share in zip(chosen, choices, strict=True):
                    row.add(choice, -share.left_out)
                self.program.at_least(row, -max(share.left_out for share in choices))
                self.levels[13].add(missed)

    def _feed(self, device: Device, at: int, load: Load, choice: int, times: int, unfed_any: int) -> list[Draw]:
        """Return the draws of a port under one choice, and hold how often it has a source."""
        port = device.ports[at]

        def carried(use: int) -> tuple[Linear, ...]:
            return tuple(Linear().add(use, each) for each in load)

        draws = self._sources(port.type, carried, load, times)
        fed = Linear.total([draw.use for draw in draws])
        if port.must or not port.required:
            self.program.equal(fed.add(choice, -1), 0)
            return draws
        self.program.at_most(fed.copy().add(choice, -times), 0)
        unfed = Linear().add(choice, times).plus(fed, -1)
        for level in (0, 1):
            self.levels[level].plus(unfed)
        if device.role in ROLE_LEVEL:
            self.levels[ROLE_LEVEL[device.role]].plus(unfed)
        elif times > 1:
            self.levels[4].plus(unfed)
        else:
            self.program.at_least(Linear().add(unfed_any).plus(unfed, -1), 0)
        return draws

    # Adapters.

    def _inputs(self) -> None:
        self.input_load: dict[Copy, tuple[int, ...]] = {}
        for copy in self.copies:
            kind = self.problem.adapters[copy[0]]
            most = self.input_most[copy[0]]
            loads = tuple(self.program.var(each) for each in most)
            self.input_load[copy] = loads

            def carried(use: int, loads: tuple[int, ...] = loads, most: Load = most) -> tuple[Linear, ...]:
                found = []
                for entry in BOTH:
                    if not most[entry]:
                        found.append(Linear())
                        continue
                    each = self.program.var(most[entry], whole=False)
                    row = Linear().add(each).add(loads[entry], -1).add(use, -most[entry])
                    self.program.at_least(row, -most[entry])
                    found.append(Linear().add(each))
                return tuple(found)

            draws = self._sources(kind.input_type, carried, most, max(kind.inputs))
            self.input_draws[copy] = draws
            row = Linear.total([draw.use for draw in draws])
            for use, number in zip(self.works[copy], kind.inputs, strict=True):
                row.add(use, -number)
            self.program.equal(row, 0)
            self.program.at_most(Linear.total(self.works[copy]), 1)

    def _depth(self) -> None:
        """An adapter that feeds an adapter is not fed from one, and least of all from itself."""
        for copy in self.copies:
            below = [draw for draw in self.input_draws[copy] if draw.adapter is not None]
            if not below:
                continue
            fed_so = self.program.var()
            for draw in below:
                self.program.at_most(Linear().add(draw.use).add(fed_so, -1), 0)
                if draw.adapter == copy:
                    self.program.at_most(Linear().add(draw.use), 0)
            for other in self.copies:
                for draw in self.input_draws[other]:
                    if draw.adapter == copy:
                        self.program.at_most(Linear().add(draw.use).add(fed_so), 1)

    def _adapter_loads(self) -> None:
        for copy in self.copies:
            kind = self.problem.adapters[copy[0]]
            outputs = Linear.total([draw.use for draw in self.on_adapter[copy]])
            works = Linear.total(self.works[copy])
            self.program.at_most(outputs.copy().plus(works, -kind.outputs), 0)
            self.program.at_least(outputs.copy().plus(works, -1), 0)
            for entry in BOTH:
                carried = Linear.sum([draw.load[entry] for draw in self.on_adapter[copy]])
                most = kind.outputs * self.output_most[copy[0]][entry]
                if not most:
                    continue
                for use, number in zip(self.works[copy], kind.inputs, strict=True):
                    row = Linear().add(self.input_load[copy][entry], number).plus(carried, -1)
                    self.program.at_least(row.add(use, -most), -most)

    # Cables.

    def _capacity(self) -> None:
        for (kind, copy, plug), draws in self.on_plug.items():
            row = Linear()
            for draw in draws:
                row.add(draw.use, draw.halves)
            room = self.problem.cables[kind].halves[plug]
            self.program.at_most(row.add(self.used[kind, copy], -room), 0)
        for kind, copy in self.cables:
            row = self._uses(kind, copy)
            self.program.at_least(row.copy().add(self.used[kind, copy], -1), 0)
            if copy:  # copies are equal: the one that feeds more comes first
                self.program.at_least(self._uses(kind, copy - 1).plus(row, -1), 0)
        for socket, number in enumerate(self.problem.sockets):
            row = Linear()
            for kind, copy in self.cables:
                row.add(self.used[kind, copy], self.problem.cables[kind].takes[socket])
            self.program.at_most(row, number)

    def _uses(self, kind: int, copy: int) -> Linear:
        plugs = range(len(self.problem.cables[kind].halves))
        return Linear.total([draw.use for plug in plugs for draw in self.on_plug[kind, copy, plug]])

    def _cable_loads(self) -> None:
        """Hold the load of each segment, its flags and its use, each with those of the segments before it."""
        self.way: dict[tuple[int, int, int], tuple[list[int | None], int | None]] = {}
        self.first: dict[Copy, tuple[list[Linear], list[int]]] = {}
        for kind, copy in self.cables:
            each = self.problem.cables[kind]
            flags: list[int | None] = [None, None, None]
            excess: int | None = None
            for plug, limits in enumerate(each.segments):
                loads, most = self._segment(kind, copy, plug)
                if not plug:
                    self.first[kind, copy] = loads, most
                flags = [
                    self._flag(flag, judge, limits, loads, most) for flag, judge in zip(flags, JUDGES, strict=True)
                ]
                excess = self._excess(excess, limits, loads, most)
                self.way[kind, copy, plug] = flags, excess

    def _segment(self, kind: int, copy: int, first: int) -> tuple[list[Linear], list[int]]:
        loads = [Linear() for _ in BOTH]
        most = [0] * 6
        for plug in range(first, len(self.problem.cables[kind].halves)):
            room = self.problem.cables[kind].halves[plug]
            for entry in BOTH:
                heaviest = 0
                for draw in self.on_plug[kind, copy, plug]:
                    loads[entry].plus(draw.load[entry])
                    heaviest = max(heaviest, draw.most[entry] * (room // draw.halves))
                most[entry] += heaviest
        return loads, most

    def _flag(
        self, before: int | None, judge: Judge, limits: RailLimits, loads: list[Linear], most: list[int],
        unless: int | None = None,
    ) -> int | None:
        """Return a variable that is 1 when a load is past its limit, or when the flag before is up."""
        past = [entry for entry in BOTH if most[entry] > judge(limits, entry)]
        if not past:
            return before
        flag = self.program.var()
        for entry in past:
            limit = judge(limits, entry)
            row = loads[entry].copy().add(flag, limit - most[entry])
            if unless is not None:
                row.add(unless, most[entry] - limit)
                limit = most[entry]
            self.program.at_most(row, limit)
        if before is not None:
            self.program.at_least(Linear().add(flag).add(before, -1), 0)
        return flag

    def _excess(
        self, before: int | None, limits: RailLimits, loads: list[Linear], most: list[int], unless: int | None = None,
    ) -> int | None:
        """Return a variable that is at least 1000 l / comfort - COMFORT_FROM, and at least the one before."""
        past = [rail for rail in RAILS if _over(most[rail], limits[rail].comfort) > 0]
        if not past:
            return before
        top = max(_over(most[rail], limits[rail].comfort) for rail in past)
        excess = self.program.var(max(top, self.program.top(before)), whole=False)
        for rail in past:
            comfort, reach = limits[rail].comfort, _over(most[rail], limits[rail].comfort)
            row = loads[rail].times(1000.0 / comfort).add(excess, -1)
            if unless is None:
                self.program.at_most(row, COMFORT_FROM)
            else:
                self.program.at_most(row.add(unless, reach), COMFORT_FROM + reach)
        if before is not None:
            self.program.at_least(Linear().add(excess).add(before, -1), 0)
        return excess

    def _groups(self) -> None:
        for number, group in enumerate(self.problem.groups):
            carried, most = Linear(), 0
            for kind, copy in self.cables:
                names = self.problem.cables[kind].groups
                times = names.count(number)
                loads, reach = self.first[kind, copy]
                if not times or not reach[group.rail]:
                    continue
                part = _ceil(reach[group.rail] * times, len(names))
                most += part
                if times == len(names):
                    carried.plus(loads[group.rail])
                    continue
                one = self.program.var(part)
                self.program.at_least(Linear().add(one, len(names)).plus(loads[group.rail], -times), 0)
                carried.add(one)
            if most > group.limit:
                over = self.program.var()
                self.program.at_most(carried.add(over, group.limit - most), group.limit)
                self.levels[0].add(over)

    # Feeds.

    def _adapter_feeds(self) -> None:
        """Give each adapter the flags, the use and the points of all that its current passes."""
        self.feed: dict[Copy, tuple[list[int], int, int]] = {}
        for copy in self.copies:
            flags = [self.program.var() for _ in JUDGES]
            excess = self.program.var(NO_LIMIT, whole=False)
            points = self.program.var(NO_LIMIT, whole=False)
            self.feed[copy] = flags, excess, points
        for copy in self.copies:
            self.program.cap(self.feed[copy][1], self._most_excess())
            self.program.cap(self.feed[copy][2], self._most_points())
        for copy in self.copies:
            self._adapter_itself(copy)
            for draw in self.input_draws[copy]:
                self._input_feed(copy, draw)

    def _most_excess(self) -> int:
        """Return more than any use can reach."""
        top = 1
        for device in self.problem.devices:
            top += sum(device.load[:3]) + 3 * len(device.ports)
        places = [limits for each in self.problem.cables for limits in each.segments]
        for of in self.problem.port_types:
            places += [fit.limits for fit in of.fits] + [other.limits for other in of.adapter_fits]
        places += [limits for each in self.problem.adapters for limits in each.limits_by_inputs]
        least = min((rail.comfort for limits in places for rail in limits), default=NO_LIMIT)
        return max(_over(top, least), 1)

    def _most_points(self) -> int:
        fits = [0]
        for of in self.problem.port_types:
            fits += [fit.points for fit in of.fits] + [other.points for other in of.adapter_fits]
        inputs = max((max(each.inputs) for each in self.problem.adapters), default=0)
        own = max((each.points for each in self.problem.adapters), default=0)
        once = own + inputs * max(fits)
        return once * (1 + inputs)

    def _adapter_itself(self, copy: Copy) -> None:
        kind = self.problem.adapters[copy[0]]
        flags, excess, _ = self.feed[copy]
        loads = [Linear.sum([draw.load[entry] for draw in self.on_adapter[copy]]) for entry in BOTH]
        most = [kind.outputs * each for each in self.output_most[copy[0]]]
        for use, limits in zip(self.works[copy], kind.limits_by_inputs, strict=True):
            for flag, judge in zip(flags, JUDGES, strict=True):
                self._raise(flag, self._flag(None, judge, limits, loads, most, use))
            self._lift(excess, self._excess(None, limits, loads, most, use))
        points = Linear().add(self.feed[copy][2])
        for use in self.works[copy]:
            points.add(use, -kind.points)
        for draw in self.input_draws[copy]:
            points.add(draw.use, -draw.points)
        for below in {draw.adapter for draw in self.input_draws[copy] if draw.adapter is not None} - {copy}:
            first = next(draw for draw in self.input_draws[copy] if draw.adapter == below)
            points.add(self._when(first.use, self.feed[below][2]), -1)
        self.program.at_least(points, 0)

    def _input_feed(self, copy: Copy, draw: Draw) -> None:
        flags, excess, _ = self.feed[copy]
        loads, most = list(draw.load), list(draw.most)
        for flag, judge in zip(flags, JUDGES, strict=True):
            self._raise(flag, self._flag(None, judge, draw.limits, loads, most))
        self._lift(excess, self._excess(None, draw.limits, loads, most))
        there, use = self._beyond(draw)
        for flag, other in zip(flags, there, strict=True):
            self._raise(flag, other, draw.use)
        if use is not None:
            self._lift(excess, self._when(draw.use, use))

    def _beyond(self, draw: Draw) -> tuple[list[int | None], int | None]:
        """Return the flags and the use of all that lies behind a source."""
        if draw.plug is not None:
            return self.way[draw.plug]
        assert draw.adapter is not None
        flags, excess, _ = self.feed[draw.adapter]
        return list(flags), excess

    def _raise(self, flag: int, other: int | None, when: int | None = None) -> None:
        if other is not None:
            row = Linear().add(flag).add(other, -1)
            self.program.at_least(row if when is None else row.add(when, -1), 0 if when is None else -1)

    def _lift(self, excess: int, other: int | None) -> None:
        if other is not None:
            self.program.at_least(Linear().add(excess).add(other, -1), 0)

    def _when(self, use: int, other: int) -> int:
        """Return a variable that is at least another where ``use`` is 1."""
        top = self.program.top(other)
        found = self.program.var(top, whole=False)
        self.program.at_least(Linear().add(found).add(other, -1).add(use, -top), -top)
        return found

    def _connections(self) -> None:
        """Judge each connection: of one port all its draws together, of ports counted together each draw."""
        for places, options in self.ports:
            of_port: dict[int, list[Draw]] = {}
            for draws in options:
                for at, some in draws.items():
                    of_port.setdefault(at, []).extend(some)
            hot = self.excess_of_device[places[0]][0]
            for found in of_port.values():
                for together in [found] if len(places) == 1 else [[draw] for draw in found]:
                    self._connection(together, hot)

    def _connection(self, draws: list[Draw], hot: int) -> None:
        flags = [self.program.var() for _ in JUDGES]
        excess = self.program.var(self._most_excess())
        for draw in draws:
            most = list(draw.most)
            there, use = self._beyond(draw)
            for flag, other, judge in zip(flags, there, JUDGES, strict=True):
                if any(most[entry] > judge(draw.limits, entry) for entry in BOTH):
                    self.program.at_least(Linear().add(flag).add(draw.use, -1), 0)
                self._raise(flag, other, draw.use)
            own = max(_over(most[rail], draw.limits[rail].comfort) for rail in RAILS)
            if own > 0:
                self.program.at_least(Linear().add(excess).add(draw.use, -own), 0)
            if use is not None:
                self._lift_when(excess, use, draw.use)
            self.levels[8].add(draw.use, draw.points)
            if draw.adapter is not None:
                self.levels[8].add(self._when(draw.use, self.feed[draw.adapter][2]))
        self.levels[0].add(flags[0])
        for flag, points in zip(flags[1:], (self.problem.points.band, self.problem.points.start), strict=True):
            spared = self.program.var(whole=False)
            self.program.at_least(Linear().add(spared).add(flag, -1).add(flags[0]), 0)
            self.levels[8].add(spared, points)
        self.levels[12].add(excess)
        self.program.at_most(Linear().add(excess).add(hot, -self._most_excess()), 0)

    def _lift_when(self, excess: int, other: int, use: int) -> None:
        top = self.program.top(other)
        self.program.at_least(Linear().add(excess).add(other, -1).add(use, -top), -top)

    # Sharing and counts.

    def _reached(self, copy: Copy, cable: Copy, depth: int) -> int | None:
        """Return a variable that is 1 when an adapter is fed, at any remove, by a cable."""
        if (copy, cable, depth) in self.reach:
            return self.reach[copy, cable, depth]
        found = self.program.var()
        touched = False
        for draw in self.input_draws[copy]:
            if draw.plug is not None and draw.plug[:2] == cable:
                self._raise(found, draw.use)
                touched = True
            elif draw.adapter is not None and draw.adapter != copy and depth:
                below = self._reached(draw.adapter, cable, depth - 1)
                self._raise(found, below, draw.use)
                touched = touched or below is not None
        self.reach[copy, cable, depth] = found if touched else None
        return self.reach[copy, cable, depth]

    def _sharing(self) -> None:
        self.reach: dict[tuple[Copy, Copy, int], int | None] = {}
        for places, options in self.ports:
            device = self.problem.devices[places[0]]
            if device.role != "card" or len(device.ports) == 1:
                continue
            for cable in self.cables:
                self._shared(options, cable)

    def _shared(self, options: list[dict[int, list[Draw]]], cable: Copy) -> None:
        number, current, most = Linear(), Linear(), 0
        for draws in options:
            most = max(most, sum(some[0].most[0] for some in draws.values() if some))
            for some in draws.values():
                for use, milliamps in self._touching(some, cable):
                    number.add(use)
                    current.add(use, milliamps)
        limit = self.problem.points.share_limit
        if most <= limit or len(number.terms) == 0:
            return
        several, heavy, shared = (self.program.var() for _ in range(3))
        ports = max(len(draws) for draws in options)
        self.program.at_most(number.add(several, 1 - ports), 1)
        self.program.at_most(current.add(heavy, limit - most), limit)
        self.program.at_least(Linear().add(shared).add(several, -1).add(heavy, -1), -1)
        self.levels[8].add(shared, self.problem.points.share)

    def _touching(self, draws: list[Draw], cable: Copy) -> list[tuple[int, int]]:
        found = []
        for draw in draws:
            if draw.plug is not None and draw.plug[:2] == cable:
                found.append((draw.use, draw.most[0]))
            elif draw.adapter is not None:
                reached = self._reached(draw.adapter, cable, 1)
                if reached is not None:
                    both = self.program.var(whole=False)
                    self._raise(both, reached, draw.use)
                    found.append((both, draw.most[0]))
        return found

    def _counts(self) -> None:
        for kind, copy in self.cables:
            used = self.used[kind, copy]
            if self.problem.cables[kind].bought:
                self.levels[7].add(used)
            self.levels[14].add(used)
            for plug in range(len(self.problem.cables[kind].halves)):
                taken = self.program.var(whole=False)
                row = Linear.total([draw.use for draw in self.on_plug[kind, copy, plug]])
                self.program.at_most(Linear().add(taken).plus(row, -1), 0)
                self.levels[15].add(used).add(taken, -1)
        for kind, copy in self.copies:
            for use in self.works[kind, copy]:
                self.levels[MOULDED + self.problem.adapters[kind].rank].add(use)
            if copy:
                row = Linear.total(self.works[kind, copy - 1]).plus(Linear.total(self.works[kind, copy]), -1)
                self.program.at_least(row, 0)

    # The way back.

    def wiring(self, values: list[float]) -> Wiring:
        """Return the wiring that a solution stands for."""
        sources: list[list[Source | None]] = [[None] * len(device.ports) for device in self.problem.devices]
        for places, options in self.ports:
            seen: Counter[int] = Counter()
            for draws in options:
                for at, some in draws.items():
                    for draw in some:
                        if values[draw.use] > 0.5:
                            sources[places[seen[at]]][at] = _source(draw)
                            seen[at] += 1
        inputs = tuple(
            (*copy, tuple(_source(draw) for draw in self.input_draws[copy] if values[draw.use] > 0.5))
            for copy in self.copies
            if any(values[use] > 0.5 for use in self.works[copy])
        )
        return Wiring(tuple(tuple(each) for each in sources), inputs)


def _plain(port: Port) -> bool:
    return port.required and not port.must


def _times(load: Load, number: int, by: int) -> Load:
    one = [_ceil(each * number, by) for each in load]
    return one[0], one[1], one[2], one[3], one[4], one[5]


def _over(load: int, comfort: int) -> int:
    return 0 if comfort == NO_LIMIT else max(0, _ceil(1000 * load, comfort) - COMFORT_FROM)


def _source(draw: Draw) -> Source:
    if draw.plug is not None:
        return PlugSource(draw.fit, draw.plug[1])
    assert draw.adapter is not None
    return AdapterSource(draw.fit, draw.adapter[1])


def solve(problem: Problem, seconds: float) -> Proof:
    """Return the optimum as HiGHS finds it, level by level; its objective is None where time ran out."""
    return _solved(Model(problem, Program()), seconds)


def solve_singly(problem: Problem, seconds: float) -> Proof:
    """Return the same from the plain assignment model, where equal devices are told apart."""
    return _solved(Model(problem, Program(), together=False), seconds)


def solve_as_posed(problem: Problem, seconds: float) -> Proof:
    """Return the same without presolve: slower, but HiGHS 1.16 then takes back what it was wrong about."""
    return _solved(Model(problem, Program(("off",))), seconds)


def _solved(model: Model, seconds: float) -> Proof:
    try:
        values, objective = model.program.by_levels(model.levels, seconds)
    except Infeasible:
        return Proof(None, None, feasible=False)
    if objective is None:
        return Proof(None, None)
    return Proof(objective, model.wiring(values))

