"""An adapter with moulded plugs on the way to a port.

Each moulded adapter on the way is named. Adapters past their rated watts are CON118; drive plug to card CON115 to
CON117.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import MOULDED_HABIT
from service.facts.points import MOULDED_POINTS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each moulded adapter on the way to a port."""
    for joint in case.joints:
        moulded = [adapter for adapter in joint.adapters if adapter.moulded]
        for number, adapter in enumerate(moulded):
            values = (("connector", joint.connector), ("takes", adapter.takes), ("gives", adapter.gives))
            yield Finding(joint.at.nth(number), values=values)


RULE = Rule(
    id="CON114", title="A moulded adapter is in use", weight="caution", points=int(MOULDED_POINTS.value),
    aspect="connections", since="0.1", rests_on=(MOULDED_HABIT, MOULDED_POINTS), check=check, planned=True,
    message="A moulded adapter from {takes} to {gives} is on the way to this {connector} port.",
    why="Inside a moulded plug wires can touch where nobody sees it; such adapters are a known cause of fires.",
    remedy="Use a plug of the supply itself, or an adapter with crimped contacts that can be seen.",
)
