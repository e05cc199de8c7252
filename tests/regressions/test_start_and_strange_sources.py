"""Builds that were once said to fit: loads of seconds against limits, and plugs that are no source for a port."""

from typing import Any

import pytest

from tests.journeys.asked import ask

Json = dict[str, Any]
MAIN = {"plugs": [{"connector": "atx-20+4"}], "awg": 18}
PROCESSOR_CABLE = {"plugs": [{"connector": "cpu-4+4"}], "awg": 18}
BOARD = {
    "category": "motherboard", "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}],
    "own_amps": {"12v": 1, "5v": 1.5, "3v3": 2},
}
PROCESSOR = {"category": "processor", "plug_watts": 50}


def _supply(*cables: Json, **given: Any) -> Json:
    return {
        "category": "power_supply", "rated_watts": 850, "design": "atx-3.1", "cables": [MAIN, *cables],
        "rails": {"12v": {"max_amps": 70}, "5v": {"max_amps": 22}, "3v3": {"max_amps": 22}, "5vsb": {"max_amps": 3}},
    } | given


def _disks(number: int) -> Json:
    disk = {
        "category": "drive", "interface": "sata", "size": "3.5", "needs": [{"connector": "sata-power"}],
        "running_amps": {"12v": 0.6, "5v": 0.5}, "starting_amps": {"12v": 2.0},
    }
    return {"spec": disk, "quantity": number}


def _stops(*lines: Json) -> set[str]:
    found = ask({"parts": list(lines)})["findings"]
    return {each["rule"] for each in found if each["weight"] == "stop"}


SATA = {"plugs": [{"connector": "sata-power"}] * 3, "awg": 18, "quantity": 6}


def test_a_combined_limit_holds_at_start_up_too() -> None:
    """12 disks of 2 A, the board and the processor come to some 350 W on 12 V, of 216 W."""
    limits = [{"rails": ["12v"], "watts": 216}]
    machine = ({"spec": BOARD}, {"spec": PROCESSOR}, _disks(12))
    assert _stops({"spec": _supply(PROCESSOR_CABLE, SATA, combined_limits=limits)}, *machine) == {"PWR204"}


def test_the_rating_holds_at_start_up_too() -> None:
    """12 disks come to 288 W on 12 V alone while they spin up."""
    supply = _supply(PROCESSOR_CABLE, SATA, rated_watts=300)
    assert _stops({"spec": supply}, {"spec": BOARD}, {"spec": PROCESSOR}, _disks(12)) == {"PWR103"}


@pytest.mark.parametrize(("contacts", "stops"), [(1, {"CON104"}), (4, set())], ids=["one", "four"])
def test_a_printed_rating_does_not_make_one_contact_many(contacts: int, stops: set[str]) -> None:
    """430 W are 35.8 A: over four contacts 9 A each, below what a 16-pin contact is rated for; over one it is not."""
    cable = {
        "plugs": [{"connector": "12vhpwr"}], "rated_watts": 600, "occupies": {"P": 1}, "awg": 16, "supply_wires_12v": 6,
    }
    sockets = [{"label": "P", "count": 1, "contacts_12v": contacts}]
    supply = _supply(cable, MAIN | {"captive": True}, sockets=sockets)
    supply["cables"] = supply["cables"][1:]
    card = {
        "category": "graphics_card", "board_watts": 450, "slot_watts": 20, "needs": [{"connector": "12vhpwr"}],
    }
    board = BOARD | {"needs": [{"connector": "atx-24"}]}
    assert _stops({"spec": supply}, {"spec": board}, {"spec": card}) == stops


def test_a_processor_is_not_fed_from_a_drive_plug() -> None:
    """The plan leaves the port without a source, whatever adapters there are."""
    adapter = {
        "category": "adapter", "takes": [{"connector": "sata-power", "count": 1}],
        "gives": [{"connector": "cpu-8", "count": 1}],
    }
    lines = ({"spec": _supply(SATA)}, {"spec": BOARD}, {"spec": PROCESSOR}, {"spec": adapter})
    assert _stops(*lines) == {"CON101"}


def test_what_is_assumed_of_the_supply_and_the_room_is_told() -> None:
    """Assumptions made after the demand, of ratings and the room, were once used and not told."""
    supply = {"category": "power_supply", "rated_watts": 850, "design": "atx-3.1", "cables": [MAIN, PROCESSOR_CABLE]}
    told = {each["where"] for each in ask({"parts": [{"spec": supply}, {"spec": BOARD}]})["assumptions"]}
    rails = {f"/parts/0/rails/{rail}/max_amps" for rail in ("12v", "5v", "3v3", "5vsb")}
    others = {"/parts/0/rated_at_celsius", "/parts/0/power_factor", "/site/mains_volts", "/site/room_celsius"}
    assert rails | others <= told


def test_plugs_that_carry_more_than_the_card_draws_raise_what_it_draws() -> None:
    """Two plugs of 150 W and a slot of 75 W are 375 W, whatever the card is said to draw: more than 300 W."""
    card = {
        "category": "graphics_card", "board_watts": 200, "slot_watts": 75,
        "needs": [{"connector": "pcie-8", "count": 2, "watts": 150}],
    }
    cable = {"plugs": [{"connector": "pcie-6+2"}], "awg": 18, "quantity": 2}
    supply = _supply(PROCESSOR_CABLE, cable, rated_watts=300)
    assert "PWR101" in _stops({"spec": supply}, {"spec": BOARD}, {"spec": card})


@pytest.mark.parametrize(("carries", "stops"), [(False, {"CON101"}), (True, set())], ids=["without", "with"])
def test_a_drive_of_3_3_volts_needs_a_cable_that_carries_them(carries: bool, stops: set[str]) -> None:
    cable = {"plugs": [{"connector": "sata-power"}], "awg": 18, "carries_3v3": carries}
    disk = {"category": "drive", "interface": "sata", "size": "2.5", "needs": [{"connector": "sata-power"}],
            "running_amps": {"5v": 0.5, "3v3": 2}}
    lines = [{"spec": _supply(PROCESSOR_CABLE, cable)}, {"spec": BOARD}, {"spec": PROCESSOR}, {"spec": disk}]
    assert _stops(*lines) == stops
    if carries:
        return
    wiring = [{"part": "/parts/3", "port": {"connector": "sata-power"},
               "plugs": [{"cable": "/parts/0/cables/2", "plug": 1}]}]
    plugged = ask({"parts": lines, "wiring": wiring, "wiring_rest": "plan"})["findings"]
    told = next(each["message"] for each in plugged if each["rule"] == "CON113")
    assert "the device asks for 3.3 V, and this cable or adapter is not known to have a wire for it." in told


def test_a_group_past_its_limit_at_start_up_is_told() -> None:
    """12 disks of 2 A start with 24 A on a group of 18 A, and run on 7.2 A."""
    groups = [{"name": "board", "max_amps": 40, "feeds": ["main", "processor"]},
              {"name": "drives", "max_amps": 18, "feeds": ["drive"]}]
    supply = _supply(PROCESSOR_CABLE, SATA, groups=groups)
    found = ask({"parts": [{"spec": supply}, {"spec": BOARD}, {"spec": PROCESSOR}, _disks(12)]})["findings"]
    assert [(each["weight"], each["measured"], each["limit"]) for each in found if each["rule"] == "PWR303"] == [
        ("advice", 24.0, 18.0)
    ]


def test_a_drive_of_3_3_volts_is_not_fed_through_an_adapter_from_a_plug_without() -> None:
    """A peripheral plug carries 12 V and 5 V only."""
    cable = {"plugs": [{"connector": "peripheral-4"}], "awg": 18}
    adapter = {"category": "adapter", "takes": [{"connector": "peripheral-4"}], "gives": [{"connector": "sata-power"}]}
    disk = {"category": "drive", "interface": "sata", "size": "2.5", "needs": [{"connector": "sata-power"}],
            "running_amps": {"5v": 0.5, "3v3": 2}}
    lines = [{"spec": _supply(PROCESSOR_CABLE, cable)}, {"spec": BOARD}, {"spec": PROCESSOR}, {"spec": adapter}]
    assert _stops(*lines, {"spec": disk}) == {"CON101"}
    assert _stops(*lines, {"spec": disk | {"running_amps": {"5v": 0.5}}}) == set()
