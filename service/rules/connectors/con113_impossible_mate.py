"""A plug in a port that it cannot feed: made for another port, or without a rail that the device asks.

It speaks of a wiring as plugged; a plan never does this. Plugs that go in by half are CON110 to CON112, a cable in a
socket that is not its own is CON122.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import PLUGS_INTERCHANGED
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a plug that cannot feed its port."""
    for joint in case.joints:
        plug = next((plug for plug in joint.plugs if plug.mate == "impossible"), None)
        if plug is not None:
            values = (("connector", joint.connector), ("plug", plug.connector), ("reason", joint.reason))
            yield Finding(joint.at, values=values)


RULE = Rule(
    id="CON113", title="A plug cannot feed the port that it is put in", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(PLUGS_INTERCHANGED,), check=check, planned=True,
    message="The wiring puts the {plug} plug in this {connector} port, or in an adapter before it. It cannot feed it: "
    "{reason}.",
    why="Plugs look alike and are wired differently: a processor plug and a card plug have 12 V and return exchanged. "
    "Forced in, it is a dead short. A plug that lacks a voltage goes in, and the device stays dead.",
    remedy="Switch off, unplug the supply and take the plug out. Use one that is made for this port and goes in "
    "without force.",
)
