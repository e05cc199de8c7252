"""A disk of 2.5 inches, which runs on 5 V alone."""

import pytest

from tests.published.printed import Printed, asked, supply

DOCUMENT = "Seagate, Laptop Ultrathin HDD SATA Product Manual, rev. C, Table 3, p. 7"


@pytest.mark.parametrize("printed", [Printed("1.00", "5 V while it spins up", "mirror")], ids=str)
def test_a_small_disk_of_which_nothing_is_said_may_start_with_as_much(printed: Printed) -> None:
    answer = asked(supply("sata-power"), {"category": "drive", "size": "2.5"})
    (range_,) = [one for one in answer["assumptions"] if one["where"].endswith("/starting_amps/5v")]
    assert range_["low"] <= printed.exact <= range_["high"]
    assert answer["power"]["rails"]["12v"]["starting_amps"] == 0
