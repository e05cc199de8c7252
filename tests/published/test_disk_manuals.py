"""Product manuals of 3.5 inch drives: 2.33 A peak on 12 V at the start, or 2.80 A; 0.01 A where that is delayed."""

import pytest

from service.demand.draws import drive
from service.demand.ends import Ends
from service.facts.contacts import DRIVE_CABLE_AMPS
from service.facts.drives import STARTING_AMPS
from service.parts.figures import exactly
from service.parts.records import Drive, RailRange
from service.wiring.allowances import merged, wires

CABLE = ("sata-power",) * 4


def _started_together(amps: float) -> int:
    disk = Drive(size="3.5", running_amps=RailRange(v12=exactly(0)), starting_amps=RailRange(v12=exactly(amps)))
    return len(CABLE) * drive(0, disk, Ends("unfavourable")).starting[0]


# Four drives: 9.32 A together, over the 8 A that a drive cable is planned with; 0.04 A when each starts later.
@pytest.mark.parametrize(("amps", "together", "too_much"), [(2.33, 9_320, True), (0.01, 40, False)],
                         ids=["together", "delayed"])
def test_four_drives_on_one_cable(amps: float, together: int, too_much: bool) -> None:
    on_12v = merged(wires(CABLE, 18, 1))[0]
    assert on_12v.start_band == DRIVE_CABLE_AMPS.value * 1000 == 8_000
    assert _started_together(amps) == together
    assert (together > on_12v.start_band) == too_much


def test_usual_start_reaches_from_one_manual_to_the_other() -> None:
    assert STARTING_AMPS["3.5"]["12v"].low <= 1.72
    assert STARTING_AMPS["3.5"]["12v"].high >= 2.80
