"""Amps of one pair of a run against the most that its wire or its contacts should carry for long.

As its maker states; else 8 A for 18 AWG, by the guide on contacts, and less for thinner wire. Exactly the limit passes.
Thicker wire carries more than a contact of 8 A, so above that it is unknown unless its maker states a figure; the lead
of a light ends in a plug and has the limit of a contact. A run without a solution is told by the amps at which its
load breaks down: before that it asks for them.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.contacts import STOP_AMPS
from service.facts.wire import THIN_WIRE_AMPS
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.runs.wording import field, name


def check(case: Case) -> Iterator[Said]:
    """Yield each run of which a pair carries more than it should for long."""
    for run in case.runs:
        if run.stop_amps is not None:
            if run.pair_amps > run.stop_amps:
                carries = "would come to" if run.end_volts is None and run.missing is None else "carries"
                yield Finding(run.at, run.pair_amps, run.stop_amps, "A", (name(run), ("carries", carries)))
        elif run.pair_amps > STOP_AMPS.value and run.at.unit < 0:
            yield Unknown(run.at, field(run, "max_amps"))


RULE = Rule(
    id="RUN104", title="A wire of a run carries more than it should for long", weight="stop", points=0, aspect="runs",
    since="0.1", rests_on=(STOP_AMPS, *THIN_WIRE_AMPS.values()), check=check,
    message="{run} {carries} {measured} {unit} a wire; {limit} {unit} is the most for long.",
    why="A wire or contact past its rating heats until its insulation softens.",
    remedy="Use a thicker wire, or more pairs side by side.",
)
