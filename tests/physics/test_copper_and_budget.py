"""Wires, contacts and circuits: thinner and warmer resists more, more contacts carry less each."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.facts.wire import SOLID_OHMS_PER_METRE, STRANDED_OHMS_PER_METRE
from service.physics.budget import amps_per_contact, twelve_volt_amps, watts_of_contacts
from service.physics.copper import ohms_per_metre, temperature_factor
from service.physics.mains import circuit_amps, continuous_amps

solid = st.sampled_from(sorted(SOLID_OHMS_PER_METRE))
celsius = st.floats(10, 99)
amps = st.floats(0.1, 60)


@given(one=solid, other=solid, warmth=celsius)
def test_a_thinner_gauge_resists_more(one: int, other: int, warmth: float) -> None:
    thick, thin = sorted((one, other))
    assert (ohms_per_metre(thin, celsius=warmth) > ohms_per_metre(thick, celsius=warmth)) == (thin != thick)


@given(awg=solid, warmth=celsius, more=st.floats(0.1, 50))
def test_warmer_wire_resists_more(awg: int, warmth: float, more: float) -> None:
    assert ohms_per_metre(awg, celsius=warmth + more) > ohms_per_metre(awg, celsius=warmth)


@pytest.mark.parametrize("awg", sorted(STRANDED_OHMS_PER_METRE))
def test_strands_resist_a_little_more_than_solid_wire(awg: int) -> None:
    assert 1 < ohms_per_metre(awg, stranded=True) / ohms_per_metre(awg) < 1.06


@pytest.mark.parametrize("awg", sorted(SOLID_OHMS_PER_METRE)[:-1])
def test_three_gauges_double_the_resistance(awg: int) -> None:
    assert ohms_per_metre(awg + 2) / ohms_per_metre(awg) == pytest.approx(2 ** (2 / 3), rel=0.005)


def test_printed_ohms_hold_at_20_degrees() -> None:
    assert temperature_factor(20) == 1


def test_a_gauge_that_is_not_printed_is_not_guessed() -> None:
    with pytest.raises(KeyError):
        ohms_per_metre(17)


@given(carried=amps, volts=st.sampled_from([3.3, 5.0, 12.0]), contacts=st.integers(1, 12))
def test_watts_and_amps_of_contacts_undo_each_other(carried: float, volts: float, contacts: int) -> None:
    assert amps_per_contact(watts_of_contacts(carried, volts, contacts), volts, contacts) == pytest.approx(carried)


@given(watts=st.floats(1, 600), volts=st.floats(11, 12.6), contacts=st.integers(1, 11))
def test_one_contact_more_lightens_the_others(watts: float, volts: float, contacts: int) -> None:
    assert amps_per_contact(watts, volts, contacts + 1) < amps_per_contact(watts, volts, contacts)


def test_no_contact_carries_nothing() -> None:
    with pytest.raises(ZeroDivisionError):
        amps_per_contact(1, 12, 0)


@given(processor=amps, watts=st.floats(0, 600), rest=amps, more=st.floats(0.1, 100))
def test_more_of_anything_is_more_on_12_volts(processor: float, watts: float, rest: float, more: float) -> None:
    base = twelve_volt_amps(processor, watts, rest)
    assert twelve_volt_amps(processor + more, watts, rest) > base
    assert twelve_volt_amps(processor, watts + more, rest) > base
    assert twelve_volt_amps(processor, watts, rest + more) > base


@given(circuit=st.floats(1, 63))
def test_a_circuit_carries_for_hours_what_asks_for_that_circuit(circuit: float) -> None:
    assert continuous_amps(circuit) < circuit
    assert circuit_amps(continuous_amps(circuit)) == pytest.approx(circuit)


@given(load=amps, other=amps)
def test_other_load_is_added_as_it_is(load: float, other: float) -> None:
    assert circuit_amps(load, other) == pytest.approx(circuit_amps(load) + other)
