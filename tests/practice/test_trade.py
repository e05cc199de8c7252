"""What every builder of PCs knows, asked of the whole check. Common practice, no source, each and every one."""

from typing import Any

import pytest

from tests.journeys.asked import ask, said, spoken

Json = dict[str, Any]

MAIN = {"plugs": [{"connector": "atx-24"}], "awg": 18}
PROCESSOR = {"plugs": [{"connector": "cpu-4+4"}], "awg": 18, "supply_wires_12v": 4}
SINGLE = {"plugs": [{"connector": "pcie-6+2"}], "awg": 18, "supply_wires_12v": 3}
DOUBLE = {"plugs": [{"connector": "pcie-6+2"}, {"connector": "pcie-6+2"}], "awg": 18, "supply_wires_12v": 3}
SIXTEEN = {"plugs": [{"connector": "12v-2x6"}], "awg": 16, "rated_watts": 600}
DISKS = {"plugs": [{"connector": "sata-power"}, {"connector": "sata-power"}], "awg": 18, "carries_3v3": False}
BOARD = {
    "category": "motherboard", "processor_socket": "q7", "memory_type": "m5",
    "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}],
    "offers": [{"connector": "fan-4", "count": 2, "max_amps": 1}, {"connector": "sata-data", "count": 8}],
    "own_amps": {"12v": 1.2, "5v": 1.5, "3v3": 2.0, "5vsb": 0.8},
}
ADAPTER = {
    "takes": [{"connector": "pcie-8", "count": 3}], "gives": [{"connector": "12v-2x6"}], "rated_watts": 450,
    "moulded": False,
}
CARD_LINE, SUPPLY = "/parts/3", "/parts/0"


def supply(*cables: Json, **given: Any) -> Json:
    """Return a supply with a main and a processor cable and the cables that are given."""
    return {
        "category": "power_supply", "rated_watts": 1000, "design": "atx-3.1", "form_factor": "atx", "depth_mm": 150,
        "rails": {"12v": {"max_amps": 83}, "5v": {"max_amps": 22}, "3v3": {"max_amps": 22}, "5vsb": {"max_amps": 3}},
        "cable_family": "own", "rated_at_celsius": 50, "inlet": "c14", "efficiency_level": "gold",
        "cables": [MAIN, PROCESSOR, *cables], **given,
    }


def card(watts: float, connector: str, count: int, **given: Any) -> Json:
    """Return a card that takes 25 W through its slot."""
    needs = [{"connector": connector, "count": count}]
    return {"category": "graphics_card", "board_watts": watts, "slot_watts": 25, "needs": needs, **given}


def disk() -> Json:
    """Return a disk."""
    return {
        "category": "drive", "interface": "sata", "size": "3.5", "running_amps": {"12v": 0.5, "5v": 0.5},
        "starting_amps": {"12v": 1.9, "5v": 0.7},
    }


def judged(power: Json, *others: Json, board: Json = BOARD, plug_watts: float = 90) -> Json:
    """Return the answer to a supply, a board, a processor and what is given."""
    processor = {"category": "processor", "socket": "q7", "plug_watts": plug_watts}
    return ask({"parts": [{"spec": spec} for spec in (power, board, processor, *others)], "aspects": ["connections"]})


def connections(answer: Json, part: str) -> list[Json]:
    """Return the connections of the plan to one part, and see to it that the plan is proven."""
    assert answer["plan"]["proven"]
    return [one for one in answer["plan"]["connections"] if one["part"] == part]


def cables(answer: Json, part: str) -> set[tuple[str, int]]:
    """Return the cables that feed a part: each its pointer and which of the equal ones."""
    return {(plug["cable"], plug["copy"]) for one in connections(answer, part) for plug in one["plugs"]}


@pytest.mark.parametrize("box", [[{**DOUBLE, "quantity": 2}], [DOUBLE, SINGLE], [SINGLE, DOUBLE]],
                         ids=["two double-ended", "double-ended and single", "single and double-ended"])
@pytest.mark.parametrize("watts", [240, 260, 300, 320], ids=["past comfort", "past sharing", "in the band", "too much"])
def test_a_heavy_card_gets_a_cable_for_each_plug(box: list[Json], watts: float) -> None:
    answer = judged(supply(*box), card(watts, "pcie-8", 2))
    assert len(connections(answer, CARD_LINE)) == len(cables(answer, CARD_LINE)) == 2
    assert not said(answer, "CON109")


def test_a_heavy_card_on_the_one_double_ended_cable_there_is_gets_a_caution() -> None:
    answer = judged(supply(DOUBLE), card(300, "pcie-8", 2))
    assert cables(answer, CARD_LINE) == {(f"{SUPPLY}/cables/2", 1)}
    assert said(answer, "CON109") == [(f"{SUPPLY}/cables/2",)]


def test_a_card_too_heavy_for_the_wires_of_one_cable_is_a_stop() -> None:
    answer = judged(supply(DOUBLE), card(320, "pcie-8", 2))
    assert len(connections(answer, CARD_LINE)) == 1
    assert [where[:2] for where in said(answer, "CON101")] == [(CARD_LINE, "pcie-8")]


def test_a_light_card_may_share_one_double_ended_cable() -> None:
    answer = judged(supply(DOUBLE, SINGLE), card(140, "pcie-6", 2))
    assert len(connections(answer, CARD_LINE)) == 2
    assert cables(answer, CARD_LINE) == {(f"{SUPPLY}/cables/2", 1)}
    assert not said(answer, "CON109")


def test_the_supplys_own_16_pin_cable_goes_before_the_cards_adapter() -> None:
    box = supply({**SINGLE, "quantity": 3}, SIXTEEN)
    answer = judged(box, card(400, "12v-2x6", 1, adapters=[ADAPTER]))
    (fed,) = connections(answer, CARD_LINE)
    assert fed["adapters"] == []
    assert cables(answer, CARD_LINE) == {(f"{SUPPLY}/cables/3", 1)}


def test_without_such_a_cable_the_cards_adapter_is_used_with_a_cable_for_each_input() -> None:
    answer = judged(supply({**SINGLE, "quantity": 3}), card(400, "12v-2x6", 1, adapters=[ADAPTER]))
    (fed,) = connections(answer, CARD_LINE)
    assert [adapter["inputs"] for adapter in fed["adapters"]] == [3]
    assert len(cables(answer, CARD_LINE)) == 3


def test_two_cables_with_two_plugs_feed_four_drives() -> None:
    answer = judged(supply({**DISKS, "quantity": 2}), *[disk() for _ in range(4)])
    assert [len(connections(answer, f"/parts/{line}")) for line in range(3, 7)] == [1, 1, 1, 1]
    assert not said(answer, "CON101")


def test_two_cables_with_two_plugs_do_not_feed_five_drives() -> None:
    answer = judged(supply({**DISKS, "quantity": 2}), *[disk() for _ in range(5)])
    assert sum(len(connections(answer, f"/parts/{line}")) for line in range(3, 8)) == 4
    assert [where[1:] for where in said(answer, "CON101")] == [("sata-power", "1")]


def _second_plug(plug_watts: float, boxed: int) -> Json:
    second = {"connector": "cpu-8", "optional": True, "required_above_watts": 300}
    board = BOARD | {"needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}, second]}
    return judged(supply(*[PROCESSOR] * (boxed - 1)), board=board, plug_watts=plug_watts)


@pytest.mark.parametrize(("plug_watts", "boxed", "used"), [(90, 2, 1), (280, 2, 2), (280, 1, 1), (320, 2, 2)],
                         ids=["light", "heavy", "heavy, none boxed", "required"])
def test_a_second_processor_plug_is_used_where_there_is_one_and_the_load_asks_for_it(
    plug_watts: float, boxed: int, used: int,
) -> None:
    answer = _second_plug(plug_watts, boxed)
    ports = [one for one in connections(answer, "/parts/1") if one["port"]["connector"] == "cpu-8"]
    assert len(ports) == used
    assert not said(answer, "CON101")


def test_a_second_processor_plug_that_the_board_requires_and_the_box_lacks_is_a_stop() -> None:
    answer = _second_plug(320, 1)
    assert [where[:2] for where in said(answer, "CON101")] == [("/parts/1", "cpu-8")]


def _with_loose_cable(family: str) -> Json:
    loose = {"category": "cable", "family": family, **SINGLE}
    return judged(supply(), card(150, "pcie-8", 1), loose)


def test_a_cable_of_another_makers_family_is_never_used() -> None:
    answer = _with_loose_cable("another")
    assert connections(answer, CARD_LINE) == []
    assert said(answer, "CON101") == [(CARD_LINE, "pcie-8", "1")]
    assert said(answer, "CBL104") == [("/parts/4",)]


def test_a_loose_cable_of_the_supplys_own_family_is_used() -> None:
    answer = _with_loose_cable("own")
    assert cables(answer, CARD_LINE) == {("/parts/4", 1)}
    assert not spoken(answer) & {"CON101", "CBL104"}


def test_a_card_goes_without_rather_than_on_a_sata_plug() -> None:
    adapter = {"category": "adapter", "takes": [{"connector": "sata-power"}], "gives": [{"connector": "pcie-6"}]}
    answer = judged(supply(DISKS), card(90, "pcie-6", 1), adapter)
    assert connections(answer, CARD_LINE) == []
    assert said(answer, "CON101") == [(CARD_LINE, "pcie-6", "1")]


def test_a_moulded_adapter_is_used_only_where_there_is_no_drive_plug() -> None:
    round_plug = {"plugs": [{"connector": "peripheral-4"}], "awg": 18}
    adapter = {
        "category": "adapter", "takes": [{"connector": "peripheral-4"}], "gives": [{"connector": "sata-power"}],
        "moulded": True,
    }
    beside, alone = judged(supply(DISKS, round_plug), disk(), adapter), judged(supply(round_plug), disk(), adapter)
    assert [one["adapters"] for one in connections(beside, CARD_LINE)] == [[]]
    assert [one["adapters"][0]["adapter"] for one in connections(alone, CARD_LINE)] == ["/parts/4"]
    assert (said(beside, "CON114"), said(alone, "CON114")) == ([], [(CARD_LINE, "sata-power", "1")])
