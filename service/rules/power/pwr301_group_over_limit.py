"""Sustained amps of an overcurrent group against its limit.

A group is a set of sockets and cables behind one current limit. What the wiring puts on it counts, so another plan may
cure it. Exactly the limit passes. Rails as a whole are PWR201.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield each overcurrent group that carries more than its limit."""
    for group in case.groups:
        limit = part_of(group.max_amps, PRINTED_PERCENT)
        if group.amps > limit:
            yield Finding(group.at, group.amps, limit, "A", (("group", group.name), ("rail", group.rail)))


RULE = Rule(
    id="PWR301", title="An overcurrent group carries more than its limit", weight="stop", points=0, aspect="power",
    since="0.1", rests_on=(PRINTED_PERCENT,), check=check, planned=True,
    message="The group {group} carries {measured} {unit} on {rail} for long; the supply switches off above {limit} "
    "{unit}.",
    why="Each group has a current limit of its own; past it the whole supply switches off, watts to spare or not.",
    remedy="Move a cable to a socket of another group, or choose a supply with higher limits or a single group.",
)
