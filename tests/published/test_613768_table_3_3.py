"""Intel, ATX12VO Desktop Power Supply Design Guide, 613768, rev. 2.01, section 3.1.2, Table 3-3, p. 23.

A supply must carry the following parts of its rated watts. The large column is for more than 450 W with a 16-pin plug.
"""

import pytest

from service.facts.supply import LARGE_PERCENT, SMALL_PERCENT, TEST_DUTY_PERCENT, is_large
from service.physics.excursion import envelope_percent, supply_envelope_watts

# microseconds, small column [%], large column [%], duty of the test [%]
PRINTED = [(100, 150, 200, 5), (1_000, 145, 180, 8), (10_000, 135, 160, 12.5), (100_000, 110, 120, 25)]
# rated watts, 16-pin plug, watts at 100 us, 1, 10 and 100 ms
EXAMPLES = [
    pytest.param(850, True, (1700, 1530, 1360, 1020), id="850 W with the plug"),
    pytest.param(450, True, (675, 652.5, 607.5, 495), id="450 W exactly stays in the small column"),
    pytest.param(450, False, (675, 652.5, 607.5, 495), id="450 W without the plug"),
    pytest.param(850, False, (1275, 1232.5, 1147.5, 935), id="850 W without the plug"),
]


@pytest.mark.parametrize(("microseconds", "small", "large", "duty"), PRINTED)
def test_columns_as_printed(microseconds: int, small: float, large: float, duty: float) -> None:
    assert envelope_percent(microseconds, large=False) == small
    assert envelope_percent(microseconds, large=True) == large
    assert dict(TEST_DUTY_PERCENT.rows)[microseconds] == duty


def test_no_row_beside_the_printed_ones() -> None:
    times = tuple(float(row[0]) for row in PRINTED)
    assert tuple(time for time, _ in SMALL_PERCENT.rows) == tuple(time for time, _ in LARGE_PERCENT.rows) == times


@pytest.mark.parametrize("large", [False, True])
def test_longer_stretches_are_held_to_the_rating(large: bool) -> None:
    assert envelope_percent(100_001, large=large) == envelope_percent(3_600_000_000, large=large) == 100


@pytest.mark.parametrize(("rated_watts", "has_16_pin", "printed"), EXAMPLES)
def test_watts_of_a_supply(rated_watts: float, has_16_pin: bool, printed: tuple[float, ...]) -> None:
    large = is_large(rated_watts, has_16_pin)
    watts = [supply_envelope_watts(rated_watts, row[0], large=large) for row in PRINTED]
    assert watts == pytest.approx(printed, abs=0.05)
