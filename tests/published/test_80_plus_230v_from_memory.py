"""Least efficiency by level on 230 V. From memory: the programme's own table has not been read."""

import pytest

from tests.published.printed import Printed, asked, card, supply

DOCUMENT = "80 PLUS programme, 230 V EU internal (from memory)"
TABLE = "percent at 20, 50 and 100 % load"
TITANIUM = "full load: 94 in one text, 91 in another, which is recalled as the redundant class; 94 is taken"
LEVELS = [
    ("white", "82 85 82"), ("bronze", "85 88 85"), ("silver", "87 90 87"), ("gold", "90 92 89"),
    ("platinum", "92 94 90"),
]
ROWS = [(level, load, Printed(text, TABLE, "memory")) for level, texts in LEVELS
        for load, text in zip((20, 50, 100), texts.split(), strict=True)]


@pytest.mark.parametrize(("level", "load", "printed"), [
    *ROWS, ("titanium", 10, Printed("90", "titanium at 10 % load", "memory")),
    ("titanium", 20, Printed("94", TABLE, "memory")), ("titanium", 50, Printed("96", TABLE, "memory")),
    ("titanium", 100, Printed("94", TITANIUM, "memory")),
])
def test_least_efficiency(level: str, load: float, printed: Printed) -> None:
    answer = asked(supply(efficiency_level=level), card(load * 10, "pcie-8"), site={"mains_volts": 230})
    assert answer["power"]["wall"]["efficiency_percent"] == printed.exact
