"""A cable of another pinout family on the way to a port.

The supply's end of a modular cable is each maker's own, and differs between series of one maker. It speaks of a
wiring as plugged; a plan never does this. A foreign cable that lies unused is CBL104.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import CABLES_INTERCHANGED
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a cable that was made for another family of supplies."""
    for joint in case.joints:
        if any(plug.foreign for plug in joint.plugs):
            yield Finding(joint.at, values=(("connector", joint.connector),))


RULE = Rule(
    id="CBL101", title="A cable made for another supply is in use", weight="stop", points=0, aspect="connections",
    since="0.1", rests_on=(CABLES_INTERCHANGED,), check=check, planned=True,
    message="The cable to this {connector} port is not known to be made for this supply: it can put 12 V on the wrong "
    "pin.",
    why="The plugs fit and the pins differ. 12 V on a 5 V or return pin destroys drives and boards at once and can "
    "start a fire.",
    remedy="Do not switch on. Unplug the supply and use only cables that its maker names for this very model.",
)
