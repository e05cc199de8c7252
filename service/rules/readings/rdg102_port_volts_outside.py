"""Volts measured at a port, against what the design guide allows of the rail at the load end of a supply's cables.

The spans of RDG101; 12 V of a card's own plug may be 8 % low with designs since ATX 3.0. Extensions and adapters lie
between, and cost volts that the guide does not count, so this is a caution. Both ends pass.
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
    LOWEST_12_AT_CARD,
    LOWEST_12_NEW,
)
from service.rules.readings.spans import outside
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each port that was measured outside of its rail's span."""
    for read in case.readings:
        found = None if read.is_of_supply else outside(read)
        if found is not None:
            yield found


RULE = Rule(
    id="RDG102", title="A port was measured outside of what its rail should have", weight="caution", points=6,
    aspect="power", since="0.1", rests_on=(
        LOWEST_12_AT_CARD, LOWEST_12, LOWEST_12_NEW, HIGHEST_12, LOWEST_5, HIGHEST_5, LOWEST_3_3, HIGHEST_3_3,
    ),
    check=check,
    message="{measured} {unit} were measured of {rail} at this port; {limit} {unit} is the {most} that it should have.",
    why="Something on the way takes too much: a worn contact, a thin wire, a chain of adapters, or the supply itself.",
    remedy="Measure the supply's own plug too; if that is well, renew or shorten what lies between.",
)
