"""A drive with Power Disable on a cable that carries 3.3 V.

Pin 3 was 3.3 V and is Power Disable since SATA 3.3: such a drive stays off while 3.3 V stands on it. Only a SATA plug
can bring 3.3 V. A cable of which nothing is known is unknown, plug by plug.
"""

from collections.abc import Iterator

from service.case.case import Case, FeedPlug, Joint
from service.case.place import Place
from service.facts.contacts import POWER_DISABLE_PIN
from service.facts.points import THREE_VOLT_POINTS
from service.parts.records import Drive
from service.rules.rule import Finding, Rule, Said, Unknown

SATA = "sata-power"


def check(case: Case) -> Iterator[Said]:
    """Yield each drive with Power Disable that a cable with 3.3 V keeps off."""
    for joint in case.joints:
        part = case.build.units[joint.at.unit].part
        if isinstance(part, Drive) and part.power_disable:
            for plug in joint.plugs:
                if plug.connector == SATA and plug.mate != "impossible":
                    yield from _at(joint, plug)


def _at(joint: Joint, plug: FeedPlug) -> Iterator[Said]:
    if plug.carries_3v3 is None:
        own = plug.cable < 0
        field = "carries_3v3" if own else f"cables/{plug.cable}/carries_3v3"
        yield Unknown(Place("cable", plug.unit, (plug.cable, plug.copy, plug.plug)), field)
    elif plug.carries_3v3:
        yield Finding(joint.at, values=(("connector", joint.connector),))


RULE = Rule(
    id="CON120", title="The cable's 3.3 V keeps a drive switched off", weight="caution",
    points=int(THREE_VOLT_POINTS.value), aspect="connections", since="0.1",
    rests_on=(POWER_DISABLE_PIN, THREE_VOLT_POINTS), check=check, planned=True,
    message="This drive stays off while 3.3 V stands on pin 3 of its plug, and the cable carries 3.3 V.",
    why="The drive takes 3.3 V on that pin as the order to switch off; nothing is broken, it just never appears.",
    remedy="Use a drive cable without 3.3 V that is made for this supply, or one that leads from a peripheral plug by "
    "crimped "
    "contacts.",
)
