"""One order for the parts of a wiring problem that does not depend on the order in which they were named.

Parts are told apart by what they are and by what they are joined to, round after round, until nothing new shows. Where
parts still look alike, one of them is put first and the rounds go on; of the orders that this gives the one is taken
that makes the least problem. Only so many orders are looked at, which is enough where parts that look alike are alike.
"""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from typing import Any, NamedTuple, TypeVar

from service.wiring.memo import bytes_of
from service.wiring.problem import AdapterFit, CableKind, Device, Fit, PortType, Problem

ORDERS_LOOKED_AT = 8
TYPES, KINDS, ADAPTERS, SOCKETS, GROUPS = range(5)
Colours = tuple[tuple[int, ...], ...]
Signature = tuple[Any, ...]
T = TypeVar("T")


class Ordered(NamedTuple):
    """A problem in its canonical order, and for each new index the old one; ``ports`` by device, fits by port type.

    ``bytes`` is about what the problem takes.
    """

    problem: Problem
    devices: tuple[int, ...]
    ports: tuple[tuple[int, ...], ...]
    cables: tuple[int, ...]
    adapters: tuple[int, ...]
    fits: tuple[tuple[int, ...], ...]
    adapter_fits: tuple[tuple[int, ...], ...]
    types: tuple[int, ...]
    bytes: int


def ordered(problem: Problem) -> Ordered:
    """Return a problem in its canonical order."""
    facts = _Facts(problem)
    leaves = (
        _rebuilt(problem, colours) for colours in _discrete(facts, facts.refined(facts.plain()), [ORDERS_LOOKED_AT])
    )
    return min(leaves, key=lambda found: found.problem)


def _discrete(facts: "_Facts", colours: Colours, left: list[int]) -> Iterator[Colours]:
    """Yield colours in which no two parts are alike, each reached by putting alike parts in some order."""
    tied = _first_tie(colours)
    if tied is None:
        left[0] -= 1
        yield colours
        return
    sort, members = tied
    for number, member in enumerate(members):
        if number and left[0] <= 0:
            return
        marked = [tuple(2 * colour for colour in each) for each in colours]
        marked[sort] = tuple(c - 1 if place == member else c for place, c in enumerate(marked[sort]))
        yield from _discrete(facts, facts.refined(tuple(marked)), left)


def _first_tie(colours: Colours) -> tuple[int, list[int]] | None:
    for sort, each in enumerate(colours):
        times = Counter(each)
        if len(times) < len(each):
            least = min(colour for colour, number in times.items() if number > 1)
            return sort, [place for place, colour in enumerate(each) if colour == least]
    return None


class _Facts:
    """What there is to tell the parts of one problem apart by."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        limits = {fit.limits for found in problem.port_types for fit in found.fits}
        limits.update(fit.limits for found in problem.port_types for fit in found.adapter_fits)
        self.limits = {each: number for number, each in enumerate(sorted(limits))}
        self.fitting: list[list[tuple[int, int, int, int, int]]] = [[] for _ in problem.cables]
        self.giving: list[list[tuple[int, int, int]]] = [[] for _ in problem.adapters]
        self.worn: list[list[tuple[object, ...]]] = [[] for _ in problem.port_types]
        for of, found in enumerate(problem.port_types):
            for fit in found.fits:
                self.fitting[fit.cable].append((of, fit.plug, fit.halves, self.limits[fit.limits], fit.points))
            for taken in found.adapter_fits:
                self.giving[taken.adapter].append((of, self.limits[taken.limits], taken.points))
        for device in problem.devices:
            for port in device.ports:
                self.worn[port.type].append((device.role, device.load, len(device.ports), *port[1:]))

    def plain(self) -> Colours:
        """Return colours by what the parts are, joined to nothing."""
        found = self.problem
        return (
            _ranked([tuple(sorted(each, key=repr)) for each in self.worn]),
            _ranked([(k.count, k.halves, k.segments, k.bought, len(k.groups), sorted(k.takes)) for k in found.cables]),
            _ranked([(*kind[:3], *kind[4:]) for kind in found.adapters]),
            _ranked([(left,) for left in found.sockets]),
            _ranked([tuple(group) for group in found.groups]),
        )

    def refined(self, colours: Colours) -> Colours:
        """Return colours that tell apart what is joined to different things."""
        while True:
            further = self._once(colours)
            if sum(len(set(each)) for each in further) == sum(len(set(each)) for each in colours):
                return further
            colours = further

    def _once(self, colours: Colours) -> Colours:
        steps: tuple[Callable[[int, Colours], Signature], ...] = (
            self._type,
            self._kind,
            self._adapter,
            self._socket,
            self._group,
        )
        return tuple(
            _ranked([(colour, *step(place, colours)) for place, colour in enumerate(each)])
            for step, each in zip(steps, colours, strict=True)
        )

    def _type(self, place: int, colours: Colours) -> Signature:
        found = self.problem.port_types[place]
        neighbours = [
            (len(device.ports), device.load, sorted(colours[TYPES][port.type] for port in device.ports))
            for device in self.problem.devices
            if any(port.type == place for port in device.ports)
        ]
        return (
            sorted((colours[KINDS][fit.cable], fit.plug, fit.halves, self.limits[fit.limits]) for fit in found.fits),
            sorted((colours[ADAPTERS][fit.adapter], self.limits[fit.limits]) for fit in found.adapter_fits),
            sorted(colours[ADAPTERS][n] for n, kind in enumerate(self.problem.adapters) if kind.input_type == place),
            sorted(neighbours),
        )

    def _kind(self, place: int, colours: Colours) -> Signature:
        kind = self.problem.cables[place]
        return (
            sorted((colours[TYPES][of], *rest) for of, *rest in self.fitting[place]),
            sorted((colours[SOCKETS][socket], taken) for socket, taken in enumerate(kind.takes) if taken),
            sorted(colours[GROUPS][group] for group in kind.groups),
        )

    def _adapter(self, place: int, colours: Colours) -> Signature:
        kind = self.problem.adapters[place]
        return colours[TYPES][kind.input_type], sorted((colours[TYPES][of], *rest) for of, *rest in self.giving[place])

    def _socket(self, place: int, colours: Colours) -> Signature:
        takers = enumerate(self.problem.cables)
        return (sorted((colours[KINDS][kind], cable.takes[place]) for kind, cable in takers if cable.takes[place]),)

    def _group(self, place: int, colours: Colours) -> Signature:
        takers = enumerate(self.problem.cables)
        return (
            sorted(
                (colours[KINDS][kind], cable.groups.count(place)) for kind, cable in takers if place in cable.groups
            ),
        )


def _ranked(signatures: Sequence[Signature]) -> tuple[int, ...]:
    order: list[Signature] = []
    for signature in sorted(signatures):
        if not order or order[-1] != signature:
            order.append(signature)
    return tuple(order.index(signature) for signature in signatures)


def _by(colours: Sequence[int]) -> tuple[int, ...]:
    return tuple(sorted(range(len(colours)), key=lambda place: colours[place]))


def _rebuilt(problem: Problem, colours: Colours) -> Ordered:
    """Return the problem with its parts in the order of their colours, which are now their new numbers."""
    types, kinds, adapters, sockets, groups = colours
    fits = [_order_of(problem.port_types[of].fits, lambda fit: _fit(fit, kinds)) for of in _by(types)]
    outputs = [_order_of(problem.port_types[of].adapter_fits, lambda fit: _output(fit, adapters)) for of in _by(types)]
    ports = [_order_of(device.ports, lambda port: port._replace(type=types[port.type])) for device in problem.devices]
    devices = [
        Device(
            device.role,
            tuple(port._replace(type=types[port.type]) for port in _picked(device.ports, order)),
            device.load,
        )
        for device, order in zip(problem.devices, ports, strict=True)
    ]
    order = tuple(sorted(range(len(devices)), key=lambda place: devices[place]))
    new_types = tuple(
        PortType(
            tuple(_fit(fit, kinds) for fit in _picked(problem.port_types[of].fits, plugs)),
            tuple(_output(fit, adapters) for fit in _picked(problem.port_types[of].adapter_fits, given)),
        )
        for of, plugs, given in zip(_by(types), fits, outputs, strict=True)
    )
    new = Problem(
        tuple(devices[place] for place in order),
        new_types,
        tuple(_kind(problem.cables[kind], sockets, groups) for kind in _by(kinds)),
        tuple(problem.sockets[socket] for socket in _by(sockets)),
        tuple(
            problem.adapters[kind]._replace(input_type=types[problem.adapters[kind].input_type])
            for kind in _by(adapters)
        ),
        tuple(problem.groups[group] for group in _by(groups)),
        problem.points,
    )
    return Ordered(
        new,
        order,
        tuple(ports[place] for place in order),
        _by(kinds),
        _by(adapters),
        tuple(fits),
        tuple(outputs),
        _by(types),
        bytes_of(new),
    )


def _order_of(parts: tuple[T, ...], key: Callable[[T], tuple[Any, ...]]) -> tuple[int, ...]:
    return tuple(sorted(range(len(parts)), key=lambda place: key(parts[place])))


def _picked(parts: tuple[T, ...], order: tuple[int, ...]) -> list[T]:
    return [parts[place] for place in order]


def _fit(fit: Fit, kinds: tuple[int, ...]) -> Fit:
    cable, plug, halves, limits, points = fit
    return Fit(kinds[cable], plug, halves, limits, points)


def _output(fit: AdapterFit, adapters: tuple[int, ...]) -> AdapterFit:
    adapter, limits, points = fit
    return AdapterFit(adapters[adapter], limits, points)


def _kind(kind: CableKind, sockets: tuple[int, ...], groups: tuple[int, ...]) -> CableKind:
    takes = tuple(kind.takes[socket] for socket in _by(sockets)) if kind.takes else ()
    return kind._replace(takes=takes, groups=tuple(sorted(groups[group] for group in kind.groups)))
