"""Amps that were measured against the most that the sheet leads to, at the worst end of every open figure.

Compared with what the sheet states of the part, else with what is reckoned for the port or the rail. 2 % are left to
the meter. The build is judged with the greater of the two. Nothing is compared where the sheet states nothing.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.fact import WHOLE
from service.facts.rails import METER_PERCENT
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each reading of more amps than the sheet leads to."""
    for read in case.readings:
        if read.amps is None or read.most_amps is None:
            continue
        if read.amps > read.most_amps * (1 + METER_PERCENT.value / WHOLE):
            yield Finding(read.at, read.amps, read.most_amps, "A", (("rail", read.rail),))


RULE = Rule(
    id="RDG103", title="More was measured than the sheet leads to", weight="caution", points=4, aspect="power",
    since="0.1", rests_on=(METER_PERCENT,), check=check,
    message="{measured} {unit} were measured of {rail} where the sheet leads to {limit} {unit} at the most.",
    why="A figure of the sheet is too low, or something is plugged in that is not on it.",
    remedy="Look for what is missing on the sheet, and measure once more.",
)
