"""How many contacts the main plug has on each rail."""

import pytest

from service.wiring.allowances import joint
from tests.published.printed import Printed

DOCUMENT = "Pinout pages for the 24-pin main connector, ATX12V 2.x"
TWENTY = "the 20-pin plug lacks 11, 12, 23 and 24"


@pytest.mark.parametrize(("plug", "rail", "printed"), [
    ("atx-24", 0, Printed("2", "12 V on pins 10 and 11", "secondary")),
    ("atx-24", 1, Printed("5", "5 V on pins 4, 6, 21, 22 and 23", "secondary")),
    ("atx-24", 2, Printed("4", "3.3 V on pins 1, 2, 12 and 13", "secondary")),
    ("atx-20", 0, Printed("1", TWENTY, "secondary")), ("atx-20", 1, Printed("4", TWENTY, "secondary")),
    ("atx-20", 2, Printed("3", TWENTY, "secondary")),
])
def test_contacts_of_a_rail(plug: str, rail: int, printed: Printed) -> None:
    assert [each.contacts for each in joint(plug, plug, 0) if each.rail == rail] == [printed.exact]
