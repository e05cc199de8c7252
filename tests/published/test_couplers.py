"""AS/NZS 60320.1:2004, table of couplers, on two reference pages: C14 10 A, C20 16 A; in North America 15 and 20 A."""

import pytest

from service.facts.mains import INLET_AMPS
from service.physics.contacts import watts_of_contacts


@pytest.mark.parametrize(("inlet", "low_range", "amps", "mains_volts", "watts"), [
    ("c14", False, 10, 230, 2300), ("c14", True, 15, 120, 1800), ("c20", False, 16, 230, 3680),
    ("c20", True, 20, 120, 2400),
])
def test_inlets(inlet: str, low_range: bool, amps: float, mains_volts: float, watts: float) -> None:
    assert INLET_AMPS[inlet, low_range].value == amps
    assert watts_of_contacts(INLET_AMPS[inlet, low_range].value, mains_volts, 1) == watts
