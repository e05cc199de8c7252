"""Judge any legal wiring: currents at every place and the sixteen levels, straight from the statement of the problem.

This is the one judge of planned and of as-plugged wirings. The search keeps its own sums and is tested against it.
"""

from collections.abc import Iterator
from typing import Literal, NamedTuple

from service.wiring.problem import (
    COMFORT_FROM,
    FREE,
    LEVELS,
    NO_LIMIT,
    NOTHING,
    AdapterKind,
    AdapterSource,
    Limits,
    Load,
    Objective,
    PlugSource,
    PortType,
    Problem,
    RailLimits,
    Role,
    Source,
    Wiring,
)

RAILS = 3
PER_MILLE = 1000
ROLE_LEVEL: dict[Role, int] = {"main": 2, "processor": 3, "drive": 5, "rest": 6}
CARD_LEVEL = 4
BOUGHT_LEVEL, POINTS_LEVEL, ADAPTER_LEVEL = 7, 8, 9
COMFORT_LEVEL, OPTIONAL_LEVEL, CABLES_LEVEL, LOOSE_LEVEL = 12, 13, 14, 15

Adapter = tuple[int, int]
PortAt = tuple[int, int]


class Place(NamedTuple):
    """A place that current passes.

    ``port`` (device, port): the fit at a device port; ``adapter`` (kind, copy); ``input`` (kind, copy, step): the fit
    at an adapter's input; ``segment`` (kind, copy, step): the stretch of a cable before plug ``step``; 0 where unused.
    """

    sort: Literal["port", "adapter", "input", "segment"]
    of: int
    number: int
    step: int = 0


class PlaceLoad(NamedTuple):
    """What passes a place [mA] and what it allows."""

    place: Place
    load: Load
    limits: RailLimits
    points: int = 0


class Connection(NamedTuple):
    """A device port that has a source: its current, every place of its feed (the port first), how they are judged."""

    device: int
    port: int
    load: Load
    places: tuple[PlaceLoad, ...]
    overloaded: bool
    banded: bool
    start_banded: bool
    use: int
    points: int


class Judgement(NamedTuple):
    """Everything that a wiring amounts to.

    ``connections`` in order of (device, port); ``unfed`` ports likewise. ``segments`` {(kind, copy, segment): load} of
    cables in use, ``plugs`` {(kind, copy, plug): load} of plugs in use, ``adapters`` {(kind, copy): load}, ``groups``
    [mA] by group, ``crowded`` the (device, kind, copy) of a card and a cable that feeds too much of it.
    """

    objective: Objective
    connections: tuple[Connection, ...]
    unfed: tuple[PortAt, ...]
    segments: dict[tuple[int, int, int], Load]
    plugs: dict[tuple[int, int, int], Load]
    adapters: dict[Adapter, Load]
    groups: tuple[int, ...]
    crowded: tuple[tuple[int, int, int], ...]


class Currents(NamedTuple):
    """The currents of a wiring [mA], before anything is judged."""

    ports: dict[PortAt, Load]
    adapters: dict[Adapter, Load]
    plugs: dict[tuple[int, int, int], Load]
    segments: dict[tuple[int, int, int], Load]
    groups: tuple[int, ...]


class Verdict(NamedTuple):
    """One place, or all places of a feed together, judged."""

    overloaded: bool
    banded: bool
    start_banded: bool
    use: int


NOTHING_SAID = Verdict(False, False, False, 0)


class Reach(NamedTuple):
    """The stretches of a cable up to one of its plugs, and how they are judged together."""

    places: tuple[PlaceLoad, ...]
    verdict: Verdict


def judge(problem: Problem, wiring: Wiring) -> Judgement:
    """Return every current of a legal wiring and how it is judged."""
    currents = loads(problem, wiring)
    inputs = inputs_of(wiring)
    reaches = _reaches(problem, currents.segments)
    connections = tuple([_connection(problem, wiring, inputs, currents, reaches, at) for at in currents.ports])
    unfed = tuple(_unfed(problem, wiring))
    crowded = tuple(_crowded(problem, connections))
    objective = _objective(problem, wiring, currents, connections, unfed, crowded)
    return Judgement(
        objective, connections, unfed, currents.segments, currents.plugs, currents.adapters, currents.groups, crowded
    )


def evaluate(problem: Problem, wiring: Wiring) -> Objective:
    """Return the objective of a legal wiring."""
    return judge(problem, wiring).objective


def loads(problem: Problem, wiring: Wiring) -> Currents:
    """Return every current of a legal wiring [mA]."""
    inputs = inputs_of(wiring)
    ports = dict(_port_loads(problem, wiring))
    adapters = _adapter_loads(problem, wiring, inputs, ports)
    plugs: dict[tuple[int, int, int], Load] = {}
    for (device, port), load in ports.items():
        _draw(plugs, _type_of(problem, device, port), wiring.sources[device][port], load)
    for (kind, copy), load in adapters.items():
        sources = inputs[kind, copy]
        share = divided(load, 1, len(sources))
        for source in sources:
            _draw(plugs, problem.port_types[problem.adapters[kind].input_type], source, share)
    segments = _segment_loads(problem, plugs)
    return Currents(ports, adapters, plugs, segments, group_loads(problem, segments))


def inputs_of(wiring: Wiring) -> dict[Adapter, tuple[Source, ...]]:
    """Return the sources of the inputs of each adapter in use."""
    return {(kind, copy): sources for kind, copy, sources in wiring.adapter_inputs}


def divided(load: Load, share: int, of: int) -> Load:
    """Return ``ceil(load * share / of)`` on each entry."""
    a, b, c, d, e, f = load
    return (
        -(-a * share // of),
        -(-b * share // of),
        -(-c * share // of),
        -(-d * share // of),
        -(-e * share // of),
        -(-f * share // of),
    )


def added(one: Load, other: Load) -> Load:
    """Return the sum, entry by entry."""
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a + g, b + h, c + i, d + j, e + k, f + m)


def judged(load: Load, limits: RailLimits) -> Verdict:
    """Judge what passes one place."""
    overloaded = banded = start_banded = False
    use = 0
    for rail, allowed in enumerate(limits):
        if allowed is FREE:
            continue
        stop, band, comfort, start_stop, start_band = allowed
        running, starting = load[rail], load[rail + RAILS]
        if running > stop or starting > start_stop:
            overloaded = True
        if running > band:
            banded = True
        if starting > start_band:
            start_banded = True
        if comfort < NO_LIMIT:
            use = max(use, -(-PER_MILLE * running // comfort))
    return Verdict(overloaded, banded, start_banded, use)


def tighter(one: RailLimits, other: RailLimits) -> RailLimits:
    """Return the limits of two places that the same current passes: judged by them, it is judged at both."""
    if one is other:
        return one
    a, b, c = (
        first if second is FREE else second if first is FREE else Limits(*map(min, first, second))
        for first, second in zip(one, other, strict=True)
    )
    return a, b, c


def adapter_limits(kind: AdapterKind, inputs: int) -> RailLimits:
    """Return what an adapter allows with so many inputs in use."""
    return kind.limits_by_inputs[kind.inputs.index(inputs)]


def _type_of(problem: Problem, device: int, port: int) -> PortType:
    return problem.port_types[problem.devices[device].ports[port].type]


def _port_loads(problem: Problem, wiring: Wiring) -> Iterator[tuple[PortAt, Load]]:
    for number, (device, sources) in enumerate(zip(problem.devices, wiring.sources, strict=True)):
        if len(sources) == 1:
            if sources[0] is not None:
                yield (number, 0), device.load
            continue
        each = list(zip(device.ports, sources, strict=True))
        whole = sum([port.weight for port, source in each if port.required or source is not None])
        for place, (port, source) in enumerate(each):
            if source is not None:
                yield (number, place), divided(device.load, port.weight, whole)


def _adapter_loads(
    problem: Problem, wiring: Wiring, inputs: dict[Adapter, tuple[Source, ...]], ports: dict[PortAt, Load]
) -> dict[Adapter, Load]:
    """Adapters that feed adapters come last, so that what they carry is known when it is added."""
    carried = dict.fromkeys(inputs, NOTHING)
    for (device, port), load in ports.items():
        source = wiring.sources[device][port]
        if isinstance(source, AdapterSource):
            at = (_type_of(problem, device, port).adapter_fits[source.fit].adapter, source.copy)
            carried[at] = added(carried[at], load)
    feeding = {at: _adapters_behind(problem, at[0], sources) for at, sources in inputs.items()}
    for at, behind in feeding.items():
        share = divided(carried[at], 1, len(inputs[at]))
        for other in behind:
            carried[other] = added(carried[other], share)
    return carried


def _adapters_behind(problem: Problem, kind: int, sources: tuple[Source, ...]) -> list[Adapter]:
    fits = problem.port_types[problem.adapters[kind].input_type].adapter_fits
    return [(fits[source.fit].adapter, source.copy) for source in sources if isinstance(source, AdapterSource)]


def _draw(plugs: dict[tuple[int, int, int], Load], of: PortType, source: Source | None, load: Load) -> None:
    if isinstance(source, PlugSource):
        fit = of.fits[source.fit]
        at = (fit.cable, source.copy, fit.plug)
        plugs[at] = added(plugs.get(at, NOTHING), load)


def _segment_loads(problem: Problem, plugs: dict[tuple[int, int, int], Load]) -> dict[tuple[int, int, int], Load]:
    found: dict[tuple[int, int, int], Load] = {}
    for kind, copy in sorted({(kind, copy) for kind, copy, _ in plugs}):
        beyond = NOTHING
        for plug in reversed(range(len(problem.cables[kind].halves))):
            beyond = added(beyond, plugs.get((kind, copy, plug), NOTHING))
            found[kind, copy, plug] = beyond
    return found


def group_loads(
    problem: Problem, segments: dict[tuple[int, int, int], Load], *, starting: bool = False
) -> tuple[int, ...]:
    """Return what the cables in use put on each group [mA], sustained or at start-up."""
    later = RAILS if starting else 0
    carried = [0] * len(problem.groups)
    for (kind, _, segment), load in segments.items():
        named = problem.cables[kind].groups
        if segment == 0:
            for group in set(named):
                carried[group] += -(-load[problem.groups[group].rail + later] * named.count(group) // len(named))
    return tuple(carried)


def _reaches(problem: Problem, segments: dict[tuple[int, int, int], Load]) -> dict[tuple[int, int], list[Reach]]:
    """Return, for each cable in use, what lies before each of its plugs."""
    found: dict[tuple[int, int], list[Reach]] = {}
    for kind, copy in {(kind, copy): None for kind, copy, _ in segments}:
        places: tuple[PlaceLoad, ...] = ()
        verdict = NOTHING_SAID
        along = found[kind, copy] = []
        for segment, limits in enumerate(problem.cables[kind].segments):
            load = segments[kind, copy, segment]
            places = (*places, PlaceLoad(Place("segment", kind, copy, segment), load, limits))
            verdict = _both(verdict, judged(load, limits))
            along.append(Reach(places, verdict))
    return found


def _both(one: Verdict, other: Verdict) -> Verdict:
    return Verdict(
        one.overloaded or other.overloaded,
        one.banded or other.banded,
        one.start_banded or other.start_banded,
        max(one.use, other.use),
    )


def _connection(
    problem: Problem,
    wiring: Wiring,
    inputs: dict[Adapter, tuple[Source, ...]],
    currents: Currents,
    reaches: dict[tuple[int, int], list[Reach]],
    at: PortAt,
) -> Connection:
    device, port = at
    source = wiring.sources[device][port]
    assert source is not None, "only ports that have a source carry current"
    load = currents.ports[at]
    place, of = Place("port", device, port), _type_of(problem, device, port)
    if isinstance(source, PlugSource):
        fit = of.fits[source.fit]
        before = reaches[fit.cable, source.copy][fit.plug]
        verdict = _both(before.verdict, judged(load, fit.limits))
        places = (PlaceLoad(place, load, fit.limits, fit.points), *before.places)
        return Connection(device, port, load, places, *verdict, fit.points)
    feed: dict[Place, PlaceLoad] = {}
    _walk(problem, inputs, currents, feed, place, of, source, load)
    verdict = NOTHING_SAID
    for passed in feed.values():
        verdict = _both(verdict, judged(passed.load, passed.limits))
    points = sum([passed.points for passed in feed.values()])
    return Connection(device, port, load, tuple(feed.values()), *verdict, points)


def _walk(
    problem: Problem,
    inputs: dict[Adapter, tuple[Source, ...]],
    currents: Currents,
    feed: dict[Place, PlaceLoad],
    place: Place,
    of: PortType,
    source: Source,
    load: Load,
) -> None:
    """Add to the feed the fit at this place and all that lies behind it."""
    if isinstance(source, PlugSource):
        fit = of.fits[source.fit]
        feed[place] = PlaceLoad(place, load, fit.limits, fit.points)
        for segment in range(fit.plug + 1):
            stretch = Place("segment", fit.cable, source.copy, segment)
            carried = currents.segments[fit.cable, source.copy, segment]
            feed[stretch] = PlaceLoad(stretch, carried, problem.cables[fit.cable].segments[segment])
        return
    taken = of.adapter_fits[source.fit]
    feed[place] = PlaceLoad(place, load, taken.limits, taken.points)
    kind, behind = problem.adapters[taken.adapter], inputs[taken.adapter, source.copy]
    adapter, carried = Place("adapter", taken.adapter, source.copy), currents.adapters[taken.adapter, source.copy]
    feed[adapter] = PlaceLoad(adapter, carried, adapter_limits(kind, len(behind)), kind.points)
    share = divided(carried, 1, len(behind))
    for step, further in enumerate(behind):
        entry = Place("input", taken.adapter, source.copy, step)
        _walk(problem, inputs, currents, feed, entry, problem.port_types[kind.input_type], further, share)


def _unfed(problem: Problem, wiring: Wiring) -> Iterator[PortAt]:
    for number, (device, sources) in enumerate(zip(problem.devices, wiring.sources, strict=True)):
        for place, (port, source) in enumerate(zip(device.ports, sources, strict=True)):
            if port.required and source is None:
                yield number, place


def _crowded(problem: Problem, connections: tuple[Connection, ...]) -> Iterator[tuple[int, int, int]]:
    """Yield each card and cable that feeds two or more of its ports with more than the sharing limit."""
    through: dict[tuple[int, int, int], list[int]] = {}
    for connection in connections:
        if problem.devices[connection.device].role == "card":
            cables = {(at.of, at.number) for at, *_ in connection.places if at.sort == "segment"}
            for kind, copy in cables:
                through.setdefault((connection.device, kind, copy), []).append(connection.load[0])
    for pair, currents in sorted(through.items()):
        if len(currents) > 1 and sum(currents) > problem.points.share_limit:
            yield pair


def _objective(
    problem: Problem,
    wiring: Wiring,
    currents: Currents,
    connections: tuple[Connection, ...],
    unfed: tuple[PortAt, ...],
    crowded: tuple[tuple[int, int, int], ...],
) -> Objective:
    levels = [0] * LEVELS
    over = sum(carried > group.limit for carried, group in zip(currents.groups, problem.groups, strict=True))
    levels[0] = len(unfed) + sum(connection.overloaded for connection in connections) + over
    levels[1] = len(unfed)
    _add_unfed(problem, unfed, levels)
    levels[POINTS_LEVEL] = problem.points.share * len(crowded) + sum(_points(problem, each) for each in connections)
    for kind, _, _ in wiring.adapter_inputs:
        levels[ADAPTER_LEVEL + problem.adapters[kind].rank] += 1
    levels[COMFORT_LEVEL] = sum(max(0, connection.use - COMFORT_FROM) for connection in connections)
    levels[OPTIONAL_LEVEL] = _left_out(problem, wiring, connections)
    used = {(kind, copy) for kind, copy, _ in currents.segments}
    levels[BOUGHT_LEVEL] = sum(problem.cables[kind].bought for kind, _ in used)
    levels[CABLES_LEVEL] = len(used)
    levels[LOOSE_LEVEL] = sum(len(problem.cables[kind].halves) for kind, _ in used) - len(currents.plugs)
    return tuple(levels)


def _add_unfed(problem: Problem, unfed: tuple[PortAt, ...], levels: list[int]) -> None:
    for device, _ in unfed:
        role = problem.devices[device].role
        if role != "card":
            levels[ROLE_LEVEL[role]] += 1
    levels[CARD_LEVEL] = len({device for device, _ in unfed if problem.devices[device].role == "card"})


def _points(problem: Problem, connection: Connection) -> int:
    found = connection.points
    if not connection.overloaded:
        found += problem.points.band * connection.banded + problem.points.start * connection.start_banded
    return found


def _left_out(problem: Problem, wiring: Wiring, connections: tuple[Connection, ...]) -> int:
    """Count optional ports without a source beside a connection above comfort."""
    warm = {connection.device for connection in connections if connection.use > COMFORT_FROM}
    return sum(
        not port.required and source is None
        for device in warm
        for port, source in zip(problem.devices[device].ports, wiring.sources[device], strict=True)
    )
