"""A disk of 3.5 inches that starts hard."""

import pytest

from tests.published.printed import Printed, asked, supply

DOCUMENT = "Seagate, Barracuda ES SATA Product Manual, rev. D, Table 6, p. 17"


@pytest.mark.parametrize("printed", [Printed("2.80", "peak on 12 V while it spins up", "mirror")], ids=str)
def test_a_disk_of_which_nothing_is_said_may_start_with_as_much(printed: Printed) -> None:
    rails = asked(supply("sata-power"), {"category": "drive", "size": "3.5"})["power"]["rails"]
    assert rails["12v"]["starting_amps"] == printed.exact


@pytest.mark.parametrize(("rail", "printed"), [
    ("12v", Printed("0.520", "idle, 12 V", "mirror")), ("5v", Printed("0.611", "idle, 5 V", "mirror")),
])
def test_a_disk_of_which_nothing_is_said_draws_at_least_that(rail: str, printed: Printed) -> None:
    rails = asked(supply("sata-power"), {"category": "drive", "size": "3.5"})["power"]["rails"]
    assert rails[rail]["sustained_amps"] > printed.exact
