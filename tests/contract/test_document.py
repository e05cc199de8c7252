"""The document itself: valid OpenAPI 3.1, examples that hold, limits and words as the code has them."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from openapi_spec_validator import OpenAPIV31SpecValidator

from service import __version__
from service.api.problem import KINDS
from service.config import Config
from service.intake import bounds
from service.intake.faults import MOST_FAULTS
from tests.contract.document import EXAMPLES, document, faults_of, follow

PROBLEM = "application/problem+json"
SHEET = {"$ref": "#/components/schemas/Sheet"}


def _media(node: Any, at: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Yield every media type object of the document with its place."""
    if isinstance(node, dict):
        for key, value in node.items():
            if key == "content":
                yield from ((f"{at}/content/{name}", media) for name, media in value.items())
            elif key not in ("examples", "schemas"):
                yield from _media(value, f"{at}/{key}")


MEDIA = dict(_media(document()))
SHOWN = [
    pytest.param(media["schema"], example["value"], id=f"{at} {name}")
    for at, media in MEDIA.items()
    for name, example in media.get("examples", {}).items()
]


def test_is_valid_openapi() -> None:
    assert [str(error) for error in OpenAPIV31SpecValidator(document()).iter_errors()] == []


@pytest.mark.parametrize(("schema", "value"), SHOWN)
def test_example_holds(schema: dict[str, Any], value: Any) -> None:
    assert faults_of(schema, value, closed=True) == []


def test_every_json_media_type_shows_an_example() -> None:
    bare = [at for at, media in MEDIA.items() if "json" in at.rpartition("/content/")[2] and not media.get("examples")]
    assert bare == []


@pytest.mark.parametrize("file", sorted(EXAMPLES.glob("*.json")), ids=lambda file: file.name)
def test_example_sheet_holds(file: Path) -> None:
    assert faults_of(SHEET, json.loads(file.read_text(encoding="utf-8"))) == []


def test_version_is_that_of_the_service() -> None:
    assert document()["info"]["version"] == __version__


@pytest.mark.parametrize("row", [
    f"| body | {Config().max_body_bytes} bytes, unless the operator sets another limit |",
    f"| nesting of the body | {bounds.MOST_DEPTH} |", f"| lines of a sheet | {bounds.MOST_LINES} |",
    f"| pieces of one line | {bounds.MOST_QUANTITY} |",
    f"| pieces of a build that are no cables or adapters | {bounds.MOST_DEVICES} |",
    f"| cables of a build | {bounds.MOST_CABLES} |", f"| adapters of a build | {bounds.MOST_ADAPTERS} |",
    f"| ports of a build that want power | {bounds.MOST_POWER_PORTS} |",
    f"| other ports of a build | {bounds.MOST_SIGNAL_PORTS} |",
    f"| ports that parts of a build give | {bounds.MOST_OFFERED_PORTS} |",
    f"| faults listed in one answer | {MOST_FAULTS}, and one that counts the rest |",
])
def test_limit_is_stated(row: str) -> None:
    assert row in document()["info"]["description"]


def test_problem_kinds_are_those_of_the_service() -> None:
    (name,) = document()["paths"]["/problems/{name}"]["get"]["parameters"]
    assert name["schema"]["enum"] == [kind.name for kind in KINDS]


def test_problem_examples_are_worded_as_the_service_words_them() -> None:
    titles = {f"/problems/{kind.name}": (kind.title, kind.status) for kind in KINDS}
    problems = [media for at, media in MEDIA.items() if at.endswith(PROBLEM)]
    assert problems
    for example in (example for media in problems for example in media["examples"].values()):
        value = example["value"]
        assert (value["title"], value["status"]) == titles[value["type"]], value["type"]


def test_every_problem_kind_has_an_example() -> None:
    shown = {example["value"]["type"] for at, media in MEDIA.items() if at.endswith(PROBLEM)
             for example in media["examples"].values()}
    assert shown == {f"/problems/{kind.name}" for kind in KINDS}


def test_every_response_of_every_call_shows_an_example_or_has_no_json() -> None:
    bare = []
    for path, item in document()["paths"].items():
        for method, call in item.items():
            for status, answer in call["responses"].items() if "responses" in call else ():
                shown = [media for name, media in follow(answer).get("content", {}).items() if "json" in name]
                bare += [f"{method} {path} {status}" for media in shown if not media.get("examples")]
                assert shown or "html" in str(answer) or status in ("200", "304"), f"{method} {path} {status}"
    assert bare == []


def test_requests_are_closed_and_answers_are_open() -> None:
    schemas = document()["components"]["schemas"]
    taken = _reached("Sheet", set())
    closed = {name for name, schema in schemas.items() if schema.get("additionalProperties") is False}
    objects = {name for name, schema in schemas.items() if "properties" in schema}
    assert objects & taken == closed


def _reached(name: str, seen: set[str]) -> set[str]:
    """Return the component schemas that ``name`` leads to."""
    if name in seen:
        return seen
    seen.add(name)
    for ref in _refs(document()["components"]["schemas"][name]):
        _reached(ref, seen)
    return seen


def _refs(node: Any) -> Iterator[str]:
    if isinstance(node, dict):
        if "$ref" in node:
            yield node["$ref"].rpartition("/")[2]
        for value in node.values():
            yield from _refs(value)
    elif isinstance(node, list):
        for item in node:
            yield from _refs(item)
