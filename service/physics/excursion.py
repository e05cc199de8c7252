"""Short peaks: what a supply must carry, what a card may ask for, and the test cycles in between."""

from bisect import bisect_left
from math import log, sqrt
from typing import Final

from service.facts.card import (
    CARD_RATIO,
    RATIO_CONSTANT,
    RATIO_LOG_COEFFICIENT,
    RATIO_LONG_MICROSECONDS,
    RATIO_SHORT_MICROSECONDS,
)
from service.facts.fact import WHOLE
from service.facts.supply import (
    CONTINUOUS_PERCENT,
    EXCURSION_MICROSECONDS,
    LARGE_PERCENT,
    SMALL_PERCENT,
    TEST_DUTY_PERCENT,
)

SUSTAINED_RATIO: Final = 1.0


def envelope_percent(microseconds: float, *, large: bool) -> float:
    """Return what a supply must carry for a stretch of time.

    Parameters
    ----------
    microseconds : float
        Length of the stretch. [us]
    large : bool
        Above 450 W and with a 16-pin connector.

    Returns
    -------
    float
        Share of the rated watts. [%] Between two rows of the table that of the longer stretch; beyond the last row 100.

    Raises
    ------
    ValueError
        If the stretch is not longer than nothing.

    References
    ----------
    Intel, ATX12VO Desktop Power Supply Design Guide, 613768 rev. 2.01, section 3.1.2, Table 3-3.
    """
    if microseconds <= 0:
        raise ValueError("a stretch of time is longer than nothing")
    at = bisect_left(EXCURSION_MICROSECONDS, microseconds)
    if at == len(EXCURSION_MICROSECONDS):
        return CONTINUOUS_PERCENT.value
    return (LARGE_PERCENT if large else SMALL_PERCENT).rows[at][1]


def supply_envelope_watts(rated_watts: float, microseconds: float, *, large: bool) -> float:
    """Return the watts that a supply must carry for a stretch of time.

    Parameters
    ----------
    rated_watts : float
        Rated size of the supply. [W]
    microseconds : float
        Length of the stretch. [us]
    large : bool
        Above 450 W and with a 16-pin connector; ``facts.supply.is_large`` says so.

    Returns
    -------
    float
        Watts, mean over the stretch. [W]

    References
    ----------
    As ``envelope_percent``.
    """
    return rated_watts * envelope_percent(microseconds, large=large) / WHOLE


def card_ratio(microseconds: float) -> float:
    """Return how far above its sustained watts a card may draw, as a mean over a stretch of time.

    Parameters
    ----------
    microseconds : float
        Length of the stretch. [us]

    Returns
    -------
    float
        Mean watts over the stretch by the most sustained watts: 3 up to 100 us, 1 from 1 s, 4 - 0.2171 ln(T) between.

    Raises
    ------
    ValueError
        If the stretch is not longer than nothing.

    References
    ----------
    PCI-SIG, CEM 5.x change notice on power excursion, as in 336521 rev. 2.1, Table 3-1. The formula gives 3.0002 at
    100 us and 1.0007 at 1 s; the ends are printed as 3 and 1, and these are taken. Published for 300 W to 600 W cards.
    """
    if microseconds <= 0:
        raise ValueError("a stretch of time is longer than nothing")
    if microseconds <= RATIO_SHORT_MICROSECONDS.value:
        return CARD_RATIO.value
    if microseconds >= RATIO_LONG_MICROSECONDS.value:
        return SUSTAINED_RATIO
    return min(CARD_RATIO.value, RATIO_CONSTANT.value - RATIO_LOG_COEFFICIENT.value * log(microseconds))


def cycle_low_watts(rated_watts: float, microseconds: int, *, large: bool) -> float:
    """Return the low level between two peaks of the guide's test, which makes the RMS of a cycle equal the rating.

    Parameters
    ----------
    rated_watts : float
        Rated size of the supply. [W]
    microseconds : int
        Length of the peak, one of the rows of the table. [us]
    large : bool
        As ``envelope_percent``.

    Returns
    -------
    float
        Watts between peaks. [W] ``rated * sqrt((1 - D p^2) / (1 - D))`` with D the duty and p peak by rating.

    Raises
    ------
    KeyError
        If the table has no such row.

    References
    ----------
    Reproduces 613768 rev. 2.01, Table 3-4, and a maker's table for 750 W.
    """
    duty = _duty(microseconds)
    peak = envelope_percent(microseconds, large=large) / WHOLE
    return rated_watts * sqrt((1 - duty * peak**2) / (1 - duty))


def cycle_low_microseconds(microseconds: int) -> float:
    """Return how long the low level of the guide's test lasts.

    Parameters
    ----------
    microseconds : int
        Length of the peak, one of the rows of the table. [us]

    Returns
    -------
    float
        Time between peaks, ``peak (1 - D) / D``. [us]

    Raises
    ------
    KeyError
        If the table has no such row.

    References
    ----------
    613768 rev. 2.01, Table 3-4.
    """
    duty = _duty(microseconds)
    return microseconds * (1 - duty) / duty


def _duty(microseconds: int) -> float:
    return dict(TEST_DUTY_PERCENT.rows)[microseconds] / WHOLE
