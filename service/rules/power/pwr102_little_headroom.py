"""Sustained watts against 90 % of the supply's rating.

A judgement of ours: the last tenth is left for ageing, dust and a warm day. Exactly 90 % passes. Above the rating
itself PWR101 speaks, and this rule is silent.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.comfort import HEADROOM_PERCENT
from service.facts.supply import CONTINUOUS_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when what is asked of it for long leaves less than a tenth of its rating."""
    supply = case.supply_part
    if case.supply is None or supply is None:
        return
    limit = part_of(supply.rated_watts, HEADROOM_PERCENT)
    if limit < case.sustained_watts <= part_of(supply.rated_watts, CONTINUOUS_PERCENT):
        yield Finding(Place("supply", case.supply), case.sustained_watts, limit, "W")


RULE = Rule(
    id="PWR102", title="Little of the supply's rating is left", weight="caution", points=6, aspect="power",
    since="0.1", rests_on=(HEADROOM_PERCENT, CONTINUOUS_PERCENT), check=check,
    message="The build draws {measured} {unit} for long; above {limit} {unit} less than a tenth of the rating is left.",
    why="A supply ages, gathers dust and meets warm days; one that is always near its rating is loud, hot and soon "
    "spent.",
    remedy="A supply one size up leaves room, and room for a part that is added later.",
)
