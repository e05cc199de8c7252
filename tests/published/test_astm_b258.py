"""Resistance of copper wire: NBS Handbook 100 and ASTM B258, as printed by a cable-test maker, and its temperature."""

import pytest

from service.facts.wire import SOLID_OHMS_PER_METRE
from service.physics.copper import ohms_per_metre, temperature_factor

# Solid, milliohms a metre at 20 C; the print is in ohms per 100 ft, 0.2525 for 14 AWG to 6.490 for 28 AWG.
SOLID = [(14, 8.284), (16, 13.176), (18, 20.948), (20, 33.301), (22, 52.953), (24, 84.219), (28, 212.927)]
# Resistance table of an equipment maker, Table 38, 7 strands: milliohms a metre at 20 C.
STRANDED = [(14, 8.609), (16, 13.688), (18, 21.772), (20, 34.580)]


@pytest.mark.parametrize(("awg", "milliohms"), SOLID)
def test_solid_wire(awg: int, milliohms: float) -> None:
    assert ohms_per_metre(awg) * 1000 == pytest.approx(milliohms, abs=0.0005)


@pytest.mark.parametrize(("awg", "milliohms"), STRANDED)
def test_stranded_wire(awg: int, milliohms: float) -> None:
    assert ohms_per_metre(awg, stranded=True) * 1000 == pytest.approx(milliohms, abs=0.0006)


# ASTM B258: each gauge is thinner by one factor, so three gauges double the resistance, within half a percent.
@pytest.mark.parametrize("awg", sorted(SOLID_OHMS_PER_METRE)[:-1])
def test_two_gauges_are_a_factor_of_1_59(awg: int) -> None:
    assert ohms_per_metre(awg + 2) / ohms_per_metre(awg) == pytest.approx(2 ** (2 / 3), rel=0.005)


# 0.00393 per C: from 20 to 60 C by 1.1572.
def test_warm_copper() -> None:
    assert temperature_factor(60) == pytest.approx(1.1572, abs=0.00005)
    assert ohms_per_metre(18, celsius=60) / ohms_per_metre(18) == pytest.approx(1.1572, abs=0.00005)


# Engineering note with NBS Handbook 100: 4.181 ohm per 1000 ft at 25 C are 4.906 at 70 C and 5.148 at 85 C.
@pytest.mark.parametrize(("celsius", "printed"), [(70, 4.906), (85, 5.148)])
def test_from_25_degrees(celsius: float, printed: float) -> None:
    factor = temperature_factor(celsius) / temperature_factor(25)
    assert 4.181 * factor == pytest.approx(printed, abs=0.0005)
