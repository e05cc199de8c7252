"""At the wall: circuits, a UPS, heat and energy."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics.conversion import wall_amps
from service.physics.mains import (
    circuit_amps,
    continuous_amps,
    heat_btu_per_hour,
    kilowatt_hours_a_year,
    share_percent,
    volt_amperes,
)

amps = st.floats(0.1, 60)
watts = st.floats(1, 3000)


@given(circuit=st.floats(1, 63))
def test_a_circuit_carries_for_hours_what_asks_for_that_circuit(circuit: float) -> None:
    assert continuous_amps(circuit) < circuit
    assert circuit_amps(continuous_amps(circuit)) == pytest.approx(circuit)


@given(load=amps, other=amps)
def test_other_load_is_added_as_it_is(load: float, other: float) -> None:
    assert circuit_amps(load, other) == pytest.approx(circuit_amps(load) + other)


# 12 A are the whole of what 15 A carry for hours, and 80 % of it.
def test_share_of_a_circuit() -> None:
    assert share_percent(12, 15) == pytest.approx(80)
    assert share_percent(12, continuous_amps(15)) == pytest.approx(100)
    with pytest.raises(ZeroDivisionError):
        share_percent(1, 0)


@given(taken=watts, volts=st.floats(90, 264), factor=st.floats(0.5, 1))
def test_volt_amperes_are_volts_times_amps(taken: float, volts: float, factor: float) -> None:
    assert volt_amperes(taken, factor) == pytest.approx(volts * wall_amps(taken, volts, factor))
    assert volt_amperes(taken, factor) >= taken


# Trade relation: volt-amperes are wall watts by the power factor; 540 W fill 900 VA at 0.6.
def test_a_ups_of_540_watts_and_900_volt_amperes() -> None:
    assert volt_amperes(540, 0.6) == pytest.approx(900)
    assert share_percent(volt_amperes(486, 0.9), 900) == pytest.approx(60)
    assert share_percent(486, 540) == pytest.approx(90)


@pytest.mark.parametrize("factor", [0, 1.01, float("nan")])
def test_no_power_factor_is_refused(factor: float) -> None:
    with pytest.raises(ValueError, match="power factor"):
        volt_amperes(100, factor)


# A ton of cooling is 12,000 BTU/h, which is 3517 W.
def test_heat_of_a_ton_of_cooling() -> None:
    assert heat_btu_per_hour(3516.853) == pytest.approx(12_000, abs=0.01)


# 100 W the whole year are 876 kWh, and a third of that at 8 hours a day.
def test_energy_of_a_year() -> None:
    assert kilowatt_hours_a_year(100) == pytest.approx(876)
    assert kilowatt_hours_a_year(100, 8) == pytest.approx(292)


@pytest.mark.parametrize("hours", [-1, 24.1, float("nan")])
def test_no_day_is_refused(hours: float) -> None:
    with pytest.raises(ValueError, match="0 to 24 hours"):
        kilowatt_hours_a_year(100, hours)
