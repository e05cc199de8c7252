"""An optional port without a source while a port beside it on the same device is above comfort.

Comfort is a judgement of ours: 60 % of what a contact or wire may carry. Nothing is wrong; feeding the port would share
the current.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.comfort import COMFORT_PERCENT
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each optional port that would relieve its neighbour."""
    for port in case.open_ports:
        if port.crowded and not port.required:
            yield Finding(port.at, values=(("connector", port.connector),))


RULE = Rule(
    id="CON119", title="An empty port would relieve the one beside it", weight="advice", points=0, aspect="connections",
    since="0.1", rests_on=(COMFORT_PERCENT,), check=check, planned=True,
    message="The {connector} port may stay empty, but the port beside it carries enough that feeding both is better.",
    why="Two plugs share the current, and cooler contacts last longer.",
    remedy="Feed this port too if a plug is left.",
)
