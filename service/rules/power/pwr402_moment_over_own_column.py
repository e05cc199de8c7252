"""Derived watts of a short moment against the column of the published table that is the supply's own.

The small column holds for supplies of 450 W or less and for any without a 16-pin connector. Advice only, since the
moment is derived and many supplies carry more than their column. Above the large column PWR401 speaks instead.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import CARD_RATIO
from service.facts.supply import LARGE_PERCENT, SMALL_PERCENT
from service.rules.power.column import derived, said
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each derived moment above the supply's own column, but not above the large one."""
    for moment in derived(case):
        if moment.own_column_watts < moment.watts <= moment.large_column_watts:
            yield said(moment, moment.watts, moment.own_column_watts)


RULE = Rule(
    id="PWR402", title="A short peak is likely past what such a supply must carry", weight="advice", points=0,
    aspect="power", since="0.1", rests_on=(SMALL_PERCENT, LARGE_PERCENT, CARD_RATIO), check=check,
    message="For {microseconds} microseconds the build may ask for {measured} {unit}; the design guide "
    "asks a supply like this one to carry {limit} {unit}.",
    why="Supplies without a 16-pin connector, and small ones, need only carry shorter leaps; many carry more, none "
    "must.",
    remedy="If the machine switches off under sudden load, look here first; an ATX 3.x supply above 450 W has more "
    "reserve.",
)
