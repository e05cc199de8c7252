"""Sustained amps of one rail against the most amps printed for it.

Amps are watts at nominal volts. Exactly the printed amps pass. Start-up is PWR202, shared limits PWR203,
5 V standby PWR205.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.power.standby import STANDBY
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield each rail that is asked for more amps, for long, than it gives."""
    for rail in case.rails:
        limit = part_of(rail.max_amps, PRINTED_PERCENT)
        if rail.sustained_amps > limit and rail.rail != STANDBY:
            yield Finding(rail.at, rail.sustained_amps, limit, "A", (("rail", rail.rail),))


RULE = Rule(
    id="PWR201", title="A rail gives less than the build draws from it", weight="stop", points=0, aspect="power",
    since="0.1", rests_on=(PRINTED_PERCENT,), check=check,
    message="The build draws {measured} {unit} from the {rail} rail for long; the supply gives {limit} {unit} there.",
    why="A rail past its limit sags or trips, even where the supply has watts to spare on the others.",
    remedy="Choose a supply that gives more on this rail.",
)
