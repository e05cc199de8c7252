"""The checks against published numbers, counted: every row of every test of this folder, with what it is held to."""

import importlib
from collections.abc import Iterator
from types import ModuleType
from typing import NamedTuple

from tests.house.tree import ROOT
from tests.mutation.probes import rows_of
from tests.published.printed import Printed

HERE = ROOT / "tests" / "published"


class Row(NamedTuple):
    """One row of one test, and the printed numbers that it is held to."""

    document: str
    test: str
    numbers: tuple[Printed, ...]


def modules() -> list[ModuleType]:
    """Return the files of published numbers, one for each document."""
    return [importlib.import_module(f"tests.published.{file.stem}") for file in sorted(HERE.glob("test_*.py"))
            if file.stem != "test_every_number"]


def rows() -> list[Row]:
    """Return every row."""
    return [row for module in modules() for row in _of(module)]


def _of(module: ModuleType) -> Iterator[Row]:
    for test, given in rows_of(module):
        numbers = tuple(value for value in given.values() if isinstance(value, Printed))
        yield Row(module.DOCUMENT, f"{module.__name__}::{test}", numbers)
