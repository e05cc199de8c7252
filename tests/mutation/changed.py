"""Figures changed on purpose: in the running code, and in code that is imported anew where a figure was copied."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from types import ModuleType
from typing import Any

from service.facts.fact import Fact

OWN = ("service", "tests")
ROOMS = tuple(f"service.{room}." for room in ("physics", "demand", "wiring", "case", "verdict"))
"""Rooms with memos of what follows from figures; the others hold the demo's parts, the rules as such, and Flask."""


@contextmanager
def changed(fact: Fact, factor: float) -> Iterator[None]:
    """Multiply the value of a fact, and all rows of a column, and put them back."""
    kept = {name: getattr(fact, name) for name in ("value", "rows") if hasattr(fact, name)}
    try:
        _multiply(fact, factor)
        forget()
        yield
    finally:
        for name, value in kept.items():
            object.__setattr__(fact, name, value)
        forget()


@contextmanager
def changed_from_import(key: str, factor: float) -> Iterator[None]:
    """Import the service and its tests anew, with one fact changed from the start; put the old modules back."""
    kept = {name: sys.modules.pop(name) for name in list(sys.modules) if _is_own(name)}
    from service.facts import fact as anew

    for kind in (anew.Fact, anew.Column):
        _multiply_when_made(kind, key, factor)
    try:
        yield
    finally:
        for name in [name for name in sys.modules if _is_own(name)]:
            del sys.modules[name]
        sys.modules.update(kept)


def forget() -> None:
    """Empty all memos of the service that may hold what follows from a figure."""
    for name, module in list(sys.modules.items()):
        if name.startswith(ROOMS):
            _forget(module)


def _forget(module: ModuleType) -> None:
    for value in vars(module).values():
        clear = getattr(value, "cache_clear", None) or (getattr(value, "clear", None) if _is_memo(value) else None)
        if clear is not None:
            clear()


def _is_memo(value: object) -> bool:
    return type(value).__name__ == "Memo"


def _is_own(name: str) -> bool:
    return name.split(".")[0] in OWN and name not in (__name__, "tests")


def _multiply(fact: Any, factor: float) -> None:
    object.__setattr__(fact, "value", fact.value * factor)
    if hasattr(fact, "rows"):
        object.__setattr__(fact, "rows", tuple((row, figure * factor) for row, figure in fact.rows))


def _multiply_when_made(kind: type[Any], key: str, factor: float) -> None:
    """Let a class of the module imported anew change the fact of this key as it is made."""
    made = kind.__init__

    def make(self: Any, *given: Any, **named: Any) -> None:
        made(self, *given, **named)
        if self.key == key:
            _multiply(self, factor)

    kind.__init__ = make


def all_facts() -> list[Fact]:
    """Return every fact that the rooms of the service hold, once each."""
    from tests.house.test_facts import FACTS

    return sorted(FACTS, key=lambda fact: fact.key)

