"""A plug in a port that it is not made for.

It speaks of a wiring as plugged; a plan never does this. Plugs that go in by half are CON110 to CON112, a cable in a
socket that is not its own is CON122.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import PLUGS_INTERCHANGED
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a plug that does not mate."""
    for joint in case.joints:
        plug = next((plug for plug in joint.plugs if plug.mate == "impossible"), None)
        if plug is not None:
            yield Finding(joint.at, values=(("connector", joint.connector), ("plug", plug.connector)))


RULE = Rule(
    id="CON113", title="A plug is in a port that it is not made for", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(PLUGS_INTERCHANGED,), check=check, planned=True,
    message="A {plug} plug does not belong where it is put on the way to this {connector} port.",
    why="Plugs look alike and are wired differently: a processor plug and a card plug have 12 V and return exchanged. "
    "Forced in, "
    "it is a dead short.",
    remedy="Switch off, unplug the supply, take the plug out, and use one that goes in without force.",
)
