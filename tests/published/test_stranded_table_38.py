"""Resistance of wire of seven strands by gauge."""

import pytest

from service.physics.copper import ohms_per_metre
from tests.published.printed import Printed

DOCUMENT = "Resistance table of an equipment maker, Table 38"
TABLE = "7 strands, 20 C, milliohms a foot; the row of 22 AWG is below solid wire, so it is an error and left out"


@pytest.mark.parametrize(("awg", "printed"), [
    (14, Printed("2.624", TABLE, "secondary")), (16, Printed("4.172", TABLE, "secondary")),
    (18, Printed("6.636", TABLE, "secondary")), (20, Printed("10.54", TABLE, "secondary")),
])
def test_milliohms_of_a_foot(awg: int, printed: Printed) -> None:
    assert ohms_per_metre(awg, stranded=True) * 1000 * 0.3048 == printed.rounded
