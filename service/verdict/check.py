"""The check: the unfavourable end first; the favourable one too when a stop speaks and a range is involved.

* ``does_not_fit``: a stop stands at the favourable end; if all such stops hang on a plan that is not proven,
``undecided``, unless there is a stop whatever the plan.
* ``undecided``: a stop stands at the unfavourable end only, or nothing at all could be looked at.
* ``fits_with_cautions``: a caution stands at the unfavourable end.  ``fits``: neither.
"""

from collections import Counter
from dataclasses import dataclass
from typing import Literal

from service.case.assemble import Assembled, assemble
from service.case.case import Case
from service.case.moves import Move, moves, settled_on
from service.case.place import Place
from service.parts.build import Build
from service.parts.words import Aspect
from service.verdict.aspects import NotChecked, aspects_of
from service.verdict.score import NOTHING_CHECKED, ScoreLine, lines, score
from service.verdict.speak import Spoken, Tally, has_weight, speak, tally

Verdict = Literal["fits", "fits_with_cautions", "undecided", "does_not_fit"]
BADNESS: dict[Verdict, int] = {"fits": 0, "fits_with_cautions": 1, "undecided": 2, "does_not_fit": 2}
MOST_SETTLED = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """All that came out of a check. ``case`` is at the unfavourable end.

    ``certain`` holds what is said at the favourable end too, None where nothing asks for a look there; ``settling``
    the (unit, field) whose tightening would help, most telling first, when asked for; ``better`` a planned case that
    beats the wiring given, ``moves`` what changes hands on the way to it.
    """

    build: Build
    case: Case
    verdict: Verdict
    score: int
    score_lines: tuple[ScoreLine, ...]
    spoken: tuple[Spoken, ...]
    certain: frozenset[tuple[str, Place]] | None
    not_checked: tuple[NotChecked, ...]
    settling: tuple[tuple[int, str], ...] | None
    better: Case | None
    moves: tuple[Move, ...]


def check(build: Build) -> Checked:
    """Return the verdict on a build."""
    aspects, not_checked = aspects_of(build)
    worst = assemble(build, "unfavourable", purchase=True)
    spoken = speak(worst.case, aspects)
    counted = tally(spoken)
    favourable = _favourable(build, worst, spoken, aspects)
    verdict = _verdict(spoken, favourable) if aspects else "undecided"
    certain = None if favourable is None else _certain(spoken, favourable[1])
    better = _better(build, worst.case, counted, aspects)
    return Checked(
        build=build,
        case=worst.case,
        verdict=verdict,
        score=score(counted) if aspects else NOTHING_CHECKED,
        score_lines=tuple(lines(counted, spoken)) if aspects else (ScoreLine("base", NOTHING_CHECKED),),
        spoken=tuple(spoken),
        certain=certain,
        not_checked=tuple(not_checked),
        settling=_settling(build, worst, counted, aspects) if build.would_settle else None,
        better=better,
        moves=() if better is None else moves(build, better),
    )


def _favourable(
    build: Build, worst: Assembled, spoken: list[Spoken], aspects: frozenset[Aspect]
) -> tuple[Case, list[Spoken]] | None:
    """Return the case and what is said at the favourable end; the same again where there is no other end.

    None where only cautions speak: no verdict hangs on how certain these are. It is looked at if open figures are asked
    for.
    """
    if not worst.wide or not spoken:
        return worst.case, spoken
    if not has_weight(spoken, "stop") and not build.would_settle:
        return None
    case = assemble(build, "favourable").case
    return case, speak(case, aspects)


def _verdict(spoken: list[Spoken], favourable: tuple[Case, list[Spoken]] | None) -> Verdict:
    if has_weight(spoken, "stop"):
        assert favourable is not None, "a stop is looked at from both ends"
        best_case, best_spoken = favourable
        at_best = tally([s for s in best_spoken if not s.unknown])
        unproven = at_best.stops_planned_only and not (best_case.proven or best_case.stopped)
        return "does_not_fit" if at_best.stops and not unproven else "undecided"
    return "fits_with_cautions" if has_weight(spoken, "caution") else "fits"


def _certain(spoken: list[Spoken], at_best: list[Spoken]) -> frozenset[tuple[str, Place]]:
    """Return what stands whatever the ranges are: what is said of the same place at the favourable end.

    A plan at the favourable end may leave another port of several unfed; so all that a rule of the wiring says is
    certain too where it says as much there.
    """
    found = {s.key for s in at_best if not s.unknown}
    worst, best = Counter(s.rule.id for s in spoken), Counter(s.rule.id for s in at_best)
    found |= {s.key for s in spoken if s.rule.planned and best[s.rule.id] >= worst[s.rule.id]}
    return frozenset(found)


def _settling(
    build: Build, worst: Assembled, counted: Tally, aspects: frozenset[Aspect]
) -> tuple[tuple[int, str], ...]:
    """Return the fields that, at their favourable end, lessen stops or points, most telling first; one a sheet line.

    The first ``MOST_SETTLED`` ranges are tried; none where the plan is too large to be proven.
    """
    found = []
    for (line, field), units in list(_by_line(build, worst).items())[: MOST_SETTLED if worst.case.proven else 0]:
        settled = frozenset((unit, field) for unit in units)
        then = tally(speak(assemble(build, "unfavourable", settled).case, aspects))
        if (then.stops, then.points) < (counted.stops, counted.points):
            found.append(((then.stops, then.points, line, field), (units[0], field)))
    return tuple(at for _, at in sorted(found))


def _by_line(build: Build, worst: Assembled) -> dict[tuple[int, str], list[int]]:
    fields: dict[tuple[int, str], list[int]] = {}
    for unit, field in worst.wide:
        line = build.units[unit].line if unit >= 0 else -1
        fields.setdefault((line, field), []).append(unit)
    return fields


def _better(build: Build, given: Case, counted: Tally, aspects: frozenset[Aspect]) -> Case | None:
    """Return the case with a plan of our own where that is better than the wiring given."""
    if build.wiring is None or given.supply is None:
        return None
    planned = assemble(_unplugged(build), "unfavourable", worn=build.wiring).case
    then = tally(speak(planned, aspects))
    is_better = (then.stops, then.points, planned.objective) < (counted.stops, counted.points, given.objective)
    return settled_on(build, planned) if is_better else None


def _unplugged(build: Build) -> Build:
    return Build(
        units=build.units,
        use=build.use,
        site=build.site,
        aspects=build.aspects,
        reference=build.reference,
        edition=build.edition,
        runs=build.runs,
        readings=build.readings,
    )
