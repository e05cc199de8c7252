"""An answer with every pointer and copy number replaced by canonical part numbers, so that two answers can be compared.

A part number is the rank of a part's digest on the sheet; pieces of equal parts are numbered through all lines in
the order in which they stand. What is said once a line (an assumption, how many spare cables) is said once a part here.
"""

import re
from collections.abc import Mapping
from typing import Any

import orjson

from service.catalogue.resolve import resolve
from service.intake.body import read_json
from service.intake.sheet import read_sheet
from service.journeys.check import check_sheet
from service.parts.build import Build
from service.parts.records import Adapter, Cable
from tests.journeys.asked import shelf

Json = dict[str, Any]
_POINTER = re.compile(r"/parts/(\d+)(?:/adapters/(\d+))?(.*)")
_NAMES_A_PIECE = ("part", "cable", "adapter")


def canonical(sheet: Json, renamed: Mapping[str, str] | None = None) -> bytes:
    """Return the answer to a sheet as bytes in canonical part numbers; ``renamed`` words are put back first."""
    raw = orjson.dumps(sheet)
    numbers = _Numbers(resolve(read_sheet(read_json(raw)), shelf().edition))
    said = orjson.dumps(check_sheet(raw, shelf()))
    for new, old in (renamed or {}).items():
        said = said.replace(orjson.dumps(new)[1:-1], orjson.dumps(old)[1:-1])
    answer = orjson.loads(said)
    del answer["reference"]
    return orjson.dumps(numbers.tree(answer), option=orjson.OPT_SORT_KEYS)


class _Numbers:
    """Canonical numbers of the parts of one build."""

    def __init__(self, build: Build) -> None:
        digests = sorted({unit.digest for unit in build.units})
        self.parts = {unit.line: unit.part for unit in build.units}
        self.rank = {unit.line: digests.index(unit.digest) for unit in build.units}
        self.before: dict[int, int] = {}
        counts = dict.fromkeys(digests, 0)
        for unit in build.units:
            self.before.setdefault(unit.line, counts[unit.digest])
            counts[unit.digest] += 1

    def tree(self, node: Any, name: str = "") -> Any:
        """Return a part of the answer in canonical numbers, every list in an order that does not hang on lines."""
        if isinstance(node, dict):
            return self._entry(node)
        if isinstance(node, list):
            packed = sorted(orjson.dumps(self.tree(item), option=orjson.OPT_SORT_KEYS) for item in node)
            if name == "assumptions":
                packed = sorted(set(packed))
            items = [orjson.loads(item) for item in packed]
            return _added_up(items) if name == "spare_cables" else items
        return self._text(node) if isinstance(node, str) else node

    def _entry(self, node: Json) -> Json:
        made = {key: self.tree(value, key) for key, value in node.items()}
        pointer = next((node[key] for key in _NAMES_A_PIECE if isinstance(node.get(key), str)), None)
        if pointer is not None and "copy" in node:
            made["copy"] += self._pieces_before(pointer)
        if "copy" in node.get("place", ()):
            made["place"]["copy"] += self.before[int(_parts_of(node["where"][0])[1])]
        return made

    def _pieces_before(self, pointer: str) -> int:
        """Return how many such pieces stand on earlier lines of an equal part."""
        found = _parts_of(pointer)
        part = self.parts[int(found[1])]
        each = part.quantity if isinstance(part, Cable | Adapter) else 1
        if found[2] is not None:
            each = part.adapters[int(found[2])].quantity  # type: ignore[union-attr]
        return self.before[int(found[1])] * each

    def _text(self, text: str) -> str:
        found = _POINTER.fullmatch(text)
        return text if found is None else f"/parts/{self.rank[int(found[1])]}{text[len(found[1]) + len('/parts/'):]}"


def _parts_of(pointer: str) -> re.Match[str]:
    found = _POINTER.fullmatch(pointer)
    assert found is not None, pointer
    return found


def _added_up(spare: list[Json]) -> list[Json]:
    counts: dict[str, int] = {}
    for one in spare:
        counts[one["cable"]] = counts.get(one["cable"], 0) + one["copies"]
    return [{"cable": cable, "copies": copies} for cable, copies in sorted(counts.items())]
