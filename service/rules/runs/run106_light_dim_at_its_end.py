"""Volts at the last light of a strip, after its lead and its own tracks, against nine tenths of its volts.

Its current is taken evenly along it. No lowest volts of a strip are published that could be read, so this is advice and
no caution; the wires of the lead are RUN104 and RUN105. Exactly nine tenths pass.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.runs import LIGHT_PERCENT
from service.rules.rule import Finding, Rule, Said, Unknown


def check(case: Case) -> Iterator[Said]:
    """Yield each light that is short of volts at its far end."""
    for run in case.runs:
        if run.at.unit < 0 or run.lowest_volts is None:
            continue
        if run.missing is not None:
            yield Unknown(run.at, run.missing)
        elif run.end_volts is None or run.end_volts < run.lowest_volts:
            yield Finding(run.at, run.end_volts or 0.0, run.lowest_volts, "V")


RULE = Rule(
    id="RUN106", title="A light has few volts at its far end", weight="advice", points=0, aspect="runs", since="0.1",
    rests_on=(LIGHT_PERCENT,), check=check,
    message="With all of it on, {measured} {unit} reach the last light; from {limit} {unit} on it looks as the first "
    "does.",
    why="Most of the loss lies in the first half of a strip; far lights are dimmer and, in white, turn red.",
    remedy="Feed the strip at both ends, or use a thicker or shorter lead.",
)
