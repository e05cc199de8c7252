"""What a supply gives in air that is warmer than the air it is rated in."""

from service.facts.fact import WHOLE


def derated_watts(
    rated_watts: float, air_celsius: float, rated_at_celsius: float, loss_percent_a_kelvin: float
) -> float:
    """Return the watts that are left of a rating in warmer air; in air no warmer than rated, all of it.

    Parameters
    ----------
    rated_watts : float
        Rated size of the supply. [W]
    air_celsius : float
        Air around the supply. [C]
    rated_at_celsius : float
        Air that the rating holds in. [C]
    loss_percent_a_kelvin : float
        Share of the rating that each degree above costs. [%/K]

    Returns
    -------
    float
        The rating less so many percent a degree, never less than nothing. [W]

    References
    ----------
    A straight line is how makers draw it; where none is printed its slope is common practice, without a source.
    """
    too_warm = max(0.0, air_celsius - rated_at_celsius)
    return max(0.0, rated_watts * (1 - too_warm * loss_percent_a_kelvin / WHOLE))
