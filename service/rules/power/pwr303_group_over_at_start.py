"""Amps of an overcurrent group at start-up against its limit.

Drives and pumps that start together stand at their starting amps. How long a supply bears a group past its limit is not
printed, so this is advice; what the group carries for long is PWR301, rails as a whole at start-up are PWR202.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import PRINTED_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield each overcurrent group that passes its limit at start-up only."""
    for group in case.groups:
        limit = part_of(group.max_amps, PRINTED_PERCENT)
        if group.starting_amps > limit >= group.amps:
            values = (("group", group.name), ("rail", group.rail))
            yield Finding(group.at, group.starting_amps, limit, "A", values)


RULE = Rule(
    id="PWR303", title="An overcurrent group passes its limit at start-up", weight="advice", points=0, aspect="power",
    since="0.1", rests_on=(PRINTED_PERCENT,), check=check, planned=True,
    message="While the drives spin up, the group {group} carries {measured} {unit} on {rail}; its limit is {limit} "
    "{unit}.",
    why="Some supplies bear that for seconds, others switch off at once and the machine never starts.",
    remedy="Spread the drives over cables of several groups, or let them start one after another.",
)
