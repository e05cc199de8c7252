"""Guard: the request schemas of the document are those that the service checks with - names, types, bounds, words.

Descriptions, titles, examples and the few components that only give a bound a name (``Name``, ``WattsFigure``) are the
document's own; everything else has to be equal.
"""

from dataclasses import is_dataclass
from itertools import combinations
from typing import Any

import pytest
from marshmallow import ValidationError

from service.intake import fields, shapes
from service.intake.codes import Gtin
from service.intake.runs import LOADS
from service.intake.schemas import schemas
from service.intake.shapes import CATEGORY, RecordSchema
from service.intake.sheet import Line
from service.intake.specs import BY_CATEGORY, Spec
from service.intake.wiring import Reference
from tests.contract.document import document, follow

PROSE = {"description", "title", "default", "examples", "discriminator", "format"}
TOGETHER = {"allOf", "dependentSchemas", "contains", "minContains", "maxContains"}
"""What fields of one object ask of each other; ``test_beyond_a_schema`` holds it to what the service refuses."""
CONTROL = r"\x00-\x1f\x7f-\x9f"
PRINTED = f"^[^{CONTROL}]*$"
NOT_BLANK = rf"^[^{CONTROL}]*[^{CONTROL}\s][^{CONTROL}]*$"
UP_TO_64 = "^(?:[1-9]|[1-5][0-9]|6[0-4])$"
NUMBER_KEYS = {64: UP_TO_64}
SCHEMAS = schemas()
Json = Any


def derive(schema: RecordSchema) -> Json:
    """Return the JSON Schema of a marshmallow schema."""
    stated = {field.data_key or name: field for name, field in schema.fields.items()}
    found = {
        "type": "object", "additionalProperties": False,
        "properties": {name: of_field(field) for name, field in stated.items()},
    }
    required = sorted(name for name, field in stated.items() if field.required)
    return found | ({"required": required} if required else {})


def of_field(field: Any) -> Json:
    """Return the JSON Schema of a field; null is added where the field takes it."""
    found = _of_field(field)
    if field.allow_none:
        found["type"] = [found["type"], "null"]
    return found


def _of_field(field: Any) -> Json:
    match field:
        case Line():
            return {"$ref": "Line"}
        case shapes.One():
            return {"$ref": type(field.schema).__name__}
        case Spec():
            return {"$ref": "Spec"}
        case shapes.Many():
            return _list(field)
        case shapes.Pairs():
            return _object(field)
        case fields.Figure():
            ends = {"type": "number"} | _range(field)
            both = {"low": ends, "high": ends}
            closed = {"type": "object", "required": ["high", "low"], "additionalProperties": False, "properties": both}
            return {"oneOf": [ends, closed]}
        case fields.Flag():
            return {"type": "boolean"}
        case shapes.CountKey():
            return {"pattern": NUMBER_KEYS[field.high]}
        case fields.Whole() | fields.Number():
            return {"type": "integer" if isinstance(field, fields.Whole) else "number"} | _range(field)
        case fields.Text():
            length: Any = field.validators[0]
            pattern = NOT_BLANK if isinstance(field, fields.Code) else PRINTED
            return {"type": "string", "minLength": length.min, "maxLength": length.max, "pattern": pattern}
        case fields.Word():
            return {"type": "string"} | _words(field)
        case fields.Connector():
            other = {"type": "string", "pattern": f"^other:[^{CONTROL}]{{1,40}}$"}
            return {"anyOf": [{"type": "string", "enum": list(field.words)}, other]}
        case Reference() | Gtin():
            check: Any = field.validators[0]
            return {"type": "string", "pattern": check.regex.pattern}
    raise AssertionError(f"no way to say {type(field).__name__} in the document")


def _range(field: Any) -> Json:
    check = field.validators[0]
    choices = getattr(check, "choices", None)
    return {"minimum": check.min, "maximum": check.max} if choices is None else {"enum": list(choices)}


def _words(field: fields.Word) -> Json:
    return {"const": field.words[0]} if len(field.words) == 1 else {"enum": list(field.words)}


def _list(field: shapes.Many) -> Json:
    length: Any = field.validators[0]
    found = {"type": "array", "minItems": length.min, "maxItems": length.max, "items": of_field(field.inner)}
    return found | ({"uniqueItems": True} if isinstance(field, shapes.Unlike) else {})


def _object(field: shapes.Pairs) -> Json:
    if isinstance(field.keys, fields.Word):
        named = {word: of_field(field.values) for word in field.keys.words}
        return {"type": "object", "additionalProperties": False, "properties": named}
    size: Any = field.validators[0]
    keys = of_field(field.keys)
    return {
        "type": "object", "propertyNames": keys, "maxProperties": size.max,
        "additionalProperties": of_field(field.values),
    }


def written(node: Json) -> Json:
    """Return a schema of the document without prose, references to checked schemas by name, all others followed."""
    if isinstance(node, list):
        return [written(item) for item in node]
    if not isinstance(node, dict):
        return node
    if "$ref" in node:
        name = node["$ref"].rpartition("/")[2]
        return {"$ref": name} if name in SCHEMAS or name == "Spec" else written(follow(node))
    found = {key: written(value) for key, value in node.items() if key not in PROSE | _together(node)}
    if "properties" in node:
        found["properties"] = {name: written(value) for name, value in node["properties"].items()}
    if "required" in node:
        found["required"] = sorted(node["required"])
    return _group(found)


def _together(node: Json) -> set[str]:
    """Return the keys of an object schema that say what its fields ask of each other."""
    return TOGETHER | {"anyOf", "oneOf"} if "properties" in node else TOGETHER


def _group(found: Json) -> Json:
    """Bring patterns with and without the outer group and anchors of a full match to one form."""
    if set(found) == {"type", "pattern"}:
        bare = found["pattern"].removeprefix("^").removesuffix("$")
        return {"type": found["type"], "pattern": bare} if not bare.startswith("other:") else found
    return found


def _plain(node: Json) -> Json:
    """Make capturing groups equal to those that are not: they match the same."""
    if isinstance(node, list):
        return [_plain(item) for item in node]
    if isinstance(node, dict):
        return {key: _plain(value) for key, value in node.items()}
    return node.replace("(?:", "(") if isinstance(node, str) else node


COMPARED = sorted(name for name in SCHEMAS if name != "Line")


@pytest.mark.parametrize("name", COMPARED)
def test_schema_is_documented_as_checked(name: str) -> None:
    assert _plain(written(document()["components"]["schemas"][name])) == _plain(derive(SCHEMAS[name]))


def test_line_is_one_of_its_four_ways() -> None:
    checked = derive(SCHEMAS["Line"])["properties"]
    ways = [written(way) for way in document()["components"]["schemas"]["Line"]["oneOf"]]
    quantity = checked.pop("quantity")
    shape = {"type": "object", "additionalProperties": False}
    expected = [
        shape | {"required": [way], "properties": {way: stated, "quantity": quantity}}
        for way, stated in checked.items()
    ]
    assert _plain(ways) == _plain(expected)


def test_spec_is_one_of_all_categories() -> None:
    spec = document()["components"]["schemas"]["Spec"]
    names = {category: type(one).__name__ for category, one in BY_CATEGORY.items()}
    assert [written(one)["$ref"] for one in spec["oneOf"]] == list(names.values())
    mapping = {category: ref.rpartition("/")[2] for category, ref in spec["discriminator"]["mapping"].items()}
    assert (spec["discriminator"]["propertyName"], mapping) == (CATEGORY, names)
    assert document()["components"]["schemas"]["Category"]["enum"] == list(names)


@pytest.mark.parametrize("name", COMPARED)
def test_defaults_are_those_of_the_records(name: str) -> None:
    schema = SCHEMAS[name]
    for attribute, field in schema.fields.items():
        assert isinstance(field, fields.Own)
        stated = document()["components"]["schemas"][name]["properties"][field.data_key or attribute]
        if "default" in stated and (is_dataclass(schema.make) or hasattr(schema.make, "_field_defaults")):
            assert field.outside(schema.defaults[attribute]) == stated["default"], attribute


def test_a_run_has_exactly_one_load() -> None:
    stated = document()["components"]["schemas"]["WireRun"]
    assert stated["oneOf"] == [{"required": [load]} for load in LOADS]
    plain = {"source_volts": 12, "length_mm": 500}
    loads: dict[str, Json] = {"amps": 1, "watts": 1, "strip": {"length_mm": 1, "amps_per_metre": 1}}
    assert tuple(loads) == LOADS
    taken = [given for count in range(4) for given in combinations(LOADS, count) if _is_taken(plain, loads, given)]
    assert taken == [(load,) for load in LOADS]


def _is_taken(plain: Json, loads: Json, given: tuple[str, ...]) -> bool:
    try:
        SCHEMAS["WireRun"].load(plain | {load: loads[load] for load in given})
    except ValidationError:
        return False
    return True


def test_a_reading_says_something() -> None:
    stated = document()["components"]["schemas"]["Reading"]
    assert stated["anyOf"] == [{"required": ["volts"]}, {"required": ["amps"]}]


def test_a_wrong_bound_would_be_seen() -> None:
    changed = written(document()["components"]["schemas"]["Need"])
    changed["properties"]["count"]["maximum"] += 1
    assert _plain(changed) != _plain(derive(SCHEMAS["Need"]))
