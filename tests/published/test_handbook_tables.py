"""Upgrading and Repairing PCs, chapter on power supplies: watts of plugs by their contacts."""

import pytest

from service.facts.contacts import CONTACTS, PERIPHERAL_AMPS, PROCESSOR_4_CONTACTS, PROCESSOR_4_STANDARD_AMPS
from service.physics.contacts import watts_of_contacts
from service.wiring.allowances import joint


# Tables 18.14 and 18.15: two standard contacts of a 2x2 plug, 8 A each, 192 W.
def test_processor_4_pin_plug() -> None:
    watts = watts_of_contacts(PROCESSOR_4_STANDARD_AMPS.value, 12, int(PROCESSOR_4_CONTACTS.value))
    assert watts == pytest.approx(192, abs=0.5)
    assert CONTACTS["cpu-4"][0] == PROCESSOR_4_CONTACTS.value


def test_wiring_stops_a_processor_4_pin_plug_at_the_printed_watts() -> None:
    stops = {each.cause: each.limits.stop for each in joint("cpu-4", "cpu-4", 0)}
    assert watts_of_contacts(stops["contact"] / 1000, 12, 1) == pytest.approx(192, abs=0.5)


# Table 18.17: the round 4-pin plug, 11 A on 12 V and 11 A on 5 V, 187 W.
def test_peripheral_plug() -> None:
    on_12v, on_5v, _ = CONTACTS["peripheral-4"]
    watts = watts_of_contacts(PERIPHERAL_AMPS.value, 12, on_12v) + watts_of_contacts(PERIPHERAL_AMPS.value, 5, on_5v)
    assert watts == pytest.approx(187, abs=0.5)


def test_wiring_stops_a_peripheral_plug_at_the_printed_amps() -> None:
    assert [(each.rail, each.limits.stop) for each in joint("peripheral-4", "peripheral-4", 0)] == [
        (0, 11_000), (1, 11_000),
    ]
