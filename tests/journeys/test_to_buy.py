"""What is told to be bought is enough: the sheet with it gives the plan that was promised."""

import copy
from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import Any

import pytest

from service.case import purchase
from service.case.assemble import assemble
from service.catalogue import bundled
from service.catalogue.resolve import resolve
from service.intake.sheet import read_sheet
from service.intake.specs import read_spec, spec_of
from service.parts.records import Adapter
from service.parts.words import OWN_FAMILY
from tests.journeys.asked import SUPPLIED, ask, example
from tests.journeys.bench import SUPPLY, bench

Json = dict[str, Any]
SUPPLIES = (
    "demo-supply-750", "demo-supply-850", "demo-supply-1000", "demo-supply-850-groups", "demo-supply-1300-groups",
)
CARDS = ("demo-card-120", "demo-card-200", "demo-card-320", "demo-card-390-three", "demo-card-285-sixteen")
SEEDS = range(60)
CAPTIVE_SEEDS = range(30)
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


@pytest.mark.parametrize("name", SUPPLIED)
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


# -- adapters ----------------------------------------------------------------------------------------------------------


def _captive(sheet: Json) -> Json:
    """Return the sheet with a supply to which no cable can be added."""
    changed = copy.deepcopy(sheet)
    supply = changed["parts"][SUPPLY]["spec"]
    supply["modularity"] = "none"
    for listed in ("sockets", "groups"):
        supply.pop(listed, None)
    for cable in supply["cables"]:
        for tied in ("occupies", "group"):
            cable.pop(tied, None)
    return changed


def _plugs(sheet: Json, kept: set[str]) -> Json:
    """Leave in the box only cables that begin with one of these plugs."""
    supply = sheet["parts"][SUPPLY]["spec"]
    supply["cables"] = [cable for cable in supply["cables"] if cable["plugs"][0]["connector"] in kept]
    return sheet


def _bought(sheet: Json) -> list[tuple[str, str]]:
    """Return the category and the first plug of all that is to be bought."""
    return [(each["spec"]["category"], each["plugs"][0]) for each in ask(sheet)["plan"]["to_buy"]]


def _without_processor_cables() -> Json:
    """Return the bench with no more than a 4-pin cable for the processor, and a card cable to spare."""
    return _plugs(bench(), {"atx-20+4", "pcie-6+2", "sata-power", "cpu-4"})


def _short_and_captive(short_mm: int) -> Json:
    sheet = _captive(bench())
    sheet["parts"].append({"spec": {"category": "case", "routes_mm": {"processor": 700 + short_mm}}})
    return sheet


def test_trap_a_cable_is_bought_where_an_adapter_would_do_too() -> None:
    sheet = _without_processor_cables()
    assert _bought(sheet) == [("cable", "cpu-8")]
    assert _bought(_captive(sheet)) == [("adapter", "cpu-8")], "the spare card cable through an adapter"


def test_an_extension_is_bought_where_a_captive_cable_is_short() -> None:
    sheet = _short_and_captive(300)
    to_buy = ask(sheet)["plan"]["to_buy"]
    assert [(each["spec"]["length_mm"], each["plugs"], each["count"]) for each in to_buy] == [(300, ["cpu-4+4"], 1)]
    assert _keeps_its_promise(sheet)
    assert _bought(_short_and_captive(301)) == []


def test_an_adapter_that_the_sheet_states_can_be_bought_once_more() -> None:
    sheet = _captive(_plugs(bench(), {"atx-20+4", "cpu-4+4", "sata-power", "cpu-4"}))
    stated: Json = {
        "category": "adapter", "name": "From the drawer", "takes": [{"connector": "cpu-4"}],
        "gives": [{"connector": "pcie-8"}], "rated_watts": 150,
    }
    sheet["parts"].append({"spec": stated})
    sheet["parts"][3]["quantity"] = 2
    supply = sheet["parts"][SUPPLY]["spec"]
    supply["cables"][-1]["quantity"] = 2
    offered = [each["spec"] for each in ask(sheet)["plan"]["to_buy"]]
    del stated["name"]
    assert offered == [stated]
    assert _keeps_its_promise(sheet)


@pytest.mark.parametrize(
    ("takes", "moulded", "bought"),
    [
        pytest.param("peripheral-4", False, True, id="peripheral-crimped"),
        pytest.param("peripheral-4", True, False, id="peripheral-moulded"),
        pytest.param("sata-power", False, False, id="sata"),
    ],
)
def test_an_adapter_that_no_plan_may_use_or_that_is_moulded_is_never_bought(
    takes: str, moulded: bool, bought: bool
) -> None:
    """A card that takes 60 W through a 6-pin port, and a box with drive plugs only."""
    sheet = _captive(bench())
    supply = sheet["parts"][SUPPLY]["spec"]
    supply["cables"] = [
        *_plugs(sheet, {"atx-20+4", "cpu-4+4", "sata-power"})["parts"][SUPPLY]["spec"]["cables"],
        {"plugs": [{"connector": takes}] * 2, "awg": 18, "carries_3v3": False},
    ]
    sheet["parts"][3]["spec"] |= {"board_watts": 100, "slot_watts": 60, "needs": [{"connector": "pcie-6"}]}
    adapter = read_spec({
        "category": "adapter", "takes": [{"connector": takes}], "gives": [{"connector": "pcie-6"}], "rated_watts": 75,
        "moulded": moulded,
    })
    assert isinstance(adapter, Adapter)
    build = replace(resolve(read_sheet(sheet), bundled.load()), adapters_on_offer=(adapter,))
    case = assemble(build, "unfavourable", purchase=True).case
    assert case.objective[:2] == (1, 1)
    assert [each.part for each in case.to_buy] == ([adapter] if bought else [])


def captive(seed: int) -> Json:
    """Return a machine that lacks cables, its supply mostly one to which none can be added, now and then in a case."""
    random = Random(seed)
    sheet = starved(seed)
    if random.random() < 0.7:
        sheet = _captive(sheet)
    if random.random() < 0.4:
        sheet["parts"].append({"part": random.choice(("demo-case-tall", "demo-case-tower"))})
    return sheet


def _packs_in_use(sheet: Json) -> Iterator[bool]:
    """Yield, for each adapter of a purchase, whether the plan with it uses one of the last pack."""
    to_buy = ask(sheet)["plan"]["to_buy"]
    then = ask(_with_purchase(sheet, to_buy))["plan"]["connections"] if to_buy else []
    used = {(one["adapter"], one["copy"]) for each in then for one in each["adapters"]}
    for at, each in enumerate(to_buy):
        if each["spec"]["category"] == "adapter":
            pieces = [copy for line, copy in used if line == f"/parts/{len(sheet['parts']) + at}"]
            yield len(pieces) > (each["count"] - 1) * each["spec"].get("quantity", 1)


@pytest.mark.parametrize("seed", CAPTIVE_SEEDS)
def test_the_purchase_for_a_supply_that_takes_no_cables_is_enough_and_in_use(seed: int) -> None:
    _keeps_its_promise(captive(seed))
    assert all(_packs_in_use(captive(seed)))


def test_adapters_are_bought_for_many_supplies_that_take_no_cables() -> None:
    bought = [{each["spec"]["category"] for each in ask(captive(seed))["plan"]["to_buy"]} for seed in CAPTIVE_SEEDS]
    assert sum("adapter" in each for each in bought) > len(CAPTIVE_SEEDS) // 5


def test_nobody_looks_at_adapters_where_nothing_is_wrong_or_cables_cure_it(monkeypatch: pytest.MonkeyPatch) -> None:
    looked = []
    offer = purchase._on_offer

    def on_offer(*given: Any) -> Any:
        looked.append(given)
        return offer(*given)

    monkeypatch.setattr(purchase, "_on_offer", on_offer)
    assert _bought(bench()) == []
    assert _bought(_without_processor_cables()) == [("cable", "cpu-8")]
    assert looked == []
    _bought(_captive(_without_processor_cables()))
    assert looked
