"""SATA specification, power segment, as reported by an implementer: 1.5 A a pin, three pins a rail."""

import pytest

from service.facts.contacts import CONTACTS, DRIVE_PLUG_12V_WATTS, DRIVE_PLUG_RAIL_AMPS, SATA_PIN_AMPS
from service.physics.contacts import watts_of_contacts
from service.wiring.allowances import joint

RAILS = [(0, 12, 54), (1, 5, 22.5), (2, 3.3, 14.85)]


# The most through one plug: 54 W on 12 V, 22.5 W on 5 V, 14.85 W on 3.3 V.
@pytest.mark.parametrize(("rail", "volts", "printed"), RAILS)
def test_most_of_a_plug_by_rail(rail: int, volts: float, printed: float) -> None:
    watts = watts_of_contacts(SATA_PIN_AMPS.value, volts, CONTACTS["sata-power"][rail])
    assert watts == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize(("rail", "volts", "printed"), RAILS)
def test_wiring_stops_a_plug_there_at_work_and_at_the_start(rail: int, volts: float, printed: float) -> None:
    limits = next(each.limits for each in joint("sata-power", "sata-power", 0) if each.rail == rail)
    assert watts_of_contacts(limits.stop / 1000, volts, 1) == pytest.approx(printed, abs=0.005)
    assert limits.start_stop == limits.stop == 4_500


def test_figures_of_the_rules_are_those_of_the_pins() -> None:
    assert (DRIVE_PLUG_RAIL_AMPS.value, DRIVE_PLUG_12V_WATTS.value) == (4.5, 54)
