"""Amps of one rail of a drive plug against 4.5 A, for long and at start-up.

A SATA power plug has three pins for each rail, 1.5 A each. The seconds of spin-up count in full: the rating knows
none. What a fan takes more as it starts is over within one, and does not count. Exactly 4.5 A pass. A peripheral plug
has one thicker contact for each rail. The cable's wires are CON104 and CON108; a riser that draws too much of a SATA
plug is CON121.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import DRIVE_PLUG_RAIL_AMPS
from service.rules.connectors.risers import over_sata
from service.rules.connectors.strains import in_amps, of_all, worst
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a drive plug that carries more on a rail than its pins may."""
    for joint in case.joints:
        strain = worst(joint, ("drive_rail",))
        if strain is not None and not over_sata(case, joint):
            yield in_amps(joint, of_all(strain))


RULE = Rule(
    id="CON107", title="A drive plug carries more on a rail than its pins may", weight="stop", points=0,
    aspect="connections", since="0.1", rests_on=(DRIVE_PLUG_RAIL_AMPS,), check=check, planned=True,
    message="On the way to this {connector} port a drive plug {spot} carries {measured} {unit} on {rail}; its pins "
    "are rated for {limit} {unit}.",
    why="The pins of a drive plug are thin; adapters and splitters that ask more of one have burned.",
    remedy="Spread the devices over more plugs of the supply's own cables, without splitters.",
)
