"""A 20-pin main plug alone in a 24-pin main port.

It goes in and most boards start; one contact each of 12 V, 5 V and 3.3 V is missing. The amps of the others are
CON104 and CON105. A plan never does this: it speaks of a wiring as plugged.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import MAIN_12V_CONTACTS
from service.rules.connectors.halves import MAIN_PLUGS, half_mated
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a 20-pin main plug in a 24-pin port."""
    for joint in case.joints:
        plug = half_mated(joint, MAIN_PLUGS)
        if plug is not None:
            yield Finding(joint.at, values=(("connector", joint.connector), ("plug", plug.connector)))


RULE = Rule(
    id="CON111", title="A 20-pin plug feeds a 24-pin main port", weight="caution", points=3, aspect="connections",
    since="0.1", rests_on=(MAIN_12V_CONTACTS,), check=check, planned=True,
    message="The {plug} plug sits in the {connector} port: one of two 12 V contacts is missing, and others too.",
    why="All that slots and fans take from 12 V then passes one contact.",
    remedy="Add the 4-pin piece that belongs to the plug, or use a supply with a 24-pin plug.",
)
