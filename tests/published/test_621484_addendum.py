"""Amps that a whole machine takes from 12 V: the addendum's worked examples."""

import pytest

from tests.published.printed import Json, Printed, asked, board, card, supply

DOCUMENT = "Intel, ATX12V and ATX12VO PSU Design Guide Addendum, 621484, rev. 004"
LISTED = "power supplies with 12 V rails listed together"


@pytest.mark.parametrize(("class_watts", "rest_amps", "cards", "printed"), [
    (65, 4, [], Printed("27", f"{LISTED}: 23 A and a simple rest of 4 A", "primary")),
    (125, 8, [card(300, "pcie-8")], Printed("59", f"{LISTED}: 26 A, a 300 W card and a median rest of 8 A", "primary")),
])
def test_12_volt_amps(class_watts: int, rest_amps: float, cards: list[Json], printed: Printed) -> None:
    answer = asked(supply(), board(rest_amps), {"category": "processor", "class_watts": class_watts}, *cards)
    assert answer["power"]["rails"]["12v"]["sustained_amps"] == printed.exact
