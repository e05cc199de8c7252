"""A 4-pin processor plug alone in an 8-pin processor port.

It goes in and the board starts; half of the contacts carry all of the current. The amps of these contacts are CON104
and CON105. A plan never does this: it speaks of a wiring as plugged.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import PROCESSOR_4_CONTACTS, PROCESSOR_8_CONTACTS
from service.rules.connectors.halves import PROCESSOR_PLUGS, half_mated
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a 4-pin processor plug in an 8-pin port."""
    for joint in case.joints:
        plug = half_mated(joint, PROCESSOR_PLUGS)
        if plug is not None:
            yield Finding(joint.at, values=(("connector", joint.connector), ("plug", plug.connector)))


RULE = Rule(
    id="CON110", title="A 4-pin plug feeds an 8-pin processor port", weight="caution", points=5, aspect="connections",
    since="0.1", rests_on=(PROCESSOR_8_CONTACTS, PROCESSOR_4_CONTACTS), check=check, planned=True,
    message="The {plug} plug sits in the {connector} port: two contacts carry what four are there for.",
    why="The board starts, and under load the two contacts run hot.",
    remedy="Plug in both halves, or an 8-pin plug. Never use a card plug here: its 12 V and return are the other way "
    "round.",
)
