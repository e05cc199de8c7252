"""Parts of a whole in percent."""

from service.facts.fact import WHOLE, Fact


def part_of(whole: float, percent: Fact) -> float:
    """Return so many percent of a whole, in its unit; all of it is exactly the whole."""
    return whole * (percent.value / WHOLE)
