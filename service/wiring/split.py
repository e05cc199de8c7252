"""A problem taken apart into the least problems that do not touch each other.

Port types belong together when a cable kind or an adapter that is there can serve both; cable kinds when the sockets
that they take can run out, or when a group that both name can pass its limit. A device that has only required ports and
is no card is as many devices of one port, for nothing in the objective asks which device such a port is of.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from operator import mul
from typing import NamedTuple

from service.wiring.objective import PER_MILLE, RAILS, divided
from service.wiring.problem import (
    COMFORT_FROM,
    NO_LIMIT,
    AdapterFit,
    CableKind,
    Device,
    Fit,
    GroupLimit,
    Load,
    Port,
    PortType,
    Problem,
    RailLimits,
)

REMEMBERED = 4096
"""JUDGEMENT: more limits than one edition's parts have."""
IDLE = GroupLimit(0, NO_LIMIT)
"""Stands for the groups of a cable that cannot pass their limit, so that shares stay what they were."""


class Item(NamedTuple):
    """A device, or one port of it that stands alone: the old device and port numbers, and what it is now."""

    device: int
    ports: tuple[int, ...]
    now: Device


class Part(NamedTuple):
    """A problem of its own, and for its devices, ports, kinds, adapters and fits the old numbers."""

    problem: Problem
    items: tuple[Item, ...]
    cables: tuple[int, ...]
    adapters: tuple[int, ...]
    fits: tuple[tuple[int, ...], ...]
    adapter_fits: tuple[tuple[int, ...], ...]


def split(problem: Problem) -> list[Part]:
    """Return the parts of a problem; together they hold all of its ports."""
    return _Splitting(problem).parts()


def _items(problem: Problem) -> list[Item]:
    found = []
    for number, device in enumerate(problem.devices):
        ports = device.ports
        if device.role != "card" and all(port.required for port in ports):
            whole = sum([port.weight for port in ports])
            for place, port in enumerate(ports):
                load: Load = device.load if len(ports) == 1 else divided(device.load, port.weight, whole)
                alone = port if port.weight == 1 else Port(port.type, True, 1, port.must)
                found.append(Item(number, (place,), Device(device.role, (alone,), load)))
        elif ports:
            found.append(Item(number, tuple(range(len(ports))), device))
    return found


class _Splitting:
    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.items = _items(problem)
        self.live = [self._can_be_used(kind) for kind in problem.cables]
        kinds = problem.adapters
        self.outputs = [
            [fit for fit in found.adapter_fits if kinds[fit.adapter].count > 0] for found in problem.port_types
        ]
        self.types = self._types()
        self.adapters = sorted({fit.adapter for of in self.types for fit in self.outputs[of]})
        self.wanted = self._wanted()
        self.fits = {
            of: [n for n, fit in enumerate(problem.port_types[of].fits) if self._is_live(fit)] for of in self.types
        }
        self.leader = {of: of for of in self.types}
        self.served = self._served()
        self.kinds = self._kinds()
        self._join_by_source()
        self.tight = [self._join_by_sockets(socket) for socket in range(len(problem.sockets))]
        self.loaded = [self._join_by_group(group) for group in range(len(problem.groups))]

    def _can_be_used(self, kind: CableKind) -> bool:
        room = all(taken <= left for taken, left in zip(kind.takes, self.problem.sockets, strict=True))
        return kind.count > 0 and room

    def _is_live(self, fit: Fit) -> bool:
        return self.live[fit.cable] and fit.halves <= self.problem.cables[fit.cable].halves[fit.plug]

    def _types(self) -> list[int]:
        """Return the port types that some port or some adapter's input in reach is of."""
        found = {port.type for item in self.items for port in item.now.ports}
        waiting = list(found)
        while waiting:
            for fit in self.outputs[waiting.pop()]:
                of = self.problem.adapters[fit.adapter].input_type
                if of not in found:
                    found.add(of)
                    waiting.append(of)
        return sorted(found)

    def _wanted(self) -> Counter[int]:
        """Return how many needs of each type there can be."""
        wanted = Counter([port.type for item in self.items for port in item.now.ports])
        for adapter in self.adapters:
            kind = self.problem.adapters[adapter]
            wanted[kind.input_type] += kind.count * max(kind.inputs)
        return wanted

    def _served(self) -> dict[int, list[int]]:
        """Return {cable kind: the port types that it serves}, each with at least one."""
        found: dict[int, list[int]] = {}
        for of in self.types:
            for kind in {self.problem.port_types[of].fits[number].cable for number in self.fits[of]}:
                found.setdefault(kind, []).append(of)
        return {kind: found[kind] for kind in sorted(found)}

    def _kinds(self) -> dict[int, int]:
        """Return {cable kind: how many of it can be in use at once}, each with at least one plug in use."""
        wanted = {kind: sum([self.wanted[of] for of in types]) for kind, types in self.served.items()}
        return {kind: min(number, self.problem.cables[kind].count) for kind, number in wanted.items()}

    def _find(self, of: int) -> int:
        while self.leader[of] != of:
            of = self.leader[of]
        return of

    def _join(self, types: Iterable[int]) -> None:
        leaders = sorted({self._find(of) for of in types})
        for other in leaders[1:]:
            self.leader[other] = leaders[0]

    def _join_by_source(self) -> None:
        for item in self.items:
            if len(item.ports) > 1:
                self._join({port.type for port in item.now.ports})
        for types in self.served.values():
            if len(types) > 1:
                self._join(types)
        for adapter in self.adapters:
            given = [of for of in self.types if any(fit.adapter == adapter for fit in self.outputs[of])]
            self._join([self.problem.adapters[adapter].input_type, *given])

    def _part_of(self, kind: int) -> int:
        return self._find(self.served[kind][0])

    def _join_by_sockets(self, socket: int) -> bool:
        """Join the kinds that take sockets of a type if these can run out; return whether they can."""
        taken: dict[int, list[tuple[int, int]]] = {}
        for kind, number in self.kinds.items():
            if takes := self.problem.cables[kind].takes[socket]:
                taken.setdefault(self._part_of(kind), []).append((takes, number))
        at_most = 0
        for part, each in taken.items():
            needs = sum([number for of, number in self.wanted.items() if self._find(of) == part])
            at_most += min(needs * max(each)[0], sum([takes * number for takes, number in each]))
        if at_most <= self.problem.sockets[socket]:
            return False
        self._join(taken)
        return True

    def _join_by_group(self, group: int) -> bool:
        """Join the kinds that name a group if it can pass its limit; return whether it can."""
        parts = {self._part_of(kind) for kind in self.kinds if group in self.problem.cables[kind].groups}
        rail, limit = self.problem.groups[group]
        at_most = sum(number for kind, number in self.kinds.items() if group in self.problem.cables[kind].groups)
        for item in self.items:
            if self._find(item.now.ports[0].type) in parts:
                at_most += item.now.load[rail] + len(item.ports)
        for adapter in self.adapters:
            kind = self.problem.adapters[adapter]
            at_most += 2 * kind.count * max(kind.inputs)
        if at_most <= limit:
            return False
        self._join(parts)
        return True

    def parts(self) -> list[Part]:
        """Return the parts."""
        whose = {of: self._find(of) for of in self.types}
        return [self._part(leader, whose) for leader in sorted({whose[item.now.ports[0].type] for item in self.items})]

    def _part(self, leader: int, whose: dict[int, int]) -> Part:
        problem = self.problem
        types = {of: now for now, of in enumerate(of for of in self.types if whose[of] == leader)}
        served = (kind for kind in self.kinds if whose[self.served[kind][0]] == leader)
        kinds = {kind: now for now, kind in enumerate(served)}
        inputs = problem.adapters
        mine = (each for each in self.adapters if whose[inputs[each].input_type] == leader)
        adapters = {each: now for now, each in enumerate(mine)}
        together = (item for item in self.items if whose[item.now.ports[0].type] == leader)
        items = tuple(sorted(together, key=lambda item: item.now.load))  # so that those taken as equal keep an order
        outputs = [
            tuple(n for n, fit in enumerate(problem.port_types[of].adapter_fits) if fit.adapter in adapters)
            for of in types
        ]
        sockets = [s for s, tight in enumerate(self.tight) if tight and any(problem.cables[k].takes[s] for k in kinds)]
        loaded = (g for g, full in enumerate(self.loaded) if full and any(g in problem.cables[k].groups for k in kinds))
        groups = {group: now for now, group in enumerate(loaded)}
        cables = tuple(self._cable(kind, sockets, groups) for kind in kinds)
        idle = any(len(groups) in cable.groups for cable in cables)
        now = Problem(
            tuple(_device(item.now, types) for item in items),
            tuple(self._type(of, given, kinds, adapters) for of, given in zip(types, outputs, strict=True)),
            cables,
            tuple(problem.sockets[socket] for socket in sockets),
            tuple(inputs[each]._replace(input_type=types[inputs[each].input_type]) for each in adapters),
            (*(problem.groups[group] for group in groups), *([IDLE] if idle else [])),
            problem.points,
        )
        fits = tuple(tuple(self.fits[of]) for of in types)
        return Part(_without_idle_loads(now), items, tuple(kinds), tuple(adapters), fits, tuple(outputs))

    def _type(self, of: int, outputs: tuple[int, ...], kinds: dict[int, int], adapters: dict[int, int]) -> PortType:
        found = self.problem.port_types[of]
        fits = [found.fits[number] for number in self.fits[of]]
        given = [found.adapter_fits[number] for number in outputs]
        return PortType(
            tuple([Fit(kinds[cable], plug, halves, limits, points) for cable, plug, halves, limits, points in fits]),
            tuple([AdapterFit(adapters[adapter], limits, points) for adapter, limits, points in given]),
        )

    def _cable(self, number: int, sockets: list[int], groups: dict[int, int]) -> CableKind:
        _, takes, halves, segments, named, bought = self.problem.cables[number]
        joined = any(group in groups for group in named)
        return CableKind(
            self.kinds[number],
            tuple([takes[socket] for socket in sockets]),
            halves,
            segments,
            tuple([groups.get(group, len(groups)) for group in named]) if joined else (),
            bought,
        )


def _without_idle_loads(problem: Problem) -> Problem:
    """Return a part without the currents that cannot matter in it, so that it is solved once whatever they are.

    A current does not matter where all of it together leaves every stretch and adapter as good as new, and the most of
    it that one port takes every plug.
    """
    loads = [device.load for device in problem.devices]
    ports = sum([len(device.ports) for device in problem.devices])
    total = [sum(each) + ports for each in zip(*loads, strict=True)]
    most = total if problem.adapters else list(map(max, *loads, loads[0]))
    stretches = _least([limits for cable in problem.cables for limits in cable.segments], problem)
    plugs = _least([fit.limits for found in problem.port_types for fit in found.fits], problem)
    each = zip(total, stretches, most, plugs, strict=True)
    kept = [together > free or one > free_of_one for together, free, one, free_of_one in each]
    for group in problem.groups:
        kept[group.rail] |= group.limit < NO_LIMIT
    if any(device.role == "card" and len(device.ports) > 1 for device in problem.devices):
        kept[0] = True  # whether its ports may share a cable is told by their current on 12 V
    if all(kept):
        return problem
    return problem._replace(devices=tuple([_kept(device, kept) for device in problem.devices]))


def _least(places: Sequence[RailLimits], problem: Problem) -> list[int]:
    """Return the most of each current that leaves all these places, and all adapters, as good as new."""
    found = [_free(limits) for limits in {id(limits): limits for limits in places}.values()]
    for given in problem.port_types if problem.adapters else ():
        found += [_free(fit.limits) for fit in given.adapter_fits]
    for adapter in problem.adapters:
        found += [_free(limits) for limits in adapter.limits_by_inputs]
    return list(map(min, *found, found[0])) if found else [NO_LIMIT] * (2 * RAILS)


@lru_cache(maxsize=REMEMBERED)
def _free(limits: RailLimits) -> Load:
    """Return the most of each current that leaves a place as good as new: no stop, no band, no use above comfort."""
    a, b, c = (min(of.stop, of.band, of.comfort * COMFORT_FROM // PER_MILLE) for of in limits)
    d, e, f = (min(of.start_stop, of.start_band) for of in limits)
    return (a, b, c, d, e, f)


def _kept(device: Device, kept: list[bool]) -> Device:
    a, b, c, d, e, f = map(mul, device.load, kept)
    return Device(device.role, device.ports, (a, b, c, d, e, f))


def _device(device: Device, types: dict[int, int]) -> Device:
    role, ports, load = device
    now = tuple([Port(types[port.type], port.required, port.weight, port.must) for port in ports])
    return Device(role, now, load)
