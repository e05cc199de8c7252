"""Strips of lights and single runs: what reaches their end."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics.copper import pair_ohms
from service.physics.loads import amps_of_watts, collapse_amps, most_watts
from service.physics.runs import run
from service.physics.strip import even_strip, tapped_strip

ohms = st.floats(0, 0.3)


# 2 m at 1.5 A and 0.08 ohm a metre behind 0.05 ohm: 3 A, 0.15 V in the lead, half of 3 A times 0.16 ohm in the strip.
def test_an_even_strip_by_hand() -> None:
    lit = even_strip(12, 0.05, 0.08, 1.5, 2000)
    assert lit
    assert lit.total_amps == pytest.approx(3)
    assert (lit.first_volts, lit.last_volts) == pytest.approx((11.85, 11.61))
    assert lit.lost_watts == pytest.approx(0.45 + 9 * 0.16 / 3)


# With n lights the last has lost a (lead n + pitch n (n - 1) / 2).
@given(lead=ohms, pitch=st.floats(0, 0.01), lights=st.integers(1, 40), each=st.floats(0, 0.02))
def test_lights_of_constant_current(lead: float, pitch: float, lights: int, each: float) -> None:
    lit = tapped_strip(5, lead, pitch, lights, light_amps=each)
    drop = each * (lead * lights + pitch * lights * (lights - 1) / 2)
    assert (lit is None) == (drop >= 5)
    assert lit is None or 5 - lit.device_volts[-1] == pytest.approx(drop, abs=1e-12)


@given(lead=ohms, per_metre=ohms, amps=st.floats(0.1, 2), length=st.floats(100, 3000))
def test_many_small_lights_come_near_an_even_strip(lead: float, per_metre: float, amps: float, length: float) -> None:
    count, metres = 200, length / 1000
    pitch, each = per_metre * metres / count, amps * metres / count
    even = even_strip(12, lead, per_metre, amps, length)
    lights = tapped_strip(12, lead + pitch / 2, pitch, count, light_amps=each)
    assert even
    assert lights
    # The last light sits half a pitch before the end, where its own current alone would flow.
    assert lights.device_volts[-1] == pytest.approx(even.last_volts, abs=1e-9)
    assert lights.lost_watts == pytest.approx(even.lost_watts, rel=1e-4, abs=1e-9)


def test_lights_of_constant_power_take_more_where_volts_are_few() -> None:
    lit = tapped_strip(5, 0.05, 0.01, 30, light_watts=0.1)
    assert lit
    assert list(lit.plug_amps) == sorted(lit.plug_amps)
    assert lit.plug_amps[-1] > lit.plug_amps[0] > 0.1 / 5


def test_a_strip_too_long_has_no_solution() -> None:
    assert even_strip(5, 0.05, 0.5, 3.6, 4000) is None
    assert tapped_strip(5, 0.05, 0.01, 200, light_amps=0.06) is None
    assert tapped_strip(5, 0.05, 0.01, 200, light_watts=0.3) is None


@pytest.mark.parametrize("wrong", [(0, 0.1, 0.1, 1, 1), (5, -0.1, 0.1, 1, 1), (5, 0.1, 0.1, 1, float("nan"))], ids=str)
def test_no_strip_is_refused(wrong: tuple[float, float, float, float, float]) -> None:
    with pytest.raises(ValueError, match="not negative"):
        even_strip(*wrong)


def test_no_light_is_refused() -> None:
    with pytest.raises(ValueError, match="has a light"):
        tapped_strip(5, 0.1, 0.1, 0)


# 0.65 m of 16 AWG, six pairs, 50 A: 142.7 mV and 7.14 W in the wires; four joints of 6 milliohms take 200 mV more, and
# 12.00 V leave 11.657 V, above 11.04 V.
def test_the_run_of_a_16_pin_cable() -> None:
    wires = run(12, 16, 650, lowest_volts=11.04, amps=50, parallel_pairs=6)
    assert wires
    assert 12 - wires.end_volts == pytest.approx(0.1427, abs=0.00005)
    assert wires.lost_watts == pytest.approx(7.14, abs=0.005)
    whole = run(12, 16, 650, lowest_volts=11.04, amps=50, parallel_pairs=6, ohms_per_contact=0.006)
    assert whole
    assert whole.end_volts == pytest.approx(11.657, abs=0.0005)
    assert whole.reserve_volts == pytest.approx(0.617, abs=0.0005)
    assert whole.pair_amps == pytest.approx(8.333, abs=0.0005)


@given(amps=st.floats(0, 5), watts=st.floats(0, 50), length=st.floats(1, 3000), awg=st.integers(14, 28))
def test_watts_are_kept_along_a_run(amps: float, watts: float, length: float, awg: int) -> None:
    found = run(12, awg, length, lowest_volts=11, amps=amps, watts=watts, ohms_per_contact=0.01)
    if found:
        assert 12 * found.total_amps == pytest.approx(found.end_volts * amps + watts + found.lost_watts)
        assert found.path_ohms == pytest.approx(pair_ohms(awg, length) + 0.04)
        assert found.reserve_volts == pytest.approx(found.end_volts - 11)


@given(watts=st.floats(1, 500), length=st.floats(100, 3000), more=st.floats(1, 3000), awg=st.integers(14, 28))
def test_a_longer_run_brings_no_more(watts: float, length: float, more: float, awg: int) -> None:
    short, long = (run(12, awg, each, lowest_volts=11, watts=watts) for each in (length, length + more))
    assert long is None or (short is not None and long.end_volts <= short.end_volts + 1e-12)


def test_a_run_that_cannot_carry_it_has_no_solution() -> None:
    most = most_watts(12, pair_ohms(24, 3000))
    assert run(12, 24, 3000, lowest_volts=6, watts=most * 0.9999) is not None
    assert run(12, 24, 3000, lowest_volts=6, watts=most * 1.0001) is None
    assert run(12, 24, 3000, lowest_volts=6, amps=30) is None
    assert run(12, 24, 3000, lowest_volts=6, amps=23, watts=5) is None


@pytest.mark.parametrize("wrong", [{"amps": -1.0}, {"watts": -1.0}, {"source_volts": 0.0}], ids=str)
def test_no_run_is_refused(wrong: dict[str, float]) -> None:
    given = {"source_volts": 12.0, "awg": 18, "length_mm": 500.0, "lowest_volts": 11.0} | wrong
    with pytest.raises(ValueError, match="not negative"):
        run(**given)  # type: ignore[arg-type]


def test_strands_warmth_and_contacts_each_take_their_part() -> None:
    plain = run(12, 18, 1000, lowest_volts=11, amps=5)
    assert plain
    for each in ({"stranded": True}, {"celsius": 60}, {"ohms_per_contact": 0.01}):
        worse = run(12, 18, 1000, lowest_volts=11, amps=5, **each)
        assert worse
        assert worse.end_volts < plain.end_volts
    two = run(12, 18, 1000, lowest_volts=11, amps=5, ohms_per_contact=0.01, contacts_in_series=2)
    assert two
    assert two.path_ohms - plain.path_ohms == pytest.approx(0.02)


@given(volts=st.floats(1, 60), watts=st.floats(0.1, 500), path_ohms=st.floats(1e-4, 10))
def test_no_load_of_constant_power_takes_more_than_where_it_breaks_down(
    volts: float, watts: float, path_ohms: float,
) -> None:
    amps = amps_of_watts(volts, path_ohms, watts)
    assert amps is None or amps <= collapse_amps(volts, watts) * (1 + 1e-12)


# 10 W at 5 V break down at half the volts: 4 A; the resistance that goes with it is 2.5 V / 4 A = 0.625 ohm.
def test_where_a_load_breaks_down() -> None:
    assert collapse_amps(5, 10) == pytest.approx(4)
    assert amps_of_watts(5, 0.625, 10) == pytest.approx(4)
    assert amps_of_watts(5, 0.6251, 10) is None
