"""A disk of 3.5 inches that may delay the start of its motor."""

import pytest

from tests.published.printed import Printed, asked, disk, measured, supply

DOCUMENT = "Seagate, Constellation ES.2 SAS Product Manual, rev. G, Table 3, 2 TB"
CHAIN = {"plugs": [{"connector": "sata-power"}] * 4, "awg": 16}
LEAST_OF_A_DISK_OF_WHICH_NOTHING_IS_SAID = {"category": "drive", "size": "3.5"}


def _four(amps: float) -> dict[str, object]:
    return asked(supply(cables=[CHAIN]), *[disk(amps, moment="starting_amps")] * 4)


@pytest.mark.parametrize(("amps", "printed"), [
    (2.33, Printed("9.32", "2.33 A peak on 12 V at the start, four together", "arithmetic")),
    (0.01, Printed("0.04", "0.01 A on 12 V where the start is delayed, four together", "arithmetic")),
])
def test_four_drives_start_on_one_cable(amps: float, printed: Printed) -> None:
    answer = _four(amps)
    assert answer["power"]["rails"]["12v"]["starting_amps"] == printed.exact  # type: ignore[index]
    assert measured(answer, "CON108") == ({printed.exact} if printed.exact > 8 else set())


@pytest.mark.parametrize(("rail", "printed"), [
    ("12v", Printed("1.72", "DC, most at the start, 12 V", "mirror")),
    ("5v", Printed("0.60", "DC, most at the start, 5 V", "mirror")),
])
def test_a_disk_of_which_nothing_is_said_may_start_with_as_little(rail: str, printed: Printed) -> None:
    assumed = asked(supply(cables=[CHAIN]), LEAST_OF_A_DISK_OF_WHICH_NOTHING_IS_SAID)["assumptions"]
    (low,) = [one["low"] for one in assumed if one["where"].endswith(f"/starting_amps/{rail}")]
    assert 0.95 * printed.exact < low <= printed.exact
