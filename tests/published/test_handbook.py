"""Watts and amps of plugs by their contacts."""

import pytest

from service.physics.contacts import watts_of_contacts
from service.wiring.allowances import joint
from tests.published.printed import Printed, asked, disk, limits, supply

DOCUMENT = "Upgrading and Repairing PCs, chapter on power supplies"
ROUND = "Table 18.17, the round 4-pin plug"


@pytest.mark.parametrize("printed", [
    Printed("192", "Tables 18.14 and 18.15, 2x2 plug, standard contacts of 8 A", "secondary"),
], ids=str)
def test_watts_of_a_processor_4_pin_plug(printed: Printed) -> None:
    stops = {each.cause: each.limits.stop for each in joint("cpu-4", "cpu-4", 0)}
    assert watts_of_contacts(stops["contact"] / 1000, 12, 1) == printed.exact


@pytest.mark.parametrize("printed", [Printed("187", f"{ROUND}, 12 V and 5 V together", "secondary")], ids=str)
def test_watts_of_a_peripheral_plug(printed: Printed) -> None:
    stops = {each.rail: each.limits.stop for each in joint("peripheral-4", "peripheral-4", 0)}
    assert watts_of_contacts(stops[0] / 1000, 12, 1) + watts_of_contacts(stops[1] / 1000, 5, 1) == printed.exact


@pytest.mark.parametrize(("rail", "printed"), [
    ("12v", Printed("11", f"{ROUND}, amps of a contact", "secondary")),
    ("5v", Printed("11", f"{ROUND}, amps of a contact", "secondary")),
])
def test_amps_of_a_peripheral_contact(rail: str, printed: Printed) -> None:
    answer = asked(supply("peripheral-4"), disk(printed.exact * 1.01, "peripheral-4", rail=rail))
    assert limits(answer, "CON107") == {(printed.exact, "A")}
