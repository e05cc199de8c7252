"""Efficiency that a supply without a level may be held to."""

import pytest

from tests.published.printed import Printed, asked, card, supply

DOCUMENT = "Intel, ATX12V Power Supply Design Guide, version 2.0"


@pytest.mark.parametrize("printed", [Printed("70", "section 3.2.5.1, Table 7, p. 17, full load", "mirror")], ids=str)
def test_least_efficiency_of_a_supply_that_states_none(printed: Printed) -> None:
    answer = asked(supply(), card(1000, "pcie-8"), site={"mains_volts": 115})
    assert answer["power"]["wall"]["efficiency_percent"] == printed.exact
