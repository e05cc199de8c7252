"""What passes each contact and wire on the way to a port, what it is rated for, and by which figure."""

from typing import Any

import pytest

from service.facts.fact import _ASSUMED
from service.wiring.allowances import PRINTED_ON_ADAPTER, PRINTED_ON_CABLE
from tests.journeys.asked import NAMES, ask, example
from tests.mutation.changed import all_facts
from tests.practice.test_trade import ADAPTER, BOARD, CARD_LINE, DOUBLE, SINGLE, SIXTEEN, card, disk, judged, supply

Json = dict[str, Any]
CHAIN = {"plugs": [{"connector": "sata-power"}] * 4, "awg": 18, "carries_3v3": False}


def carried(answer: Json, part: str, number: int = 1) -> Json:
    """Return what one port of a part carries."""
    found: Json = next(
        one for one in answer["power"]["connections"] if (one["part"], one["port"]["number"]) == (part, number)
    )
    return found


def along(answer: Json, cable: str, rail: str = "12v", what: str = "wire") -> list[tuple[int, float]]:
    """Return the amps of each stretch of a cable on a rail, by the plug that it leads up to."""
    stretches = next(one["stretches"] for one in answer["power"]["cables"] if one["cable"] == cable)
    return [
        (each["up_to_plug"], one["amps"]) for each in stretches for one in each["carries"]
        if (one["rail"], one["what"]) == (rail, what)
    ]


def test_trunk_carries_what_all_disks_take_and_tail_what_the_last_one_takes() -> None:
    disks = [disk() | {"running_amps": {"12v": amps, "5v": 0.3}} for amps in (0.5, 0.5, 0.5, 0.5)]
    answer = judged(supply(CHAIN), *disks)
    assert along(answer, "/parts/0/cables/2") == [(1, 2.0), (2, 1.5), (3, 1.0), (4, 0.5)]


def test_trunk_of_a_double_ended_cable_carries_both_plugs_through_the_wires_that_leave_the_supply() -> None:
    answer = judged(supply(DOUBLE | {"supply_wires_12v": 4}), card(25 + 192, "pcie-8", 2))
    trunk, tail = answer["power"]["cables"][2]["stretches"]
    assert [(one["contacts"], one["amps_per_contact"]) for one in trunk["carries"]] == [(4, 4.0)]
    assert [(one["contacts"], one["amps_per_contact"]) for one in tail["carries"]] == [(3, 2.667)]
    ports = [carried(answer, CARD_LINE, number) for number in (1, 2)]
    assert [one["tightest"]["stretch"] for one in ports] == [1, 1], "the trunk is tighter than either plug"
    assert [one["tightest"]["reserve"] for one in ports] == [2.0, 2.0]


@pytest.mark.parametrize(
    ("cable", "amps", "rated", "basis", "at"),
    [
        pytest.param(SINGLE, 4.0, 8.0, "contact.stop", "at_port", id="8 A a contact of 4.2 mm"),
        pytest.param(SINGLE | {"awg": 20}, 4.0, 5.0, "wire.amps.20", "of_cable", id="thin wire of the housing table"),
        pytest.param(SINGLE | {"awg": 22}, 4.0, 4.0, "wire.amps.22", "of_cable", id="thinner wire"),
        pytest.param(SINGLE | {"supply_wires_12v": 2}, 6.0, 8.0, "contact.stop", "of_cable", id="two wires for three"),
        pytest.param(SINGLE | {"open_contacts": 1}, 6.0, 8.0, "contact.stop", "at_port", id="one contact stated open"),
    ],
)
def test_tightest_place_of_a_card_plug(cable: Json, amps: float, rated: float, basis: str, at: str) -> None:
    found = carried(judged(supply(cable), card(25 + 144, "pcie-8", 1)), CARD_LINE)["tightest"]
    assert (found["at"], found["basis"]) == (at, basis)
    assert (found["amps_per_contact"], found["contact_rating_amps"]) == (amps, rated)
    assert found["reserve"] == pytest.approx(rated / amps, abs=0.001)


def test_16_pin_contact_has_its_own_rating_and_the_print_is_that_of_the_whole_cable() -> None:
    answer = judged(supply(SIXTEEN), card(25 + 450, "12v-2x6", 1))
    port = carried(answer, CARD_LINE)
    assert [(one["contacts"], one["amps_per_contact"], one["contact_rating_amps"], one["basis"], one["reserve"])
            for one in port["joints"]] == [(6, 6.25, 9.2, "contact.16_pin", 1.472)]
    printed = [one for one in answer["power"]["cables"][2]["stretches"][0]["carries"] if one["what"] == "print"]
    assert printed == [{"at": "of_cable", "what": "print", "rail": "12v", "amps": 37.5, "rating_amps": 50.0,
                        "basis": PRINTED_ON_CABLE, "reserve": 1.333}]
    assert port["tightest"]["what"] == "print"


def test_every_joint_on_the_way_through_an_adapter_is_told() -> None:
    given = card(25 + 432, "12v-2x6", 1) | {"adapters": [ADAPTER]}
    port = carried(judged(supply(SINGLE | {"quantity": 3}), given), CARD_LINE)
    told = [(one["at"], one["what"], one.get("contacts"), one["amps"]) for one in port["joints"]]
    assert told == [("at_port", "contact", 6, 36.0), ("in_adapter", "adapter", None, 36.0),
                    *[("at_input", "contact", 3, 12.0)] * 3]
    assert [one["basis"] for one in port["joints"] if one["what"] == "adapter"] == [PRINTED_ON_ADAPTER]


def test_drive_is_told_on_12_volts_and_on_a_rail_with_less_reserve() -> None:
    one = disk() | {"running_amps": {"12v": 0.3, "5v": 0.9}}
    port = carried(judged(supply(CHAIN), one), CARD_LINE)
    assert [(each["rail"], each["amps_per_contact"], each["contact_rating_amps"]) for each in port["joints"]] == [
        ("12v", 0.1, 1.5), ("5v", 0.3, 1.5),
    ]
    assert port["tightest"]["basis"] == "contact.sata"


def test_port_whose_contacts_are_all_open_has_no_reserve() -> None:
    found = carried(judged(supply(SINGLE | {"open_contacts": 3}), card(25 + 144, "pcie-8", 1)), CARD_LINE)["tightest"]
    assert (found["rating_amps"], found["reserve"]) == (0.0, 0.0)


@pytest.mark.parametrize("name", NAMES)
def test_every_rating_has_a_basis_that_can_be_looked_up(name: str) -> None:
    known = {fact.key for fact in all_facts()} | set(_ASSUMED) | {PRINTED_ON_CABLE, PRINTED_ON_ADAPTER}
    power = ask(example(name))["power"]
    places = [one for port in power["connections"] for one in port["joints"]]
    places += [one for cable in power["cables"] for each in cable["stretches"] for one in each["carries"]]
    assert {one["basis"] for one in places} <= known


@pytest.mark.parametrize("name", NAMES)
def test_tightest_is_the_least_reserve_of_joints_and_stretches(name: str) -> None:
    answer = ask(example(name))
    cables = {(one["cable"], one["copy"]): one["stretches"] for one in answer["power"]["cables"]}
    planned = answer["plan"]["connections"] if answer["plan"] else []
    plans = {(one["part"], one["copy"], str(one["port"])): one["plugs"] for one in planned}
    for port in answer["power"]["connections"]:
        reserves = [one["reserve"] for one in port["joints"]]
        for plug in plans[port["part"], port["copy"], str(port["port"])]:
            reserves += [
                one["reserve"] for each in cables.get((plug["cable"], plug["copy"]), ())
                if each["up_to_plug"] <= plug["plug"] for one in each["carries"]
            ]
        assert port.get("tightest", {}).get("reserve") == min(reserves, default=None)


@pytest.mark.parametrize("turned", [False, True], ids=["as planned", "the other way round"])
def test_inputs_of_an_adapter_have_no_order_of_their_own(turned: bool) -> None:
    long, short = ({"plugs": [{"connector": "pcie-8", "at_mm": mm}], "awg": awg} for mm, awg in ((700, 20), (500, 16)))
    made = {"takes": [{"connector": "pcie-8", "count": 2}], "gives": [{"connector": "12v-2x6"}], "rated_watts": 300}
    answer = judged(supply(long, short), card(25 + 216, "12v-2x6", 1, adapters=[made]))
    processor = {"category": "processor", "socket": "q7", "plug_watts": 90}
    specs = (supply(long, short), BOARD, processor, card(25 + 216, "12v-2x6", 1, adapters=[made]))
    wiring = answer["plan"]["connections"]
    for one in wiring:
        one["plugs"] = one["plugs"][::-1] if turned else one["plugs"]
    again = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"], "wiring": wiring})
    assert again["power"]["connections"] == answer["power"]["connections"]
