"""What is told to be bought is enough: the sheet with it gives the plan that was promised."""

from random import Random
from typing import Any

import pytest

from service.case.assemble import assemble
from service.catalogue import bundled
from service.catalogue.resolve import resolve
from service.intake.sheet import read_sheet
from service.intake.specs import spec_of
from service.parts.words import OWN_FAMILY
from tests.journeys.asked import NAMES, ask, example

Json = dict[str, Any]
SUPPLIES = (
    "demo-supply-750", "demo-supply-850", "demo-supply-1000", "demo-supply-850-groups", "demo-supply-1300-groups",
)
CARDS = ("demo-card-120", "demo-card-200", "demo-card-320", "demo-card-390-three", "demo-card-285-sixteen")
SEEDS = range(60)
DROPPED = 0.45


def _with_purchase(sheet: Json, to_buy: list[Json]) -> Json:
    return sheet | {"parts": [*sheet["parts"], *({"spec": each["spec"], "quantity": each["count"]} for each in to_buy)]}


def _stops(sheet: Json) -> int:
    """Return the stops of the wiring, as the plan counts them."""
    return assemble(resolve(read_sheet(sheet), bundled.load()), "unfavourable").case.objective[0]


def _keeps_its_promise(sheet: Json) -> bool:
    """Check a sheet's purchase, if it is told of one; return whether it is."""
    plan = ask(sheet)["plan"]
    if not plan["to_buy"]:
        return False
    then = _with_purchase(sheet, plan["to_buy"])
    promised = {each["stops_left"] for each in plan["to_buy"]}
    assert promised == {_stops(then)}
    assert _stops(then) < _stops(sheet)
    open_yet = [_port(each) for each in ask(then)["plan"]["not_fed"]]
    for each in plan["to_buy"]:
        assert not [port for port in map(_port, each["feeds"]) if port in open_yet]
    return True


def _port(told: Json) -> tuple[str, int, str, int]:
    return told["part"], told["copy"], told["port"]["connector"], told["port"]["number"]


def starved(seed: int) -> Json:
    """Return a machine whose box lacks cables that it had."""
    random = Random(seed)
    supply = spec_of(bundled.load().by_id[random.choice(SUPPLIES)].part)
    supply["cables"] = [cable for cable in supply["cables"] if random.random() > DROPPED]
    lines: list[Json] = [
        {"spec": supply},
        {"part": random.choice(("demo-board-4c", "demo-board-eight-four"))},
        {"part": "demo-processor-125"},
        {"part": random.choice(CARDS), "quantity": random.choice((1, 1, 2))},
        {"part": "demo-disk-quiet", "quantity": random.randint(1, 6)},
    ]
    return {"parts": lines}


def _short_of_something() -> Json:
    return next(sheet for sheet in map(starved, SEEDS) if ask(sheet)["plan"]["to_buy"])


@pytest.mark.parametrize("name", NAMES)
def test_the_purchase_of_an_example_is_enough(name: str) -> None:
    plan = ask(example(name))["plan"]
    assert _keeps_its_promise(example(name)) == bool(plan and plan["to_buy"])


@pytest.mark.parametrize("seed", SEEDS)
def test_the_purchase_for_a_box_that_lacks_cables_is_enough(seed: int) -> None:
    _keeps_its_promise(starved(seed))


def test_most_boxes_that_lack_cables_have_a_purchase() -> None:
    assert sum(bool(ask(starved(seed))["plan"]["to_buy"]) for seed in SEEDS) > len(SEEDS) // 2


def test_a_cable_for_a_supply_without_a_family_is_its_own() -> None:
    sheet = _short_of_something()
    del sheet["parts"][0]["spec"]["cable_family"]
    assert {each["spec"]["family"] for each in ask(sheet)["plan"]["to_buy"]} == {OWN_FAMILY}
    assert _keeps_its_promise(sheet)


def test_nothing_is_to_be_bought_where_the_box_is_not_known() -> None:
    sheet = _short_of_something()
    del sheet["parts"][0]["spec"]["cables"]
    assert ask(sheet)["plan"]["to_buy"] == []
