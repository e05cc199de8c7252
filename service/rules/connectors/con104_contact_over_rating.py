"""Amps of one 4.2 mm contact or wire against the most that it should carry for long.

The worst contact or wire on the way: at the port, in an adapter, along the cable, at the supply's socket. 8 A unless a
grade or a print says otherwise; exactly the limit passes. From 6 A on CON105 cautions. 16-pin contacts are CON106.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import STOP_AMPS
from service.rules.connectors.strains import ONE_CONTACT, in_amps, worst
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a contact or wire that carries more than it should for long."""
    for joint in case.joints:
        strain = worst(joint, ONE_CONTACT, sixteen_pin=False)
        if strain is not None:
            yield in_amps(joint, strain)


RULE = Rule(
    id="CON104", title="A contact or wire carries more than it should for long", weight="stop", points=0,
    aspect="connections", since="0.1", rests_on=(STOP_AMPS,), check=check, planned=True,
    message="On the way to this {connector} port one {cause} {spot} carries {measured} {unit}; {limit} {unit} is the "
    "most for long.",
    why="A contact past its rating heats, heat loosens it, and a loose contact heats more: this is how plugs char.",
    remedy="Give the device another cable from the supply, so that more wires share the current.",
)
