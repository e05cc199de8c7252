"""Watts through a 16-pin plug against the watts printed on its cable or adapter.

The print is what the sense wires tell the card: 600, 450, 300 or 150 W. It is taken instead of the states of the sense
pins, on which published tables differ. Exactly the print passes.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import SENSE_LEVELS
from service.rules.connectors.strains import in_watts, worst
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection whose 16-pin cable is printed for less than the card draws."""
    for joint in case.joints:
        strain = worst(joint, ("print",))
        if strain is not None:
            yield in_watts(joint, strain)


RULE = Rule(
    id="CON103", title="The 16-pin cable is printed for less than the card draws", weight="stop", points=0,
    aspect="connections", since="0.1", rests_on=(SENSE_LEVELS,), check=check, planned=True,
    message="The card draws {measured} {unit} through its {connector} plug; the cable is printed for {limit} {unit}.",
    why="The cable tells the card how much it may draw; a card that is told too little slows down or does not start.",
    remedy="Use the supply's own cable with a high enough print, or set a lower power limit for the card.",
)
