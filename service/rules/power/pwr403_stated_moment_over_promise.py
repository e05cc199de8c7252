"""Watts of a short moment that makers state, against what an ATX 3.x or ATX12VO supply promises for it.

Both sides are published, by the part's maker and by the guide that the supply is built to, so this stops. Exactly the
promise passes. A supply that promises nothing is PWR404.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import LARGE_PERCENT, SMALL_PERCENT
from service.rules.power.column import said, stated
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each stated moment above the supply's promise."""
    for moment in stated(case):
        if moment.promised_watts is not None and moment.watts > moment.promised_watts:
            yield said(moment, moment.watts, moment.promised_watts)


RULE = Rule(
    id="PWR403", title="A stated peak is past what the supply promises", weight="stop", points=0, aspect="power",
    since="0.1", rests_on=(SMALL_PERCENT, LARGE_PERCENT), check=check,
    message="For {microseconds} microseconds the build asks for {measured} {unit}, by its makers' figures; the supply "
    "promises {limit} {unit}.",
    why="The makers say that the peak comes, and the supply's guide does not oblige it to follow: it may switch off.",
    remedy="Choose a supply with a higher promise for this time, or set a lower power limit for the card.",
)
