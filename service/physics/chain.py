"""A chain of plugs on one cable: the trunk carries what all plugs take, the tail what the last one takes."""

from collections.abc import Sequence
from typing import NamedTuple

from service.physics.tree import ROOT, flow


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
