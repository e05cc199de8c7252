"""Amps of one contact or wire above what any grade of contact is sure to carry, up to the stop of CON104.

The guide calls 18 AWG right for 6 to 8 A a contact: up to 6 A nothing is said, above it contacts of an unknown grade
and thin wires have no reserve. Exactly 6 A passes. A connection that is past a stop is not named again.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import BAND_AMPS, STOP_AMPS
from service.facts.points import BAND_POINTS
from service.rules.connectors.strains import in_amps, worst_at
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a contact or wire in the band below the stop."""
    for joint in case.joints:
        strain = worst_at(joint, "band")
        if strain is not None:
            yield in_amps(joint, strain)


RULE = Rule(
    id="CON105", title="A contact or wire has little reserve", weight="caution", points=int(BAND_POINTS.value),
    aspect="connections", since="0.1", rests_on=(BAND_AMPS, STOP_AMPS, BAND_POINTS), check=check,
    planned=True,
    message="On the way to this {connector} port one {cause} {spot} carries {measured} {unit}; up to {limit} {unit} "
    "all is well.",
    why="Good contacts carry this much, worn or plain ones run hot; nothing is left for one that sits badly.",
    remedy="Use one cable for each plug of the card if the supply has them, and push every plug in until it clicks.",
)
