"""Asking the whole line: a sheet as a dict in, the answer as a dict out; and the examples of the document."""

import copy
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import orjson

from service.catalogue import bundled
from service.journeys.check import check_sheet
from service.journeys.shelf import Shelf
from service.verdict.check import BADNESS
from tests.strategies import written_out

Json = dict[str, Any]
EXAMPLES = Path(__file__).parents[2] / "openapi" / "examples"
NAMES = sorted(path.stem for path in EXAMPLES.glob("*.json"))
WITHOUT_A_SUPPLY = frozenset({"what-size-for-a-quote-without-a-supply"})
SUPPLIED = [name for name in NAMES if name not in WITHOUT_A_SUPPLY]
"""The examples that have a supply, and so a plan."""


@cache
def shelf() -> Shelf:
    """Return the demo catalogue."""
    return Shelf(bundled.load())


def ask(sheet: Json) -> Json:
    """Return the answer to a sheet."""
    return check_sheet(orjson.dumps(sheet), shelf())


def example(name: str) -> Json:
    """Return an example of the document, every part written out as its spec."""
    sheet: Json = json.loads((EXAMPLES / f"{name}.json").read_text("utf-8"))
    return written_out(sheet)


def badness(answer: Json) -> int:
    """Return how bad a verdict is."""
    return BADNESS[answer["verdict"]]


def said(answer: Json, rule: str) -> list[tuple[str, ...]]:
    """Return where a rule has a finding: pointer, and connector and number of the port if it is one."""
    return [(one["where"][0], *_port(one["place"])) for one in answer["findings"] if one["rule"] == rule]


def _port(place: Json) -> tuple[str, ...]:
    port = place.get("port")
    return () if port is None else (port["connector"], str(port["number"]))


def spoken(answer: Json, weight: str | None = None) -> set[str]:
    """Return the ids of the rules that have a finding, of one weight or of all."""
    return {one["rule"] for one in answer["findings"] if weight is None or one["weight"] == weight}


def line_of(sheet: Json, category: str) -> int:
    """Return the first line of a category on a sheet that is written out."""
    return next(at for at, line in enumerate(sheet["parts"]) if line["spec"]["category"] == category)


def spec_of(sheet: Json, category: str) -> Json:
    """Return the spec of the first line of a category."""
    spec: Json = sheet["parts"][line_of(sheet, category)]["spec"]
    return spec


def with_wiring(sheet: Json, wiring: list[Json], rest: str = "leave") -> Json:
    """Return the sheet with a wiring."""
    return copy.deepcopy(sheet) | {"wiring": copy.deepcopy(wiring), "wiring_rest": rest}


def walk(node: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[tuple[Any, ...], Any]]:
    """Yield the way to every value of a tree that is no tree itself, and the value."""
    entries = node.items() if isinstance(node, dict) else enumerate(node) if isinstance(node, list) else None
    if entries is None:
        yield way, node
        return
    for key, value in entries:
        yield from walk(value, (*way, key))
