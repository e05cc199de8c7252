"""Letting the rules speak over a case, and counting what they say."""

import logging
from collections.abc import Iterable
from typing import NamedTuple

from service.case.case import Case
from service.case.place import Place
from service.parts.words import Aspect, Weight
from service.rules.book import RULES
from service.rules.rule import Finding, Rule, Said, Unknown

_LOG = logging.getLogger(__name__)
CRASHED = "rule"


class Spoken(NamedTuple):
    """What one rule says of one place."""

    rule: Rule
    said: Said

    @property
    def key(self) -> tuple[str, Place]:
        """Return rule and place, which stand once in a verdict."""
        return (self.rule.id, self.said.at)

    @property
    def unknown(self) -> bool:
        """Say whether the rule could not judge."""
        return isinstance(self.said, Unknown)


class Tally(NamedTuple):
    """Stops, and points of cautions: of all, and of those that do not hang on the wiring."""

    stops: int
    points: int
    fixed_points: int
    stops_planned_only: bool


def speak(case: Case, aspects: frozenset[Aspect]) -> list[Spoken]:
    """Return what every rule of the aspects says of a case, in order of rule and place, each place once a rule."""
    found: dict[tuple[str, Place], Spoken] = {}
    for rule in RULES:
        if rule.aspect in aspects:
            for said in _hear(rule, case):
                spoken = Spoken(rule, said)
                if spoken.key not in found or isinstance(said, Finding):
                    found[spoken.key] = spoken
    return sorted(found.values(), key=lambda spoken: (spoken.rule.id, _sortable(spoken.said.at)))


def _hear(rule: Rule, case: Case) -> Iterable[Said]:
    """Return what a rule says; one that breaks down has not judged, and that is said too."""
    try:
        return list(rule.check(case))
    except Exception:  # noqa: BLE001 - a rule that breaks down must not take the verdict with it
        _LOG.exception("rule %s broke down", rule.id)
        return [Unknown(Place("build"), CRASHED)]


def _sortable(at: Place) -> tuple[str, int, tuple[str, ...]]:
    return (at.kind, at.unit, tuple(f"{part:>12}" for part in at.detail))


def tally(spoken: list[Spoken]) -> Tally:
    """Count stops and caution points.

    A place of the wiring is a stop once, however many rules stop it, and cautions there fall away: just as the wiring
    problem counts. Every other stop is counted by rule and place.
    """
    wired = {s.said.at for s in spoken if s.rule.weight == "stop" and s.rule.planned}
    others = sum(s.rule.weight == "stop" and not s.rule.planned for s in spoken)
    cautions = [s for s in spoken if s.rule.weight == "caution" and not (s.rule.planned and s.said.at.port in wired)]
    fixed = sum(s.rule.points for s in cautions if not s.rule.planned)
    return Tally(len(wired) + others, sum(s.rule.points for s in cautions), fixed, others == 0)


def has_weight(spoken: list[Spoken], weight: Weight) -> bool:
    """Say whether anything of a weight was said."""
    return any(s.rule.weight == weight for s in spoken)
