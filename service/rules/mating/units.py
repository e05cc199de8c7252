"""Units of a build by kind of part."""

from collections.abc import Iterator
from typing import TypeVar

from service.case.case import Case

Kind = TypeVar("Kind")


def units(case: Case, kind: type[Kind]) -> Iterator[tuple[int, Kind]]:
    """Yield index and part of each unit of a kind."""
    for at, unit in enumerate(case.build.units):
        if isinstance(unit.part, kind):
            yield at, unit.part
