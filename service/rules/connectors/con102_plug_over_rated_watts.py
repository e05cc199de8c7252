"""Watts through one plug against the watts that its kind is rated for.

Sustained, at nominal volts; 100 % of the rating passes. The amps that the same table prints beside the watts are not
compared: at nominal volts the watts are reached first. The 16-pin cable's print is CON103, single contacts CON104 to
CON106.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import PLUG_WATTS
from service.rules.connectors.strains import in_watts, worst
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a plug that carries more than its rated watts."""
    for joint in case.joints:
        strain = worst(joint, ("plug",))
        if strain is not None:
            yield in_watts(joint, strain)


RULE = Rule(
    id="CON102", title="A plug carries more than its rated watts", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(PLUG_WATTS["pcie-6"], PLUG_WATTS["pcie-8"], PLUG_WATTS["12v-2x6"]), check=check,
    planned=True,
    message="A plug on the way to this {connector} port carries {measured} {unit} on {rail}; it is rated for {limit} "
    "{unit}.",
    why="The rating of a plug is what card and supply agree on; past it contacts heat, and heat loosens them.",
    remedy="Feed all ports of the device, from more cables, or set a lower power limit for it.",
)
