"""What lights take at full white."""

import pytest

from service.physics.contacts import watts_of_contacts
from tests.published.printed import Printed, asked, board, measured, supply

DOCUMENT = "Product page of a maker of LED strips, RGB-5050-5V-IP65-60D-1M"


@pytest.mark.parametrize(("volts", "printed"), [
    (1, Printed("3.6", "60 lights a metre of 60 mA: amps", "secondary")),
    (5, Printed("18.0", "60 lights a metre of 0.3 W: watts", "secondary")),
])
def test_a_metre_of_lights_is_too_much_for_a_header(volts: float, printed: Printed) -> None:
    """Others say 50 mA a light; the higher figure is taken."""
    offers = {"offers": [{"connector": "argb-3", "count": 1, "max_amps": 3}]}
    lights = {"category": "lighting", "volts": 5, "leds": 60, "needs": [{"connector": "argb-3"}]}
    answer = asked(supply("atx-24", "cpu-8"), board() | offers, lights)
    assert {watts_of_contacts(amps, volts, 1) for amps in measured(answer, "AUX102")} == {printed.exact}
