"""Reference page on ATX12VO connectors, 10-pin plug: 8 A a contact for planning, 288 W, or 192 W with remote sense."""

import pytest

from service.facts.contacts import CONTACTS, TWELVE_ONLY_PLANNING_AMPS
from service.physics.contacts import watts_of_contacts
from service.wiring.allowances import joint


@pytest.mark.parametrize(("taken_by_sense", "printed"), [(0, 288), (1, 192)])
def test_watts_of_the_plug(taken_by_sense: int, printed: float) -> None:
    contacts = CONTACTS["atx12vo-10"][0] - taken_by_sense
    watts = watts_of_contacts(TWELVE_ONLY_PLANNING_AMPS.value, 12, contacts)
    assert watts == pytest.approx(printed, abs=0.5)


@pytest.mark.parametrize(("open_contacts", "printed"), [(0, 288), (1, 192)])
def test_wiring_stops_the_plug_at_the_printed_watts(open_contacts: int, printed: float) -> None:
    stops = {each.cause: each.limits.stop for each in joint("atx12vo-10", "atx12vo-10", open_contacts)}
    assert watts_of_contacts(stops["contact"] / 1000, 12, 1) == pytest.approx(printed, abs=0.5)
