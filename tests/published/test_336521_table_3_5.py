"""Intel, ATX Version 3.0 Design Guide, 336521, rev. 2.0, Table 3-5: watts and RMS amps of plugs; 9.2 A a contact."""

import pytest

from service.facts.card import LOWEST_PLUG_PERCENT, PLUG_AMPS, PLUG_WATTS
from service.facts.contacts import CONTACTS, SIXTEEN_PIN_AMPS, SIXTEEN_PIN_MAKER_AMPS
from service.facts.fact import Fact
from service.facts.supply import NOMINAL_12_VOLTS
from service.physics.contacts import amps_per_contact, watts_of_contacts
from service.wiring.allowances import joint

# plug, watts, RMS amps over any second, 12 V contacts
PRINTED = [("pcie-6", 75, 6.75, 3), ("pcie-8", 150, 13.5, 3), ("12vhpwr", 600, 55, 6), ("12v-2x6", 600, 55, 6)]


def _lowest_volts() -> float:
    return NOMINAL_12_VOLTS * LOWEST_PLUG_PERCENT.value / 100


@pytest.mark.parametrize(("plug", "watts", "amps", "contacts"), PRINTED)
def test_plug_as_printed(plug: str, watts: float, amps: float, contacts: int) -> None:
    assert (PLUG_WATTS[plug].value, PLUG_AMPS[plug].value, CONTACTS[plug][0]) == (watts, amps, contacts)


@pytest.mark.parametrize(("plug", "watts", "amps", "contacts"), PRINTED)
def test_wiring_allows_the_printed_watts_and_no_milliamp_more(
    plug: str, watts: float, amps: float, contacts: int,
) -> None:
    stops = {each.cause: (each.limits.stop, each.contacts) for each in joint(plug, plug, 0)}
    assert stops["plug"] == (watts / 12 * 1000, 0)
    assert stops["contact"][1] == contacts
    assert stops["plug"][0] < amps * 1000


# Section 3.2: +5 / -8 % at the plug of a card.
def test_lowest_volts_at_a_plug() -> None:
    assert _lowest_volts() == pytest.approx(11.04, abs=0.005)


# 600 W through six contacts: 8.333 A each at 12.00 V, 9.058 A at 11.04 V, under 9.2 A.
@pytest.mark.parametrize(("volts", "printed"), [(12.0, 8.333), (_lowest_volts(), 9.058)], ids=["nominal", "lowest"])
def test_amps_of_a_16_pin_contact(volts: float, printed: float) -> None:
    amps = amps_per_contact(PLUG_WATTS["12v-2x6"].value, volts, CONTACTS["12v-2x6"][0])
    assert amps == pytest.approx(printed, abs=0.0005)
    assert amps < SIXTEEN_PIN_AMPS.value


# 600 W at 11.04 V are 54.35 A, under 55 A.
def test_16_pin_plug_at_the_lowest_volts_keeps_within_its_amps() -> None:
    amps = amps_per_contact(PLUG_WATTS["12v-2x6"].value, _lowest_volts(), 1)
    assert amps == pytest.approx(54.35, abs=0.005)
    assert amps < PLUG_AMPS["12v-2x6"].value


# 55 A over six contacts: 9.167 A each.
def test_amps_of_a_contact_at_the_rms_limit() -> None:
    volts = NOMINAL_12_VOLTS
    watts = watts_of_contacts(PLUG_AMPS["12v-2x6"].value, volts, 1)
    assert amps_per_contact(watts, volts, CONTACTS["12v-2x6"][0]) == pytest.approx(9.167, abs=0.0005)


# 6 x 9.5 A x 12 V in an encyclopedia; 6 x 9.2 A x 12 V by the guide, which is the one in use.
@pytest.mark.parametrize(("fact", "printed"), [(SIXTEEN_PIN_MAKER_AMPS, 684), (SIXTEEN_PIN_AMPS, 662.4)],
                         ids=["connector maker", "guide"])
def test_watts_of_six_contacts(fact: Fact, printed: float) -> None:
    watts = watts_of_contacts(fact.value, NOMINAL_12_VOLTS, CONTACTS["12v-2x6"][0])
    assert watts == pytest.approx(printed, abs=0.05)


def test_wiring_stops_16_pin_contacts_by_the_guide() -> None:
    stops = {each.cause: each.limits.stop for each in joint("12v-2x6", "12v-2x6", 0)}
    assert stops["contact"] == 55_200


# 150 W at 12 V: 12.5 A, 4.167 A a contact.
def test_amps_of_an_8_pin_contact() -> None:
    amps = amps_per_contact(PLUG_WATTS["pcie-8"].value, NOMINAL_12_VOLTS, CONTACTS["pcie-8"][0])
    assert amps == pytest.approx(4.167, abs=0.0005)


# 150 W at 11.04 V: 13.587 A, over the 13.5 A limit. Watts pass, amps fail.
def test_8_pin_plug_at_the_lowest_volts_is_over_its_amps() -> None:
    amps = amps_per_contact(PLUG_WATTS["pcie-8"].value, _lowest_volts(), 1)
    assert amps == pytest.approx(13.587, abs=0.0005)
    assert amps > PLUG_AMPS["pcie-8"].value
