"""Specs to records and back, for every category and every field."""

import copy
from collections.abc import Callable, Iterator
from dataclasses import fields
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from marshmallow import ValidationError

from service.intake.faults import Faults
from service.intake.schemas import schemas
from service.intake.specs import BY_CATEGORY, read_spec, spec_of
from service.parts.canonical import digest
from service.parts.figures import Range
from service.parts.records import CATEGORIES, Processor
from tests.intake.spec_cases import JSON, SPECS

IDS = [spec["category"] for spec in SPECS]


def test_every_category_has_a_case_and_a_schema_with_its_name() -> None:
    assert [kind.category for kind in CATEGORIES] == IDS
    names = ["".join(word.title() for word in category.split("_")) for category in BY_CATEGORY]
    assert [schemas()[name] for name in names] == list(BY_CATEGORY.values())


@pytest.mark.parametrize("spec", SPECS, ids=IDS)
def test_record_takes_every_field_and_gives_it_back(spec: dict[str, Any]) -> None:
    part = read_spec(spec)
    assert {field.name for field in fields(part)} - set(spec) <= {"name", "captive"}
    assert read_spec(spec_of(part)) == part
    assert spec_of(part) == spec


@pytest.mark.parametrize("spec", SPECS, ids=IDS)
def test_whole_numbers_with_a_point_make_the_same_part(spec: dict[str, Any]) -> None:
    assert digest(read_spec(_floated(spec))) == digest(read_spec(spec))
    assert repr(read_spec(_floated(spec))) == repr(read_spec(spec))


def _floated(value: Any) -> Any:
    """Return a copy in which every whole number is a float, and every object is turned round."""
    if isinstance(value, dict):
        return {key: _floated(below) for key, below in reversed(value.items())}
    if isinstance(value, list):
        return [_floated(below) for below in value]
    return float(value) if type(value) is int else value


def test_capitals_of_a_socket_make_no_difference() -> None:
    part = read_spec({"category": "processor", "socket": " Q7 ", "turbo_watts": {"low": 1, "high": 2}})
    assert part == Processor(socket="q7", turbo_watts=Range(1.0, 2.0))


def _places(value: Any, at: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the way to every value inside."""
    yield at
    for key, below in value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ():
        yield from _places(below, (*at, key))


@given(st.sampled_from(SPECS), st.data(), JSON)
def test_damaged_spec_is_read_or_has_faults_at_places(spec: dict[str, Any], data: st.DataObject, value: Any) -> None:
    damaged = copy.deepcopy(spec)
    *way, last = data.draw(st.sampled_from([place for place in _places(spec) if place]))
    node: Any = damaged
    for step in way:
        node = node[step]
    node[last] = value
    part, pointers = None, ["/parts/0/spec"]
    try:
        part = read_spec(damaged, "/parts/0/spec")
    except Faults as refused:
        pointers = [fault.pointer for fault in refused.faults]
    assert pointers
    assert all(pointer.startswith("/parts/0/spec") for pointer in pointers)
    assert part is None or read_spec(spec_of(part)) == part


@given(st.sampled_from(SPECS), st.data())
def test_sparing_missing_fields_reads_the_same(spec: dict[str, Any], data: st.DataObject) -> None:
    gone = data.draw(st.sets(st.sampled_from(sorted(set(spec) - {"category"}))))
    less = {key: value for key, value in spec.items() if key not in gone}
    known = BY_CATEGORY[spec["category"]]
    assert _outcome(known.read, less) == _outcome(known.load, less)


def _outcome(read: Callable[[Any], Any], spec: dict[str, Any]) -> Any:
    try:
        return read(spec)
    except ValidationError as refused:
        return refused.messages
