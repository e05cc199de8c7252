"""The tests that may notice a changed figure, as plain calls: each row of each table, without pytest around it."""

import importlib
import inspect
from collections.abc import Callable, Iterator, Mapping
from itertools import product
from types import ModuleType
from typing import Any, NamedTuple

from service.facts.fact import Fact
from tests.house.tree import ROOT

WITNESSES = ("rules", "practice", "demand", "published", "physics", "case", "verdict", "advice")
"""Folders of tests that are asked. Those on the facts themselves are not: they only hold a figure to its copy."""
NOT_ASKED = ("test_promises", "test_every_number", "test_headers_exact")


class Probe(NamedTuple):
    """One row of a test: where it stands and what to call."""

    module: ModuleType
    name: str
    call: Callable[[], object]

    def fails(self) -> bool:
        """Say whether the test fails, by an assertion or otherwise."""
        try:
            self.call()
        except Exception:  # noqa: BLE001 - whatever a test raises, pytest would call it failed
            return True
        return False


def probes() -> list[Probe]:
    """Return all rows of the tests that may bear witness."""
    files = [file for folder in WITNESSES for file in sorted((ROOT / "tests" / folder).glob("test_*.py"))]
    names = [f"tests.{file.parent.name}.{file.stem}" for file in files if file.stem not in NOT_ASKED]
    return [probe for name in names for probe in _of(importlib.import_module(name))]


def held(module: ModuleType) -> frozenset[str]:
    """Return the keys of facts that a test module names itself: what it holds, it cannot be a witness of."""
    stated = [value for value in vars(module).values() if isinstance(value, Fact | Mapping)]
    tables = [each for value in stated if isinstance(value, Mapping) for each in value.values()]
    return frozenset(each.key for each in (*stated, *tables) if isinstance(each, Fact))


def _of(module: ModuleType) -> Iterator[Probe]:
    for name, given in rows_of(module):
        yield Probe(module, f"{module.__name__}::{name}", _bound(vars(module)[name.partition("[")[0]], given))


def rows_of(module: ModuleType) -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every row of every table of a module, as the name and number of the test and its arguments."""
    for name, function in vars(module).items():
        if name.startswith("test_") and inspect.isfunction(function) and not hasattr(function, "hypothesis"):
            for number, given in enumerate(_rows(function)):
                if set(given) == set(inspect.signature(function).parameters):
                    yield f"{name}[{number}]", given


def _bound(function: Callable[..., object], given: dict[str, Any]) -> Callable[[], object]:
    return lambda: function(**given)


def _rows(function: Callable[..., object]) -> Iterator[dict[str, Any]]:
    """Yield the arguments of each row: the product of all tables that the test is parametrized with."""
    marks = [mark for mark in getattr(function, "pytestmark", ()) if mark.name == "parametrize"]
    for chosen in product(*(_table(*mark.args[:2]) for mark in marks)):
        yield {name: value for row in chosen for name, value in row.items()}


def _table(names: str | tuple[str, ...], rows: Any) -> list[dict[str, Any]]:
    several = [name.strip() for name in names.split(",")] if isinstance(names, str) else list(names)
    plain = [row.values if hasattr(row, "values") and hasattr(row, "marks") else row for row in rows]
    tuples = [row if len(several) > 1 or hasattr(whole, "marks") else (row,)
              for row, whole in zip(plain, rows, strict=True)]
    return [dict(zip(several, row, strict=True)) for row in tuples]
