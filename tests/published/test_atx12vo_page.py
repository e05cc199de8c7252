"""The 10-pin main plug of 12 V only boards."""

import pytest

from service.physics.contacts import watts_of_contacts
from service.wiring.allowances import joint
from tests.published.printed import Printed

DOCUMENT = "Power-supply reference page on ATX12VO connectors"


@pytest.mark.parametrize(("taken_by_sense", "printed"), [
    (0, Printed("288", "10-pin plug, 8 A a contact for planning, three contacts", "secondary")),
    (1, Printed("192", "10-pin plug, one contact used for remote sense", "secondary")),
])
def test_wiring_stops_the_plug_at_the_printed_watts(taken_by_sense: int, printed: Printed) -> None:
    stops = {each.cause: each.limits.stop for each in joint("atx12vo-10", "atx12vo-10", taken_by_sense)}
    assert watts_of_contacts(stops["contact"] / 1000, 12, 1) == printed.exact
