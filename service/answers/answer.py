"""The whole answer of a check as one plain dict."""

from functools import cache
from typing import Any

from service import __version__
from service.advice.size import Sizes
from service.answers import english
from service.answers.moves import shown
from service.answers.plan import plan
from service.answers.pointers import field_of, where
from service.answers.power import power
from service.answers.readings import readings
from service.answers.runs import runs
from service.answers.size import size
from service.demand.demand import Assumed
from service.facts.fact import reason_of
from service.parts.build import Build
from service.rules.book import by_id
from service.rules.rule import Finding, Unknown
from service.verdict.check import Checked
from service.verdict.score import ScoreLine
from service.verdict.speak import CRASHED, Spoken

Json = dict[str, Any]


def answer(checked: Checked, sizes: Sizes | None = None) -> Json:
    """Return the answer; ``sizes``: the sizes of supply that would carry the build, where they were asked for."""
    build = checked.build
    found: Json = {
        "reference": build.reference, "verdict": checked.verdict, "score": checked.score,
        "score_lines": [_score_line(build, line) for line in checked.score_lines],
        "findings": [_finding(checked, s, s.said) for s in checked.spoken if isinstance(s.said, Finding)],
        "unknowns": [_unknown(build, s, s.said) for s in checked.spoken if isinstance(s.said, Unknown)],
        "assumptions": _assumptions(build, checked.case.assumed),
        "not_checked": [{"aspect": n.aspect, "reason": english.not_checked(n)} for n in checked.not_checked],
        "power": power(checked.case), "plan": plan(checked.case),
        "cautions": _cautions(checked), "edition": build.edition, "service_version": __version__,
    }
    if checked.case.runs:
        found["runs"] = runs(checked.case)
    if build.readings:
        found["readings"] = readings(checked.case)
    if checked.better is not None:
        found["better_plan"] = plan(checked.better)
        found["moves"] = [shown(build, move, checked.better) for move in checked.moves]
    if checked.settling is not None:
        found["would_settle"] = [field_of(build, unit, field) for unit, field in checked.settling]
    if sizes is not None:
        found["size"] = size(sizes, checked.case.demand)
    return found


def _cautions(checked: Checked) -> list[str]:
    """Return the standing safety sentences, those on mains and heat where the wall was reckoned."""
    *inside, last = english.STANDING
    return [*inside, *(english.MAINS if checked.case.wall is not None else ()), last]


def _score_line(build: Build, line: ScoreLine) -> Json:
    found: Json = {"what": line.what, "points": line.points}
    if line.rule is not None and line.at is not None:
        found["rule"] = line.rule
        found["where"] = where(build, line.at)
    return found


def _finding(checked: Checked, spoken: Spoken, said: Finding) -> Json:
    rule = spoken.rule
    return {
        "rule": rule.id, "title": rule.title, "weight": rule.weight, "points": rule.points,
        "certain": None if checked.certain is None else spoken.key in checked.certain,
        "message": english.message(rule, said), "remedy": rule.remedy,
        "where": where(checked.build, said.at), "place": _place(checked.build, said),
        "measured": _rounded(said.measured), "limit": _rounded(said.limit), "unit": said.unit,
        "reserve": None if not said.measured or said.limit is None else round(said.limit / said.measured, 3),
        "sources": list(_sources(rule.id)),
    }


@cache
def _sources(rule_id: str) -> tuple[str, ...]:
    """Return what a rule rests on, document and place, each once."""
    facts = by_id()[rule_id].rests_on
    return tuple(dict.fromkeys(f"{fact.source}, {fact.where}" if fact.where else fact.source for fact in facts))


def _place(build: Build, said: Finding) -> Json:
    at = said.at
    found: Json = {"kind": at.kind}
    if at.unit >= 0:
        found["copy"] = build.units[at.unit].copy + 1
    if at.kind == "port":
        found["port"] = {"connector": at.detail[0], "number": int(at.detail[1]) + 1}
    if at.kind == "moment":
        found["microseconds"] = at.detail[0]
    return found


def _unknown(build: Build, spoken: Spoken, said: Unknown) -> Json:
    return {
        "rule": spoken.rule.id, "title": spoken.rule.title, "weight": spoken.rule.weight,
        "missing": "" if said.missing == CRASHED else field_of(build, said.at.unit, said.missing),
        "where": where(build, said.at),
        "message": english.unknown(spoken.rule, said),
    }


def _assumptions(build: Build, assumed: tuple[Assumed, ...]) -> list[Json]:
    """Return each assumed figure once a sheet line; one that is worst at either end, for two questions, is there twice.

    A lead that may be short for its way may be long for its volts.
    """
    found: dict[tuple[str, float], Json] = {}
    ranges: dict[str, tuple[float, float]] = {}
    for each in assumed:
        pointer = field_of(build, each.unit, each.field)
        if ranges.setdefault(pointer, (each.low, each.high)) != (each.low, each.high):
            continue
        found.setdefault((pointer, each.used), {
            "where": pointer, "low": _rounded(each.low), "high": _rounded(each.high), "used": _rounded(each.used),
            "unit": each.amount, "basis": each.key, "message": reason_of(each.key),
        })
    return [found[at] for at in sorted(found)]


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 3)
