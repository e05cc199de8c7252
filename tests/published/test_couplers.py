"""Amps of the mains inlets of supplies."""

import pytest

from tests.published.printed import Printed, asked, card, limits, supply

DOCUMENT = "AS/NZS 60320.1:2004, table of couplers, on two reference pages"


@pytest.mark.parametrize(("inlet", "mains_volts", "printed"), [
    ("c14", 230, Printed("10", "C13 and C14", "secondary")),
    ("c20", 230, Printed("16", "C19 and C20", "secondary")),
    ("c14", 120, Printed("15", "C13 and C14, North America", "secondary")),
    ("c20", 120, Printed("20", "C19 and C20, North America", "secondary")),
])
def test_amps_of_an_inlet(inlet: str, mains_volts: float, printed: Printed) -> None:
    box = supply("12v-2x6", rated_watts=5000, inlet=inlet, efficiency_points=[{"load_percent": 100, "percent": 100}])
    over = printed.exact * mains_volts * 1.01
    answer = asked(box, card(over, "12v-2x6"), site={"mains_volts": mains_volts, "code": "iec"})
    assert limits(answer, "PWR602") == {(printed.exact, "A")}
