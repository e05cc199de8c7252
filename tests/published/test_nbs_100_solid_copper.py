"""Resistance of solid copper wire by gauge, and how warmth changes it."""

import pytest

from service.physics.copper import ohms_per_metre, temperature_factor
from tests.published.printed import Printed

DOCUMENT = "Wire tables of a cable-test maker, in the values of NBS Handbook 100 and ASTM B258"
TABLE, WARM = "ohms per 100 ft, solid copper, 20 C", "0.00393 per C at 20 C, 10 to 100 C"
FEET_OF_A_METRE = 1 / 0.3048


@pytest.mark.parametrize(("awg", "printed"), [
    (14, Printed("0.2525", TABLE, "secondary")), (16, Printed("0.4016", TABLE, "secondary")),
    (18, Printed("0.6385", TABLE, "secondary")), (20, Printed("1.015", TABLE, "secondary")),
    (22, Printed("1.614", TABLE, "secondary")), (24, Printed("2.567", TABLE, "secondary")),
    (26, Printed("4.081", TABLE, "secondary")), (28, Printed("6.490", TABLE, "secondary")),
])
def test_ohms_of_100_feet(awg: int, printed: Printed) -> None:
    assert ohms_per_metre(awg) * 100 / FEET_OF_A_METRE == printed.rounded


@pytest.mark.parametrize(("awg", "printed"), [
    (14, Printed("8.284", "the table in milliohms a metre", "arithmetic")),
    (16, Printed("13.176", "the table in milliohms a metre", "arithmetic")),
    (18, Printed("20.948", "the table in milliohms a metre", "arithmetic")),
    (20, Printed("33.301", "the table in milliohms a metre", "arithmetic")),
    (22, Printed("52.953", "the table in milliohms a metre", "arithmetic")),
    (24, Printed("84.219", "the table in milliohms a metre", "arithmetic")),
    (28, Printed("212.927", "the table in milliohms a metre", "arithmetic")),
])
def test_milliohms_of_a_metre(awg: int, printed: Printed) -> None:
    assert ohms_per_metre(awg) * 1000 == printed.rounded


@pytest.mark.parametrize(("metres", "amps", "printed"), [
    (0.6, 5, Printed("62.8", "18 AWG, 0.6 m one way, 5 A: millivolts", "arithmetic")),
])
def test_millivolts_over_a_wire(metres: float, amps: float, printed: Printed) -> None:
    assert ohms_per_metre(18) * metres * amps * 1000 == printed.rounded


@pytest.mark.parametrize(("celsius", "printed"), [
    (60, Printed("1.1572", WARM, "arithmetic")), (65, Printed("1.17685", WARM, "arithmetic")),
    (85, Printed("1.25545", WARM, "arithmetic")),
])
def test_warm_copper(celsius: float, printed: Printed) -> None:
    assert temperature_factor(celsius) == printed.rounded
    assert ohms_per_metre(18, celsius=celsius) / ohms_per_metre(18) == printed.rounded
