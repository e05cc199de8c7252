"""A chain of plugs on one cable: the trunk carries what all plugs take, the tail what the last one takes.

``chain`` is one rail with a way back of its own, ``rails_chain`` several rails that share theirs.
"""

from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

from service.physics.tree import RESIDUAL, ROOT, flow


class Chain(NamedTuple):
    """A chain that is fed, shape (n,) each.

    Volts on the cable at each plug [V] and behind the plug, at the device [V]; amps on the stretch before each plug [A]
    and through the plug [A]; watts that wires and contacts turn to heat [W].
    """

    plug_volts: tuple[float, ...]
    device_volts: tuple[float, ...]
    stretch_amps: tuple[float, ...]
    plug_amps: tuple[float, ...]
    lost_watts: float


def chain(
    source_volts: float, stretch_ohms: Sequence[float], device_amps: Sequence[float],
    device_watts: Sequence[float] | None = None, plug_ohms: Sequence[float] | None = None,
) -> Chain | None:
    """Return volts and amps along a chain of plugs that is fed from one end.

    Parameters
    ----------
    source_volts : float
        Volts where the first stretch begins. [V]
    stretch_ohms : sequence of float, shape (n,)
        Resistance of the stretch before each plug, there and back; an extension or an adapter adds to the stretch that
        it lies in. ``copper.pair_ohms`` gives it. [ohm]
    device_amps : sequence of float, shape (n,)
        What each device takes at constant current. [A]
    device_watts : sequence of float, shape (n,), optional
        What each device takes at constant power, beside that. [W]
    plug_ohms : sequence of float, shape (n,), optional
        Resistance between the cable and each device, there and back: the contacts of its plug. [ohm]

    Returns
    -------
    Chain or None
        Volts and amps, from the source on. None: there is no solution, a device asks for more than the way to it can
        carry.

    Raises
    ------
    ValueError
        If volts are not above 0, anything else is negative, or shapes differ.

    References
    ----------
    As ``tree.flow``.
    """
    count = len(stretch_ohms)
    device_watts = [0.0] * count if device_watts is None else device_watts
    plug_ohms = [0.0] * count if plug_ohms is None else plug_ohms
    if {len(device_amps), len(device_watts), len(plug_ohms)} != {count}:
        raise ValueError("every plug has a stretch before it and a device")
    # First the plugs along the cable, then the device behind each.
    nothing = [0.0] * count
    parents = [*range(ROOT, count - 1), *range(count)]
    found = flow(
        source_volts, parents, [*stretch_ohms, *plug_ohms], [*nothing, *device_amps], [*nothing, *device_watts],
    )
    if found is None:
        return None
    volts, amps = found
    lost = sum(i * i * ohms for i, ohms in zip(amps, (*stretch_ohms, *plug_ohms), strict=True))
    return Chain(volts[:count], volts[count:], amps[:count], amps[count:], lost)


def rails_chain(
    source_volts: Sequence[float], supply_ohms: Sequence[float], return_ohms: Sequence[float],
    device_amps: Sequence[Sequence[float]], plug_ohms: Sequence[float], plug_return_ohms: Sequence[float],
) -> tuple[tuple[float, ...], ...] | None:
    """Return the volts of each rail at each device of a chain whose rails share their way back.

    What one rail takes lifts the way back of all: a disk's 5 V amps lower the 12 V of every disk, too.

    Parameters
    ----------
    source_volts : sequence of float, shape (m,)
        Volts of each rail where the first stretch begins. [V]
    supply_ohms : sequence of float, shape (n,)
        Resistance of one rail's wire on the stretch before each plug, one way. [ohm]
    return_ohms : sequence of float, shape (n,)
        Resistance of all return wires of that stretch together. [ohm]
    device_amps : sequence of sequence of float, shape (m, n)
        What each device takes from each rail at constant current. [A]
    plug_ohms : sequence of float, shape (n,)
        Resistance of one rail's contacts in each plug together, one way. [ohm]
    plug_return_ohms : sequence of float, shape (n,)
        Resistance of the return contacts in each plug together. [ohm]

    Returns
    -------
    tuple of tuple of float, shape (m, n), or None
        Volts between each rail and the return, at each device. [V] None: a rail has no volts left.

    Raises
    ------
    ValueError
        If volts are not above 0, anything else is negative, or shapes differ.

    References
    ----------
    Kirchhoff's laws; with constant currents the drops of all stretches add up.
    """
    ways = (supply_ohms, return_ohms, plug_ohms, plug_return_ohms)
    _check_rails(source_volts, ways, device_amps)
    whole = [sum(each) for each in zip(*device_amps, strict=True)]
    lift = _drops(return_ohms, plug_return_ohms, whole)
    found = tuple(
        tuple(start - drop - back for drop, back in zip(_drops(supply_ohms, plug_ohms, taken), lift, strict=True))
        for start, taken in zip(source_volts, device_amps, strict=True)
    )
    enough = all(volts > RESIDUAL * start for start, rail in zip(source_volts, found, strict=True) for volts in rail)
    return found if enough else None


def _drops(stretch_ohms: Sequence[float], plug_ohms: Sequence[float], taken: Sequence[float]) -> list[float]:
    """Return what is dropped one way up to each device."""
    tails = list(accumulate(reversed(taken)))[::-1]
    along = accumulate(ohms * amps for ohms, amps in zip(stretch_ohms, tails, strict=True))
    return [drop + ohms * amps for drop, ohms, amps in zip(along, plug_ohms, taken, strict=True)]


def _check_rails(
    source_volts: Sequence[float], ways: Sequence[Sequence[float]], device_amps: Sequence[Sequence[float]],
) -> None:
    """Refuse what is no chain of rails."""
    if any(not volts > 0 for volts in source_volts):
        raise ValueError("the volts of a source are above 0")
    count = len(ways[0])
    if len(device_amps) != len(source_volts) or any(len(each) != count for each in (*ways, *device_amps)):
        raise ValueError("every rail has a source, and every plug a stretch before it, contacts and a device")
    if any(not figure >= 0 for each in (*ways, *device_amps) for figure in each):
        raise ValueError("ohms and amps are not negative")
