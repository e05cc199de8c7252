"""The demo edition as a set: no part twice, every field in use, every cable with a supply that it belongs to."""

from collections.abc import Iterator
from itertools import combinations
from typing import Any

import pytest

from service.catalogue import bundled
from service.intake.entries import ENTRY
from service.intake.fields import Own
from service.intake.shapes import Many, One, RecordSchema
from service.intake.specs import BY_CATEGORY, spec_of
from service.intake.specs_supply import EFFICIENCY_LEVELS
from service.parts.records import Cable, PowerSupply

Json = dict[str, Any]
Leaf = tuple[tuple[str | int, ...], Any]

LEAST_PARTS = 160
LEAST_OF_A_CATEGORY = 3
ENTRIES = bundled.load().entries
SPECS: dict[str, Json] = {entry.id: spec_of(entry.part) for entry in ENTRIES}
each_category = pytest.mark.parametrize("category", BY_CATEGORY)
# What a part is called and where it stands in a shop is no difference between parts.
CALLED = frozenset({"name"})
# A fault is found on a cable that somebody has; no maker's list states one for a cable of a new box.
NOT_OF_A_LIST = frozenset({("power_supply", "cables", "open_contacts")})


def _of(category: str) -> list[Json]:
    return [spec for spec in SPECS.values() if spec["category"] == category]


def _leaves(node: Any, way: tuple[str | int, ...] = ()) -> Iterator[Leaf]:
    """Yield every value of a spec with the way to it; an empty list or object is a value too."""
    inside = node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else ()
    if not inside or not node:
        yield way, node
        return
    for step, value in inside:
        if step not in CALLED:
            yield from _leaves(value, (*way, step))


def _only_a_figure_apart(one: Json, other: Json) -> bool:
    """Say whether two specs are equal but for one number, or altogether."""
    first, second = dict(_leaves(one)), dict(_leaves(other))
    pairs = [(first.get(way), second.get(way)) for way in first.keys() | second.keys()]
    apart = [pair for pair in pairs if pair[0] != pair[1]]
    return len(apart) <= 1 and all(isinstance(value, int | float) for pair in apart for value in pair)


def _shape(spec: Json) -> frozenset[Leaf]:
    """Return a spec without its figures."""
    leaves = _leaves(spec)
    return frozenset((way, "a figure" if isinstance(value, int | float) else str(value)) for way, value in leaves)


def test_many_parts() -> None:
    assert len(ENTRIES) >= LEAST_PARTS


@each_category
def test_every_category_has_a_choice(category: str) -> None:
    assert len(_of(category)) >= LEAST_OF_A_CATEGORY


@each_category
def test_no_part_is_another_one_but_for_one_figure(category: str) -> None:
    by_id = {name: spec for name, spec in SPECS.items() if spec["category"] == category}
    pairs = combinations(by_id.items(), 2)
    assert [(a, b) for (a, one), (b, other) in pairs if _only_a_figure_apart(one, other)] == []


def test_no_supply_is_another_one_but_for_its_figures() -> None:
    shapes: dict[frozenset[Leaf], list[str]] = {}
    for name, spec in SPECS.items():
        if spec["category"] == "power_supply":
            shapes.setdefault(_shape(spec), []).append(name)
    assert [names for names in shapes.values() if len(names) > 1] == []


def test_every_part_is_taken_as_it_is_given_back() -> None:
    """What ``/v1/parts/{id}`` says of a part is a spec that a sheet may carry."""
    for entry in ENTRIES:
        given = {"id": entry.id, "maker": entry.maker, "spec": spec_of(entry.part)}
        numbers = {key: value for key, value in (("mpn", entry.mpn), ("gtin", entry.gtin)) if value is not None}
        assert ENTRY.load(given | numbers).spec == entry.part, entry.id


def _fields(schema: RecordSchema, way: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    for name, field in schema.fields.items():
        if isinstance(field, Own):
            step = (*way, field.data_key or name)
            yield step
            yield from _below(field, step)


def _below(field: Own, way: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    match field:
        case One():
            yield from _fields(field.schema, way)
        case Many():
            yield from _below(field.inner, way)


def _used(node: Any, way: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    if isinstance(node, list):
        for item in node:
            yield from _used(item, way)
    elif isinstance(node, dict):
        for key, value in node.items():
            yield (*way, key)
            yield from _used(value, (*way, key))


def test_every_field_is_used() -> None:
    """Each field of a category, and each field of what lies within it in some category."""
    used = {way for spec in SPECS.values() for way in _used(spec, (spec["category"],))}
    inner = {way[-2:] for way in used if len(way) > 2}
    stated = {way for category, schema in BY_CATEGORY.items() for way in _fields(schema, (category,))}
    assert {way for way in stated if len(way) == 2 and way not in used} == set()
    assert {way for way in stated - NOT_OF_A_LIST if len(way) > 2 and way[-2:] not in inner} == set()


def test_every_cable_belongs_to_a_supply() -> None:
    families = {e.part.cable_family for e in ENTRIES if isinstance(e.part, PowerSupply)} - {None}
    assert {e.id for e in ENTRIES if isinstance(e.part, Cable) and e.part.family not in families} == set()
    loose = {e.id for e in ENTRIES if isinstance(e.part, PowerSupply) and e.part.sockets and not e.part.cable_family}
    assert loose == set()


def test_every_bought_cable_has_its_sockets_at_some_supply_of_its_family() -> None:
    labels: dict[str | None, set[str]] = {}
    for e in ENTRIES:
        if isinstance(e.part, PowerSupply):
            labels.setdefault(e.part.cable_family, set()).update(socket.label for socket in e.part.sockets)
    bought = [(e.id, e.part) for e in ENTRIES if isinstance(e.part, Cable)]
    assert [name for name, part in bought if {at for at, _ in part.occupies} - labels[part.family]] == []


def test_rails_and_limits_of_a_supply_go_together() -> None:
    """Watts on 12 V are within the rating, and no combined limit is above what its rails or the supply give."""
    volts = {"12v": 12, "5v": 5, "3v3": 3.3, "5vsb": 5}
    for name, spec in SPECS.items():
        if spec["category"] != "power_supply":
            continue
        gives = {rail: volts[rail] * limit["max_amps"] for rail, limit in spec.get("rails", {}).items()}
        assert gives.get("12v", 0) <= spec["rated_watts"] * 1.005, name
        for limit in spec.get("combined_limits", []):
            assert limit["watts"] <= spec["rated_watts"], name
            assert limit["watts"] <= sum(gives[rail] for rail in limit["rails"]) * 1.005, name


def test_words_that_come_from_short_lists_are_all_used() -> None:
    said = {(way[-1], value) for spec in SPECS.values() for way, value in _leaves(spec) if isinstance(value, str)}
    for field, words in {
        "interface": {"sata", "sas", "nvme"}, "size": {"3.5", "2.5", "m2"}, "fan_side": {"top", "bottom"},
        "fan_vent": {"top", "bottom"}, "efficiency_level": set(EFFICIENCY_LEVELS),
    }.items():
        assert words <= {value for key, value in said if key == field}, field
