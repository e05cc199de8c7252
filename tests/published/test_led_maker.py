"""Product page of a maker of LED strips, 5 V, 60 lights a metre: 0.3 W each, 18 W and 3.6 A a metre."""

from service.demand.draws import lighting
from service.demand.ends import Ends
from service.facts.headers import LIGHT_HEADER_AMPS
from service.parts.records import Lighting


def test_a_metre_of_lights_is_too_much_for_a_header() -> None:
    draw = lighting(0, Lighting(volts=5, leds=60), Ends("unfavourable"))
    assert draw.sustained == (0, 3_600, 0)
    assert LIGHT_HEADER_AMPS.value * 1000 < 3_600
