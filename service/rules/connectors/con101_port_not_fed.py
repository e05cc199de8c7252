"""A port that must be fed and has no source.

The plan feeds as many as it can; what is named here is left when no plug, no socket or no reach is left. Optional
ports are CON119.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mates import PORTS_FED_PERCENT
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each required port that nothing feeds."""
    for port in case.open_ports:
        if port.required:
            values = (("connector", port.connector), ("reason", port.reason), ("short_by_mm", port.short_by_mm))
            yield Finding(port.at, values=values)


RULE = Rule(
    id="CON101", title="A port that must be fed is not", weight="stop", points=0, aspect="connections", since="0.1",
    rests_on=(PORTS_FED_PERCENT,), check=check, planned=True,
    message="The device's {connector} port must be fed and is not: {reason}.",
    why="Cards do not start with an empty power port, boards not without their processor plug; some draw it all "
    "through "
    "the plugs that are in.",
    remedy="Get a cable made for this very supply that carries the plug, or choose a supply with enough plugs.",
)
