"""Every check of this folder names its document, place and digits, and holds our code to them, not a copy to a copy."""

from types import ModuleType

import pytest

from tests.mutation.probes import held, rows_of
from tests.published.counted import Row, modules, rows

LEAST_CHECKS = 60
MODULES = modules()
each_module = pytest.mark.parametrize("module", MODULES, ids=lambda module: module.__name__.rpartition(".")[2])


@each_module
def test_a_file_is_a_document(module: ModuleType) -> None:
    assert module.DOCUMENT
    assert [other.__name__ for other in MODULES if other.DOCUMENT == module.DOCUMENT] == [module.__name__]
    assert list(rows_of(module)) != []


@each_module
def test_no_figure_of_ours_is_named(module: ModuleType) -> None:
    """What is compared comes through the code that uses a fact: a fact beside its own digits would prove nothing."""
    assert held(module) == set()


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.test.removeprefix("tests.published."))
def test_every_row_is_held_to_a_printed_number(row: Row) -> None:
    assert len(row.numbers) == 1
    (number,) = row.numbers
    assert number.exact >= 0
    assert number.where
    assert (number.how == "memory") == ("from memory" in row.document)


def test_there_are_many_checks() -> None:
    assert len(rows()) >= LEAST_CHECKS
