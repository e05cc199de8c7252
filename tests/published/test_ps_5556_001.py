"""Amps and resistance of contacts of 4.2 mm pitch."""

import pytest

from service.physics.contacts import credible_ohms
from service.physics.warmth import estimated_rise_celsius, rated_point
from tests.published.printed import Printed

DOCUMENT = "Product specification PS-5556-001 and test summaries of a 4.2 mm connector, as transcribed in notes"
CIRCUITS = "section 4.3, amps by circuits, 16 AWG, all energised, at most 30 C rise"


@pytest.mark.parametrize(("circuits", "printed"), [
    (2, Printed("8", CIRCUITS, "secondary")), (3, Printed("8", CIRCUITS, "secondary")),
    (4, Printed("7", CIRCUITS, "secondary")), (6, Printed("7", CIRCUITS, "secondary")),
    (8, Printed("6", CIRCUITS, "secondary")), (10, Printed("6", CIRCUITS, "secondary")),
    (12, Printed("5", CIRCUITS, "secondary")), (24, Printed("5", CIRCUITS, "secondary")),
])
def test_rated_point(circuits: int, printed: Printed) -> None:
    assert rated_point("4.2 mm", circuits) == (printed.exact, 30)
    assert estimated_rise_celsius(printed.exact, *rated_point("4.2 mm", circuits)) == 30


@pytest.mark.parametrize(("end", "printed"), [
    (0, Printed("5.651", "test summary, mean of new contacts: milliohms", "mirror")),
    (1, Printed("30", "10 at most when new, 20 more at most after durability: milliohms", "arithmetic")),
])
def test_credible_milliohms(end: int, printed: Printed) -> None:
    assert credible_ohms("4.2 mm")[end] * 1000 == printed.rounded
