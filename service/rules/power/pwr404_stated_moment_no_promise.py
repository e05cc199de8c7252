"""Watts of a short moment that makers state, against the table, for an ATX 2.x supply, which promises nothing.

The 2.x guides print a slow peak of seconds and no table for microseconds. That there is no promise is a known fact,
not a missing figure: the supply is measured by the column that would be its own, and this cautions. With a promise:
PWR403.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import SLOW_PEAK, SMALL_PERCENT
from service.rules.power.column import said, stated
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each stated moment above the column of a supply that promises nothing."""
    for moment in stated(case):
        if moment.promised_watts is None and moment.watts > moment.own_column_watts:
            yield said(moment, moment.watts, moment.own_column_watts)


RULE = Rule(
    id="PWR404", title="A stated peak meets a supply that promises nothing for it", weight="caution", points=8,
    aspect="power", since="0.1", rests_on=(SLOW_PEAK, SMALL_PERCENT), check=check,
    message="For {microseconds} microseconds the build asks for {measured} {unit}, by its makers' figures; a newer "
    "supply of "
    "this size would have to carry {limit} {unit}, this one promises nothing.",
    why="Supplies built to ATX 2.x were never asked to carry such leaps; some do, some switch off.",
    remedy="Choose a supply built to an ATX 3.x guide, or a larger one.",
)
