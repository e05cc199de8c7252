"""Efficiency at low load by the 3.0 guide, and the least efficiency that the 2.0 guide asks for."""

import pytest

from tests.published.printed import Json, Printed, asked, card, supply

DOCUMENT = "technical press summaries of ATX 3.0; Intel, ATX12V Power Supply Design Guide, version 2.0"
SMALL, LARGE = "up to 500 W: tested at 10 W", "above 500 W: tested at 2 % of the rating"
TABLE_7 = "ATX12V 2.0, section 3.2.5.1, Table 7, p. 17, required"


def _wall(load_watts: float, **given: object) -> Json:
    answer = asked(supply(**given), card(load_watts, "pcie-8"), site={"mains_volts": 115})
    found: Json = answer["power"]["wall"]
    return found


@pytest.mark.parametrize(("rated_watts", "printed"), [
    (300, Printed("10", SMALL, "secondary")), (500, Printed("10", SMALL, "secondary")),
    (550, Printed("11", LARGE, "arithmetic")), (750, Printed("15", LARGE, "arithmetic")),
])
def test_load_of_the_test(rated_watts: float, printed: Printed) -> None:
    answer = asked(supply(rated_watts=rated_watts, design="atx-3.0"), card(100))
    assert answer["power"]["promises"]["low_load"]["watts"] == printed.exact


@pytest.mark.parametrize(("field", "printed"), [
    ("least_percent", Printed("60", "required", "secondary")),
    ("recommended_percent", Printed("70", "recommended", "secondary")),
])
def test_efficiency_of_the_test(field: str, printed: Printed) -> None:
    answer = asked(supply(design="atx-3.0"), card(100))
    assert answer["power"]["promises"]["low_load"][field] == printed.exact


@pytest.mark.parametrize("printed", [Printed("33.3", "20 W of 1000 W at 60 %", "arithmetic")], ids=str)
def test_watts_at_the_wall(printed: Printed) -> None:
    assert _wall(20.004, design="atx-3.0", efficiency_level="gold")["watts"] == printed.rounded


@pytest.mark.parametrize(("load_watts", "printed"), [
    (1000, Printed("70", TABLE_7, "mirror")), (500.004, Printed("70", TABLE_7, "mirror")),
    (200, Printed("60", TABLE_7, "mirror")),
])
def test_least_of_the_2_0_guide(load_watts: float, printed: Printed) -> None:
    assert _wall(load_watts)["efficiency_percent"] == printed.rounded
