"""Continuous load of a circuit: the circuit is 125 % of it."""

import pytest

from service.physics.contacts import watts_of_contacts
from service.physics.mains import circuit_amps, continuous_amps
from tests.published.printed import Json, Printed, asked, card, limits, supply

DOCUMENT = "NEC 210.19(A)(1) and 210.20(A), as quoted by electricians"
READER, RULE = "a reader's arithmetic in a hobby forum", "circuit of 125 % of the continuous load"


def _at_90_percent(load_watts: float, circuit: float) -> Json:
    box = supply(rated_watts=5000, efficiency_points=[{"load_percent": 100, "percent": 90}])
    return asked(box, card(load_watts, "pcie-8"), site={"mains_volts": 120, "circuit_amps": circuit})


@pytest.mark.parametrize(("circuit", "volts", "printed"), [
    (15, 1, Printed("12", f"{READER}: amps of 15 A", "secondary")),
    (15, 120, Printed("1440", f"{READER}: watts of 15 A at 120 V", "secondary")),
    (20, 1, Printed("16", f"{READER}: amps of 20 A", "secondary")),
    (20, 120, Printed("1920", f"{READER}: watts of 20 A at 120 V", "secondary")),
])
def test_continuous_load_of_a_circuit(circuit: float, volts: float, printed: Printed) -> None:
    told = limits(_at_90_percent(2000, circuit), "PWR601")
    assert {watts_of_contacts(amps, volts, 1) for amps, _ in told} == {printed.exact}
    assert watts_of_contacts(continuous_amps(circuit), volts, 1) == printed.exact


@pytest.mark.parametrize("printed", [Printed("20", f"{RULE}: 16 A for hours", "arithmetic")], ids=str)
def test_circuit_of_a_continuous_load(printed: Printed) -> None:
    assert circuit_amps(16) == printed.exact


@pytest.mark.parametrize("printed", [Printed("14.81", "1600 W at 90 %, 120 V, power factor 1", "arithmetic")], ids=str)
def test_a_1600_watt_load_is_too_much_for_the_smallest_circuit(printed: Printed) -> None:
    answer = _at_90_percent(1600, 15)
    assert answer["power"]["wall"]["amps"] == printed.rounded
    assert limits(answer, "PWR601") == {(12.0, "A")}


@pytest.mark.parametrize("printed", [Printed("20", f"{RULE}: 16 A for hours", "arithmetic")], ids=str)
def test_least_circuit_of_a_load_for_hours(printed: Printed) -> None:
    answer = _at_90_percent(16 * 120 * 0.9, 20)
    assert answer["power"]["wall"]["least_circuit_amps"] == printed.rounded
    assert limits(answer, "PWR601") == set()
