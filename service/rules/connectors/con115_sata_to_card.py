"""An adapter that feeds a card's port from a SATA power plug.

No watts make this good, so none are compared: a SATA plug carries 54 W on 12 V and the port it feeds may draw 75 W or
more. It speaks of a wiring as plugged; a plan never does this.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import PLUG_WATTS
from service.facts.contacts import DRIVE_PLUG_12V_WATTS
from service.parts.words import CARD
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each card port that a SATA plug feeds through an adapter."""
    for joint in case.joints:
        if joint.connector in CARD and any(adapter.takes == "sata-power" for adapter in joint.adapters):
            yield Finding(joint.at, values=(("connector", joint.connector),))


RULE = Rule(
    id="CON115", title="A SATA plug feeds a card", weight="stop", points=0, aspect="connections", since="0.1",
    rests_on=(DRIVE_PLUG_12V_WATTS, PLUG_WATTS["pcie-6"]), check=check, planned=True,
    message="An adapter feeds the {connector} port of a card from a SATA plug.",
    why="The pins of a SATA plug are made for a drive; a card draws far more, and such adapters have burned.",
    remedy="Do not use it. Take a card plug of the supply, or a supply that has one.",
)
