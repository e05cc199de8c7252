"""The test cycles of excursions: low level and low time between two peaks."""

import pytest

from service.physics.excursion import cycle_low_microseconds, cycle_low_watts

PEAKS = (100, 1_000, 10_000, 100_000)
# Intel, 613768, rev. 2.01, Table 3-4, 1000 W: watts between peaks, printed to the watt.
GUIDE_1000_WATTS = (918, 897, 882, 924)
# Manual of a maker of loads, table for 750 W, printed to a tenth of a watt.
MANUAL_750_WATTS = (688.2, 673.0, 661.2, 692.8)
# Intel, 613768, rev. 2.01, Table 3-4: time between peaks, 1900 us, 11.5, 70 and 300 ms.
LOW_MICROSECONDS = (1_900, 11_500, 70_000, 300_000)


@pytest.mark.parametrize(("microseconds", "printed"), list(zip(PEAKS, GUIDE_1000_WATTS, strict=True)))
def test_low_level_of_1000_watts(microseconds: int, printed: float) -> None:
    assert cycle_low_watts(1000, microseconds, large=True) == pytest.approx(printed, abs=0.5)


@pytest.mark.parametrize(("microseconds", "printed"), list(zip(PEAKS, MANUAL_750_WATTS, strict=True)))
def test_low_level_of_750_watts(microseconds: int, printed: float) -> None:
    assert cycle_low_watts(750, microseconds, large=True) == pytest.approx(printed, abs=0.05)


@pytest.mark.parametrize(("microseconds", "printed"), list(zip(PEAKS, LOW_MICROSECONDS, strict=True)))
def test_low_time(microseconds: int, printed: float) -> None:
    assert cycle_low_microseconds(microseconds) == pytest.approx(printed, rel=1e-9)
