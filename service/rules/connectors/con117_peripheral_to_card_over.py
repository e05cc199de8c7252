"""Watts through an adapter from peripheral plugs to a card's port, against 75 W.

All ports that the adapter feeds count together, sustained. Exactly 75 W pass; CON116 cautions then.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import PERIPHERAL_ADAPTER_WATTS
from service.rules.connectors.peripherals import feeds_card
from service.rules.connectors.strains import adapter_watts
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection through an adapter from peripheral plugs that carries more than it should."""
    for joint in case.joints:
        watts = max((adapter_watts(case, one) for one in joint.adapters if feeds_card(one)), default=0.0)
        if watts > PERIPHERAL_ADAPTER_WATTS.value:
            values = (("connector", joint.connector),)
            yield Finding(joint.at, watts, PERIPHERAL_ADAPTER_WATTS.value, "W", values)


RULE = Rule(
    id="CON117", title="Peripheral plugs feed a card with more than 75 W", weight="stop", points=0,
    aspect="connections", since="0.1", rests_on=(PERIPHERAL_ADAPTER_WATTS,), check=check, planned=True,
    message="An adapter from peripheral plugs feeds this {connector} port with {measured} {unit}; {limit} {unit} is "
    "the most.",
    why="Drive cables were not made for cards; past this their contacts and the adapter's overheat.",
    remedy="Take a card plug of the supply, or a supply that has one.",
)
