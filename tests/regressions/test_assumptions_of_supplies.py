"""What is taken for a figure that a supply or a cable does not state is told once; no cable takes no socket unseen."""

import pytest

from tests.journeys.asked import Json, ask, said, spoken

BOARD: Json = {
    "category": "motherboard", "own_amps": {"12v": 1, "5v": 1, "3v3": 1, "5vsb": 0.5}, "offers": [],
    "needs": [{"connector": "atx-24"}, {"connector": "cpu-8"}],
}
PROCESSOR: Json = {"category": "processor", "plug_watts": 90}
GIVEN: Json = {"awg": 18, "supply_wires_12v": 3}
RAILS: Json = {"12v": {"max_amps": 70}, "5v": {"max_amps": 25}, "3v3": {"max_amps": 25}, "5vsb": {"max_amps": 3}}


def supply(*cables: Json, **given: object) -> Json:
    """Return a supply with a main and a processor cable, and others."""
    usual = [{"plugs": [{"connector": "atx-24"}], "awg": 18}, {"plugs": [{"connector": "cpu-8"}], "awg": 18}]
    return {
        "category": "power_supply", "rated_watts": 850, "design": "atx-3.1", "rails": RAILS, "cables": [*usual, *cables]
    } | given


def card(count: int) -> Json:
    """Return a card with so many plugs."""
    needs = [{"connector": "pcie-8", "count": count}]
    return {"category": "graphics_card", "board_watts": 100 * count, "slot_watts": 10, "needs": needs}


def asked(power: Json, *others: Json) -> Json:
    """Return the answer to a build with that supply."""
    specs = (power, BOARD, PROCESSOR, *others)
    return ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["power", "connections"]})


def told(answer: Json, basis: str) -> list[tuple[str, float]]:
    """Return where an assumption stands, and what was used."""
    return [(one["where"], one["used"]) for one in answer["assumptions"] if one["basis"] == basis]


def test_wires_are_told_once_a_supply() -> None:
    cables = [{"plugs": [{"connector": "pcie-6+2"}] * 2}, {"plugs": [{"connector": "sata-power"}]}]
    answer = asked(supply(*cables * 5))
    assert told(answer, "assumed.cable.awg") == [("/parts/0/cables/2/awg", 18)]
    assert told(answer, "assumed.cable.wires") == [("/parts/0/cables/0/supply_wires_12v", 2)]


def test_a_16_pin_cable_is_told_by_itself() -> None:
    answer = asked(supply({"plugs": [{"connector": "12v-2x6"}], "rated_watts": 600}))
    assert told(answer, "assumed.cable.awg") == []
    assert told(answer, "assumed.cable.awg_16_pin") == [("/parts/0/cables/2/awg", 16)]


def test_a_cable_beside_the_supply_is_told_by_itself() -> None:
    loose = {"category": "cable", "family": "own", "plugs": [{"connector": "pcie-8"}]}
    answer = asked(supply(*[GIVEN | {"plugs": [{"connector": "pcie-8"}]}]), loose)
    assert told(answer, "assumed.cable.awg") == [("/parts/3/awg", 18)]
    assert ("/parts/3/supply_wires_12v", 3) in told(answer, "assumed.cable.wires")


def test_wires_that_are_stated_are_not_assumed() -> None:
    power = supply()
    for cable in power["cables"]:
        cable |= GIVEN
    answer = asked(power)
    assert told(answer, "assumed.cable.awg") == told(answer, "assumed.cable.wires") == []


SOCKETS = [{"label": "A", "count": 1}, {"label": "B", "count": 1}, {"label": "C", "count": 1}]
PLACED = [
    {"plugs": [{"connector": "atx-24"}], "occupies": {"A": 1}},
    {"plugs": [{"connector": "cpu-8"}], "occupies": {"B": 1}},
]
CARDS = {"plugs": [{"connector": "pcie-8"}], "quantity": 2}


@pytest.mark.parametrize(("sockets", "placed"), [
    pytest.param(SOCKETS, PLACED, id="the one that no cable names"),
    pytest.param([SOCKETS[0], SOCKETS[1] | {"count": 2}], PLACED, id="that of processor cables"),
    pytest.param([{"label": "A", "count": 3}], [cable | {"occupies": {"A": 1}} for cable in PLACED], id="the only one"),
])
def test_a_cable_without_sockets_takes_one(sockets: list[Json], placed: list[Json]) -> None:
    power = supply(sockets=sockets) | {"cables": [*placed, CARDS]}
    one, two = asked(power, card(1)), asked(power, card(2))
    assert said(one, "CON101") == []
    assert len(said(two, "CON101")) == 1
    assert two["verdict"] == "undecided"
    assert told(one, "assumed.cable.socket") == [("/parts/0/cables/2/occupies", 1)]


def test_a_socket_that_is_only_assumed_is_named_as_what_would_settle() -> None:
    specs = (supply(sockets=SOCKETS) | {"cables": [*PLACED, CARDS]}, BOARD, PROCESSOR, card(2))
    answer = ask({"parts": [{"spec": spec} for spec in specs], "aspects": ["connections"], "would_settle": True})
    assert answer["would_settle"] == ["/parts/0/cables/2/occupies"]


def test_sockets_of_a_box_that_is_not_listed_may_suffice() -> None:
    power = supply(sockets=[{"label": "A", "count": 1}])
    del power["cables"]
    assert asked(power)["verdict"] == "undecided"


def test_sockets_of_a_cable_for_the_same_purpose_are_told() -> None:
    placed = [*PLACED, {"plugs": [{"connector": "pcie-8"}], "occupies": {"C": 1}}]
    answer = asked(supply(sockets=SOCKETS) | {"cables": [*placed, {"plugs": [{"connector": "pcie-6"}]}]})
    assert told(answer, "assumed.cable.socket") == [("/parts/0/cables/3/occupies", 1)]


def test_a_cable_of_which_no_socket_is_known_is_told() -> None:
    sockets = [*SOCKETS, {"label": "D", "count": 1}]
    answer = asked(supply(sockets=sockets) | {"cables": [*PLACED, CARDS]}, card(2))
    assert said(answer, "CON101") == []
    assert told(answer, "assumed.cable.no_socket") == [("/parts/0/cables/2/occupies", 0)]


def test_a_cable_beside_the_supply_takes_a_socket_too() -> None:
    loose = {"category": "cable", "family": "own", "plugs": [{"connector": "pcie-8"}], "quantity": 2}
    power = supply(sockets=SOCKETS) | {"cables": PLACED}
    assert len(said(asked(power, card(2), loose), "CON101")) == 1
    assert told(asked(power, card(1), loose), "assumed.cable.socket") == [("/parts/4/occupies", 1)]


@pytest.mark.parametrize(("amps", "verdict"), [(8, "fits"), (22, "undecided"), (30, "does_not_fit")])
def test_a_limit_of_the_small_rails_together_is_assumed(amps: float, verdict: str) -> None:
    """With the board's 1 A of each: 48.3, 118.3 and 158.3 W of 100 to 150 W."""
    disk = {
        "category": "drive", "interface": "sas", "size": "3.5", "needs": [{"connector": "sata-power"}],
        "running_amps": {"12v": 0.5, "5v": amps / 8, "3v3": 0}, "starting_amps": {"12v": 0.5, "5v": 0, "3v3": 0},
    }
    drives = GIVEN | {"plugs": [{"connector": "sata-power"}], "quantity": 8}
    power = supply(drives, rails=RAILS | {"5v": {"max_amps": 40}})
    answer = asked(power, *[disk] * 8)
    assert answer["verdict"] == verdict
    assert told(answer, "assumed.combined.small") == [("/parts/0/combined_limits", 100)]
    assert ("PWR203" in spoken(answer)) is (verdict != "fits")
    assert all(where == ("/parts/0/combined_limits",) for where in said(answer, "PWR203"))


@pytest.mark.parametrize("given", [
    {"combined_limits": [{"rails": ["5v", "3v3"], "watts": 120}]}, {"design": "atx12vo", "rails": {}},
])
def test_no_such_limit_is_assumed_where_one_is_given_or_there_are_no_small_rails(given: Json) -> None:
    assert told(asked(supply() | given), "assumed.combined.small") == []
