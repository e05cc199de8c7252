"""A plug that would not reach its port by a way, or from a place on its cable, that is only assumed.

Where the case states no way, or the cable no place of its plug, the usual one is taken; the real way may be shorter and
the real cable longer. Each plug on the way to a port is named. A plug that is known not to reach is CBL102.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.points import ASSUMED_SHORT_POINTS
from service.facts.routes import REACH_SLACK_MM
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each plug that may not reach."""
    for joint in case.joints:
        short = [
            plug.assumed_short_by_mm for plug in joint.plugs
            if plug.assumed_short_by_mm > REACH_SLACK_MM.value >= plug.short_by_mm
        ]
        for number, short_by_mm in enumerate(short):
            values = (("connector", joint.connector),)
            yield Finding(joint.at.nth(number), short_by_mm, REACH_SLACK_MM.value, "mm", values)


RULE = Rule(
    id="CBL103",
    title="A plug may not reach its port",
    weight="caution",
    points=int(ASSUMED_SHORT_POINTS.value),
    aspect="connections",
    since="0.1",
    rests_on=(REACH_SLACK_MM, ASSUMED_SHORT_POINTS),
    check=check,
    planned=True,
    message="The plug for this {connector} port may be {measured} {unit} short: its way in the case or its place on "
    "the cable is not given, and the usual one was taken.",
    why="Supplies for small cases have short cables, and large cases have long ways.",
    remedy="Measure the way in the case and how far the plug is along its cable, and enter both; a longer cable must "
    "be made for this very supply.",
)
