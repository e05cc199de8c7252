"""A cable whose end at the supply is put in a socket that is not its own, or in one that another cable has taken.

Sockets are each maker's own: the same shape can hold other voltages. It speaks of a wiring as plugged; a plan never
does this. Of a cable of which no socket is stated nothing is said. Cables of another make are CBL101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import CABLES_INTERCHANGED
from service.rules.rule import Finding, Rule, Said

NO_SOCKET = "no_socket"


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a cable in a socket that is not its own."""
    for joint in case.joints:
        plug = next((plug for plug in joint.plugs if plug.put_in), None)
        if plug is not None:
            own = " + ".join(plug.sockets) or NO_SOCKET
            values = (("connector", joint.connector), ("put_in", " + ".join(plug.put_in)), ("sockets", own))
            yield Finding(joint.at, values=values)


RULE = Rule(
    id="CON122", title="A cable is put in the wrong socket of the supply", weight="stop", points=0,
    aspect="connections", since="0.1", rests_on=(CABLES_INTERCHANGED,), check=check, planned=True,
    message="At the supply, the cable to this {connector} port is put in: {put_in}. It belongs in: {sockets}.",
    why="Sockets of one shape can carry different voltages; 12 V on a 5 V wire destroys what hangs on it and can start "
    "a fire.",
    remedy="Do not switch on. Pull the mains cord, and put the cable's end at the supply in the socket that the "
    "supply's manual names for it.",
)
