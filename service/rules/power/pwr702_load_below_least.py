"""Sustained amps of a rail against the least that the guide for older designs gives its example.

Designs of ATX 2.x may need some load on each rail to keep its volts; newer guides ask for none. It is looked at with
the most that the build may draw, so only a build that is small by any reading is named; asleep it draws less still. The
example is of 250 W, and larger supplies of old design may want more: advice. A rail with no load known is passed over.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import LEAST_3V3_AMPS, LEAST_5V_AMPS, LEAST_12V_AMPS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each rail of an old design that has less load than its guide's example asks for."""
    for rail in case.rails:
        if rail.least_amps is not None and 0 < rail.sustained_amps < rail.least_amps:
            yield Finding(rail.at, rail.sustained_amps, rail.least_amps, "A", (("rail", rail.rail),))


RULE = Rule(
    id="PWR702", title="A rail may have too little load for an old design", weight="advice", points=0, aspect="power",
    since="0.1", rests_on=(LEAST_12V_AMPS, LEAST_5V_AMPS, LEAST_3V3_AMPS), check=check,
    message="At work the build draws {measured} {unit} from the {rail} rail; the guide's example of this design wants "
    "{limit} {unit} there at least.",
    why="An old supply without load on a rail lets its volts drift, or does not start.",
    remedy="Ask the supply's maker for its least loads, or choose one built to an ATX 3.x guide.",
)
