"""A tree of resistances fed from one source: loads of constant current and of constant power at any of its nodes.

Every node is fed by one element from its parent, there and back lumped together. With loads of constant power the
volts solve ``v = v0 - Z (amps + watts / v)``, where Z holds no negative number. Newton's steps from the volts that
there would be without them fall and never pass below a solution: the current is convex in the volts, so each step
solves a problem that flatters the true one, for as long as the matrix of the step is an M-matrix, which here means that
every pivot of its elimination is above 0. So the solution that is found is the one with the highest volts, and a pivot
or a voltage that falls to 0 or less proves that there is none.
"""

from collections.abc import Sequence
from typing import Final, NamedTuple

RESIDUAL: Final = 1e-12
"""What is called solved: volts that follow from the currents lie this near to those the currents were taken at, by
those of the source."""
STEP: Final = 1e-14
"""A step that is smaller, by the volts of the source, changes nothing but the last digits."""
STEPS: Final = 200
"""Steps halve the way at the very least, so these are more than a float has room for."""
ROOT: Final = -1
"""The parent of a node that hangs on the source itself."""


class Flow(NamedTuple):
    """Volts [V] at each node, and amps [A] through the element that feeds it."""

    node_volts: tuple[float, ...]
    element_amps: tuple[float, ...]


def flow(
    source_volts: float, parents: Sequence[int], element_ohms: Sequence[float], node_amps: Sequence[float],
    node_watts: Sequence[float],
) -> Flow | None:
    """Return the volts at each node of a tree and the current through each element.

    Parameters
    ----------
    source_volts : float
        Volts of the source, above 0. [V]
    parents : sequence of int, shape (n,)
        The node that each node is fed from, which comes before it; ``ROOT`` for the source. [1]
    element_ohms : sequence of float, shape (n,)
        Resistance of the element that feeds each node, there and back; may be 0. [ohm]
    node_amps : sequence of float, shape (n,)
        What is taken at each node at constant current. [A]
    node_watts : sequence of float, shape (n,)
        What is taken at each node at constant power, beside that. [W]

    Returns
    -------
    Flow or None
        Volts at each node and amps through each element, both of shape (n,). None: there is no solution, because a load
        asks for more than the way to it can carry.

    Raises
    ------
    ValueError
        If volts are not above 0, anything else is negative, shapes differ, or a node comes before its parent.

    References
    ----------
    Kirchhoff's laws; J. M. Ortega and W. C. Rheinboldt, Iterative Solution of Nonlinear Equations in Several Variables,
    on monotone convergence of Newton's method for convex maps (from memory).
    """
    _check(source_volts, parents, element_ohms, node_amps, node_watts)
    amps = _gather(parents, node_amps)
    volts = _volts(source_volts, parents, element_ohms, amps)
    if min(volts, default=source_volts) <= RESIDUAL * source_volts:
        return None
    if any(node_watts):
        volts = _settle(source_volts, parents, element_ohms, node_amps, node_watts, volts)
        amps = _gather(parents, [i + p / v for i, p, v in zip(node_amps, node_watts, volts, strict=True)])
        found = _volts(source_volts, parents, element_ohms, amps)
        if max(abs(one - other) for one, other in zip(found, volts, strict=True)) > RESIDUAL * source_volts:
            return None
    return Flow(tuple(volts), tuple(amps))


def _settle(
    source_volts: float, parents: Sequence[int], ohms: Sequence[float], amps: Sequence[float], watts: Sequence[float],
    volts: list[float],
) -> list[float]:
    """Return the volts where Newton's steps from above come to rest, or the last ones that are above 0 if they do not.

    Where a pivot or a voltage falls to 0 the volts do not fit their currents, unless rounding stopped the fall, as it
    does near the limit.
    """
    for _ in range(STEPS):
        lower = _step(source_volts, parents, ohms, amps, watts, volts)
        if lower is None or min(lower) <= RESIDUAL * source_volts:
            return volts
        fall = max(old - new for old, new in zip(volts, lower, strict=True))
        volts = lower
        if fall <= STEP * source_volts:
            return volts
    return volts


def _step(
    source_volts: float, parents: Sequence[int], ohms: Sequence[float], amps: Sequence[float], watts: Sequence[float],
    volts: Sequence[float],
) -> list[float] | None:
    """Return the volts of the loads made straight at the given volts: ``2 P / v - P / v**2 * volts``; None as flow.

    Each node is folded into its parent as a load of ``constant + slope * volts`` of the parent.
    """
    constant = [i + 2 * p / v for i, p, v in zip(amps, watts, volts, strict=True)]
    slope = [-p / (v * v) for p, v in zip(watts, volts, strict=True)]
    for node in range(len(parents) - 1, -1, -1):
        pivot = 1 + slope[node] * ohms[node]
        if pivot <= 0:
            return None
        constant[node] /= pivot
        slope[node] /= pivot
        parent = parents[node]
        if parent != ROOT:
            constant[parent] += constant[node]
            slope[parent] += slope[node]
    lower: list[float] = []
    for node, parent in enumerate(parents):
        above = source_volts if parent == ROOT else lower[parent]
        lower.append(above - ohms[node] * (constant[node] + slope[node] * above))
    return lower


def _gather(parents: Sequence[int], taken: Sequence[float]) -> list[float]:
    """Return the current through the element of each node: its own and that of all behind it."""
    amps = list(taken)
    for node in range(len(parents) - 1, -1, -1):
        if parents[node] != ROOT:
            amps[parents[node]] += amps[node]
    return amps


def _volts(
    source_volts: float, parents: Sequence[int], ohms: Sequence[float], element_amps: Sequence[float],
) -> list[float]:
    """Return the volts at each node for currents that are known."""
    volts: list[float] = []
    for parent, element, amps in zip(parents, ohms, element_amps, strict=True):
        volts.append((source_volts if parent == ROOT else volts[parent]) - element * amps)
    return volts


def _check(source_volts: float, parents: Sequence[int], *figures: Sequence[float]) -> None:
    """Refuse what is no tree."""
    if not source_volts > 0:
        raise ValueError("the volts of a source are above 0")
    if any(len(each) != len(parents) for each in figures):
        raise ValueError("every node has an element and a load")
    if any(not ROOT <= parent < node for node, parent in enumerate(parents)):
        raise ValueError("a node comes after its parent")
    if any(not figure >= 0 for each in figures for figure in each):
        raise ValueError("ohms, amps and watts are not negative")
