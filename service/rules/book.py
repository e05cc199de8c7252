"""All rules, found by their files: every module named like ``con104_contact_over_rating`` in this package holds one."""

import pkgutil
import re
from functools import cache
from importlib import import_module
from types import MappingProxyType
from typing import Final

from service.rules import rule as card
from service.rules.rule import Rule

_FILE = re.compile(r"[a-z]+\d{3}_[a-z0-9_]+")
_HOME = card.__name__.rpartition(".")[0]


@cache
def rules() -> tuple[Rule, ...]:
    """Return all rules, sorted by id."""
    found = [_rule(name) for name in _modules()]
    ids = [rule.id for rule in found]
    twice = sorted({one for one in ids if ids.count(one) > 1})
    if twice:
        raise ValueError(f"rule ids used twice: {', '.join(twice)}")
    return tuple(sorted(found, key=lambda rule: rule.id))


@cache
def by_id() -> MappingProxyType[str, Rule]:
    """Return the rules by their id."""
    return MappingProxyType({rule.id: rule for rule in rules()})


def _modules() -> list[str]:
    """Return the full names of all rule modules."""
    path = import_module(_HOME).__path__
    names = (module.name for module in pkgutil.walk_packages(path, f"{_HOME}."))
    return [name for name in names if _FILE.fullmatch(name.rpartition(".")[2])]


def _rule(name: str) -> Rule:
    rule = import_module(name).RULE
    if not isinstance(rule, Rule) or not name.rpartition(".")[2].startswith(f"{rule.id.lower()}_"):
        raise ValueError(f"{name} holds no rule of its own name")
    return rule


RULES: Final = rules()
