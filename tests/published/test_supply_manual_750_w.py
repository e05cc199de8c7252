"""The duty-cycle test as a maker of supplies reproduces it."""

import pytest

from service.physics.excursion import cycle_low_watts
from tests.published.printed import Printed

DOCUMENT = "User manual of a supply maker with the duty-cycle test of a 750 W unit"
PAGE = "p. 7"


@pytest.mark.parametrize(("microseconds", "printed"), [
    (100, Printed("688.2", PAGE, "secondary")), (1_000, Printed("673.0", PAGE, "secondary")),
    (10_000, Printed("661.2", PAGE, "secondary")), (100_000, Printed("692.8", PAGE, "secondary")),
])
def test_low_level_of_a_cycle(microseconds: int, printed: Printed) -> None:
    assert cycle_low_watts(750, microseconds, large=True) == printed.rounded
