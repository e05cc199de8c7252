"""NEC 210.19(A)(1) and 210.20(A), as quoted by electricians: a circuit is 125 % of its continuous load."""

import pytest

from service.facts.mains import CONTINUOUS_CIRCUIT_PERCENT, SMALL_CIRCUIT_AMPS
from service.physics.contacts import watts_of_contacts
from service.physics.conversion import wall_amps, wall_watts
from service.physics.mains import circuit_amps, continuous_amps
from service.rules.shares import part_of


# 15 A: 12 A, 1440 W at 120 V; 20 A: 16 A, 1920 W.
@pytest.mark.parametrize(("circuit", "amps", "watts"), [(15, 12, 1440), (20, 16, 1920)])
def test_continuous_load_of_a_circuit(circuit: float, amps: float, watts: float) -> None:
    assert continuous_amps(circuit) == pytest.approx(amps, abs=0.05)
    assert watts_of_contacts(continuous_amps(circuit), 120, 1) == pytest.approx(watts, abs=0.5)


@pytest.mark.parametrize("circuit", [15, 16, 20, 32])
def test_rule_takes_the_same_share_as_the_formula(circuit: float) -> None:
    assert part_of(circuit, CONTINUOUS_CIRCUIT_PERCENT) == pytest.approx(continuous_amps(circuit))


# 16 A for hours ask for a circuit of 20 A.
def test_circuit_of_a_continuous_load() -> None:
    assert circuit_amps(16) == pytest.approx(20, abs=0.05)


# 1600 W at 90 %, 120 V, power factor 1: 14.81 A, which a 15 A circuit does not carry for hours.
def test_a_1600_watt_supply_on_the_smallest_circuit() -> None:
    amps = wall_amps(wall_watts(1600, 90), 120, 1.0)
    assert amps == pytest.approx(14.81, abs=0.005)
    assert continuous_amps(SMALL_CIRCUIT_AMPS.value) < amps < SMALL_CIRCUIT_AMPS.value
