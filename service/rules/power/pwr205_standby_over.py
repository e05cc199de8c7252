"""Amps on 5 V standby against the most amps printed for it.

The board's own standby draw, with what it charges and wakes by, against the supply's print; where neither is given each
stands in the case as a range. Exactly the printed amps pass. The short peak that the guide allows its example (2.5 A)
is not counted on. Supplies of 12 V only have no such rail unless they print one.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT, STANDBY_AMPS
from service.rules.power.standby import STANDBY
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the standby rail when more is drawn from it than it gives."""
    for rail in case.rails:
        if rail.rail != STANDBY:
            continue
        amps = max(rail.sustained_amps, rail.starting_amps)
        limit = part_of(rail.max_amps, PRINTED_PERCENT)
        if amps > limit:
            yield Finding(rail.at, amps, limit, "A", (("rail", rail.rail),))


RULE = Rule(
    id="PWR205", title="The standby rail gives less than the build draws from it", weight="stop", points=0,
    aspect="power", since="0.1", rests_on=(PRINTED_PERCENT, STANDBY_AMPS), check=check,
    message="On the {rail} rail the build draws {measured} {unit}, asleep as well as at work; the supply gives {limit} "
    "{unit} there.",
    why="Standby feeds the circuit that switches the machine on; if it sags, the machine does not wake, or starts and "
    "stops again.",
    remedy="Choose a supply that gives more on standby, or switch charging ports and wake-up functions off in the "
    "board's set-up.",
)
