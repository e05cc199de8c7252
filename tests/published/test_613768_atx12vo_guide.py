"""Short excursions that a supply must carry, and the test cycles for them."""

import pytest

from service.physics.excursion import cycle_low_microseconds, cycle_low_watts, envelope_percent
from tests.published.printed import Printed, asked, card, moments, supply

DOCUMENT = "Intel, ATX12VO Desktop Power Supply Design Guide, 613768, rev. 2.01"
TABLE, CYCLES = "section 3.1.2, Table 3-3, p. 23", "Table 3-4, p. 24, 1000 W"
STRETCHES = (100, 1_000, 10_000, 100_000)


@pytest.mark.parametrize(("microseconds", "large", "printed"), [
    (100, False, Printed("150", f"{TABLE}, small", "mirror")), (1_000, False, Printed("145", TABLE, "mirror")),
    (10_000, False, Printed("135", TABLE, "mirror")), (100_000, False, Printed("110", TABLE, "mirror")),
    (100, True, Printed("200", f"{TABLE}, large", "mirror")), (1_000, True, Printed("180", TABLE, "mirror")),
    (10_000, True, Printed("160", TABLE, "mirror")), (100_000, True, Printed("120", TABLE, "mirror")),
    (100_001, False, Printed("100", f"{TABLE}, longer", "mirror")), (100_001, True, Printed("100", TABLE, "mirror")),
])
def test_percent_of_the_rating(microseconds: float, large: bool, printed: Printed) -> None:
    assert envelope_percent(microseconds, large=large) == printed.exact


def _row(texts: str, how: str) -> list[tuple[int, Printed]]:
    """Return the four stretches with what is reckoned for them from the table."""
    return list(zip(STRETCHES, [Printed(text, how, "arithmetic") for text in texts.split()], strict=True))


EXAMPLES = [
    *[(850, True, *one) for one in _row("1700 1530 1360 1020", "Table 3-3, large, 850 W with a 16-pin plug")],
    *[(450, True, *one) for one in _row("675 652.5 607.5 495", "Table 3-3, 450 W exactly stays in the small column")],
    *[(450, False, *one) for one in _row("675 652.5 607.5 495", "Table 3-3, small, 450 W without the plug")],
    *[(850, False, *one) for one in _row("1275 1232.5 1147.5 935", "Table 3-3, small at any size without the plug")],
]


@pytest.mark.parametrize(("rated_watts", "has_16_pin", "microseconds", "printed"), EXAMPLES)
def test_watts_of_a_supply(rated_watts: float, has_16_pin: bool, microseconds: int, printed: Printed) -> None:
    box = supply("12v-2x6" if has_16_pin else "pcie-8", rated_watts=rated_watts)
    assert moments(asked(box, card(100, "pcie-8")), "promised_watts")[microseconds] == printed.rounded


@pytest.mark.parametrize(("microseconds", "printed"), [
    (100, Printed("918", CYCLES, "mirror")), (1_000, Printed("897", CYCLES, "mirror")),
    (10_000, Printed("882", CYCLES, "mirror")), (100_000, Printed("924", CYCLES, "mirror")),
])
def test_low_level_of_a_cycle(microseconds: int, printed: Printed) -> None:
    assert cycle_low_watts(1000, microseconds, large=True) == printed.rounded


@pytest.mark.parametrize(("microseconds", "printed"), [
    (100, Printed("1900", CYCLES, "mirror")), (1_000, Printed("11500", CYCLES, "mirror")),
    (10_000, Printed("70000", CYCLES, "mirror")), (100_000, Printed("300000", CYCLES, "mirror")),
])
def test_low_time_of_a_cycle(microseconds: int, printed: Printed) -> None:
    """It rests on the duty of the test, 5, 8, 12.5 and 25 %; press at launch said 10 % for the first."""
    assert cycle_low_microseconds(microseconds) == printed.rounded
