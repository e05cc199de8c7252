"""The facts: each says where it is from or why, derived ones name parents, keys are taken once, units are given."""

import importlib
import pkgutil
from collections.abc import Iterator, Mapping
from typing import Any, get_args

import pytest

from service import facts
from service.facts import points
from service.facts.card import SENSE_LEVELS, UNPRINTED_WATTS
from service.facts.comfort import COMFORT_PERCENT
from service.facts.contacts import CONTACTS, MAIN_12V_CONTACTS, PROCESSOR_4_CONTACTS, PROCESSOR_8_CONTACTS, SATA_PINS
from service.facts.fact import (
    COMMON_PRACTICE,
    OUR_JUDGEMENT,
    Assumption,
    Basis,
    Column,
    Fact,
    Kind,
    reason_of,
    supposed,
)
from service.intake.bounds import CABLE_PRINTS_WATTS
from service.wiring.problem import COMFORT_FROM

MODULES = sorted(module.name for module in pkgutil.iter_modules(facts.__path__))
EVIDENCE = {"primary", "mirror", "secondary"}
POINTS = {
    "BAND_POINTS": 4, "START_WIRE_POINTS": 3, "SHARE_POINTS": 5, "MOULDED_POINTS": 4,
    "PERIPHERAL_CARD_ADAPTER_POINTS": 6, "ASSUMED_SHORT_POINTS": 2, "THREE_VOLT_POINTS": 3, "HEADER_POINTS": 6,
}


def _inside(value: Any) -> Iterator[Any]:
    yield value
    if isinstance(value, Mapping):
        for each in value.values():
            yield from _inside(each)


def _stated() -> list[tuple[str, Any]]:
    """Return every value that stands in a module of facts, those in its tables too, as (module, value)."""
    modules = {name: importlib.import_module(f"{facts.__name__}.{name}") for name in MODULES}
    held = [(name, value) for name, module in modules.items() for value in vars(module).values()]
    return [(name, each) for name, value in held for each in _inside(value)]


FACTS = list({id(each): each for _, each in _stated() if isinstance(each, Fact)}.values())
ASSUMPTIONS = list({id(each): each for _, each in _stated() if isinstance(each, Assumption)}.values())
each_fact = pytest.mark.parametrize("fact", FACTS, ids=lambda fact: fact.key)
each_assumption = pytest.mark.parametrize("assumption", ASSUMPTIONS, ids=lambda assumption: assumption.key)


def test_facts_are_found() -> None:
    keys = {fact.key for fact in FACTS}
    assert {"card.plug_8.watts", "contact.stop", "mains.c14", "wire.amps.24", "points.band"} <= keys


def test_keys_are_taken_once() -> None:
    keys = [fact.key for fact in FACTS] + [assumption.key for assumption in ASSUMPTIONS]
    assert [key for key in set(keys) if keys.count(key) > 1] == []


def test_a_figure_has_one_name() -> None:
    names: dict[str, set[str]] = {}
    for name in MODULES:
        for held, value in vars(importlib.import_module(f"{facts.__name__}.{name}")).items():
            if isinstance(value, Fact):
                names.setdefault(value.key, set()).add(held)
    assert {key: held for key, held in names.items() if len(held) > 1} == {}


@each_fact
def test_fact_is_whole(fact: Fact) -> None:
    assert fact.key
    assert fact.key == fact.key.strip().lower()
    assert fact.unit.strip()
    assert fact.source.strip()
    assert fact.kind in set(Kind)
    assert fact.basis in get_args(Basis)


@each_fact
def test_fact_has_a_place_in_its_source_or_a_reason(fact: Fact) -> None:
    assert fact.where.strip() or fact.reason.strip()
    assert fact.basis != "published" or fact.where.strip()
    assert fact.evidence in (EVIDENCE if fact.basis == "published" else {""})


@each_fact
def test_opinion_and_habit_are_marked_and_have_a_reason(fact: Fact) -> None:
    assert (fact.kind == Kind.JUDGEMENT) == (fact.basis == "judgement") == (fact.source == OUR_JUDGEMENT)
    assert (fact.basis == "common practice") == (fact.source == COMMON_PRACTICE)
    assert fact.basis not in ("judgement", "common practice") or fact.reason.endswith(".")


@each_fact
def test_memory_is_admitted(fact: Fact) -> None:
    assert (fact.basis == "memory") == ("from memory" in fact.source)


@each_fact
def test_derived_fact_names_its_parents(fact: Fact) -> None:
    assert (fact.kind == Kind.DERIVED) == (fact.basis == "derived") == bool(fact.parents)
    assert all(parent.key in {one.key for one in FACTS} for parent in fact.parents)


def test_derived_facts_follow_from_their_parents() -> None:
    value = {fact.key: fact.value for fact in FACTS}
    reckoned = {
        "contact.4_2_mm.worn_most": value["contact.4_2_mm.fresh_most"] + value["contact.4_2_mm.change"],
        "contact.sata.rail": value["contact.sata.count"] * value["contact.sata"],
        "contact.sata.12v_watts": value["contact.sata.rail"] * 12,
        "hold_up.atx_3_0": value["hold_up.atx_3_0.power_good"] + value["hold_up.after_power_good"],
        "hold_up.atx_3_1": value["hold_up.atx_3_1.power_good"] + value["hold_up.after_power_good"],
        "hold_up.atx_3_1.eighty": value["hold_up.atx_3_1.power_good.eighty"] + value["hold_up.after_power_good"],
        "hold_up.atx12vo": value["hold_up.atx12vo.power_good"] + value["hold_up.after_power_good"],
        "mains.continuous_share": 100 * 100 / value["mains.continuous_factor"],
        "processor.peak.longest": value["processor.peak.longest_ms"] * 1000,
        "slot.12v.watts": value["slot.12v.amps"] * 12,
        "slot.3v3.watts": value["slot.3v3.amps"] * 3.3,
    }
    assert {fact.key: fact.value for fact in FACTS if fact.parents} == pytest.approx(reckoned)


@pytest.mark.parametrize("fact", [one for one in FACTS if isinstance(one, Column)], ids=lambda fact: fact.key)
def test_column_begins_with_its_value(fact: Column) -> None:
    assert fact.rows[0][1] == fact.value
    assert len({row for row, _ in fact.rows}) == len(fact.rows)


@each_assumption
def test_assumption_is_whole(assumption: Assumption) -> None:
    assert assumption.key.startswith("assumed.")
    assert assumption.unit.strip()
    assert assumption.source.strip()
    assert assumption.reason.endswith(".")
    assert 0 <= assumption.low <= assumption.high
    assert assumption.basis in get_args(Basis)
    assert (assumption.basis == "judgement") == (assumption.source == OUR_JUDGEMENT)
    assert reason_of(assumption.key) == assumption.reason


def test_a_key_of_an_assumption_cannot_be_taken_twice() -> None:
    taken = ASSUMPTIONS[0]
    with pytest.raises(ValueError, match="this key is taken"):
        supposed(taken.key, taken.low, taken.high + 1, taken.unit, "Another range.")


def test_an_assumption_cannot_be_upside_down() -> None:
    with pytest.raises(ValueError, match="low end above high end"):
        supposed("assumed.test.upside_down", 2, 1, "A", "Ends exchanged.")


@pytest.mark.parametrize(("connector", "counted"), [
    ("cpu-8", PROCESSOR_8_CONTACTS), ("cpu-4", PROCESSOR_4_CONTACTS), ("atx-24", MAIN_12V_CONTACTS),
    ("sata-power", SATA_PINS),
])
def test_contacts_on_a_card_are_those_that_are_reckoned_with(connector: str, counted: Fact) -> None:
    assert CONTACTS[connector][0] == counted.value


def test_levels_of_16_pin_cables_are_those_that_a_sheet_may_state() -> None:
    levels = tuple(sorted(watts for _, watts in SENSE_LEVELS.rows))
    assert levels == CABLE_PRINTS_WATTS
    assert (levels[0], levels[-1]) == (UNPRINTED_WATTS.low, UNPRINTED_WATTS.high)


def test_comfort_of_the_search_is_that_of_the_rules() -> None:
    assert COMFORT_PERCENT.value * 10 == COMFORT_FROM


def test_points_of_the_plan() -> None:
    found = {name: value.value for name, value in vars(points).items() if isinstance(value, Fact)}
    assert found == POINTS
