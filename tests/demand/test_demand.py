"""What builds ask of their supply, worked out by hand; milliamps on 12 V, 5 V, 3.3 V, 5 V standby."""

from typing import Any

import orjson
import pytest

from service.catalogue.resolve import resolve
from service.demand.ask import demand
from service.demand.demand import Demand, Feed
from service.demand.ends import Ends
from service.intake.body import read_json
from service.intake.sheet import read_sheet
from service.parts.figures import End
from tests.journeys.asked import shelf

Json = dict[str, Any]
QUIET = {"12v": 0, "5v": 0, "3v3": 0, "5vsb": 0}
CARD = {"category": "graphics_card", "board_watts": 300, "needs": [{"connector": "pcie-8", "count": 2}]}
BOARD = {"category": "motherboard", "own_amps": QUIET}


def asked(*specs: Json, end: End = "unfavourable", **sheet: Any) -> Demand:
    """Return the demand of a build of specs, one of each."""
    raw = orjson.dumps({"parts": [spec if "spec" in spec else {"spec": spec} for spec in specs], **sheet})
    return demand(resolve(read_sheet(read_json(raw)), shelf().edition), Ends(end))


def feed_of(found: Demand, role: str) -> Feed:
    """Return the one feed of a role."""
    feeds = [feed for feed in found.feeds if feed.role == role]
    assert len(feeds) == 1
    return feeds[0]


@pytest.mark.parametrize(
    ("spec", "end", "milliamps"),
    [
        # Guide 336521, Table 2-1: amps at the plug by class; 26 A are 312 W.
        pytest.param({"class_watts": 165}, "unfavourable", 37_500, id="165-W-class"),
        pytest.param({"class_watts": 125}, "unfavourable", 26_000, id="125-W-class"),
        pytest.param({"class_watts": 65}, "favourable", 23_000, id="65-W-class-at-both-ends"),
        # At the plug already: 240 W / 12 V.
        pytest.param({"plug_watts": 240}, "unfavourable", 20_000, id="watts-at-the-plug"),
        # Package: 255 W / 0.85 / 12 V, our judgement of 0.85 to 0.92 for the regulator.
        pytest.param({"turbo_watts": 255}, "unfavourable", 25_000, id="package-watts-through-a-plain-regulator"),
        pytest.param({"turbo_watts": 276}, "favourable", 25_000, id="package-watts-through-a-good-regulator"),
        # The figure nearest to the plug counts.
        pytest.param(
            {"plug_watts": 120, "turbo_watts": 255, "class_watts": 165}, "unfavourable", 10_000, id="plug-before-all",
        ),
        # Base watts say no more than the class does: at worst the amps of the next class that the guide lists.
        pytest.param({"base_watts": 100}, "unfavourable", 26_000, id="base-watts-at-their-worst"),
        pytest.param({"base_watts": 92}, "favourable", 8_333, id="base-watts-seen-kindly"),
    ],
)
def test_processor(spec: Json, end: End, milliamps: int) -> None:
    found = asked(BOARD, {"category": "processor"} | spec, end=end)
    assert feed_of(found, "processor").sustained == (milliamps, 0, 0)
    assert found.sustained[0] == milliamps


@pytest.mark.parametrize(
    ("watts", "plugs", "end", "slot_watts", "plug_watts"),
    [
        # clamp(board - plugs' ratings, 25, 75): plugs are judged with the low end of the slot, the slot with the high.
        pytest.param(200, ("pcie-8", 1), "unfavourable", 75, 150, id="what-the-plug-cannot-give"),
        pytest.param(220, ("pcie-8", 1), "unfavourable", 75, 150, id="seventy-of-the-slot"),
        pytest.param(300, ("pcie-8", 1), "unfavourable", 75, 225, id="never-above-the-slot"),
        pytest.param(200, ("pcie-8", 2), "unfavourable", 75, 175, id="usual-share"),
        pytest.param(200, ("pcie-8", 2), "favourable", 25, 125, id="usual-share-seen-kindly"),
        pytest.param(400, ("12vhpwr", 1), "unfavourable", 75, 395, id="16-pin-cards-take-5-W-there"),
        pytest.param(60, ("pcie-6", 1), "unfavourable", 60, 35, id="never-above-the-card"),
    ],
)
def test_slot_share(watts: float, plugs: tuple[str, int], end: End, slot_watts: float, plug_watts: float) -> None:
    needs = [{"connector": plugs[0], "count": plugs[1]}]
    found = asked(BOARD, {"category": "graphics_card", "board_watts": watts, "needs": needs}, end=end)
    assert [share for _, share in found.slots] == [slot_watts]
    assert feed_of(found, "card").sustained[0] == int(plug_watts / 12 * 1000 + 0.5)


def test_card_without_plugs_takes_66_watts_of_12_volts_and_the_rest_of_3_3() -> None:
    """Slot: 5.5 A at 12 V are 66 W; 9 W of 75 W are 2.727 A at 3.3 V; both through the main connector."""
    found = asked(BOARD, {"category": "expansion_card", "board_watts": 75})
    assert feed_of(found, "main").sustained == (5500, 0, 2727)
    assert found.sustained == (5500, 0, 2727, 0)


def test_12_v_only_board_makes_its_small_rails_from_12_v() -> None:
    """2 A at 5 V and 1 A at 3.3 V are 13.3 W; through a converter of 0.85 (our judgement) 15.647 W, 1.304 A."""
    own = {"12v": 1, "5v": 2, "3v3": 1, "5vsb": 0.5}
    found = asked({"category": "motherboard", "own_amps": own, "needs": [{"connector": "atx12vo-10"}]})
    assert feed_of(found, "main").sustained == (2304, 0, 0)
    assert found.sustained == (2304, 0, 0, 500)
    assert found.sustained_watts == pytest.approx(2.304 * 12 + 2.5)


@pytest.mark.parametrize(
    ("together", "milliamps"),
    [
        pytest.param(None, 6_000, id="all"), pytest.param(3, 6_000, id="three"), pytest.param(2, 4_500, id="two"),
        pytest.param(1, 3_000, id="one"),
    ],
)
def test_staggered_drives(together: int | None, milliamps: int) -> None:
    """Three disks of 0.5 A running and 2 A starting: those that wait are counted as running."""
    drive = {
        "category": "drive", "size": "3.5", "needs": [{"connector": "sata-power"}],
        "running_amps": {"12v": 0.5, "5v": 0.5, "3v3": 0}, "starting_amps": {"12v": 2, "5v": 0.5, "3v3": 0},
    }
    use = {} if together is None else {"drives_starting_together": together}
    found = asked({"spec": drive, "quantity": 3}, use=use)
    assert found.starting[0] == milliamps
    assert found.sustained[0] == 1_500


def test_what_hangs_on_a_hub_goes_up_to_its_plug() -> None:
    """Hub 0.1 A and two fans of 0.3 A; the 0.5 A as each starts last a second, and count for the supply alone."""
    hub = {
        "category": "controller", "amps": 0.1, "needs": [{"connector": "sata-power"}],
        "offers": [{"connector": "fan-4", "count": 2, "max_amps": 1}],
    }
    fan = {"category": "fan", "amps": 0.3, "starting_amps": 0.5, "needs": [{"connector": "fan-4"}]}
    found = asked(hub, {"spec": fan, "quantity": 2})
    assert [(feed.sustained, feed.starting) for feed in found.feeds] == [((700, 0, 0), (700, 0, 0))]
    assert (found.sustained[0], found.starting[0]) == (700, 1100)


def test_what_hangs_in_a_cage_goes_up_to_its_plugs() -> None:
    drive = {
        "category": "drive", "size": "3.5", "needs": [{"connector": "sata-power"}],
        "running_amps": {"12v": 0.5, "5v": 0.4, "3v3": 0}, "starting_amps": {"12v": 2, "5v": 0.6, "3v3": 0},
    }
    cage = {
        "category": "backplane", "needs": [{"connector": "peripheral-4", "count": 2}],
        "offers": [{"connector": "sata-power", "count": 3}],
    }
    found = asked(cage, {"spec": drive, "quantity": 3})
    feed = feed_of(found, "drive")
    assert [port.connector for port in feed.ports] == ["peripheral-4", "peripheral-4"]
    assert (feed.sustained, feed.starting) == ((1500, 1200, 0), (6000, 1800, 0))


def test_fan_on_the_board_goes_through_the_main_connector() -> None:
    board = BOARD | {"offers": [{"connector": "fan-4", "count": 1, "max_amps": 1}]}
    found = asked(board, {"category": "fan", "amps": 0.4, "starting_amps": 0.6, "needs": [{"connector": "fan-4"}]})
    assert feed_of(found, "main").sustained == (400, 0, 0)
    filled = [(header.connector, header.milliamps, header.max_milliamps) for header in found.headers]
    assert filled == [("fan-4", 400, 1000)]


def test_moments_of_a_published_example() -> None:
    """300 W card, 300 W processor, 150 W rest: the maker's own example of what a 750 W supply of 3.0 must carry.

    Card ratio 3 at 100 us, 4 - 0.2171 ln(T) beyond; the processor's peak up to 10 ms is 1.73 times its continuous draw.
    """
    board = BOARD | {"own_amps": QUIET | {"12v": 12.5}}
    card = CARD | {"slot_watts": 0}
    found = asked(board, {"category": "processor", "plug_watts": 300}, card)
    assert found.sustained_watts == pytest.approx(750)
    watts = {moment.microseconds: moment.watts for moment in found.moments}
    assert watts[100] == pytest.approx(750 + 600 + 219)
    assert watts[1_000] == pytest.approx(750 + 450.1 + 219, abs=0.1)
    assert watts[10_000] == pytest.approx(750 + 300.1 + 219, abs=0.1)
    assert watts[100_000] == pytest.approx(750 + 150.2, abs=0.1)
    assert not any(moment.stated for moment in found.moments)


def test_several_cards_at_once_are_counted_apart() -> None:
    card = CARD | {"slot_watts": 0}
    found = asked(BOARD, {"spec": card, "quantity": 2})
    first = next(moment for moment in found.moments if moment.microseconds == 100)
    assert first.watts == pytest.approx(600 + 600)
    assert first.all_cards_watts == pytest.approx(600 + 1200)


def test_power_limit_of_cards() -> None:
    card = CARD | {"slot_watts": 60}
    found = asked(BOARD, card, use={"graphics_limit_percent": 80})
    assert found.sustained_watts == pytest.approx(240, abs=0.05)
    assert [share for _, share in found.slots] == [48]
    assert feed_of(found, "card").sustained == (16_000, 0, 0)
