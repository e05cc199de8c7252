"""Wire gauges against two general-purpose references: fluids, an engineering handbook library, and GNU Units."""

import subprocess

import pytest
from fluids.piping import t_from_gauge

from service.facts.units import BTU_JOULES
from service.physics.copper import area_square_mm, diameter_mm, ohms_per_metre
from service.physics.mains import heat_btu_per_hour
from tests.reference.physics.programs import program

GAUGES = range(-3, 37)
NAMES = {-3: 0.25, -2: 0.33, -1: 0.5}
MM_PER_INCH = 25.4


def _units(have: str, want: str) -> float:
    """Return what GNU Units makes of a conversion, to 15 digits."""
    command = [program("units"), "--terse", "--output-format", "%.15g", have, want]
    return float(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


@pytest.mark.parametrize("awg", GAUGES)
def test_diameter_is_that_of_gnu_units(awg: int) -> None:
    assert diameter_mm(awg) == pytest.approx(_units(f"wiregauge({awg})", "mm"), rel=1e-12)


# The handbook prints inches, to a tenth of a mil down to 30 AWG and to a hundredth below; it names 0000 a quarter.
@pytest.mark.parametrize("awg", GAUGES)
def test_diameter_is_that_of_the_handbook(awg: int) -> None:
    printed = t_from_gauge(NAMES.get(awg, awg), SI=False, schedule="AWG")
    half_a_digit = 0.00005 if awg <= 30 else 0.000005
    assert diameter_mm(awg) / MM_PER_INCH == pytest.approx(printed, abs=half_a_digit)


@pytest.mark.parametrize("awg", GAUGES)
def test_area_is_that_of_gnu_units(awg: int) -> None:
    assert area_square_mm(awg) == pytest.approx(_units(f"circlearea(wiregauge({awg})/2)", "mm^2"), rel=1e-12)


# Copper of 1/58 ohm mm2/m, as the international standard is said to write it; the printed rows lie within 0.04 % of it.
@pytest.mark.parametrize("awg", GAUGES)
def test_resistance_is_that_of_the_international_copper(awg: int) -> None:
    expected = _units(f"(1|58) ohm mm^2/m / circlearea(wiregauge({awg})/2)", "ohm/m")
    assert ohms_per_metre(awg) == pytest.approx(expected, rel=4e-4)


def test_btu_is_that_of_gnu_units() -> None:
    assert BTU_JOULES.value == pytest.approx(_units("btu_IT", "J"), rel=1e-12)
    assert heat_btu_per_hour(750) == pytest.approx(_units("750 W", "btu_IT/hour"), rel=1e-12)
