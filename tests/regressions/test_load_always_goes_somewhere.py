"""What a device draws never vanishes between its ports: it is judged on some plug, header or slot of the build."""

from typing import Any

import pytest

from tests.journeys.asked import ask

Json = dict[str, Any]
MAIN = {"plugs": [{"connector": "atx-20+4"}]}
CPU = {"plugs": [{"connector": "cpu-8"}]}
CARD = {"plugs": [{"connector": "pcie-6+2"}], "quantity": 3}
SATA = {"plugs": [{"connector": "sata-power"}] * 3, "quantity": 2}
PERIPHERAL = {"plugs": [{"connector": "peripheral-4"}] * 2}
PROCESSOR = {"category": "processor", "plug_watts": 100, "socket": "lug-1"}
FAN = {"category": "fan", "amps": 1, "starting_amps": 1, "needs": [{"connector": "fan-4"}]}
DISK = {
    "category": "drive", "size": "3.5", "interface": "sas", "needs": [{"connector": "sata-power"}],
    "running_amps": {"12v": 1, "5v": 1, "3v3": 0}, "starting_amps": {"12v": 3, "5v": 1, "3v3": 0},
}


def _supply(*cables: Json) -> Json:
    return {"category": "power_supply", "rated_watts": 850, "design": "atx-3.1", "cables": list(cables)}


def _board(*needs: str, offers: tuple[Json, ...] = ()) -> Json:
    return {
        "category": "motherboard", "processor_socket": "lug-1", "own_amps": {"12v": 1, "5v": 1, "3v3": 1},
        "needs": [{"connector": connector} for connector in needs or ("atx-24", "cpu-8")], "offers": list(offers),
    }


def _card(watts: float, *needs: Json, slot: float = 66, **other: Any) -> Json:
    return {"category": "graphics_card", "board_watts": watts, "slot_watts": slot, "needs": list(needs), **other}


def _asked(*specs: Json | tuple[Json, int], **other: Any) -> Json:
    lines = [spec if isinstance(spec, tuple) else (spec, 1) for spec in specs]
    return ask({"parts": [{"spec": spec, "quantity": quantity} for spec, quantity in lines], **other})


def _said(answer: Json) -> list[tuple[str, str]]:
    """Return rule and place of all that is more than advice."""
    told = [found for found in answer["findings"] if found["weight"] != "advice"]
    return [(found["rule"], where) for found in told for where in found["where"]]


def test_drives_in_a_cage_on_a_board_load_the_board_port() -> None:
    board = _board("atx12vo-10", "cpu-8", offers=({"connector": "sata-power", "max_amps": 3},))
    cage = {"category": "backplane", "needs": [{"connector": "sata-power"}],
            "offers": [{"connector": "sata-power", "count": 8}]}
    supply = _supply({"plugs": [{"connector": "atx12vo-10"}]}, CPU) | {"design": "atx12vo"}
    answer = _asked(supply, board, PROCESSOR, cage, (DISK, 8))
    found = next(found for found in answer["findings"] if found["rule"] == "AUX102")
    assert (found["where"], found["measured"]) == (["/parts/1"], 8.0)


def test_fans_on_a_hub_load_the_header_of_the_hub() -> None:
    hub = {"category": "controller", "amps": 0.05, "needs": [{"connector": "fan-4"}],
           "offers": [{"connector": "fan-4", "count": 4}]}
    board = _board(offers=({"connector": "fan-4", "max_amps": 1},))
    answer = _asked(_supply(MAIN, CPU), board, PROCESSOR, hub, (FAN, 4))
    found = next(found for found in answer["findings"] if found["rule"] == "AUX102")
    assert (found["where"], found["measured"]) == (["/parts/1"], 4.05)


def test_two_hubs_never_feed_each_other() -> None:
    hub = {"category": "controller", "amps": 3, "needs": [{"connector": "sata-power"}],
           "offers": [{"connector": "sata-power"}]}
    answer = _asked(_supply(MAIN, CPU), _board(), PROCESSOR, (hub, 2))
    assert _said(answer) == [("CON101", "/parts/3")]


def test_a_riser_without_a_power_port_takes_nothing_off_the_board() -> None:
    card = _card(150, {"connector": "pcie-8"}, slot=66)
    riser = {"category": "riser", "feeds_slot_watts": 75}
    parts = (_supply(MAIN, CPU, CARD), _board(), PROCESSOR, (card, 3))
    assert ("CON104", "/parts/1") in _said(_asked(*parts))
    assert ("CON104", "/parts/1") in _said(_asked(*parts, (riser, 3)))


def test_a_riser_without_a_card_wants_its_plug_all_the_same() -> None:
    riser = {"category": "riser", "feeds_slot_watts": 66, "needs": [{"connector": "sata-power"}]}
    assert ("CON101", "/parts/3") in _said(_asked(_supply(MAIN, CPU), _board(), PROCESSOR, riser))


def test_a_card_whose_plugs_are_all_optional_still_wants_one_for_what_the_slot_cannot_give() -> None:
    optional = {"connector": "pcie-8", "count": 2, "optional": True}
    parts = (_supply(MAIN, CPU), _board(), PROCESSOR)
    assert _said(_asked(*parts, _card(300, optional))).count(("CON101", "/parts/3")) == 1
    assert ("CON101", "/parts/3") not in _said(_asked(*parts, _card(60, optional, slot=60)))


def test_a_processor_plug_that_is_called_optional_is_wanted_by_the_processor() -> None:
    board = _board()
    board["needs"][1]["optional"] = True
    assert _said(_asked(_supply(MAIN), board, PROCESSOR)) == [("CON101", "/parts/1")]


def test_a_board_without_a_main_port_draws_by_its_other_plugs() -> None:
    board = _board("cpu-8") | {"own_amps": {"12v": 40, "5v": 0, "3v3": 0}}
    assert ("CON104", "/parts/1") in _said(_asked(_supply(CPU), board, PROCESSOR))


@pytest.mark.parametrize("needs", [
    pytest.param([{"connector": "other:edge-6"}], id="alone"),
    pytest.param([{"connector": "pcie-8"}, {"connector": "other:edge-6"}], id="beside-another"),
])
def test_a_card_port_of_an_unlisted_kind_is_not_passed_over(needs: list[Json]) -> None:
    answer = _asked(_supply(MAIN, CPU, CARD), _board(), PROCESSOR, _card(170, *needs))
    assert _said(answer).count(("CON101", "/parts/3")) == 1


def test_a_header_that_a_card_wants_is_looked_for() -> None:
    answer = _asked(_supply(MAIN, CPU), _board(), PROCESSOR, _card(60, {"connector": "usb2-9"}, slot=60))
    assert ("AUX101", "/parts/3") in _said(answer)


def test_stated_watts_of_a_plug_do_not_hide_what_the_slot_cannot_give() -> None:
    needs = {"connector": "pcie-8", "watts": 10}
    answer = _asked(_supply(MAIN, CPU, CARD), _board(), PROCESSOR, _card(400, needs))
    found = next(found for found in answer["findings"] if found["rule"] == "CON102")
    assert found["measured"] == pytest.approx(334, abs=0.1)


def test_the_watts_of_one_plug_leave_the_rest_to_the_other() -> None:
    needs = ({"connector": "pcie-8", "watts": 10}, {"connector": "pcie-6"})
    answer = _asked(_supply(MAIN, CPU, CARD), _board(), PROCESSOR, _card(225, *needs))
    found = next(found for found in answer["findings"] if found["rule"] == "CON102")
    assert found["measured"] == pytest.approx(149, abs=0.1)


def test_a_drive_said_to_be_on_a_cable_is_not_in_the_cage() -> None:
    cage = {"category": "backplane", "needs": [{"connector": "peripheral-4"}],
            "offers": [{"connector": "sata-power", "count": 4}]}
    plug = {"cable": "/parts/0/cables/2", "plug": 1}
    cable = {"part": "/parts/3", "port": {"connector": "sata-power"}, "plugs": [plug]}
    answer = _asked(
        _supply(MAIN, CPU, SATA, PERIPHERAL), _board(), PROCESSOR, DISK, cage, wiring=[cable], wiring_rest="plan",
    )
    assert "/parts/3" in [connection["part"] for connection in answer["plan"]["connections"]]


def test_a_peak_over_a_long_stretch_does_not_hide_shorter_ones() -> None:
    def watts(peaks: list[Json]) -> dict[int, float]:
        card = _card(400, {"connector": "pcie-8", "count": 3}, peaks=peaks)
        moments = _asked(_supply(MAIN, CPU, CARD), _board(), PROCESSOR, card)["power"]["moments"]
        return {moment["microseconds"]: moment["watts"] for moment in moments if not moment["stated"]}

    derived, slow = watts([]), watts([{"microseconds": 100_000, "watts": 420}])
    assert [slow[t] for t in (100, 1_000, 10_000)] == [derived[t] for t in (100, 1_000, 10_000)]
    assert slow[100_000] < derived[100_000]


def test_a_cage_that_states_no_plug_wants_one_for_its_drives() -> None:
    cage = {"category": "backplane", "offers": [{"connector": "sata-power", "count": 4}]}
    assert ("CON101", "/parts/3") in _said(_asked(_supply(MAIN, CPU), _board(), PROCESSOR, cage, (DISK, 2)))
    answer = _asked(_supply(MAIN, CPU, SATA), _board(), PROCESSOR, cage, (DISK, 2))
    carried = {one["part"]: one["amps"]["12v"] for one in answer["power"]["connections"]}
    assert carried["/parts/3"] == 2.0


@pytest.mark.parametrize("category", ["drive", "optical_drive"])
def test_a_drive_that_names_its_data_port_only_wants_power_all_the_same(category: str) -> None:
    drive = {"category": category, "interface": "sata", "needs": [{"connector": "sata-data"}]}
    assert ("CON101", "/parts/3") in _said(_asked(_supply(MAIN, CPU), _board(), PROCESSOR, drive))


def test_a_board_that_names_no_power_port_has_the_usual_ones() -> None:
    board = _board() | {"needs": [{"connector": "usb2-9"}]}
    assert _said(_asked(_supply(), board, PROCESSOR)).count(("CON101", "/parts/1")) == 2


@pytest.mark.parametrize(("needs", "places"), [
    pytest.param([{"connector": "pcie-6"}, {"connector": "pcie-8"}], 1, id="nothing-stated"),
    pytest.param([{"connector": "pcie-6", "watts": 60}, {"connector": "pcie-8", "watts": 120}], 0, id="both-stated"),
    pytest.param([{"connector": "pcie-6", "watts": 60}, {"connector": "pcie-8"}], 0, id="one-stated"),
    pytest.param([{"connector": "pcie-8", "count": 2}], 0, id="equal-ratings"),
    pytest.param([{"connector": "pcie-6"}, {"connector": "pcie-8", "count": 2}], 0, id="three-plugs"),
])
def test_an_equal_split_is_told_where_a_plug_would_be_past_its_rating(needs: list[Json], places: int) -> None:
    """180 W over two plugs: 60 and 120 in proportion, 90 and 90 equally."""
    found = _asked(_supply(MAIN, CPU, CARD), _board(), PROCESSOR, _card(246, *needs))["findings"]
    assert len([one for one in found if one["rule"] == "CON124"]) == places
