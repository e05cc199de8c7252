"""An exhaustive solver of small wiring problems, written from the statement of the problem alone, with its own scoring.

Shares no code with the search or with the judge; slow on purpose: it tries every wiring (copies are opened in order)
and scores each from nothing.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from service.wiring.problem import (
    COMFORT_FROM,
    NO_LIMIT,
    AdapterSource,
    Objective,
    PlugSource,
    Problem,
    Source,
    Wiring,
)


class TooMany(Exception):
    """More wirings than the caller wants to see."""


def best(problem: Problem, at_most: int) -> tuple[Objective, Wiring] | None:
    """Return the least objective over all wirings, with a wiring that has it; None where there is no wiring."""
    found: tuple[Objective, Wiring] | None = None
    for number, wiring in enumerate(every_wiring(problem)):
        if number >= at_most:
            raise TooMany
        score = scored(problem, wiring)
        if found is None or score < found[0]:
            found = score, wiring
    return found


def every_wiring(problem: Problem) -> Iterator[Wiring]:
    """Yield every wiring, up to the numbering of equal cables and adapters."""
    yield from _Every(problem).from_here()


class _Every:
    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.queue: list[tuple[str, int, int, int]] = [
            ("port", device, port, of.type)
            for device, found in enumerate(problem.devices)
            for port, of in enumerate(found.ports)
        ]
        self.given: dict[tuple[str, int, int, int], Source | None] = {}
        self.halves: Counter[tuple[int, int, int]] = Counter()
        self.cables = [0] * len(problem.cables)
        self.adapters: list[list[int]] = [[] for _ in problem.adapters]
        self.outputs: Counter[tuple[int, int]] = Counter()
        self.sockets = list(problem.sockets)
        self.feeds_an_input: Counter[tuple[int, int]] = Counter()
        self.fed_by_adapter: Counter[tuple[int, int]] = Counter()

    def from_here(self, at: int = 0) -> Iterator[Wiring]:
        if at == len(self.queue):
            yield self._wiring()
            return
        slot = self.queue[at]
        if slot[0] == "port" and not self.problem.devices[slot[1]].ports[slot[2]].must:
            self.given[slot] = None
            yield from self.from_here(at + 1)
        for number, fit in enumerate(self.problem.port_types[slot[3]].fits):
            for copy in range(min(self.cables[fit.cable] + 1, self.problem.cables[fit.cable].count)):
                yield from self._plug(at, slot, number, copy)
        for number, taken in enumerate(self.problem.port_types[slot[3]].adapter_fits):
            kind = self.problem.adapters[taken.adapter]
            for copy in range(len(self.adapters[taken.adapter])):
                if self.outputs[taken.adapter, copy] < kind.outputs:
                    yield from self._output(at, slot, number, copy)
            if len(self.adapters[taken.adapter]) < kind.count and kind.outputs > 0:
                for inputs in kind.inputs:
                    yield from self._new_adapter(at, slot, number, inputs)

    def _plug(self, at: int, slot: tuple[str, int, int, int], number: int, copy: int) -> Iterator[Wiring]:
        fit = self.problem.port_types[slot[3]].fits[number]
        kind = self.problem.cables[fit.cable]
        plug = (fit.cable, copy, fit.plug)
        fresh = copy == self.cables[fit.cable]
        if self.halves[plug] + fit.halves > kind.halves[fit.plug]:
            return
        if fresh and any(takes > left for takes, left in zip(kind.takes, self.sockets, strict=True)):
            return
        self.halves[plug] += fit.halves
        if fresh:
            self.cables[fit.cable] += 1
            self.sockets = [left - takes for takes, left in zip(kind.takes, self.sockets, strict=True)] or self.sockets
        self.given[slot] = PlugSource(number, copy)
        yield from self.from_here(at + 1)
        self.halves[plug] -= fit.halves
        if fresh:
            self.cables[fit.cable] -= 1
            self.sockets = [left + takes for takes, left in zip(kind.takes, self.sockets, strict=True)] or self.sockets

    def _output(self, at: int, slot: tuple[str, int, int, int], number: int, copy: int) -> Iterator[Wiring]:
        adapter = (self.problem.port_types[slot[3]].adapter_fits[number].adapter, copy)
        own = (int(slot[0]), slot[1]) if slot[0] != "port" else None
        if own and (self.fed_by_adapter[adapter] or self.feeds_an_input[own] or own == adapter):
            return
        self.outputs[adapter] += 1
        if own:
            self.feeds_an_input[adapter] += 1
            self.fed_by_adapter[own] += 1
        self.given[slot] = AdapterSource(number, copy)
        yield from self.from_here(at + 1)
        self.outputs[adapter] -= 1
        if own:
            self.feeds_an_input[adapter] -= 1
            self.fed_by_adapter[own] -= 1

    def _new_adapter(self, at: int, slot: tuple[str, int, int, int], number: int, inputs: int) -> Iterator[Wiring]:
        kind = self.problem.port_types[slot[3]].adapter_fits[number].adapter
        copy = len(self.adapters[kind])
        self.adapters[kind].append(inputs)
        of = self.problem.adapters[kind].input_type
        self.queue.extend((str(kind), copy, each, of) for each in range(inputs))
        yield from self._output(at, slot, number, copy)
        self.adapters[kind].pop()
        del self.queue[len(self.queue) - inputs :]

    def _wiring(self) -> Wiring:
        sources = tuple(
            tuple(self.given["port", device, port, of.type] for port, of in enumerate(found.ports))
            for device, found in enumerate(self.problem.devices)
        )
        inputs = []
        for kind, copies in enumerate(self.adapters):
            of = self.problem.adapters[kind].input_type
            for copy, number in enumerate(copies):
                each = tuple(self.given[str(kind), copy, place, of] for place in range(number))
                inputs.append((kind, copy, each))
        return Wiring(sources, tuple(inputs))  # type: ignore[arg-type]


def _up(number: int, parts: int) -> int:
    return ceil(Fraction(number, parts))


def scored(problem: Problem, wiring: Wiring) -> Objective:
    """Return the objective, worked out entry by entry from the statement."""
    upstream = _Upstream(problem, wiring)
    for device, found in enumerate(problem.devices):
        inside = [p for p, port in enumerate(found.ports) if port.required or wiring.sources[device][p]]
        weight = sum(found.ports[p].weight for p in inside)
        for p in inside:
            if wiring.sources[device][p]:
                upstream.currents[device, p] = [_up(each * found.ports[p].weight, weight) for each in found.load]
    upstream.fill()
    return _levels(problem, wiring, upstream)


class _Upstream:
    """What each place carries, and the places behind each port."""

    def __init__(self, problem: Problem, wiring: Wiring) -> None:
        self.problem, self.wiring = problem, wiring
        self.inputs = {(kind, copy): sources for kind, copy, sources in wiring.adapter_inputs}
        self.currents: dict[tuple[int, int], list[int]] = {}
        self.adapter: dict[tuple[int, int], list[int]] = {}
        self.plug: dict[tuple[int, int, int], list[int]] = defaultdict(lambda: [0] * 6)

    def of_port(self, device: int, port: int) -> int:
        return self.problem.devices[device].ports[port].type

    def named(self, of: int, source: Source) -> tuple[int, int]:
        return self.problem.port_types[of].adapter_fits[source.fit].adapter, source.copy

    def carried(self, adapter: tuple[int, int]) -> list[int]:
        if adapter not in self.adapter:
            total = [0] * 6
            for (device, port), load in self.currents.items():
                source = self.wiring.sources[device][port]
                if isinstance(source, AdapterSource) and self.named(self.of_port(device, port), source) == adapter:
                    total = [a + b for a, b in zip(total, load, strict=True)]
            for other, sources in self.inputs.items():
                of = self.problem.adapters[other[0]].input_type
                for source in sources:
                    if isinstance(source, AdapterSource) and self.named(of, source) == adapter:
                        total = [a + _up(b, len(sources)) for a, b in zip(total, self.carried(other), strict=True)]
            self.adapter[adapter] = total
        return self.adapter[adapter]

    def fill(self) -> None:
        for (device, port), load in self.currents.items():
            self._hang(self.of_port(device, port), self.wiring.sources[device][port], load)
        for (kind, copy), sources in self.inputs.items():
            share = [_up(each, len(sources)) for each in self.carried((kind, copy))]
            for source in sources:
                self._hang(self.problem.adapters[kind].input_type, source, share)

    def _hang(self, of: int, source: Source | None, load: list[int]) -> None:
        if isinstance(source, PlugSource):
            fit = self.problem.port_types[of].fits[source.fit]
            at = (fit.cable, source.copy, fit.plug)
            self.plug[at] = [a + b for a, b in zip(self.plug[at], load, strict=True)]

    def segment(self, cable: tuple[int, int], number: int) -> list[int]:
        total = [0] * 6
        for (kind, copy, plug), load in self.plug.items():
            if (kind, copy) == cable and plug >= number:
                total = [a + b for a, b in zip(total, load, strict=True)]
        return total

    def feed(
        self, of: int, source: Source, load: list[int], name: object
    ) -> dict[object, tuple[list[int], object, int]]:
        """Return {place: (current, limits, points)} of the place named, and of all behind it."""
        if isinstance(source, PlugSource):
            fit = self.problem.port_types[of].fits[source.fit]
            cable = (fit.cable, source.copy)
            limits = self.problem.cables[fit.cable].segments
            feed: dict[object, tuple[list[int], object, int]] = {name: (load, fit.limits, fit.points)}
            for number in range(fit.plug + 1):
                feed["segment", cable, number] = (self.segment(cable, number), limits[number], 0)
            return feed
        taken = self.problem.port_types[of].adapter_fits[source.fit]
        adapter = (taken.adapter, source.copy)
        kind = self.problem.adapters[taken.adapter]
        sources = self.inputs[adapter]
        allowed = dict(zip(kind.inputs, kind.limits_by_inputs, strict=True))[len(sources)]
        places: dict[object, tuple[list[int], object, int]] = {name: (load, taken.limits, taken.points)}
        places["adapter", adapter] = (self.carried(adapter), allowed, kind.points)
        share = [_up(each, len(sources)) for each in self.carried(adapter)]
        for number, further in enumerate(sources):
            places.update(self.feed(kind.input_type, further, share, ("input", adapter, number)))
        return places


def _levels(problem: Problem, wiring: Wiring, upstream: _Upstream) -> Objective:
    level: Counter[int] = Counter()
    hot: set[int] = set()
    role_level = {"main": 2, "processor": 3, "drive": 5, "rest": 6}
    for d, device in enumerate(problem.devices):
        without = 0
        by_cable: dict[object, list[int]] = defaultdict(list)
        for p, port in enumerate(device.ports):
            source = wiring.sources[d][p]
            if source is None:
                without += port.required
                continue
            places = upstream.feed(port.type, source, upstream.currents[d, p], "here")
            over = band = start = False
            use = 0
            for load, limits, points in places.values():
                level[8] += points
                for rail in (0, 1, 2):
                    one = limits[rail]  # type: ignore[index]
                    over |= load[rail] > one.stop or load[rail + 3] > one.start_stop
                    band |= load[rail] > one.band
                    start |= load[rail + 3] > one.start_band
                    use = max(use, 0 if one.comfort == NO_LIMIT else _up(1000 * load[rail], one.comfort))
            level[0] += over
            level[8] += 0 if over else problem.points.band * band + problem.points.start * start
            level[12] += max(0, use - COMFORT_FROM)
            if use > COMFORT_FROM:
                hot.add(d)
            for cable in {name[1] for name in places if name[0] == "segment"}:  # type: ignore[index]
                by_cable[cable].append(upstream.currents[d, p][0])
        level[0] += without
        level[1] += without
        if device.role == "card":
            level[4] += without > 0
            level[8] += problem.points.share * sum(
                len(each) >= 2 and sum(each) > problem.points.share_limit for each in by_cable.values()
            )
        else:
            level[role_level[device.role]] += without
    for d in hot:
        pairs = zip(problem.devices[d].ports, wiring.sources[d], strict=True)
        level[13] += sum(source is None and not port.required for port, source in pairs)
    for kind, _, _ in wiring.adapter_inputs:
        level[9 + problem.adapters[kind].rank] += 1
    used = {(kind, copy) for kind, copy, _ in upstream.plug}
    for number, group in enumerate(problem.groups):
        total = 0
        for cable in used:
            names = problem.cables[cable[0]].groups
            if number in names:
                total += _up(upstream.segment(cable, 0)[group.rail] * names.count(number), len(names))
        level[0] += total > group.limit
    level[7] = sum(problem.cables[kind].bought for kind, _ in used)
    level[14] = len(used)
    level[15] = sum(len(problem.cables[kind].halves) for kind, _ in used) - len(upstream.plug)
    return tuple(level[number] for number in range(16))
