"""A cable in a socket of the supply that is not its own.

Sockets are each maker's own: the same shape can hold other voltages. It speaks of a wiring as plugged; a plan never
does this. Cables of another make are CBL101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import CABLES_INTERCHANGED
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a cable in a socket that is not its own."""
    for joint in case.joints:
        plug = next((plug for plug in joint.plugs if plug.wrong_socket), None)
        if plug is not None:
            sockets = " + ".join(plug.sockets)
            yield Finding(joint.at, values=(("connector", joint.connector), ("sockets", sockets)))


RULE = Rule(
    id="CON122", title="A cable is in a socket that is not its own", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(CABLES_INTERCHANGED,), check=check, planned=True,
    message="The cable to this {connector} port is in a socket that is not its own ({sockets}).",
    why="Sockets of one shape can carry different voltages; 12 V on a 5 V wire destroys what hangs on it and can start "
    "a fire.",
    remedy="Do not switch on. Unplug the supply and put the cable where the supply's manual says.",
)
