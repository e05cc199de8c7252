"""A figure with a low and a high end, and the end of it that is looked at."""

from typing import Literal, NamedTuple

End = Literal["favourable", "unfavourable"]


class Range(NamedTuple):
    """A figure known between two ends, both in the unit its field names; equal when the figure was given."""

    low: float
    high: float


def exactly(figure: float) -> Range:
    """Return the range of a figure that was given."""
    return Range(figure, figure)
