"""Says whether a wiring is legal, from the statement of the problem alone; shares no code with search or judge."""

from collections import Counter

from service.wiring.problem import AdapterSource, PlugSource, Problem, Source, Wiring


def check(problem: Problem, wiring: Wiring) -> list[str]:
    """Return what is wrong with a wiring; nothing when it is legal."""
    wrong = _shape(problem, wiring)
    return wrong or [*_ports(problem, wiring), *_plugs(problem, wiring), *_adapters(problem, wiring)]


def _given(problem: Problem, wiring: Wiring) -> list[tuple[int, Source, tuple[int, int] | None]]:
    """Return (port type, source, the adapter whose input it feeds or None) of everything that has a source."""
    found: list[tuple[int, Source, tuple[int, int] | None]] = []
    for device, sources in zip(problem.devices, wiring.sources, strict=True):
        for port, source in zip(device.ports, sources, strict=True):
            if source is not None:
                found.append((port.type, source, None))
    for kind, copy, given in wiring.adapter_inputs:
        found.extend((problem.adapters[kind].input_type, source, (kind, copy)) for source in given)
    return found


def _shape(problem: Problem, wiring: Wiring) -> list[str]:
    wrong = []
    if [len(each) for each in wiring.sources] != [len(device.ports) for device in problem.devices]:
        return ["sources do not match the devices' ports"]
    named = [(kind, copy) for kind, copy, _ in wiring.adapter_inputs]
    if named != sorted(set(named)):
        wrong.append("adapters are not sorted or named twice")
    for of, source, _ in _given(problem, wiring):
        found = problem.port_types[of]
        fits = found.fits if isinstance(source, PlugSource) else found.adapter_fits
        if not 0 <= source.fit < len(fits):
            wrong.append(f"port type {of} has no fit {source}")
    return wrong


def _ports(problem: Problem, wiring: Wiring) -> list[str]:
    pairs = [
        (number, place, port, source)
        for number, (device, sources) in enumerate(zip(problem.devices, wiring.sources, strict=True))
        for place, (port, source) in enumerate(zip(device.ports, sources, strict=True))
    ]
    return [f"port {at, place} must have a source" for at, place, port, source in pairs if port.must and source is None]


def _plugs(problem: Problem, wiring: Wiring) -> list[str]:
    wrong = []
    halves: Counter[tuple[int, int, int]] = Counter()
    for of, source, _ in _given(problem, wiring):
        if isinstance(source, PlugSource):
            fit = problem.port_types[of].fits[source.fit]
            halves[fit.cable, source.copy, fit.plug] += fit.halves
    for (kind, copy, plug), taken in halves.items():
        if taken > problem.cables[kind].halves[plug]:
            wrong.append(f"plug {kind, copy, plug} is used {taken} times")
        if not 0 <= copy < problem.cables[kind].count:
            wrong.append(f"there is no cable {kind, copy}")
    cables = {(kind, copy) for kind, copy, _ in halves}
    for socket, left in enumerate(problem.sockets):
        taken = sum(problem.cables[kind].takes[socket] for kind, _ in cables)
        if taken > left:
            wrong.append(f"{taken} sockets of type {socket} are taken, there are {left}")
    return wrong


def _adapters(problem: Problem, wiring: Wiring) -> list[str]:
    wrong = []
    inputs = {(kind, copy): given for kind, copy, given in wiring.adapter_inputs}
    feeds: Counter[tuple[int, int]] = Counter()
    feeds_inputs: set[tuple[int, int]] = set()
    fed_by_adapter: set[tuple[int, int]] = set()
    for of, source, owner in _given(problem, wiring):
        if isinstance(source, AdapterSource):
            at = (problem.port_types[of].adapter_fits[source.fit].adapter, source.copy)
            feeds[at] += 1
            if owner is not None:
                feeds_inputs.add(at)
                fed_by_adapter.add(owner)
    wrong += [f"adapter {at} has no inputs" for at in feeds if at not in inputs]
    wrong += [f"adapter {at} is fed from an adapter and feeds one" for at in feeds_inputs & fed_by_adapter]
    for (kind, copy), given in inputs.items():
        found = problem.adapters[kind]
        if not 0 <= copy < found.count:
            wrong.append(f"there is no adapter {kind, copy}")
        if len(given) not in found.inputs:
            wrong.append(f"adapter {kind, copy} has {len(given)} inputs")
        if not 1 <= feeds[kind, copy] <= found.outputs:
            wrong.append(f"adapter {kind, copy} feeds {feeds[kind, copy]} ports")
    return wrong
