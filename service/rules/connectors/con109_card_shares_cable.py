"""Watts of one card over one cable that feeds two or more of its ports, against 225 W.

It is said of the cable. A habit of the trade: one cable with two 8-pin plugs is good for 225 W in all, above that a
cable for each plug is better. Exactly 225 W pass. Contacts and wires past their limits are CON104 and CON105.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import SHARED_CABLE_WATTS
from service.facts.points import SHARE_POINTS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each cable that carries too much of one card through several plugs."""
    for share in case.shares:
        if share.watts > SHARED_CABLE_WATTS.value:
            yield Finding(share.cable, share.watts, SHARED_CABLE_WATTS.value, "W", (("ports", share.ports),))


RULE = Rule(
    id="CON109", title="A card is fed through too few cables", weight="caution", points=int(SHARE_POINTS.value),
    aspect="connections", since="0.1", rests_on=(SHARED_CABLE_WATTS, SHARE_POINTS), check=check, planned=True,
    message="One cable carries {measured} {unit} of one card through {ports} plugs; up to {limit} {unit} that is fine.",
    why="The wires from the supply to the first plug carry all of it and drop voltage just when the card asks for "
    "most.",
    remedy="Feed each plug of the card from a cable of its own if the supply has them.",
)
