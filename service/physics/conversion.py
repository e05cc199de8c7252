"""From watts at the outputs of a supply to watts and amps at the wall."""

from collections.abc import Sequence
from itertools import pairwise

from service.facts.fact import WHOLE


def efficiency_at(load_percent: float, points: Sequence[tuple[float, float]]) -> float:
    """Return the efficiency at a load, on straight lines between points and flat beyond them.

    Parameters
    ----------
    load_percent : float
        Load by rating. [%]
    points : sequence of (float, float)
        Load and efficiency, ascending by load. [%, %]

    Returns
    -------
    float
        Watts out by watts in. [%]

    Raises
    ------
    ValueError
        If there are no points.

    References
    ----------
    Levels are printed at 20, 50 and 100 % load and are minimums, not curves; straight lines between are our choice.
    """
    if not points:
        raise ValueError("an efficiency needs at least one point")
    if load_percent <= points[0][0]:
        return points[0][1]
    for (load, percent), (next_load, next_percent) in pairwise(points):
        if load_percent <= next_load:
            share = (load_percent - load) / (next_load - load)
            return percent + share * (next_percent - percent)
    return points[-1][1]


def wall_watts(output_watts: float, efficiency_percent: float) -> float:
    """Return the watts taken from the wall.

    Parameters
    ----------
    output_watts : float
        Watts at the outputs. [W]
    efficiency_percent : float
        Watts out by watts in. [%]

    Returns
    -------
    float
        Watts in. [W]

    Raises
    ------
    ValueError
        If the efficiency is not above 0 and at most 100 %.
    """
    if not 0 < efficiency_percent <= WHOLE:
        raise ValueError("an efficiency lies above 0 and is at most 100 %")
    return output_watts * WHOLE / efficiency_percent


def wall_amps(watts: float, mains_volts: float, power_factor: float) -> float:
    """Return the amps taken from the wall.

    Parameters
    ----------
    watts : float
        Watts taken from the wall. [W]
    mains_volts : float
        RMS volts. [V]
    power_factor : float
        Watts by volt-amperes. [1]

    Returns
    -------
    float
        RMS amps. [A]

    Raises
    ------
    ValueError
        If volts or power factor are not above 0, or the factor is above 1.
    """
    if mains_volts <= 0 or not 0 < power_factor <= 1:
        raise ValueError("volts are above 0, and a power factor lies above 0 and is at most 1")
    return watts / (mains_volts * power_factor)
