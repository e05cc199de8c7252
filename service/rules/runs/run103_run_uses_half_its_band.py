"""Volts lost along a run against half of what it may lose: from its source down to the lowest volts of its load.

Exactly half passes. Where the end has less than the lowest volts, RUN102 has said so; without lowest volts there is no
band.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.fact import WHOLE
from service.facts.runs import HALF_BAND_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.runs.wording import name


def check(case: Case) -> Iterator[Said]:
    """Yield each run of the sheet that loses more than half of what it may lose."""
    for run in case.runs:
        if run.end_volts is None or run.lowest_volts is None or run.at.unit >= 0 or run.end_volts < run.lowest_volts:
            continue
        lost, most = run.source_volts - run.end_volts, run.source_volts - run.lowest_volts
        if lost > most * HALF_BAND_PERCENT.value / WHOLE:
            yield Finding(run.at, lost, most * HALF_BAND_PERCENT.value / WHOLE, "V", (name(run), ("most", most)))


RULE = Rule(
    id="RUN103", title="A run of wire has little reserve of volts", weight="caution", points=4, aspect="runs",
    since="0.1", rests_on=(HALF_BAND_PERCENT,), check=check,
    message="{run} loses {measured} {unit} of the {most} {unit} that it may lose; up to half, {limit} {unit}, all is "
    "well.",
    why="A contact that wears or a warmer wire takes what is left, and then the load fails now and then.",
    remedy="Use the next thicker gauge, or a shorter way.",
)
