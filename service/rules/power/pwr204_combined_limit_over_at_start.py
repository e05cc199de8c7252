"""Watts of several rails together at start-up against the limit that the supply prints for them.

Watts at nominal volts, drives and pumps that start together at their starting amps. No guide gives such a limit more
for the seconds of a start than for long. The sustained draw is PWR203, each rail by itself PWR202.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield each shared limit that its rails pass together at start-up."""
    for shared in case.combined:
        limit = part_of(shared.limit_watts, PRINTED_PERCENT)
        if shared.starting_watts > limit:
            rails = " + ".join(shared.rails)
            yield Finding(shared.at, shared.starting_watts, limit, "W", (("rails", rails),))


RULE = Rule(
    id="PWR204", title="Rails that share a limit pass it together at start-up", weight="stop", points=0,
    aspect="power", since="0.1", rests_on=(PRINTED_PERCENT,), check=check,
    message="At start-up the rails {rails} together carry {measured} {unit}; the supply allows them {limit} {unit}.",
    why="Drives draw several times as much while they spin up; if the supply's protection acts then, the machine never "
    "starts.",
    remedy="Let the drives start one after another if they and their controller can, or choose a supply with a higher "
    "combined limit.",
)
