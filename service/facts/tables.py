"""Reading the tables that are kept as printed, each once, when the module that owns it is imported."""

import csv
from pathlib import Path

_HERE = Path(__file__).parent


def read(name: str) -> tuple[dict[str, str], ...]:
    """Return the rows of a table by column name; lines that start with # say where it is from."""
    with (_HERE / f"{name}.csv").open(newline="", encoding="utf-8") as lines:
        return tuple(csv.DictReader(line for line in lines if not line.startswith("#")))


def pairs(name: str, row: str, figure: str) -> tuple[tuple[float, float], ...]:
    """Return two columns of a table as (row, figure), without the rows that have no such figure."""
    return tuple((float(line[row]), float(line[figure])) for line in read(name) if line[figure])
