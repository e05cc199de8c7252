"""Intel, ATX12V and ATX12VO PSU Design Guide Addendum, 621484, rev. 004: 12 V amps of a machine, worked examples."""

import pytest

from service.facts.processor import CLASS_AMPS
from service.facts.rest import MEDIAN_12V_AMPS, SIMPLE_12V_AMPS
from service.physics.budget import twelve_volt_amps

# class of processor [W], cards [W], rest [A], amps printed
PRINTED = [
    pytest.param(65, 0, SIMPLE_12V_AMPS.value, 27, id="65 W class, no card, simple rest of 4 A"),
    pytest.param(125, 300, MEDIAN_12V_AMPS.value, 59, id="125 W class, 300 W card, median rest of 8 A"),
]


@pytest.mark.parametrize(("class_watts", "card_watts", "rest_amps", "printed"), PRINTED)
def test_twelve_volt_amps(class_watts: int, card_watts: float, rest_amps: float, printed: float) -> None:
    continuous, _ = CLASS_AMPS[class_watts]
    assert twelve_volt_amps(continuous, card_watts, rest_amps) == pytest.approx(printed, abs=0.5)


# Same list: the rest of the platform on 12 V is 4 A when simple, 8 A in the middle.
def test_rest_of_the_platform() -> None:
    assert (SIMPLE_12V_AMPS.value, MEDIAN_12V_AMPS.value) == (4, 8)
