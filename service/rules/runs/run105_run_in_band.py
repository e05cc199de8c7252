"""Amps of one pair of a run from three quarters of the most on that its wire and contacts should carry.

The guide calls 18 AWG right for 6 to 8 A a contact; the band of thinner wire begins at the same part of its limit.
Exactly where it begins passes. Past the end of the band RUN104 speaks. A figure that a maker states has no band.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import BAND_AMPS, STOP_AMPS
from service.facts.points import BAND_POINTS
from service.rules.rule import Finding, Rule, Said
from service.rules.runs.wording import name


def check(case: Case) -> Iterator[Said]:
    """Yield each run of which a pair is in the band below the stop."""
    for run in case.runs:
        stop = STOP_AMPS.value if run.stop_amps is None else run.stop_amps
        if run.band_amps is not None and run.band_amps < run.pair_amps <= stop:
            yield Finding(run.at, run.pair_amps, run.band_amps, "A", (name(run),))


RULE = Rule(
    id="RUN105", title="A wire of a run has little reserve", weight="caution", points=int(BAND_POINTS.value),
    aspect="runs", since="0.1", rests_on=(BAND_AMPS, STOP_AMPS, BAND_POINTS), check=check,
    message="{run} carries {measured} {unit} a wire; up to {limit} {unit} all is well.",
    why="Good contacts carry this much, worn or plain ones run hot.",
    remedy="Use a thicker wire, or more pairs side by side.",
)
