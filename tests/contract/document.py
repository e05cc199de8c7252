"""The document, and the one way to hold an answer of the service against it: ``validate_answer``."""

import re
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from openapi_schema_validator import OAS31Validator

FILE = Path(__file__).resolve().parents[2] / "openapi" / "openapi.yaml"
EXAMPLES = FILE.parent / "examples"
Json = Any


@cache
def document() -> dict[str, Json]:
    """Return the document as it is written."""
    loaded: dict[str, Json] = yaml.load(FILE.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    return loaded


def follow(node: dict[str, Json]) -> dict[str, Json]:
    """Return what a ``$ref`` points at, or the node itself."""
    while "$ref" in node:
        target: Json = document()
        for step in node["$ref"].removeprefix("#/").split("/"):
            target = target[step.replace("~1", "/").replace("~0", "~")]
        node = target
    return node


def template(path: str) -> str:
    """Return the path of the document that a concrete path belongs to; fixed ones win over those with parameters."""
    paths = sorted(document()["paths"], key=lambda one: one.count("{"))
    for one in paths:
        if re.fullmatch(re.sub(r"\{[^}]+\}", "[^/]+", re.escape(one).replace(r"\{", "{").replace(r"\}", "}")), path):
            return str(one)
    raise AssertionError(f"{path} is not in the document")


def response(path: str, method: str, status: int) -> dict[str, Json]:
    """Return the response object for an answer; an undocumented status is a failure."""
    responses = document()["paths"][template(path)][method.lower()]["responses"]
    assert str(status) in responses, f"{method} {path} answered {status}, which the document does not have"
    return follow(responses[str(status)])


def validate_answer(path: str, method: str, status: int, body: Json, media_type: str | None = None) -> None:
    """Hold a decoded answer against the document: its schema, and that it has no field that is not documented."""
    content = response(path, method, status)["content"]
    if media_type is None:
        media_type = "application/json" if status < 400 else "application/problem+json"
    assert media_type in content, f"{method} {path} {status}: {media_type} is not in the document"
    faults = faults_of(content[media_type]["schema"], body, closed=True)
    assert not faults, f"{method} {path} {status}:\n" + "\n".join(faults)


def faults_of(schema: dict[str, Json], body: Json, closed: bool = False) -> list[str]:
    """Return what is wrong with ``body``; ``closed``: a field that is not documented is wrong too."""
    components = _closed_components() if closed else document()["components"]
    opened = _close(schema) if closed else schema
    validator = OAS31Validator({"allOf": [opened], "components": components})
    return sorted(f"{error.json_path}: {error.message[:300]}" for error in validator.iter_errors(body))


def sentences_beyond() -> list[str]:
    """Return the sentences that a sheet may be refused with though it fits its schema, as the document lists them."""
    return re.findall("^- `(.+)`$", document()["components"]["responses"]["BadSheet"]["description"], re.MULTILINE)


def of_sentence(listed: str) -> re.Pattern[str]:
    """Return a pattern of a listed sentence; what stands in braces is filled in, and a count is a number."""
    filled = re.sub(r"\\{(?:count|most)\\}", "[0-9]+", re.escape(listed))
    return re.compile(re.sub(r"\\{[a-z]+\\}", "[^;]+", filled))


def closed_schema(schema: dict[str, Json]) -> dict[str, Json]:
    """Return a schema that stands alone, in which a field that is not documented is wrong."""
    return {"allOf": [_close(schema)], "components": _closed_components()}


@cache
def _closed_components() -> dict[str, Json]:
    closed: dict[str, Json] = _close(document()["components"])
    return closed


def _close(node: Json) -> Json:
    """Return a copy in which every object schema that lists properties takes no others."""
    if isinstance(node, list):
        return [_close(item) for item in node]
    if not isinstance(node, dict):
        return node
    copy = {key: _close(value) for key, value in node.items()}
    if isinstance(node.get("properties"), dict) and "object" in node.get("type", ()):
        copy.setdefault("additionalProperties", False)
    return copy
