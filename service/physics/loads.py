"""A single load behind a resistance: what it takes, the most that it may take, and the heat on the way."""

from math import inf, sqrt


def most_watts(source_volts: float, ohms: float) -> float:
    """Return the most that a source gives through a resistance, at half its volts.

    Parameters
    ----------
    source_volts : float
        Volts of the source. [V]
    ohms : float
        Resistance on the way, there and back. [ohm]

    Returns
    -------
    float
        ``V**2 / (4 R)``. [W]

    References
    ----------
    Theorem of the most power that is transferred.
    """
    return source_volts**2 / (4 * ohms) if ohms else inf


def amps_of_watts(source_volts: float, ohms: float, watts: float) -> float | None:
    """Return the current of a load of constant power behind a resistance.

    Parameters
    ----------
    source_volts : float
        Volts of the source, above nothing. [V]
    ohms : float
        Resistance on the way, there and back; may be ``OPEN``. [ohm]
    watts : float
        What the load takes at its own volts. [W]

    Returns
    -------
    float or None
        The lower of the two roots of ``R i**2 - V i + P = 0``, which is the one with the higher volts, as
        ``2 P / (V + sqrt(V**2 - 4 R P))``. [A] None: the way cannot carry so much (``V**2 < 4 R P``).

    Raises
    ------
    ValueError
        If volts are not above 0, or ohms or watts are negative.

    References
    ----------
    Quadratic formula, in the form that loses no digits when the drop is small.
    """
    if not source_volts > 0 or not ohms >= 0 or not watts >= 0:
        raise ValueError("volts are above 0, ohms and watts are not negative")
    if not watts:
        return 0.0
    under_root = source_volts**2 - 4 * ohms * watts
    return 2 * watts / (source_volts + sqrt(under_root)) if under_root >= 0 else None


def collapse_amps(source_volts: float, watts: float) -> float:
    """Return the most that a load of constant power takes through any resistance: where half of the volts are left.

    Parameters
    ----------
    source_volts : float
        Volts where its way begins. [V]
    watts : float
        What it takes. [W]

    Returns
    -------
    float
        ``2 P / V``: with more resistance than goes with it there is no solution. [A]

    References
    ----------
    ``amps_of_watts`` where the root is 0.
    """
    return 2 * watts / source_volts


def volts_behind(source_volts: float, ohms: float, watts: float) -> float:
    """Return the volts at a load of constant power behind a resistance.

    Parameters
    ----------
    source_volts : float
        As ``amps_of_watts``. [V]
    ohms : float
        As ``amps_of_watts``. [ohm]
    watts : float
        As ``amps_of_watts``. [W]

    Returns
    -------
    float
        ``V - R i``; 0 where the way cannot carry so much. [V]

    Raises
    ------
    ValueError
        As ``amps_of_watts``.
    """
    amps = amps_of_watts(source_volts, ohms, watts)
    return 0.0 if amps is None else source_volts - ohms * amps if amps else source_volts


def watts_above(source_volts: float, lowest_volts: float, ohms: float) -> float:
    """Return the most that a load of constant power may take so that its volts do not fall below a limit.

    Parameters
    ----------
    source_volts : float
        Volts of the source. [V]
    lowest_volts : float
        The least at the load: half of the source's volts or more, at most all of them. [V]
    ohms : float
        Resistance on the way, there and back. [ohm]

    Returns
    -------
    float
        ``v (V - v) / R``, which above half of the source's volts is all that may be taken. [W]

    Raises
    ------
    ValueError
        If the limit lies outside of the half, or there is no resistance.

    References
    ----------
    Ohm's law.
    """
    if not source_volts / 2 <= lowest_volts <= source_volts or not ohms > 0:
        raise ValueError("the limit lies in the upper half of the source's volts, and there is some resistance")
    return lowest_volts * (source_volts - lowest_volts) / ohms


def heat_watts(amps: float, ohms: float) -> float:
    """Return the heat of a current in a resistance: a contact, a wire, a metre of wire.

    Parameters
    ----------
    amps : float
        Current, RMS where it swings. [A]
    ohms : float
        Resistance. [ohm]

    Returns
    -------
    float
        ``i**2 R``. [W]

    References
    ----------
    Joule's law.
    """
    return amps * amps * ohms
