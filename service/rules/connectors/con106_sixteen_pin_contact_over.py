"""Amps of one contact of a 16-pin plug against its rating of 9.2 A.

The current is divided equally over the contacts that are not known to be open; sustained means over a second and more.
Exactly the rating passes. Unequal sharing, which worn contacts bring, is not assumed here.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import SIXTEEN_PIN_AMPS
from service.rules.connectors.strains import ONE_CONTACT, in_amps, worst
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a 16-pin contact above its rating."""
    for joint in case.joints:
        strain = worst(joint, ONE_CONTACT, sixteen_pin=True)
        if strain is not None:
            yield in_amps(joint, strain)


RULE = Rule(
    id="CON106", title="A 16-pin contact carries more than its rating", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(SIXTEEN_PIN_AMPS,), check=check, planned=True,
    message="On the way to this {connector} port one 16-pin {cause} {spot} carries {measured} {unit}; its rating is "
    "{limit} {unit}.",
    why="These small contacts work close to their rating by design; past it they have melted plugs.",
    remedy="Replace a cable with an open or worn contact at once; else set a lower power limit for the card.",
)
