"""Faults that checking the demo catalogue brought to light."""

import copy

import pytest

from tests.journeys.asked import Json, ask, example, said, spec_of, spoken

TWELVE_ONLY: Json = {
    "category": "power_supply", "rated_watts": 650, "design": "atx12vo", "rails": {"12v": {"max_amps": 54}},
    "cables": [
        {"plugs": [{"connector": "atx12vo-10"}]},
        {"plugs": [{"connector": "cpu-8"}]},
        {"plugs": [{"connector": "sata-power"}] * 4},
        {"plugs": [{"connector": "peripheral-4"}] * 2},
    ],
}
BOARD_12VO: Json = {
    "category": "motherboard", "needs": [{"connector": "atx12vo-10"}, {"connector": "cpu-8"}], "offers": [],
}
DRIVE: Json = {
    "category": "drive", "interface": "nvme", "size": "2.5", "needs": [{"connector": "sata-power"}],
    "running_amps": {"5v": 0.9},
}
TWELVE: Json = {"12v": 0.9, "5v": 0, "3v3": 0}


def sheet(*specs: Json) -> Json:
    """Return a sheet of specs, one of each."""
    return {"parts": [{"spec": copy.deepcopy(spec)} for spec in specs]}


@pytest.mark.parametrize("connector", ["sata-power", "peripheral-4"])
def test_a_supply_of_12_volts_alone_feeds_no_device_of_5_volts(connector: str) -> None:
    drive = DRIVE | {"needs": [{"connector": connector}]}
    answer = ask(sheet(TWELVE_ONLY, BOARD_12VO, drive))
    assert ("/parts/2", connector, "1") in said(answer, "CON101")


def test_a_supply_of_12_volts_alone_feeds_a_device_of_12_volts() -> None:
    drive = DRIVE | {"running_amps": TWELVE, "starting_amps": TWELVE}
    assert said(ask(sheet(TWELVE_ONLY, BOARD_12VO, drive)), "CON101") == []


@pytest.mark.parametrize(("watts", "stops"), [(600, True), (40, False)])
def test_stated_watts_of_a_processor_port_count_without_a_processor(watts: int, stops: bool) -> None:
    supply = {
        "category": "power_supply", "rated_watts": 1000, "design": "atx-3.1",
        "cables": [{"plugs": [{"connector": "atx-24"}]}, {"plugs": [{"connector": "cpu-4+4"}]}],
    }
    board = {"category": "motherboard", "needs": [{"connector": "atx-24"}, {"connector": "cpu-4", "watts": watts}]}
    assert (("/parts/1", "cpu-4", "1") in said(ask(sheet(supply, board)), "CON104")) is stops


def test_a_slot_share_within_a_range_is_named_as_what_would_settle() -> None:
    asked = example("card-known-within-a-range")
    card = spec_of(asked, "graphics_card")
    card |= {"board_watts": 350, "slot_watts": {"low": 40, "high": 60}}
    answer = ask(asked | {"would_settle": True})
    assert answer["verdict"] == "undecided"
    assert answer["would_settle"] == ["/parts/5/slot_watts"]


def test_required_headers_are_filled_before_optional_ones() -> None:
    offers = [{"connector": "fan-4", "count": 9}, {"connector": "argb-3", "count": 2}]
    board = {"category": "motherboard", "offers": offers}
    fan = {"category": "fan", "needs": [{"connector": "fan-4"}, {"connector": "argb-3", "optional": True}]}
    light = {
        "category": "lighting", "volts": 5, "amps": 1, "needs": [{"connector": "sata-power"}, {"connector": "argb-3"}],
    }
    assert "AUX101" not in spoken(ask(sheet(board, fan, fan, light)))


def test_nothing_is_bought_for_a_supply_without_sockets() -> None:
    supply = {
        "category": "power_supply", "rated_watts": 650, "design": "atx-2", "modularity": "none",
        "cables": [{"plugs": [{"connector": "atx-24"}]}, {"plugs": [{"connector": "cpu-4+4"}]}],
    }
    card = {"category": "graphics_card", "board_watts": 150, "needs": [{"connector": "pcie-8"}]}
    bought = {}
    for modularity in ("none", "full"):
        answer = ask(sheet(supply | {"modularity": modularity}, {"category": "motherboard"}, card))
        bought[modularity] = bool(answer["plan"]["to_buy"])
    assert bought == {"none": False, "full": True}


def test_a_plug_of_a_supply_of_12_volts_alone_stops_where_it_is_plugged_into_a_device_of_5_volts() -> None:
    plain = ask(sheet(TWELVE_ONLY, BOARD_12VO, DRIVE | {"running_amps": TWELVE, "starting_amps": TWELVE}))
    asked = sheet(TWELVE_ONLY, BOARD_12VO, DRIVE) | {"wiring": plain["plan"]["connections"]}
    assert ("/parts/2", "sata-power", "1") in said(ask(asked), "CON113")


def test_a_riser_on_a_sata_plug_is_said_once() -> None:
    supply = {"category": "power_supply", "rated_watts": 750, "design": "atx-3.1", "cables": [
        {"plugs": [{"connector": "atx-24"}]}, {"plugs": [{"connector": "cpu-4+4"}]},
        {"plugs": [{"connector": "sata-power"}]},
    ]}
    card = {"category": "expansion_card", "board_watts": 70, "slot_watts": 70}
    riser = {"category": "riser", "needs": [{"connector": "sata-power"}], "feeds_slot_watts": 75}
    found = spoken(ask(sheet(supply, {"category": "motherboard"}, card, riser)))
    assert "CON121" in found
    assert "CON107" not in found


CAPTIVE: Json = {"plugs": [{"connector": "cpu-8"}], "captive": True}
PLAIN: Json = {"plugs": [{"connector": "cpu-8"}]}


@pytest.mark.parametrize(
    ("modularity", "cable", "sockets", "offered"),
    [
        pytest.param("semi", PLAIN, [], False, id="a semi-modular supply without a list of sockets"),
        pytest.param("semi", PLAIN, [{"label": "A", "count": 4}], False, id="with a list in which it has none"),
        pytest.param(None, CAPTIVE, [], False, id="cables said to be captive"),
        pytest.param("full", PLAIN, [], True, id="a modular supply"),
        pytest.param("semi", PLAIN | {"captive": False}, [], True, id="semi-modular, with a loose processor cable"),
    ],
)
def test_no_captive_cable_is_bought(modularity: str | None, cable: Json, sockets: list[Json], offered: bool) -> None:
    supply = {
        "category": "power_supply", "rated_watts": 850, "design": "atx-3.1", "sockets": sockets,
        "cables": [{"plugs": [{"connector": "atx-24"}], "captive": True}, cable],
    }
    if modularity:
        supply["modularity"] = modularity
    board = {"category": "motherboard", "needs": [{"connector": "atx-24"}, {"connector": "cpu-8", "count": 2}]}
    assert bool(ask(sheet(supply, board))["plan"]["to_buy"]) is offered


@pytest.mark.parametrize("given", [
    {"modularity": "semi"}, {"modularity": "none"}, {"sockets": [{"label": "A", "count": 6}]},
])
def test_a_box_that_is_not_listed_may_hold_what_is_needed(given: Json) -> None:
    supply = {"category": "power_supply", "rated_watts": 850, "design": "atx-3.1"} | given
    assert ask(sheet(supply, {"category": "motherboard"}))["verdict"] == "undecided"
