"""A strip of lights: its current is taken along its length, so most of the drop lies in its first half."""

from typing import NamedTuple

from service.physics.chain import Chain, chain
from service.physics.copper import MM_PER_METRE


class Lit(NamedTuple):
    """A strip that is fed: volts [V] at its two ends, amps [A] into it, watts [W] lost in its lead and in it."""

    first_volts: float
    last_volts: float
    total_amps: float
    lost_watts: float


def even_strip(
    source_volts: float, lead_ohms: float, strip_ohms_per_metre: float, amps_per_metre: float, length_mm: float,
) -> Lit | None:
    """Return the volts at the ends of a strip that takes constant current evenly along its length.

    Parameters
    ----------
    source_volts : float
        Volts where the lead begins. [V]
    lead_ohms : float
        Resistance of the lead, there and back. [ohm]
    strip_ohms_per_metre : float
        Resistance of the strip's own tracks, there and back; a maker's figure, for which none is published. [ohm/m]
    amps_per_metre : float
        What a metre takes. [A/m]
    length_mm : float
        Length of the strip. [mm]

    Returns
    -------
    Lit or None
        With r, a, l per metre and in metres: the strip drops ``r a l**2 / 2`` and loses ``r a**2 l**3 / 3``. None: no
        volts are left at its end.

    Raises
    ------
    ValueError
        If volts are not above 0, or anything else is negative.

    References
    ----------
    Ohm's law, integrated: at x the strip carries ``a (l - x)``.
    """
    figures = (lead_ohms, strip_ohms_per_metre, amps_per_metre, length_mm)
    if not source_volts > 0 or any(not figure >= 0 for figure in figures):
        raise ValueError("volts are above 0, ohms, amps and length are not negative")
    metres = length_mm / MM_PER_METRE
    amps, ohms = amps_per_metre * metres, strip_ohms_per_metre * metres
    first = source_volts - lead_ohms * amps
    last = first - ohms * amps / 2
    return Lit(first, last, amps, amps * amps * (lead_ohms + ohms / 3)) if last > 0 else None


def tapped_strip(
    source_volts: float, lead_ohms: float, pitch_ohms: float, lights: int, *, light_amps: float = 0.0,
    light_watts: float = 0.0,
) -> Chain | None:
    """Return the volts at each light of a strip of equal lights.

    Parameters
    ----------
    source_volts : float
        Volts where the lead begins. [V]
    lead_ohms : float
        Resistance of the lead up to the first light, there and back. [ohm]
    pitch_ohms : float
        Resistance from one light to the next, there and back. [ohm]
    lights : int
        How many lights, or groups of lights that are fed together, there are. [1]
    light_amps : float
        What a light takes at constant current. [A]
    light_watts : float
        What a light takes at constant power, beside that. [W]

    Returns
    -------
    Chain or None
        As ``chain.chain``: the lights are its plugs. With constant current the last light has
        ``source - a (lead n + pitch n (n - 1) / 2)``.

    Raises
    ------
    ValueError
        If there is no light; and as ``chain.chain``.
    """
    if lights < 1:
        raise ValueError("a strip has a light")
    stretches = [lead_ohms, *[pitch_ohms] * (lights - 1)]
    return chain(source_volts, stretches, [light_amps] * lights, [light_watts] * lights)
