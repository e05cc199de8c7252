"""Sustained watts against the least load that efficiency levels are stated for: 20 % of the rating.

It is looked at with the most that the build may draw, so only a supply that is large by any reading is named. Exactly
20 % passes. It costs money and no safety: advice. Where no load is known nothing is said.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.efficiency import BAND_FROM_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when the build at work stays below the loads that its efficiency is stated for."""
    supply = case.supply_part
    if case.supply is None or supply is None:
        return
    limit = part_of(supply.rated_watts, BAND_FROM_PERCENT)
    if 0 < case.sustained_watts < limit:
        yield Finding(Place("supply", case.supply), case.sustained_watts, limit, "W")


RULE = Rule(
    id="PWR701", title="The supply is large for this build", weight="advice", points=0, aspect="power", since="0.1",
    rests_on=(BAND_FROM_PERCENT,), check=check,
    message="At work the build draws {measured} {unit}; the supply's efficiency is stated from {limit} {unit} on.",
    why="Far below its rating a supply wastes a larger part of what it takes from the wall.",
    remedy="A smaller supply does the same for less, unless more parts are to come.",
)
