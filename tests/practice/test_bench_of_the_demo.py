"""What a bench technician would say of builds from the demo catalogue, asked over HTTP.

Common practice, no source: each and every one.
"""

from typing import Any

import pytest
from flask.testing import FlaskClient

from service.app import create_app
from service.config import Config
from tests.journeys.asked import said, spoken
from tests.practice.test_trade import cables, connections

Json = dict[str, Any]
SUPPLY, BOARD, FIRST = "/parts/0", "/parts/1", "/parts/3"
PLAIN = ("demo-board-plain", "demo-processor-65")


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    """Return a client of the service with the demo catalogue."""
    return create_app(Config()).test_client()


def judged(client: FlaskClient, supply: str, *parts: str, base: tuple[str, str] = PLAIN, **given: Any) -> Json:
    """Return the answer to a supply, a board, its processor and further parts, looked at for their plugs."""
    lines = [{"part": part} for part in (supply, *base, *parts)]
    answer = client.post("/v1/checks", json={"parts": lines, "aspects": ["connections"], **given})
    assert answer.status_code == 200, answer.get_json()
    found: Json = answer.get_json()
    return found


def plugs(answer: Json, part: str) -> list[str]:
    """Return the connectors of the ports of a part that the plan feeds."""
    return sorted(one["port"]["connector"] for one in connections(answer, part))


def adapters(answer: Json, part: str) -> list[str]:
    """Return the adapters between a part and the supply."""
    return [adapter["adapter"] for one in connections(answer, part) for adapter in one["adapters"]]


# --- the five of the trade that everybody names ---


def test_a_heavy_card_on_two_cables_rather_than_on_one_double_ended(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-850", "demo-card-300-double")
    assert len(cables(answer, FIRST)) == 2
    assert not said(answer, "CON109")


def test_a_lighter_card_may_share_one_double_ended_cable(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-750", "demo-card-225-mixed")
    assert plugs(answer, FIRST) == ["pcie-6", "pcie-8"]
    assert len(cables(answer, FIRST)) == 1
    assert not spoken(answer) & {"CON101", "CON104", "CON109"}


def test_the_native_16_pin_cable_before_the_cards_adapter(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-850", "demo-card-360-sixteen")
    assert adapters(answer, FIRST) == []
    assert cables(answer, FIRST) == {(f"{SUPPLY}/cables/4", 1)}


def test_the_cards_adapter_where_the_box_has_no_16_pin_cable(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-1050-many-cards", "demo-card-360-sixteen")
    assert adapters(answer, FIRST) == [f"{FIRST}/adapters/0"]
    assert len(cables(answer, FIRST)) == 3


@pytest.mark.parametrize(("disks", "open_ports"), [(4, 0), (5, 1)], ids=["four", "five"])
def test_two_drive_cables_of_two_plugs_feed_four_drives_and_not_five(
    client: FlaskClient, disks: int, open_ports: int,
) -> None:
    box: Json = {
        "category": "power_supply", "rated_watts": 550, "design": "atx-3.0", "cable_family": "quillmarsh-k",
        "sockets": [{"label": "Drive", "count": 2}, {"label": "Board", "count": 3}],
        "cables": [{"plugs": [{"connector": "atx-20+4"}], "occupies": {"Board": 1}},
                   {"plugs": [{"connector": "cpu-4+4"}], "occupies": {"Board": 1}}],
    }
    lines = [{"spec": box}, *({"part": part} for part in PLAIN), {"part": "demo-cable-drives-k-two", "quantity": 2}]
    sheet = {"parts": [*lines, *[{"part": "demo-disk-quiet"}] * disks], "aspects": ["connections"]}
    answer = client.post("/v1/checks", json=sheet).get_json()
    assert len(said(answer, "CON101")) == open_ports
    assert sum(len(connections(answer, f"/parts/{line}")) for line in range(4, 4 + disks)) == 4


@pytest.mark.parametrize(("supply", "processor", "used"), [
    ("demo-supply-1600", "demo-processor-big-peaks", 2), ("demo-supply-1600", "demo-processor-35", 1),
    ("demo-supply-800-one-processor", "demo-processor-big-peaks", 1),
], ids=["heavy", "light", "heavy, one cable"])
def test_the_second_processor_plug_where_the_box_has_it_and_the_load_asks_for_it(
    client: FlaskClient, supply: str, processor: str, used: int,
) -> None:
    answer = judged(client, supply, base=("demo-board-twin-eight", processor))
    assert plugs(answer, BOARD).count("cpu-8") == used


@pytest.mark.parametrize("cable", ["demo-cable-old-card", "demo-cable-card-h"])
def test_a_cable_of_another_makers_family_never(client: FlaskClient, cable: str) -> None:
    """The three boxed plugs do not do for two cards; a port stays open rather than on a cable of another supply."""
    answer = judged(client, "demo-supply-750-single-plugs", "demo-card-390-three", "demo-card-200", cable)
    assert len(connections(answer, FIRST)) + len(connections(answer, "/parts/4")) == 3
    assert ("/parts/5", 1) not in cables(answer, FIRST) | cables(answer, "/parts/4")
    assert len(said(answer, "CON101")) == 1
    assert said(answer, "CBL104") == [("/parts/5",)]


def test_a_further_cable_of_the_supplys_own_family_is_used(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-850", "demo-card-390-three", "demo-card-320", "demo-cable-card-h")
    assert ("/parts/5", 1) in cables(answer, FIRST) | cables(answer, "/parts/4")
    assert not spoken(answer) & {"CON101", "CBL104"}


@pytest.mark.parametrize("cable", ["demo-cable-card-h", "demo-cable-card-q-grouped"])
def test_a_foreign_cable_that_somebody_has_plugged_in_is_a_stop(client: FlaskClient, cable: str) -> None:
    """Its sockets and its group are those of another supply, which is no reason to refuse the sheet."""
    wiring = [{"part": FIRST, "port": {"connector": "pcie-8"}, "plugs": [{"cable": "/parts/4", "plug": 1}]}]
    answer = judged(client, "demo-supply-750-single-plugs", "demo-card-200", cable, wiring=wiring, wiring_rest="plan")
    assert said(answer, "CBL101") == [(FIRST, "pcie-8", "1")]


# --- what a technician would add ---


def test_a_captive_main_cable_is_used_as_it_hangs(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-450")
    (main,) = [one for one in connections(answer, BOARD) if one["port"]["connector"] == "atx-24"]
    assert [plug["cable"] for plug in main["plugs"]] == [f"{SUPPLY}/cables/0"]
    assert not said(answer, "CON101")


def test_one_split_processor_plug_feeds_two_4_pin_ports(client: FlaskClient) -> None:
    ports = [{"connector": "atx-24"}, {"connector": "cpu-4", "count": 2}]
    sheet = {
        "parts": [{"part": "demo-supply-450"}, {"spec": {"category": "motherboard", "needs": ports}},
                  {"part": "demo-processor-65"}],
        "aspects": ["connections"],
    }
    answer = client.post("/v1/checks", json=sheet).get_json()
    assert plugs(answer, BOARD) == ["atx-24", "cpu-4", "cpu-4"]
    halves = [one["plugs"] for one in connections(answer, BOARD) if one["port"]["connector"] == "cpu-4"]
    assert [plug["cable"] for way in halves for plug in way] == [f"{SUPPLY}/cables/1"] * 2


def test_a_20_pin_plug_in_a_24_pin_board_gets_a_caution(client: FlaskClient) -> None:
    wiring = [{"part": BOARD, "port": {"connector": "atx-24"}, "plugs": [{"cable": f"{SUPPLY}/cables/0", "plug": 1}]}]
    answer = judged(client, "demo-supply-400-old", base=("demo-board-four", "demo-processor-65"), wiring=wiring,
                    wiring_rest="plan")
    assert said(answer, "CON111") == [(BOARD, "atx-24", "1")]


def test_a_24_pin_plug_comes_apart_for_a_20_pin_board(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-450", base=("demo-board-twenty", "demo-processor-65"))
    assert plugs(answer, BOARD) == ["atx-20", "cpu-4"]
    assert not spoken(answer) & {"CON101", "CON111"}


def test_a_cage_hangs_on_the_round_plugs_of_one_chain(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-850", "demo-cage-4")
    assert plugs(answer, FIRST) == ["peripheral-4", "peripheral-4"]
    assert cables(answer, FIRST) == {(f"{SUPPLY}/cables/7", 1)}


@pytest.mark.parametrize(("card", "rules"), [("demo-card-120", {"CON116"}), ("demo-card-network-hot", {"CON116"}),
                                             ("demo-card-165-eight", {"CON101"})])
def test_round_plugs_feed_a_card_up_to_75_watts_and_with_a_caution(
    client: FlaskClient, card: str, rules: set[str],
) -> None:
    """The older desk supply has no card plug; 70 W pass the adapter with a caution, 120 W are left unfed."""
    answer = judged(client, "demo-supply-400-old", card, "demo-adapter-peripheral-card",
                    base=("demo-board-twenty", "demo-processor-65"))
    assert spoken(answer) & {"CON101", "CON116", "CON117"} == rules


def test_more_than_75_watts_from_round_plugs_is_a_stop(client: FlaskClient) -> None:
    plugged = [{"cable": f"{SUPPLY}/cables/2", "copy": copy, "plug": 1} for copy in (1, 2)]
    wiring = [{
        "part": FIRST, "port": {"connector": "pcie-8"}, "plugs": plugged,
        "adapters": [{"adapter": "/parts/4", "inputs": 2}],
    }]
    answer = judged(client, "demo-supply-400-old", "demo-card-165-eight", "demo-adapter-peripheral-eight",
                    base=("demo-board-twenty", "demo-processor-65"), wiring=wiring, wiring_rest="plan")
    assert said(answer, "CON117") == [(FIRST, "pcie-8", "1")]
    assert "CON114" in spoken(answer)


def test_a_card_never_on_sata_plugs(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-400-old", "demo-card-network-hot", "demo-adapter-sata-card",
                    base=("demo-board-twenty", "demo-processor-65"))
    assert connections(answer, FIRST) == []
    assert said(answer, "CON101") == [(FIRST, "pcie-6", "1")]


def test_a_card_that_somebody_has_put_on_sata_plugs_is_a_stop(client: FlaskClient) -> None:
    plugged = [{"cable": f"{SUPPLY}/cables/3", "plug": plug} for plug in (1, 2)]
    wiring = [{
        "part": FIRST, "port": {"connector": "pcie-6"}, "plugs": plugged,
        "adapters": [{"adapter": "/parts/4", "inputs": 2}],
    }]
    answer = judged(client, "demo-supply-400-old", "demo-card-network-hot", "demo-adapter-sata-card",
                    base=("demo-board-twenty", "demo-processor-65"), wiring=wiring, wiring_rest="plan")
    assert said(answer, "CON115") == [(FIRST, "pcie-6", "1")]


@pytest.mark.parametrize(("supply", "told"), [
    ("demo-supply-400-old", [(FIRST, "sata-power", "1")]), ("demo-supply-850", []),
], ids=["lead with 3.3 V", "lead without"])
def test_a_server_disk_may_stay_off_on_a_lead_with_3_3_volts(
    client: FlaskClient, supply: str, told: list[tuple[str, str, str]],
) -> None:
    answer = judged(client, supply, "demo-disk-server")
    assert said(answer, "CON120") == told


def test_a_server_disk_on_a_round_plug_adapter_has_no_3_3_volts(client: FlaskClient) -> None:
    """The old cure: an adapter from a round plug, which has no 3.3 V wire; a moulded one is a caution of its own."""
    plugged = [{"cable": f"{SUPPLY}/cables/2", "plug": 1}]
    wiring = [{
        "part": FIRST, "port": {"connector": "sata-power"}, "plugs": plugged,
        "adapters": [{"adapter": "/parts/4", "inputs": 1}],
    }]
    answer = judged(client, "demo-supply-400-old", "demo-disk-server", "demo-adapter-peripheral-sata", wiring=wiring,
                    wiring_rest="plan")
    assert not said(answer, "CON120")
    assert said(answer, "CON114") == [(FIRST, "sata-power", "1")]


def test_a_riser_on_a_sata_plug_with_a_card_that_draws_is_a_stop(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-850", "demo-riser-sata", "demo-card-75", wiring=[{
        "part": FIRST, "port": {"connector": "sata-power"}, "plugs": [{"cable": f"{SUPPLY}/cables/5", "plug": 1}],
    }], wiring_rest="plan")
    assert said(answer, "CON121") == [(FIRST, "sata-power", "1")]


def test_a_riser_with_a_card_plug_is_fed_from_one(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-850", "demo-riser-powered", "demo-card-75")
    assert plugs(answer, FIRST) == ["pcie-6"]
    assert not spoken(answer) & {"CON101", "CON121"}


def test_a_12_volt_only_supply_does_not_start_a_usual_board(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-500-12vo")
    assert ("/parts/1", "atx-24", "1") in said(answer, "CON101")


def test_a_12_volt_only_board_needs_such_a_supply(client: FlaskClient) -> None:
    usual = judged(client, "demo-supply-850", base=("demo-board-12vo", "demo-processor-65"))
    right = judged(client, "demo-supply-500-12vo", base=("demo-board-12vo", "demo-processor-65"))
    assert ("/parts/1", "atx12vo-10", "1") in said(usual, "CON101")
    assert not said(right, "CON101")


def test_two_cards_each_get_cables_of_their_own(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-1600", "demo-card-320", "demo-card-320")
    first, second = cables(answer, FIRST), cables(answer, "/parts/4")
    assert (len(first), len(second), first & second) == (2, 2, set())


def test_two_16_pin_cards_take_the_two_16_pin_cables(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-1600", "demo-card-575-sixteen", "demo-card-575-sixteen")
    assert cables(answer, FIRST) | cables(answer, "/parts/4") == {(f"{SUPPLY}/cables/5", 1), (f"{SUPPLY}/cables/5", 2)}
    assert not said(answer, "CON101")


def test_the_heavier_16_pin_card_gets_the_cable_with_the_higher_print(client: FlaskClient) -> None:
    answer = judged(client, "demo-supply-1000-two-sixteen", "demo-card-285-sixteen", "demo-card-575-sixteen")
    assert cables(answer, FIRST) == {(f"{SUPPLY}/cables/4", 1)}
    assert cables(answer, "/parts/4") == {(f"{SUPPLY}/cables/3", 1)}
    assert not said(answer, "CON103")
