"""Watts on 12 V of a riser that a SATA plug feeds, against what the plug's pins carry.

Three pins of 1.5 A at 12 V are 54 W; a slot may draw 66 W on 12 V. Exactly 54 W pass. Other devices on SATA plugs are
CON107.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import DRIVE_PLUG_12V_WATTS
from service.rules.connectors.risers import over_sata
from service.rules.connectors.strains import plug_watts
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each riser that draws more through a SATA plug than its pins carry."""
    for joint in case.joints:
        if over_sata(case, joint):
            watts = plug_watts(case, joint)
            yield Finding(joint.at, watts, DRIVE_PLUG_12V_WATTS.value, "W", (("connector", joint.connector),))


RULE = Rule(
    id="CON121", title="A riser draws more than a SATA plug carries", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(DRIVE_PLUG_12V_WATTS,), check=check, planned=True,
    message="The riser draws {measured} {unit} at 12 V from a SATA plug; its pins carry {limit} {unit}.",
    why="A card may draw all that a slot gives, and a SATA plug cannot: risers fed this way have burned.",
    remedy="Feed the riser from a card plug of the supply, or take a riser that has one.",
)
