"""A 16-pin plug and port of different editions: 12VHPWR on the one side, 12V-2x6 on the other.

They mate in full and carry the same. They differ in what open sense pins mean: 150 W for the older edition, nothing for
the newer one. That is told as advice; watts are CON103 and contacts CON106. Plugs of an adapter's inputs are others.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import SENSE_LEVELS
from service.parts.words import SIXTEEN_PIN
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection of a 16-pin plug to a port of the other edition."""
    for joint in case.joints:
        plug = next((one for one in joint.plugs if {one.connector, joint.connector} == SIXTEEN_PIN), None)
        if plug is not None:
            yield Finding(joint.at, values=(("connector", joint.connector), ("plug", plug.connector)))


RULE = Rule(
    id="CON123", title="Plug and port are of two editions of the 16-pin connector", weight="advice", points=0,
    aspect="connections", since="0.1", rests_on=(SENSE_LEVELS,), check=check, planned=True,
    message="The {plug} plug feeds this {connector} port; the two editions read open sense pins differently.",
    why="A plug that is not quite in is told to draw 150 W by the older edition, and nothing at all by the newer one.",
    remedy="Push the plug in until it clicks and look that no gap is left. If the card does not start, seat it again.",
)
