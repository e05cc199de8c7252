"""The smallest sizes of supply as JSON, each with what bounds the next smaller one."""

from typing import Any

from service.advice.size import ASPECT, SIZES_WATTS, Reached, Sized, Sizes
from service.answers import english
from service.demand.demand import Demand
from service.parts.words import RAILS
from service.rules.book import RULES
from service.rules.rule import Finding
from service.verdict.speak import Spoken

Json = dict[str, Any]
_MILLI = 1000
_LOOKED_AT = [rule.id for rule in RULES if rule.aspect == ASPECT]


def size(sizes: Sizes, demand: Demand) -> Json:
    """Return the sizes of all kinds of supply that were looked at, and what any of them must give on each rail."""
    asked = zip(RAILS, demand.sustained, demand.starting, strict=True)
    return {
        "asked_amps": {
            rail: {"sustained": milliamps / _MILLI, "starting": start / _MILLI} for rail, milliamps, start in asked
        },
        "sizes_watts": list(SIZES_WATTS), "rules": _LOOKED_AT, "left_out": list(english.SIZE_LEFT_OUT),
        "missing": list(sizes.missing), "supplies": [_kind(kind) for kind in sizes.kinds],
    }


def _kind(kind: Sized) -> Json:
    found: Json = {"design": kind.design, "sixteen_pin": kind.sixteen_pin}
    found |= {goal: _reached(reached) for goal, reached in kind.reached}
    return found | {"at_every_size": [_bound(spoken) for spoken in kind.unmended]}


def _reached(reached: Reached) -> Json:
    return {
        "watts": reached.watts, "next_smaller_watts": reached.smaller_watts,
        "bounded_by": [_bound(spoken) for spoken in reached.bounds],
    }


def _bound(spoken: Spoken) -> Json:
    rule, said = spoken
    if not isinstance(said, Finding):
        return {"rule": rule.id, "weight": rule.weight, "measured": None, "limit": None, "unit": "",
                "message": english.unknown(rule, said)}
    return {
        "rule": rule.id, "weight": rule.weight, "measured": _rounded(said.measured), "limit": _rounded(said.limit),
        "unit": said.unit, "message": english.message(rule, said),
    }


def _rounded(value: float | None) -> float | None:
    return None if value is None else round(value, 3)
