"""Warmth of contacts above the air around them: an estimate from a published point, and it says so."""

from service.facts.contacts import SIXTEEN_PIN_AMPS
from service.facts.resistance import (
    BRONZE_AMPS,
    BRONZE_RISE,
    BRONZE_SIZES,
    PITCH_4_2_MM,
    RISE_EXPONENT,
    SIXTEEN_PIN,
    SIXTEEN_PIN_CIRCUITS,
    SIXTEEN_PIN_RISE,
)


def rated_point(family: str, circuits: int) -> tuple[float, float]:
    """Return the published point of a contact: so many amps on all contacts of a housing, and how they warm it.

    Parameters
    ----------
    family : str
        ``4.2 mm`` (phosphor bronze, 16 AWG) or ``16-pin``.
    circuits : int
        Contacts of the housing, all of them energised; the 16-pin plug has 12. [1]

    Returns
    -------
    tuple of float, shape (2,)
        Amps of a contact [A] and the rise above the air [K] that they may cause.

    Raises
    ------
    KeyError
        When nothing is published for the family or the size of housing.

    References
    ----------
    336521 rev. 2.0, Table 5-7; PS-5556-001, section 4.3, a guideline that asks for derating by ambient, wire and crimp.
    """
    if (family, circuits) == (SIXTEEN_PIN, SIXTEEN_PIN_CIRCUITS):
        return SIXTEEN_PIN_AMPS.value, SIXTEEN_PIN_RISE.value
    if family == PITCH_4_2_MM:
        for (first, last), (_, amps) in zip(BRONZE_SIZES, BRONZE_AMPS.rows, strict=True):
            if first <= circuits <= last:
                return amps, BRONZE_RISE.value
    raise KeyError((family, circuits))


def estimated_rise_celsius(amps: float, rated_amps: float, rated_rise_celsius: float) -> float:
    """Return an estimate of how much warmer than the air around it a contact gets.

    An estimate: the published point (so many amps warm a contact by so much, all contacts of the housing energised) is
    scaled with the square of the current. It knows nothing of worn contacts, thinner wire or moving air.

    Parameters
    ----------
    amps : float
        Current of the contact. [A]
    rated_amps : float
        Current of the published point. [A]
    rated_rise_celsius : float
        Rise at that current. [K]

    Returns
    -------
    float
        Estimated rise, ``rise * (amps / rated) ** 2``. [K]

    Raises
    ------
    ValueError
        If the rated amps are not above nothing.

    References
    ----------
    Joule's law; that still air carries heat off in proportion to the rise is our judgement (``contact.rise_exponent``).
    """
    if not rated_amps > 0:
        raise ValueError("rated amps are above 0")
    scaled: float = (amps / rated_amps) ** RISE_EXPONENT.value
    return rated_rise_celsius * scaled
