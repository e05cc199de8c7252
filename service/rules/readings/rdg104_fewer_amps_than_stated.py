"""Amps that were measured of a part against the least that the sheet states of it; 2 % are left to the meter.

The stated figure is kept as the worst end, so this is advice: a part that was not at work takes less.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.fact import WHOLE
from service.facts.rails import METER_PERCENT
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each reading of fewer amps than the sheet states."""
    for read in case.readings:
        if read.amps is None or read.least_amps is None:
            continue
        if read.amps < read.least_amps * (1 - METER_PERCENT.value / WHOLE):
            yield Finding(read.at, read.amps, read.least_amps, "A", (("rail", read.rail),))


RULE = Rule(
    id="RDG104", title="Less was measured than the sheet states", weight="advice", points=0, aspect="power",
    since="0.1", rests_on=(METER_PERCENT,), check=check,
    message="{measured} {unit} were measured of {rail}; the sheet states {limit} {unit} at the least, which is kept.",
    why="Either the part was not at work while it was measured, or the sheet says too much.",
    remedy="Measure while everything is at work; then state what was measured.",
)
