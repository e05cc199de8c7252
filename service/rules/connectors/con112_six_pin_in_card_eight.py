"""A 6-pin card plug in an 8-pin card port, and the watts that pass it, against 75 W.

The missing sense pin tells the card that 75 W is all there is. Exactly 75 W pass. Behind an adapter the plug is taken
to carry an equal share of all that the adapter at the port feeds. A plan never does this: it speaks of a wiring as
plugged.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import SENSED_6_PIN_WATTS
from service.rules.connectors.halves import CARD_PLUGS, half_mated
from service.rules.connectors.strains import plug_watts
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a 6-pin card plug in an 8-pin port that carries more than the sense pin allows."""
    for joint in case.joints:
        watts = plug_watts(case, joint)
        plug = half_mated(joint, CARD_PLUGS)
        if plug is not None and watts > SENSED_6_PIN_WATTS.value:
            values = (("connector", joint.connector), ("plug", plug.connector))
            yield Finding(joint.at, watts, SENSED_6_PIN_WATTS.value, "W", values)


RULE = Rule(
    id="CON112", title="A 6-pin plug feeds an 8-pin card port past 75 W", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(SENSED_6_PIN_WATTS,), check=check, planned=True,
    message="The {plug} plug feeds an 8-pin card port with {measured} {unit}; by its sense pin the card may "
    "take {limit} {unit}.",
    why="The card is told that little power is there; it refuses to start, slows down, or overloads the plug.",
    remedy="Plug in all eight pins: a 6+2 plug with both pieces, from the supply's own cable.",
)
