"""The sizes that supplies are sold in."""

from typing import Final

from service.facts.fact import COMMON_PRACTICE, Column, Kind

_ROWS: Final = tuple(enumerate((450.0, 550.0, 650.0, 750.0, 850.0, 1000.0, 1200.0, 1600.0), start=1))
STANDARD_SIZES: Final = Column(
    "supply.sizes", _ROWS[0][1], "W", Kind.NOMINAL, COMMON_PRACTICE, "", "common practice",
    reason="The sizes that most makers sell; there are others between them.", rows=_ROWS,
)
