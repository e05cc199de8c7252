"""Volts measured of a supply at the end of its own cables, against what the design guide allows of the rail.

12 V: 11.40 to 12.60 V, of designs since ATX 3.0 11.16 to 12.60 V; 5 V and standby 4.75 to 5.25 V; 3.3 V 3.14 to 3.47 V.
Both ends pass. The 10 % that older guides allow 12 V at peak load, for seconds, is not what a meter shows. Ports are
RDG102.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.rails import (
    HIGHEST_3_3,
    HIGHEST_5,
    HIGHEST_12,
    LOWEST_3_3,
    LOWEST_5,
    LOWEST_12,
    LOWEST_12_NEW,
)
from service.rules.readings.spans import outside
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each rail of the supply that was measured outside of its span."""
    for read in case.readings:
        found = outside(read) if read.is_of_supply else None
        if found is not None:
            yield found


RULE = Rule(
    id="RDG101", title="A rail was measured outside of what a supply may give", weight="stop", points=0, aspect="power",
    since="0.1", rests_on=(LOWEST_12, LOWEST_12_NEW, HIGHEST_12, LOWEST_5, HIGHEST_5, LOWEST_3_3, HIGHEST_3_3),
    check=check,
    message="{measured} {unit} were measured of the {rail} rail at the supply; {limit} {unit} is the {most} that it "
    "may give.",
    why="A supply that does not hold its volts is overloaded or failing, and what hangs on it fails with it.",
    remedy="Measure once more at a plug that sits well; if it stays so, take the supply out of use.",
)
