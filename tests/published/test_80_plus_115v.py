"""Least efficiency by level on 115 V, and the watts at the wall that follow."""

import pytest

from tests.published.printed import Printed, asked, card, supply

DOCUMENT = "80 PLUS programme, 115 V internal non-redundant, as tabulated by a technical explainer"
TABLE = "percent at 20, 50 and 100 % load"
SILVER = "full load; the linked page prints 87, every other source 85"
LOADS = (20, 50, 100)
LEVELS = [
    ("white", "80 80 80"), ("bronze", "82 85 82"), ("gold", "87 90 87"), ("platinum", "90 92 89"),
    ("titanium", "92 94 90"),
]
ROWS = [(level, load, Printed(text, TABLE, "secondary")) for level, texts in LEVELS
        for load, text in zip(LOADS, texts.split(), strict=True)]


@pytest.mark.parametrize(("level", "load", "printed"), [
    *ROWS, ("silver", 20, Printed("85", TABLE, "secondary")), ("silver", 50, Printed("88", TABLE, "secondary")),
    ("silver", 100, Printed("85", SILVER, "secondary")),
    ("titanium", 10, Printed("90", "titanium alone is asked for at 10 % load", "secondary")),
])
def test_least_efficiency(level: str, load: float, printed: Printed) -> None:
    answer = asked(supply(efficiency_level=level), card(load * 10, "pcie-8"), site={"mains_volts": 115})
    assert answer["power"]["wall"]["efficiency_percent"] == printed.exact


@pytest.mark.parametrize(("load_watts", "printed"), [
    (170, Printed("195.4", "gold at 20 %, 850 W", "arithmetic")),
    (425, Printed("472.2", "gold at 50 %, 850 W", "arithmetic")),
    (850, Printed("977.0", "gold at 100 %, 850 W", "arithmetic")),
])
def test_watts_at_the_wall(load_watts: float, printed: Printed) -> None:
    box = supply(efficiency_level="gold", rated_watts=850)
    answer = asked(box, card(load_watts, "pcie-8"), site={"mains_volts": 115})
    assert answer["power"]["wall"]["watts"] == printed.rounded


@pytest.mark.parametrize("printed", [
    Printed("0.90", "white to gold; at 50 % load by the explainer, at 100 % by an encyclopedia", "secondary"),
], ids=str)
def test_power_factor_is_not_below_what_the_levels_ask(printed: Printed) -> None:
    box = {name: value for name, value in supply(efficiency_level="gold").items() if name != "power_factor"}
    answer = asked(box, card(500, "pcie-8"), site={"mains_volts": 115})
    assert answer["power"]["wall"]["power_factor"] == printed.exact
