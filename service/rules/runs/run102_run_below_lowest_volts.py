"""Volts at the end of a run against the lowest that its load is stated to work with.

Ohm's law over wires there and back and four contacts a pair; a load of constant power is solved exactly. Exactly the
lowest volts pass. A run without a solution is RUN101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.wire import REFERENCE_CELSIUS, RESISTIVITY
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.runs.wording import field, name


def check(case: Case) -> Iterator[Said]:
    """Yield each run of the sheet that brings less than its load needs."""
    for run in case.runs:
        if run.end_volts is None or run.at.unit >= 0:
            continue
        if run.lowest_volts is None:
            yield Unknown(run.at, field(run, "lowest_volts"))
        elif run.end_volts < run.lowest_volts:
            yield Finding(run.at, run.end_volts, run.lowest_volts, "V", (name(run),))


RULE = Rule(
    id="RUN102", title="A run of wire brings less than its load needs", weight="stop", points=0, aspect="runs",
    since="0.1", rests_on=(RESISTIVITY, REFERENCE_CELSIUS), check=check,
    message="{run} brings {measured} {unit} to its end; its load needs {limit} {unit}.",
    why="Below its lowest volts a device stops, starts again or takes more current to make up for it.",
    remedy="Use a thicker or shorter wire, or more pairs side by side, or a source of more volts.",
)
