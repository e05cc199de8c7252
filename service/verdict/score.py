"""The score and the lines that add up to it.

No stop and no caution 100; cautions only ``80 - min(49, c)``; stops ``max(0, 40 - 10 n - min(9, c // 5))``, n stops
and c points of cautions at the unfavourable end. With a stop, c counts only cautions that do not hang on the wiring:
a plan that must leave something out weighs what it leaves out before it weighs cautions, so its cautions say nothing
about how bad it is.
"""

from typing import NamedTuple

from service.case.place import Place
from service.facts import score as facts
from service.verdict.speak import Spoken, Tally

NOTHING_CHECKED = 0
"""The score of a sheet of which nothing was looked at: it has earned none."""


class ScoreLine(NamedTuple):
    """A line of the sum: what for (base, stop, caution, floor), the rule and place if one, and its points."""

    what: str
    points: int
    rule: str | None = None
    at: Place | None = None


def score(tally: Tally) -> int:
    """Return the score, 0 to 100."""
    if tally.stops:
        less = facts.STOP_POINTS * tally.stops + min(
            facts.MOST_FOR_CAUTIONS_BESIDE_STOPS, tally.fixed_points // facts.CAUTION_DIVISOR
        )
        return max(0, facts.BASE_WITH_STOPS - less)
    if tally.points:
        return facts.BASE_WITH_CAUTIONS - min(facts.MOST_FOR_CAUTIONS, tally.points)
    return facts.BASE_CLEAN


def lines(tally: Tally, spoken: list[Spoken]) -> list[ScoreLine]:
    """Return the lines that add up to the score exactly; a ``floor`` line gives back what would go below the least."""
    if tally.stops:
        found = [ScoreLine("base", facts.BASE_WITH_STOPS), *_stops(spoken)]
        cautions = min(facts.MOST_FOR_CAUTIONS_BESIDE_STOPS, tally.fixed_points // facts.CAUTION_DIVISOR)
        if cautions:
            found.append(ScoreLine("caution", -cautions))
    elif tally.points:
        found = [ScoreLine("base", facts.BASE_WITH_CAUTIONS)]
        found += [
            ScoreLine("caution", -s.rule.points, s.rule.id, s.said.at) for s in spoken if s.rule.weight == "caution"
        ]
    else:
        found = [ScoreLine("base", facts.BASE_CLEAN)]
    rest = score(tally) - sum(line.points for line in found)
    return [*found, ScoreLine("floor", rest)] if rest else found


def _stops(spoken: list[Spoken]) -> list[ScoreLine]:
    found: dict[tuple[str, Place], ScoreLine] = {}
    for s in spoken:
        if s.rule.weight == "stop":
            key = ("", s.said.at) if s.rule.planned else s.key
            found.setdefault(key, ScoreLine("stop", -facts.STOP_POINTS, s.rule.id, s.said.at))
    return list(found.values())
