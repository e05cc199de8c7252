"""A real wire of 16 AWG, warmed."""

import pytest

from service.physics.copper import temperature_factor
from tests.published.printed import Printed

DOCUMENT = "Engineering note on wires of 16 AWG, after product records of two cable makers and NBS Handbook 100"
WIRE = "19 strands, 4.181 ohm per 1000 ft at 25 C"


@pytest.mark.parametrize(("celsius", "printed"), [
    (70, Printed("4.906", WIRE, "secondary")), (85, Printed("5.148", WIRE, "secondary")),
])
def test_from_25_degrees(celsius: float, printed: Printed) -> None:
    assert 4.181 * temperature_factor(celsius) / temperature_factor(25) == printed.rounded
