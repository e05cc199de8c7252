"""An adapter that feeds a card's port from peripheral 4-pin plugs.

Up to 75 W in all the contacts carry it, the adapter's make is the doubt; each such adapter on the way is named. Above
75 W CON117 stops as well. From a SATA plug it is CON115.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import PERIPHERAL_ADAPTER_WATTS
from service.facts.points import PERIPHERAL_CARD_ADAPTER_POINTS
from service.rules.connectors.peripherals import feeds_card
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each adapter from peripheral plugs to a card's port."""
    for joint in case.joints:
        for adapter in joint.adapters:
            if feeds_card(adapter):
                yield Finding(joint.at, values=(("connector", joint.connector), ("gives", adapter.gives)))


RULE = Rule(
    id="CON116", title="A peripheral plug feeds a card", weight="caution",
    points=int(PERIPHERAL_CARD_ADAPTER_POINTS.value), aspect="connections", since="0.1",
    rests_on=(PERIPHERAL_ADAPTER_WATTS, PERIPHERAL_CARD_ADAPTER_POINTS), check=check, planned=True,
    message="An adapter from peripheral plugs to {gives} is on the way to this {connector} port.",
    why="The wires of a drive cable serve other devices too, and loose round contacts are common.",
    remedy="Use a card plug of the supply if there is one; else keep other devices off this cable. Should it smell or "
    "discolour, pull the mains cord and do not use it again.",
)
