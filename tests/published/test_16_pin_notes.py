"""Resistance of contacts of the 16-pin plug."""

import pytest

from service.physics.contacts import credible_ohms
from tests.published.printed import Printed

DOCUMENT = "PCI-SIG CEM 5.1 and connector makers' specifications, as quoted in engineering notes and by the press"


@pytest.mark.parametrize(("end", "printed"), [
    (0, Printed("0.8", "a healthy contact: milliohms", "secondary")),
    (1, Printed("6", "CEM 5.1, at most after 30 matings: milliohms", "secondary")),
])
def test_credible_milliohms(end: int, printed: Printed) -> None:
    assert credible_ohms("16-pin")[end] * 1000 == printed.rounded
