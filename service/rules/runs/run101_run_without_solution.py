"""A run whose load asks for more than the wire lets through: no volts are left, or no current would give such watts.

A load of constant power takes more amps when its volts fall. Past ``V**2 = 4 R P`` there is no current at which it gets
its watts, and its volts break down. Leads of lights are RUN106.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.wire import REFERENCE_CELSIUS, RESISTIVITY
from service.rules.rule import Finding, Rule, Said
from service.rules.runs.wording import name


def check(case: Case) -> Iterator[Said]:
    """Yield each run of the sheet that has no solution."""
    for run in case.runs:
        if run.end_volts is None and run.at.unit < 0:
            yield Finding(run.at, values=(name(run), ("amps", run.amps), ("volts", run.source_volts)))


RULE = Rule(
    id="RUN101", title="A run of wire cannot carry its load at all", weight="stop", points=0, aspect="runs",
    since="0.1", rests_on=(RESISTIVITY, REFERENCE_CELSIUS), check=check,
    message="{run} begins with {volts} V, and its load breaks down by {amps} A: so much is lost on the way that no "
    "current brings what it asks for.",
    why="The load switches off and on again or never starts, and the wire is heated all the while.",
    remedy="Use a thicker or shorter wire, or more pairs side by side.",
)
