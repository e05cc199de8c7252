"""Boards with a plug for their slots: what the main connector cannot carry comes by it, and no more than that."""

import pytest

from tests.journeys.asked import Json, ask, said, spoken

SUPPLY: Json = {
    "category": "power_supply", "rated_watts": 1500, "design": "atx-3.1", "cables": [
        {"plugs": [{"connector": "atx-20+4"}], "awg": 18}, {"plugs": [{"connector": "cpu-8"}], "awg": 18},
        {"plugs": [{"connector": "pcie-6+2"}], "awg": 18, "quantity": 8},
    ],
}
CARD: Json = {
    "category": "graphics_card", "board_watts": 200, "slot_watts": 66, "needs": [{"connector": "pcie-8"}],
}
EXTRA: Json = {"connector": "pcie-6", "optional": True}


def asked(cards: int, *extra: Json, cables: int = 8, own: float = 1, slot: float = 66) -> Json:
    """Return the answer to cards on a board with such plugs beside its main and processor ports."""
    supply = SUPPLY | {"cables": [*SUPPLY["cables"][:2], SUPPLY["cables"][2] | {"quantity": cables}]}
    board = {
        "category": "motherboard", "own_amps": {"12v": own, "5v": 1, "3v3": 1, "5vsb": 0.5}, "offers": [],
        "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}, *extra],
    }
    card = {"spec": CARD | {"slot_watts": slot, "board_watts": 134 + slot}, "quantity": cards}
    processor = {"category": "processor", "plug_watts": 100}
    return ask({
        "parts": [{"spec": supply}, {"spec": board}, {"spec": processor}, card],
        "aspects": ["power", "connections"],
    })


def carried(answer: Json, connector: str) -> float:
    """Return the 12 V amps of a port of the board."""
    found = answer["power"]["connections"]
    return float(next(one["amps"]["12v"] for one in found if one["port"]["connector"] == connector))


def test_three_cards_pass_the_main_connector_alone() -> None:
    assert ("/parts/1", "atx-24", "1") in said(asked(3), "CON104")


@pytest.mark.parametrize("extra", [EXTRA, EXTRA | {"watts": 10}, {"connector": "pcie-6"}])
def test_three_cards_on_a_board_with_an_extra_plug_for_its_slots(extra: Json) -> None:
    answer = asked(3, extra)
    assert answer["verdict"] == "fits_with_cautions"
    assert carried(answer, "atx-24") == 16.0
    assert ("/parts/1", "pcie-6", "1") in [
        (one["part"], one["port"]["connector"], str(one["port"]["number"])) for one in answer["plan"]["connections"]
    ]


def test_the_extra_plug_is_due_where_the_main_connector_does_not_suffice() -> None:
    assert said(asked(3, EXTRA, cables=3), "CON101") == [("/parts/1", "pcie-6", "1")]
    assert said(asked(2, EXTRA, cables=2), "CON101") == []


def test_what_the_board_draws_itself_never_comes_by_the_extra_plug() -> None:
    assert ("/parts/1", "atx-24", "1") in said(asked(1, EXTRA, own=20), "CON104")


def test_an_extra_plug_past_its_watts_stops() -> None:
    """Five cards: 330 W and 12 W of the board, of which 192 W by the main connector."""
    assert said(asked(5, EXTRA), "CON102") == [("/parts/1", "pcie-6", "1")]
    assert "CON102" not in spoken(asked(5, EXTRA | {"count": 2}))


def test_more_in_the_slots_is_never_better() -> None:
    scores = [asked(3, EXTRA, slot=slot)["score"] for slot in range(30, 76, 5)]
    assert scores == sorted(scores, reverse=True)
