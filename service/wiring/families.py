"""Which cable kinds serve which port types, and what hangs together by that."""

from typing import NamedTuple

from service.wiring.clusters import LAST_INPUT
from service.wiring.problem import Problem


class Family(NamedTuple):
    """Port types that cable kinds serve together."""

    types: tuple[int, ...]
    kinds: tuple[int, ...]


def kinds(problem: Problem) -> range:
    """Return the numbers of the cable kinds."""
    return range(len(problem.cables))


def reached(problem: Problem) -> list[int]:
    """Return the port types that a device's port, or an input of an adapter that may come before it, is of."""
    found = {port.type for device in problem.devices for port in device.ports}
    for _ in range(LAST_INPUT):
        taken = {fit.adapter for of in found for fit in problem.port_types[of].adapter_fits}
        found.update(problem.adapters[kind].input_type for kind in taken)
    return sorted(found)


def families(problem: Problem) -> tuple[Family, ...]:
    """Return the families of a problem, each as small as may be."""
    parts: list[tuple[set[int], set[int]]] = []
    for kind in range(len(problem.cables)):
        types = {of for of, found in enumerate(problem.port_types) if any(fit.cable == kind for fit in found.fits)}
        kinds = {kind}
        apart = []
        for others, other_kinds in parts:
            if others.isdisjoint(types):
                apart.append((others, other_kinds))
            else:
                types |= others
                kinds |= other_kinds
        parts = [*apart, (types, kinds)]
    return tuple(Family(tuple(sorted(types)), tuple(sorted(kinds))) for types, kinds in parts if types)
