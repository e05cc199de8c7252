"""Sustained watts of several rails together against the limit that the supply prints for them.

Watts at nominal volts. A supply that prints none is taken to have a usual one for 5 V and 3.3 V. Exactly the limit
passes. Each rail by itself is PWR201, the whole supply PWR101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield each shared limit that its rails pass together."""
    for shared in case.combined:
        limit = part_of(shared.limit_watts, PRINTED_PERCENT)
        if shared.watts > limit:
            yield Finding(shared.at, shared.watts, limit, "W", (("rails", " + ".join(shared.rails)),))


RULE = Rule(
    id="PWR203", title="Rails that share a limit pass it together", weight="stop", points=0, aspect="power",
    since="0.1", rests_on=(PRINTED_PERCENT,), check=check,
    message="The rails {rails} together carry {measured} {unit} for long; the supply allows them {limit} {unit}.",
    why="The small rails of a supply often come from one converter; each may be within its own limit and both past "
    "theirs.",
    remedy="Choose a supply with a higher combined limit for these rails, or put fewer parts on them.",
)
