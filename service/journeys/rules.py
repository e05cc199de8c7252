"""What is checked: all rules in short, and one with its reasons and sources."""

from typing import Any

from service.facts.fact import Column, Fact
from service.rules import book
from service.rules.rule import Rule


def list_rules() -> dict[str, Any]:
    """Return every rule in short, in order of id."""
    return {"rules": [_short(rule) for rule in book.rules()]}


def get_rule(rule_id: str) -> dict[str, Any] | None:
    """Return one rule with all that stands on its card, or None."""
    rule = book.by_id().get(rule_id)
    if rule is None:
        return None
    return _short(rule) | {
        "message": rule.message, "why": rule.why, "remedy": rule.remedy,
        "rests_on": [_fact(fact) for fact in rule.rests_on],
    }


def _short(rule: Rule) -> dict[str, Any]:
    return {
        "id": rule.id, "title": rule.title, "weight": rule.weight, "points": rule.points, "aspect": rule.aspect,
        "since": rule.since, "hangs_on_wiring": rule.planned,
    }


def _fact(fact: Fact) -> dict[str, Any]:
    found = {
        "key": fact.key, "value": fact.value, "unit": fact.unit, "kind": str(fact.kind), "source": fact.source,
        "where": fact.where, "basis": fact.basis, "evidence": fact.evidence, "reason": fact.reason,
        "follows_from": [parent.key for parent in fact.parents],
    }
    if isinstance(fact, Column):
        found["rows"] = [list(row) for row in fact.rows]
    return found
