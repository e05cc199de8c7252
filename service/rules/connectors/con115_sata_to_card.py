"""An adapter that feeds a port of a card, processor or board from a SATA power plug.

No watts make this good, so none are compared: a SATA plug carries 54 W on 12 V and the port it feeds may draw 75 W or
more. It speaks of a wiring as plugged; a plan never does this.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import PLUG_WATTS
from service.facts.contacts import DRIVE_PLUG_12V_WATTS
from service.parts.words import CARD, MAIN, PROCESSOR
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each heavy port that a SATA plug feeds through an adapter."""
    for joint in case.joints:
        by_sata = any(adapter.takes == "sata-power" for adapter in joint.adapters)
        if by_sata and joint.connector in CARD | PROCESSOR | MAIN:
            yield Finding(joint.at, values=(("connector", joint.connector),))


RULE = Rule(
    id="CON115", title="A SATA plug feeds a heavy port", weight="stop", points=0, aspect="connections", since="0.1",
    rests_on=(DRIVE_PLUG_12V_WATTS, PLUG_WATTS["pcie-6"]), check=check, planned=True,
    message="An adapter feeds the {connector} port from a SATA plug.",
    why="The pins of a SATA plug are made for a drive; cards, processors and boards draw far more, and such adapters "
    "have burned.",
    remedy="Do not use it. Take a plug of the supply made for this port, or a supply that has one.",
)
