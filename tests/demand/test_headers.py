"""Headers filled: what is promised of it, and builds that were once filled badly."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.demand.demand import NONE
from service.demand.draws import Draw
from service.demand.hosts import Hung, hang, state
from service.demand.placing import FIXED
from service.demand.wants import USUAL_MILLIAMPS, Host
from service.parts.records import Need, Offer
from tests.demand.brute_headers import small_build

BOARD, HUB, CAGE = 2, 1, 0
SEEDS = st.integers(0, 1 << 40)
OPTIONAL = 5


def fan(unit: int, running: int, starting: int = 0) -> Draw:
    """Return a fan by its milliamps."""
    load = (running, 0, 0)
    return Draw(unit, "rest", (Need(connector="fan-4"),), load, (max(running, starting), 0, 0))


def hub(unit: int, connector: str = "sata-power", own: int = 50) -> Draw:
    """Return the draw of a hub."""
    return Draw(unit, "rest", (Need(connector=connector),), (own, 0, 0), (own, 0, 0))


def offers(*given: tuple[str, int, float | None]) -> tuple[Offer, ...]:
    """Return what a host offers: connector, how many, amps."""
    return tuple(Offer(connector=name, count=count, max_amps=amps) for name, count, amps in given)


def filled(draws: list[Draw], *hosts: Host) -> Hung:
    """Return the headers as they are filled."""
    return hang(state(draws, list(hosts)))


# --- what is promised ---


@given(seed=SEEDS, more=st.lists(st.integers(0, 2000), min_size=6, max_size=6))
def test_more_load_is_never_better(seed: int, more: list[int]) -> None:
    draws, hosts = small_build(seed)
    heavier = [
        draw._replace(sustained=_more(draw.sustained, extra), starting=_more(draw.starting, extra + extra // 2))
        for draw, extra in zip(draws, more, strict=False)
    ] + draws[len(more) :]
    before, after = hang(state(draws, hosts)).worth, hang(state(heavier, hosts)).worth
    assert after[:FIXED] == before[:FIXED]
    assert after >= before


def _more(load: tuple[int, int, int], extra: int) -> tuple[int, int, int]:
    return (load[0] + extra, load[1], load[2])


@given(seed=SEEDS)
def test_a_limit_that_is_not_stated_is_never_better(seed: int) -> None:
    """As long as what was stated is no less than what is usual."""
    draws, hosts = small_build(seed)
    stated, silent = [], []
    for at in hosts:
        usual = [USUAL_MILLIAMPS.get(offer.connector, 0) / 1000 for offer in at.offers or ()]
        raised = [
            Offer(connector=o.connector, count=o.count, max_amps=max(o.max_amps or 0, least, 0.01))
            for o, least in zip(at.offers or (), usual, strict=True)
        ]
        stated.append(at if at.offers is None else at._replace(offers=tuple(raised)))
        bare = tuple(Offer(connector=o.connector, count=o.count) for o in raised)
        silent.append(at if at.offers is None else at._replace(offers=bare))
    assert hang(state(draws, silent)).worth >= hang(state(draws, stated)).worth


@given(seed=SEEDS, names=st.lists(st.sampled_from(["fan-4", "argb-3", "usb2-9"]), max_size=3),
       amps=st.sampled_from([None, 0.2, 1.0, 3.0]))
def test_more_headers_are_never_worse(seed: int, names: list[str], amps: float | None) -> None:
    """A host that asks for nothing itself."""
    draws, hosts = small_build(seed)
    more = [*hosts, Host(50, HUB, tuple(Offer(connector=name, max_amps=amps) for name in names))]
    # Below, optional headers that find no port count only where one mates.
    assert hang(state(draws, more)).worth[:OPTIONAL] <= hang(state(draws, hosts)).worth[:OPTIONAL]


@given(seed=SEEDS, rng=st.randoms(use_true_random=False))
def test_equal_devices_in_another_order_change_nothing(seed: int, rng: Any) -> None:
    draws, hosts = small_build(seed)
    shuffled, turned = draws[:], hosts[:]
    rng.shuffle(shuffled)
    rng.shuffle(turned)
    turned = [at._replace(offers=at.offers and tuple(rng.sample(at.offers, len(at.offers)))) for at in turned]
    assert hang(state(shuffled, turned)) == hang(state(draws, hosts))


@given(seed=SEEDS)
def test_what_hangs_is_carried_once(seed: int) -> None:
    """What is added to hosts that do not hang themselves is what all that hangs draws."""
    draws, hosts = small_build(seed)
    hung = hang(state(draws, hosts))
    drawn = [sum(draw.sustained[rail] for draw in draws if draw.unit in hung.fed) for rail in range(3)]
    carried = [sum(load[rail] for unit, load in hung.sustained.items() if unit not in hung.fed) for rail in range(3)]
    assert carried == drawn


# --- builds that were filled badly ---


def test_fans_stay_on_the_board_where_the_plug_of_a_hub_cannot_carry_all() -> None:
    """Six fans of 0.9 A are 5.4 A; three pins of a SATA plug carry 4.5 A."""
    board = Host(20, BOARD, offers(("fan-4", 7, 1.0)))
    fans = [fan(unit, 900) for unit in range(6)]
    assert filled(fans, board).worth == (0, 0, 0, 0, 0, 0)
    with_hub = filled([*fans, hub(10)], board, Host(10, HUB, offers(("fan-4", 6, 1.0))))
    assert with_hub.worth == (0, 0, 0, 0, 0, 0)
    assert with_hub.sustained[10][0] + 50 <= 4500


def test_the_strong_header_is_left_to_the_fan_that_needs_it() -> None:
    """The lighter fan asks for more as it starts, and was placed first."""
    board = Host(9, BOARD, offers(("fan-4", 1, 2.0), ("fan-4", 1, 1.0)))
    found = filled([fan(0, 900, starting=2500), fan(1, 1500)], board)
    assert (found.worth.over, found.headless) == (0, [])


def test_of_two_fans_the_one_that_fits_gets_the_only_header() -> None:
    board = Host(9, BOARD, offers(("fan-4", 1, 1.0)))
    found = filled([fan(0, 1500), fan(1, 400)], board)
    assert found.headless == [(0, "fan-4", 0)]
    assert [(header.milliamps, header.max_milliamps) for header in found.headers] == [(400, 1000)]


def test_what_is_too_heavy_goes_on_headers_of_one_kind() -> None:
    """Two fans of 1.5 A and three of 0.4 A: three headers of a board, two of a hub, 1 A each."""
    board = Host(9, BOARD, offers(("fan-4", 3, 1.0)))
    fans = [fan(0, 1500), fan(1, 1500), fan(2, 400), fan(3, 400), fan(4, 400)]
    assert filled([*fans, hub(8)], board, Host(8, HUB, offers(("fan-4", 2, 1.0)))).worth.over == 1


def test_a_header_that_does_not_say_is_not_hidden_by_one_that_does() -> None:
    """1.9 A on 2 A are fuller than nothing known, and within; 1.2 A on a header that does not say are not."""
    board = Host(9, BOARD, offers(("fan-4", 1, 2.0), ("fan-4", 1, None)))
    found = filled([fan(0, 1900), fan(1, 1200)], board)
    assert [(header.milliamps, header.max_milliamps) for header in found.headers] == [(1200, None)]
    assert found.worth.over == 1


def test_a_hub_on_a_header_is_kept_light() -> None:
    """The hub hangs on a header of 1 A, so two fans of 0.6 A go beside it, and one on it."""
    board = Host(9, BOARD, offers(("fan-4", 3, 1.0)))
    draws = [*(fan(unit, 600) for unit in range(3)), hub(8, "fan-4")]
    found = filled(draws, board, Host(8, HUB, offers(("fan-3", 4, 1.0))))
    assert (found.worth, found.sustained[8]) == ((0, 0, 0, 0, 0, 0), (600, 0, 0))


def test_hubs_do_not_serve_each_other_round_about() -> None:
    """By power one way and by USB the other."""
    one = Draw(0, "rest", (Need(connector="sata-power"), Need(connector="usb2-9")), NONE, NONE)
    hosts = [Host(0, HUB, offers(("sata-power", 1, None))), Host(1, HUB, offers(("usb2-9", 1, None)))]
    found = filled([one, hub(1)], Host(9, BOARD, ()), *hosts)
    assert (found.headless, found.fed) in [([(0, "usb2-9", 0)], {1}), ([], set())]


@pytest.mark.parametrize("cage", [2, 3, 4], ids=lambda bays: f"{bays}-bays")
def test_bays_are_filled_as_far_as_there_are_any(cage: int) -> None:
    disks = [Draw(unit, "drive", (Need(connector="sata-power"),), (700, 500, 0), (2000, 700, 0)) for unit in range(4)]
    draws = [*disks, Draw(8, "drive", (Need(connector="peripheral-4", count=2),), NONE, NONE), hub(7)]
    found = filled(draws, Host(8, CAGE, offers(("sata-power", cage, None))), Host(7, HUB, ()))
    assert len(found.fed) == cage
    assert 7 not in found.fed
