"""Watts of a card's plug, if the card shared them equally over its plugs, against the watts that the plug is rated for.

Where a card's maker does not say what each plug carries, the plugs are taken to share in proportion to their ratings,
which is an assumption: a 6-pin plug half of what an 8-pin plug carries. Some cards share equally. Then a plug of the
lower rating may be past it, which is told as advice. Exactly the rating passes. Where it is passed in proportion too,
CON102 speaks.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import PLUG_WATTS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each port of a card whose plug would be past its rating only if the card shared equally."""
    for joint in case.joints:
        rated = PLUG_WATTS.get(joint.connector)
        if rated is not None and joint.watts_12v <= rated.value < joint.equal_watts:
            yield Finding(joint.at, joint.equal_watts, rated.value, "W", (("connector", joint.connector),))


RULE = Rule(
    id="CON124", title="A plug would be past its rating if the card shared equally", weight="advice", points=0,
    aspect="connections", since="0.1", rests_on=(PLUG_WATTS["pcie-6"], PLUG_WATTS["pcie-8"], PLUG_WATTS["12v-2x6"]),
    check=check, planned=True,
    message="Nothing says how the card shares its watts over its plugs. If it shares equally, this {connector} plug "
    "carries {measured} {unit}; it is rated for {limit} {unit}.",
    why="Most cards draw less from the smaller plug, as is counted here; one that does not asks more of it than it is "
    "made for.",
    remedy="Ask the card's maker what each plug carries and enter it as the watts of the port, or set a lower power "
    "limit for the card.",
)
