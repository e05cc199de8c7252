"""Watts of all devices at start-up against the watts that the supply is rated for.

Drives and pumps that start together stand at their starting amps, processors at their sustained draw, cards idle. No
guide gives a supply more than its rating for the seconds of a start; the sustained draw is PWR101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.supply import CONTINUOUS_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when more is asked of it at start-up than it is rated for."""
    supply = case.supply_part
    if case.supply is None or supply is None:
        return
    limit = part_of(supply.rated_watts, CONTINUOUS_PERCENT)
    if case.starting_watts > limit:
        yield Finding(Place("supply", case.supply), case.starting_watts, limit, "W")


RULE = Rule(
    id="PWR103", title="The build draws more at start-up than the supply is rated for", weight="stop", points=0,
    aspect="power", since="0.1", rests_on=(CONTINUOUS_PERCENT,), check=check,
    message="At start-up the build draws {measured} {unit}; the supply is rated for {limit} {unit}.",
    why="Drives take seconds to spin up, far longer than a supply may be past its rating; it switches off and the "
    "machine never starts.",
    remedy="Let the drives start one after another if they and their controller can, or choose a supply with a higher "
    "rating.",
)
