"""Amps of one rail at start-up against the most amps printed for it.

Drives and pumps that start together stand at their starting amps, processors at their sustained draw, cards idle. A
rail is not given more for the seconds of a start than for long: no guide promises that. The sustained draw is PWR201,
5 V standby PWR205.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.power.standby import STANDBY
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield each rail that is asked for more amps at start-up than it gives."""
    for rail in case.rails:
        limit = part_of(rail.max_amps, PRINTED_PERCENT)
        if rail.starting_amps > limit and rail.rail != STANDBY:
            yield Finding(rail.at, rail.starting_amps, limit, "A", (("rail", rail.rail),))


RULE = Rule(
    id="PWR202", title="A rail gives less than the build draws from it at start-up", weight="stop", points=0,
    aspect="power", since="0.1", rests_on=(PRINTED_PERCENT,), check=check,
    message="At start-up the build draws {measured} {unit} from the {rail} rail; the supply gives {limit} {unit} "
    "there.",
    why="Drives draw several times as much while they spin up; if the rail trips then, the machine never starts.",
    remedy="Let the drives start one after another if they and their controller can, or choose a supply that gives "
    "more "
    "on this rail.",
)
