"""Copper wire: thickness and resistance by gauge and warmth, there and back, side by side.

Printed rows (NBS Handbook 100 / ASTM B258 for solid wire, a maker's table for 7 strands) come first; a gauge between
them has the diameter of ASTM B258 and the printed resistivity, which agrees with the printed rows within 0.03 %.
"""

from math import pi

from service.facts.fact import WHOLE
from service.facts.wire import (
    END_RATIO,
    REFERENCE_CELSIUS,
    RESISTIVITY,
    SOLID_OHMS_PER_METRE,
    STRAND_ALLOWANCE_PERCENT,
    STRANDED_OHMS_PER_METRE,
    TEMPERATURE_COEFFICIENT,
    THICK_END_AWG,
    THIN_END_AWG,
    THIN_END_MM,
)

MM_PER_METRE = 1000.0
SIDES = 2
"""A current goes there and comes back."""


def diameter_mm(awg: int) -> float:
    """Return the diameter of solid wire of a gauge.

    Parameters
    ----------
    awg : int
        American wire gauge; 0 to -3 are 0 to 0000. [1]

    Returns
    -------
    float
        Diameter, ``0.127 * 92 ** ((36 - awg) / 39)``. [mm]

    Raises
    ------
    ValueError
        If the gauge lies outside of 0000 to 36, the two gauges that the rule is drawn through.

    References
    ----------
    ASTM B258, as defined in GNU Units 2.22.
    """
    thin, thick = THIN_END_AWG.value, THICK_END_AWG.value
    if not thick <= awg <= thin:
        raise ValueError("a gauge lies between 0000 and 36 AWG")
    power: float = END_RATIO.value ** ((thin - awg) / (thin - thick))
    return THIN_END_MM.value * power


def area_square_mm(awg: int) -> float:
    """Return the cross-section of solid wire of a gauge.

    Parameters
    ----------
    awg : int
        As ``diameter_mm``. [1]

    Returns
    -------
    float
        Area of copper. [mm2]

    Raises
    ------
    ValueError
        As ``diameter_mm``.
    """
    return pi / 4 * diameter_mm(awg) ** 2


def temperature_factor(celsius: float) -> float:
    """Return what the resistance of copper at 20 C is to be multiplied with.

    Parameters
    ----------
    celsius : float
        Warmth of the copper; the line is meant for 10 to 100 C. [C]

    Returns
    -------
    float
        ``1 + 0.00393 (t - 20)``. [1]

    Raises
    ------
    ValueError
        If the line, far below where it is meant for, gives no resistance at all.

    References
    ----------
    NBS Handbook 100, as quoted in an engineering note.
    """
    factor = 1 + TEMPERATURE_COEFFICIENT.value * (celsius - REFERENCE_CELSIUS.value)
    if factor <= 0:
        raise ValueError("the coefficient of copper is meant for 10 to 100 C")
    return factor


def ohms_per_metre(awg: int, *, stranded: bool = False, celsius: float = REFERENCE_CELSIUS.value) -> float:
    """Return the resistance of one metre of one wire.

    Parameters
    ----------
    awg : int
        As ``diameter_mm``. [1]
    stranded : bool
        Whether it has strands: 14 to 20 AWG as printed for 7 strands, else solid wire and 4 % (common practice).
    celsius : float
        Warmth of the copper. [C]

    Returns
    -------
    float
        Resistance. [ohm/m]

    Raises
    ------
    ValueError
        As ``diameter_mm`` and ``temperature_factor``.

    References
    ----------
    NBS Handbook 100 / ASTM B258 as printed by a cable-test maker; an equipment maker's Table 38 and Equation 320.
    """
    factor = temperature_factor(celsius)
    if stranded and awg in STRANDED_OHMS_PER_METRE:
        return STRANDED_OHMS_PER_METRE[awg] * factor
    solid = SOLID_OHMS_PER_METRE[awg] if awg in SOLID_OHMS_PER_METRE else RESISTIVITY.value / area_square_mm(awg)
    allowance = 1 + STRAND_ALLOWANCE_PERCENT.value / WHOLE if stranded else 1.0
    return solid * allowance * factor


def wire_ohms(
    awg: int, length_mm: float, *, parallel: int = 1, stranded: bool = False, celsius: float = REFERENCE_CELSIUS.value,
) -> float:
    """Return the resistance of equal wires side by side, one way.

    Parameters
    ----------
    awg : int
        As ``diameter_mm``. [1]
    length_mm : float
        Length of the wires. [mm]
    parallel : int
        How many wires there are. [1]
    stranded : bool
        As ``ohms_per_metre``.
    celsius : float
        Warmth of the copper. [C]

    Returns
    -------
    float
        Resistance. [ohm]

    Raises
    ------
    ValueError
        If the length is negative or there is no wire; and as ``ohms_per_metre``.
    """
    if not length_mm >= 0 or parallel < 1:
        raise ValueError("a wire has a length, and there is at least one")
    return ohms_per_metre(awg, stranded=stranded, celsius=celsius) * length_mm / MM_PER_METRE / parallel


def pair_ohms(
    awg: int, length_mm: float, *, parallel_pairs: int = 1, ohms_per_contact: float = 0.0, contacts_in_series: int = 0,
    stranded: bool = False, celsius: float = REFERENCE_CELSIUS.value,
) -> float:
    """Return the resistance of equal pairs of wires, there and back, with the contacts at their ends.

    An extension, an adapter or any other element in between is such a pair: its wires, and the contacts it adds.

    Parameters
    ----------
    awg : int
        As ``diameter_mm``. [1]
    length_mm : float
        Length one way. [mm]
    parallel_pairs : int
        Pairs of a wire there and a wire back. [1]
    ohms_per_contact : float
        Resistance of one contact. [ohm]
    contacts_in_series : int
        Contacts that one pair adds, there and back together: 2 for a joint, 4 with a joint at each end. [1]
    stranded : bool
        As ``ohms_per_metre``.
    celsius : float
        Warmth of the copper. [C]

    Returns
    -------
    float
        Resistance, ``(2 r l + contacts) / pairs``. [ohm]

    Raises
    ------
    ValueError
        If contacts or their resistance are negative; and as ``wire_ohms``.
    """
    if not ohms_per_contact >= 0 or contacts_in_series < 0:
        raise ValueError("contacts and their resistance are not negative")
    wires = SIDES * wire_ohms(awg, length_mm, parallel=parallel_pairs, stranded=stranded, celsius=celsius)
    return wires + ohms_per_contact * contacts_in_series / parallel_pairs
