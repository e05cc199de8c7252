"""Watts that a card takes through its slot against what a slot gives.

The share is the card's own figure, or, for a card without plugs, all that it draws. An assumed share never passes the
limit. Exactly 75 W pass. What the main connector carries for all slots together is judged by CON104 and CON105.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.slot import SLOT_WATTS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each card that takes more through its slot than a slot gives."""
    for unit, watts in case.demand.slots:
        if watts > SLOT_WATTS.value:
            yield Finding(Place("unit", unit), watts, SLOT_WATTS.value, "W")


RULE = Rule(
    id="PWR302",
    title="A card takes more from its slot than a slot gives",
    weight="stop",
    points=0,
    aspect="power",
    since="0.1",
    rests_on=(SLOT_WATTS,),
    check=check,
    message="The card takes {measured} {unit} through its slot; a slot gives {limit} {unit}.",
    why="What a slot carries passes through two contacts of the main connector and small traces of the board.",
    remedy="Look at the card's figures again: above 75 W a card has plugs of its own.",
)
