"""Amps of one wire of a drive cable at start-up against 8 A.

Seconds of spin-up warm a wire little, so this cautions. Exactly 8 A pass. For long CON104 stops, and a connection
that is past a stop is not named again.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import DRIVE_CABLE_AMPS
from service.facts.points import START_WIRE_POINTS
from service.rules.connectors.strains import in_amps, worst_at
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection whose drive cable has a wire above the limit at start-up."""
    for joint in case.joints:
        strain = worst_at(joint, "start_band")
        if strain is not None:
            yield in_amps(joint, strain)


RULE = Rule(
    id="CON108", title="A drive cable carries much at start-up", weight="caution", points=int(START_WIRE_POINTS.value),
    aspect="connections", since="0.1", rests_on=(DRIVE_CABLE_AMPS, START_WIRE_POINTS), check=check, planned=True,
    message="At start-up one wire of the cable to this {connector} port carries {measured} {unit} on {rail}; {limit} "
    "{unit} is "
    "what to plan with.",
    why="Many disks spinning up on one cable pull its voltage down, and the last of them may not be found.",
    remedy="Spread the disks over more cables, or let them start one after another.",
)
