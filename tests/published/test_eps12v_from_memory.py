"""The 8-pin processor plug. From memory: the guides have not been read."""

import pytest

from tests.published.printed import Printed, asked, board, limits, supply

DOCUMENT = "EPS12V and ATX12V guides (from memory)"


@pytest.mark.parametrize("printed", [Printed("4", "12 V contacts of a 2x4 plug", "memory")],
                         ids=str)
def test_contacts_of_a_processor_8_pin_plug(printed: Printed) -> None:
    box = supply("atx-24", "cpu-8")
    at_8_amps = {"category": "processor", "plug_watts": 8 * 12 * printed.exact}
    above = at_8_amps | {"plug_watts": 8.01 * 12 * printed.exact}
    assert not limits(asked(box, board(), at_8_amps), "CON104")
    assert limits(asked(box, board(), above), "CON104")
