"""Amps of thin wires in housings of 4.2 mm pitch. From memory: the maker's table has not been read."""

import pytest

from tests.published.printed import Printed, asked, board, limits, supply

DOCUMENT = "Product specification of a 4.2 mm connector, brass terminal, current by gauge (from memory)"


@pytest.mark.parametrize(("awg", "printed"), [
    (20, Printed("5", "20 AWG: 7, 6, 5, 5 A by circuits; the least", "memory")),
    (22, Printed("4", "22 AWG: 5, 4, 4, 4 A by circuits; the least", "memory")),
])
def test_amps_of_a_thin_wire(awg: int, printed: Printed) -> None:
    box = supply("atx-24", "cpu-8")
    thin = box | {"cables": [cable | {"awg": awg} for cable in box["cables"]]}
    processor = {"category": "processor", "plug_watts": printed.exact * 1.01 * 4 * 12}
    assert limits(asked(thin, board(), processor), "CON104") == {(printed.exact, "A")}
