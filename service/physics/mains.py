"""At the wall: circuits for continuous load (NEC 210.19(A)(1) and 210.20(A)), a UPS, heat for the room, energy.

Watts and amps at the wall are in ``conversion``.
"""

from typing import Final

from service.facts.fact import WHOLE
from service.facts.mains import CONTINUOUS_FACTOR_PERCENT
from service.facts.units import BTU_JOULES

SECONDS_AN_HOUR: Final = 3600.0
HOURS_A_DAY: Final = 24.0
DAYS_A_YEAR: Final = 365.0
WATTS_A_KILOWATT: Final = 1000.0


def continuous_amps(circuit_amps: float) -> float:
    """Return what a circuit may carry for three hours and more.

    Parameters
    ----------
    circuit_amps : float
        Size of the circuit. [A]

    Returns
    -------
    float
        The circuit divided by 125 %. [A]

    References
    ----------
    NEC 210.19(A)(1) and 210.20(A), as quoted by electricians.
    """
    return circuit_amps * WHOLE / CONTINUOUS_FACTOR_PERCENT.value


def circuit_amps(continuous_load_amps: float, other_load_amps: float = 0.0) -> float:
    """Return the least circuit for a continuous and another load.

    Parameters
    ----------
    continuous_load_amps : float
        Load for three hours and more. [A]
    other_load_amps : float
        Any other load. [A]

    Returns
    -------
    float
        The other load and 125 % of the continuous one. [A]

    References
    ----------
    NEC 210.19(A)(1) and 210.20(A), as quoted by electricians.
    """
    return other_load_amps + continuous_load_amps * CONTINUOUS_FACTOR_PERCENT.value / WHOLE


def share_percent(load: float, limit: float) -> float:
    """Return a load as a share of what it is held against: a circuit, an inlet, a UPS; both in one unit.

    Raises
    ------
    ZeroDivisionError
        When the limit is nothing.
    """
    return load / limit * WHOLE


def volt_amperes(watts: float, power_factor: float) -> float:
    """Return the apparent power of a load: a UPS must carry this beside its watts.

    Parameters
    ----------
    watts : float
        Watts taken from the wall. [W]
    power_factor : float
        Watts by volt-amperes. [1]

    Returns
    -------
    float
        Volt-amperes. [VA]

    Raises
    ------
    ValueError
        If the factor is not above 0 and at most 1.
    """
    if not 0 < power_factor <= 1:
        raise ValueError("a power factor lies above 0 and is at most 1")
    return watts / power_factor


def heat_btu_per_hour(watts: float) -> float:
    """Return watts in the unit that cooling is sold by; all that a computer takes from the wall warms the room.

    Parameters
    ----------
    watts : float
        Watts taken from the wall. [W]

    Returns
    -------
    float
        The same heat: 1 W is 3.412 BTU/h, by the International Table. [BTU/h]
    """
    return watts * SECONDS_AN_HOUR / BTU_JOULES.value


def kilowatt_hours_a_year(watts: float, hours_a_day: float = HOURS_A_DAY) -> float:
    """Return the energy of a year of 365 days.

    Parameters
    ----------
    watts : float
        Watts taken from the wall. [W]
    hours_a_day : float
        How long a day. [h]

    Returns
    -------
    float
        Energy. [kWh]

    Raises
    ------
    ValueError
        If a day has fewer than no hours, or more than 24.
    """
    if not 0 <= hours_a_day <= HOURS_A_DAY:
        raise ValueError("a day has 0 to 24 hours")
    return watts * hours_a_day * DAYS_A_YEAR / WATTS_A_KILOWATT
