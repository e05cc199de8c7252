"""The way in: a problem is taken apart, each part put in canonical order, solved once and remembered, and all put back.

The objective adds up over the parts. The memo is keyed by a part in canonical order, which holds only what the search
reads, so the same drives on the same cables are solved once, whosever build they are in.
"""

from collections.abc import Sequence

from service.wiring.canonical import Ordered, ordered
from service.wiring.memo import Memo, bytes_of_wiring
from service.wiring.problem import LEVELS, AdapterSource, Device, PlugSource, Problem, Solution, Source, Wiring
from service.wiring.search import NODE_BUDGET
from service.wiring.search import least_stops as bound
from service.wiring.search import solve as search
from service.wiring.split import Part, split

MEMO_BYTES = 24 << 20
"""JUDGEMENT: some thousand parts with their plans, small beside a worker."""

ORDERS_BYTES = 8 << 20
"""JUDGEMENT: orders are found again faster than plans, so they get a third of the room."""

BOUNDS_BYTES = 4 << 20
"""JUDGEMENT: bounds are asked for only of builds with a stop."""

SMALL_BUDGET = 2_000
"""What is left for each further part once the parts before it have used up the budget of nodes."""

_memo: Memo[tuple[Problem, int], Solution] = Memo(MEMO_BYTES)
_orders: Memo[Problem, Ordered] = Memo(ORDERS_BYTES)
_least_stops: Memo[Problem, int] = Memo(BOUNDS_BYTES)


def solve(problem: Problem, budget: int = NODE_BUDGET) -> Solution:
    """Return the best wiring of a problem; raise NoWiring where ports that must have a source cannot all have one."""
    sources: list[list[Source | None]] = [[None] * len(device.ports) for device in problem.devices]
    inputs: list[tuple[int, int, tuple[Source, ...]]] = []
    objective = [0] * LEVELS
    proven, nodes = True, 0
    for part in split(problem):
        order = _ordered(part.problem)
        solution = _solved(order, budget if nodes < budget else min(budget, SMALL_BUDGET))
        _put_back(part, order, solution.wiring, sources, inputs)
        objective = [one + other for one, other in zip(objective, solution.objective, strict=True)]
        proven = proven and solution.proven
        nodes += solution.nodes
    given = zip(problem.devices, sources, strict=True)
    wiring = Wiring(tuple(_first_fed(device, each) for device, each in given), tuple(sorted(inputs)))
    return Solution(wiring, tuple(objective), proven, nodes)


def least_stops(problem: Problem) -> int:
    """Return a bound of the stops of any wiring of a problem, found without a search."""
    return sum(_least(_ordered(part.problem)) for part in split(problem))


def clear() -> None:
    """Forget all that was solved."""
    _memo.clear()
    _orders.clear()
    _least_stops.clear()


def _ordered(problem: Problem) -> Ordered:
    found = _orders.get(problem)
    if found is None:
        found = ordered(problem)
        _orders.put(problem, found, 2 * found.bytes)
    return found


def _least(order: Ordered) -> int:
    found = _least_stops.get(order.problem)
    if found is None:
        found = bound(order.problem)
        _least_stops.put(order.problem, found, order.bytes)
    return found


def _solved(order: Ordered, budget: int) -> Solution:
    key = (order.problem, budget)
    found = _memo.get(key)
    if found is None:
        found = search(order.problem, budget)
        _memo.put(key, found, order.bytes + bytes_of_wiring(found.wiring))
    return found


def _put_back(
    part: Part,
    order: Ordered,
    wiring: Wiring,
    sources: list[list[Source | None]],
    inputs: list[tuple[int, int, tuple[Source, ...]]],
) -> None:
    """Enter the wiring of one part under the old numbers."""
    for place, ports, device, given in zip(
        order.devices, order.ports, order.problem.devices, wiring.sources, strict=True
    ):
        item = part.items[place]
        for port, at, source in zip(device.ports, ports, given, strict=True):
            if source is not None:
                sources[item.device][item.ports[at]] = _old(part, order, port.type, source)
    for kind, copy, each in wiring.adapter_inputs:
        of = order.problem.adapters[kind].input_type
        old = part.adapters[order.adapters[kind]]
        inputs.append((old, copy, tuple(_old(part, order, of, source) for source in each)))


def _first_fed(device: Device, sources: Sequence[Source | None]) -> tuple[Source | None, ...]:
    """Return the sources of a device's ports; of equal ports those without one are the last."""
    if None not in sources:
        return tuple(sources)
    found = list(sources)
    for port in set(device.ports):
        places = [place for place, other in enumerate(device.ports) if other == port]
        given = sorted((sources[place] for place in places), key=lambda source: source is None)
        for place, source in zip(places, given, strict=True):
            found[place] = source
    return tuple(found)


def _old(part: Part, order: Ordered, of: int, source: Source) -> Source:
    """Return a source with its fit numbered as in the whole problem."""
    old_type = order.types[of]
    if isinstance(source, PlugSource):
        return PlugSource(part.fits[old_type][order.fits[of][source.fit]], source.copy)
    return AdapterSource(part.adapter_fits[old_type][order.adapter_fits[of][source.fit]], source.copy)
