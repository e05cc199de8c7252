"""Sustained watts of all devices against the watts that the supply is rated for.

Sum at nominal rail volts, every device at its sustained draw at once. Exactly the rating passes: a supply gives 100 %
of it without an end. Short moments are judged by PWR401 to PWR406, rails by PWR201, headroom by PWR102.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.supply import CONTINUOUS_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when more is asked of it for long than it is rated for."""
    supply = case.supply_part
    if case.supply is None or supply is None:
        return
    limit = part_of(supply.rated_watts, CONTINUOUS_PERCENT)
    if case.sustained_watts > limit:
        yield Finding(Place("supply", case.supply), case.sustained_watts, limit, "W")


RULE = Rule(
    id="PWR101", title="The build draws more than the supply is rated for", weight="stop", points=0, aspect="power",
    since="0.1", rests_on=(CONTINUOUS_PERCENT,), check=check,
    message="With everything at work the build draws {measured} {unit} for long; the supply is rated for {limit} "
    "{unit}.",
    why="Past its rating a supply runs hot and switches off, or fails; its protection is no reserve to live on.",
    remedy="Choose a supply with a higher rating, or set lower power limits for the card and the processor.",
)
