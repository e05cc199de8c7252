"""Contacts that share unequally, from the sheet to the finding, at 99, 100 and 101 % of what the hottest may carry.

The figures are written out here as printed: milliohms of a contact, new and worn; 7 strands at 20 C, in milliohms a
metre.
One contact is open, one new, the others worn: the new one has the share of its conductance.
"""

from typing import Any

import pytest

from tests.journeys.asked import ask, said
from tests.practice.test_trade import BOARD, CARD_LINE, card, disk, judged, supply

Json = dict[str, Any]
METRES = 0.6
PLACE = {"at_mm": 600}


def share(fresh: float, worn: float, milliohms_a_metre: float, contacts: int, metres: float = METRES) -> float:
    """Return the part of a plug's current that its best contact has, one of the others being open."""
    wire = milliohms_a_metre * metres
    best = 1 / (fresh + wire)
    return best / (best + (contacts - 2) / (worn + wire))


EIGHT, SIXTEEN = share(5.651, 30, 21.772, 3), share(0.8, 6, 13.688, 6)
RULE = "CON125"
PLUGS = {
    "pcie-8": ({"plugs": [{"connector": "pcie-8"} | PLACE], "awg": 18}, 8, EIGHT),
    "12v-2x6": ({"plugs": [{"connector": "12v-2x6"} | PLACE], "awg": 16, "rated_watts": 600}, 9.2, SIXTEEN),
}


def plugged(connector: str, watts: float, **given: Any) -> Json:
    """Return the answer to a card on one plug."""
    return judged(supply(PLUGS[connector][0] | given), card(25 + watts, connector, 1))


def warmth(answer: Json, part: str = CARD_LINE) -> Json:
    """Return how warm the plug of a part may get."""
    found = next(one for one in answer["power"]["connections"] if one["part"] == part)
    (told,) = found["warmth"]
    return dict(told)


@pytest.mark.parametrize("percent", [99, 100, 101])
@pytest.mark.parametrize("connector", PLUGS)
def test_only_past_the_rating_of_the_hottest(connector: str, percent: int) -> None:
    _, rated, part = PLUGS[connector]
    # A thousandth less, for amps are whole milliamps.
    answer = plugged(connector, rated / part * 12 * percent / 100 * 0.999)
    assert said(answer, RULE) == ([(CARD_LINE, connector, "1")] if percent > 100 else [])
    assert answer["verdict"] == "fits"


# 30 C at 6 A a contact in a housing of 7 to 10 circuits, at 9.2 A in the 16-pin one; with the square of the current.
@pytest.mark.parametrize(("connector", "watts", "rise_at"), [("pcie-8", 144, 6), ("12v-2x6", 540, 9.2)])
def test_amps_and_warmth_are_told(connector: str, watts: float, rise_at: float) -> None:
    _, rated, part = PLUGS[connector]
    told, contacts = warmth(plugged(connector, watts)), 3 if connector == "pcie-8" else 6
    hottest = watts / 12 * part
    assert told["amps"] == pytest.approx(watts / 12 / contacts, abs=0.001)
    assert told["rise_celsius"] == pytest.approx(30 * (told["amps"] / rise_at) ** 2, abs=0.1)
    assert told["worst"]["amps"] == pytest.approx(hottest, abs=0.002)
    assert told["worst"]["rise_celsius"] == pytest.approx(30 * (hottest / rise_at) ** 2, abs=0.1)
    assert (told["worst"]["contact_rating_amps"], told["basis"]) == (rated, "estimate")
    assert (told["worst"]["length_mm"], told["worst"]["assumed"]) == (600, [])


def test_wire_that_is_not_given_is_supposed_short_and_thick_and_it_is_said() -> None:
    bare = {"plugs": [{"connector": "12v-2x6"}], "rated_watts": 600}
    answer = judged(supply(bare), card(25 + 540, "12v-2x6", 1))
    worst = warmth(answer)["worst"]
    assert (worst["length_mm"], worst["awg"], worst["assumed"]) == (400, 16, ["at_mm", "awg"])
    assert worst["amps"] == pytest.approx(45 * share(0.8, 6, 13.688, 6, 0.4), abs=0.002)
    (message,) = [one["message"] for one in answer["findings"] if one["rule"] == "CON125"]
    assert "400 mm of 16 AWG wire, supposed" in message
    assert "an estimate" in message


@pytest.mark.parametrize("length_mm", [None, 200], ids=["length not given", "length given"])
def test_adapter_s_own_plug_is_told_where_its_length_is_given(length_mm: float | None) -> None:
    made = {"takes": [{"connector": "pcie-8", "count": 3}], "gives": [{"connector": "12v-2x6"}], "rated_watts": 450}
    made |= {} if length_mm is None else {"length_mm": length_mm, "awg": 16}
    box = supply({"plugs": [{"connector": "pcie-8", "at_mm": 600}], "awg": 18, "quantity": 3})
    answer = judged(box, card(25 + 432, "12v-2x6", 1, adapters=[made]))
    told = next(one for one in answer["power"]["connections"] if one["part"] == CARD_LINE)["warmth"]
    assert [one["at"] for one in told] == ["at_port"] * (length_mm is not None) + ["at_input"] * 3
    assert told[-1]["worst"]["amps"] == pytest.approx(12 * EIGHT, abs=0.002)
    if length_mm is not None:
        assert told[0]["worst"]["amps"] == pytest.approx(36 * share(0.8, 6, 13.688, 6, 0.2), abs=0.002)


def test_stated_fault_is_judged_and_its_warmth_is_told() -> None:
    """Two of six contacts open: four carry 11.25 A each, which stops, and 30 C times (11.25 / 9.2) squared are told."""
    wiring = [{"part": CARD_LINE, "port": {"connector": "12v-2x6", "number": 1},
               "plugs": [{"cable": "/parts/0/cables/2", "plug": 1, "open_contacts": 2}]}]
    processor = {"category": "processor", "socket": "q7", "plug_watts": 90}
    specs = (supply(PLUGS["12v-2x6"][0]), BOARD, processor, card(25 + 540, "12v-2x6", 1))
    answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"], "wiring": wiring,
                  "wiring_rest": "plan"})
    assert said(answer, "CON106") == said(answer, "CON126") == [(CARD_LINE, "12v-2x6", "1")]
    told = warmth(answer)
    assert (told["contacts"], told["open_contacts"], told["amps"]) == (4, 2, 11.25)
    assert told["rise_celsius"] == pytest.approx(44.9, abs=0.05)
    (message,) = [one["message"] for one in answer["findings"] if one["rule"] == "CON126"]
    assert "about 45 °C warmer than the air in the case" in message


def test_light_plugs_are_left_alone_unless_a_contact_is_stated_open() -> None:
    answer = judged(supply({"plugs": [{"connector": "sata-power"}]}), disk())
    assert [one for one in answer["power"]["connections"] if "warmth" in one] == []
    main = {"plugs": [{"connector": "atx-24"}], "awg": 18, "open_contacts": 1}
    processor = {"plugs": [{"connector": "cpu-8"}], "awg": 18}
    answer = judged(supply(cables=[main, processor]))
    assert said(answer, "CON126") == [("/parts/1", "atx-24", "1")]
    assert "worst" not in warmth(answer, "/parts/1"), "one contact is left, and none if that opened too"
