"""A plug that is known not to reach its port.

Reach is the plug's place along the cable, and the leads of the adapters between it and the port, against the way that
the case states for it; what is told is how much is missing. A plug that reaches exactly passes. It speaks of a wiring
as plugged; a plan leaves the port open and says by how much. Ways that are only assumed are CBL103; an adapter of
unknown length counts with both ends of its range.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.routes import REACH_SLACK_MM
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection with a plug that does not reach."""
    for joint in case.joints:
        short = max((plug.short_by_mm for plug in joint.plugs), default=0.0)
        if short > REACH_SLACK_MM.value:
            yield Finding(joint.at, short, REACH_SLACK_MM.value, "mm", (("connector", joint.connector),))


RULE = Rule(
    id="CBL102", title="A plug does not reach its port", weight="stop", points=0, aspect="connections", since="0.1",
    rests_on=(REACH_SLACK_MM,), check=check, planned=True,
    message="The plug for this {connector} port is {measured} {unit} short of it on the way that the case gives.",
    why="A cable under tension pulls its plug askew, and a plug that sits badly heats.",
    remedy="Use a longer cable made for this supply, a plug further along, an extension, or another way through the "
    "case.",
)
