"""Walking the schemas of a sheet: every field, where on a sheet it may stand, and other values that it may take."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from service.intake.fields import Code, Connector, Figure, Flag, Number, Own, Text, Whole, Word
from service.intake.shapes import Many, One, Pairs, RecordSchema
from service.intake.specs import Spec
from service.intake.wiring import Reference

Json = dict[str, Any]
Step = str | None
ANY = None
"""A step into any item of a list, or under any key that the sender chose."""

# Names and numbers that a sheet only says back, and what names a part: which part it is, not a fact about it.
EXEMPT = frozenset({"name", "label", "reference", "category", "part", "gtin", "mpn"})
_SIZES = (1, 3, 75, 250)
_COUNTED, _MOST = 64, 3


class FieldAt(NamedTuple):
    """A field by the way to it below a part or the sheet."""

    way: tuple[Step, ...]
    field: Own

    def __str__(self) -> str:
        """Return the way as text."""
        return "/".join("*" if step is ANY else step for step in self.way)


def fields_of(schema: RecordSchema) -> list[FieldAt]:
    """Return every field of a schema that is no object and no list itself."""
    return [
        found for name, field in schema.fields.items() if (key := field.data_key or name) not in EXEMPT
        and isinstance(field, Own) for found in _below(field, (key,))
    ]


def _below(field: Own, way: tuple[Step, ...]) -> Iterator[FieldAt]:
    match field:
        case Spec():
            return
        case One():
            yield from (FieldAt(way + at.way, at.field) for at in fields_of(field.schema))
        case Many():
            yield from _below(field.inner, (*way, ANY))
        case Pairs():
            words = field.keys.words if isinstance(field.keys, Word) else (ANY,)
            for word in words:
                yield from _below(field.values, (*way, word))
        case _:
            yield FieldAt(way, field)


def holders(node: Any, way: tuple[Step, ...]) -> Iterator[tuple[Any, Any]]:
    """Yield each (holder, key) at which a field may stand; what holds it must be there."""
    step, rest = way[0], way[1:]
    keys: list[Any] = [step]
    if step is ANY:
        keys = list(range(len(node))) if isinstance(node, list) else list(node)
    for key in keys:
        if not rest:
            yield node, key
        elif isinstance(node, list) or key in node:
            yield from holders(node[key], rest)


def other_values(field: Own, now: Any) -> list[Any]:
    """Return values that a field may take instead of the one that stands there (None: none does)."""
    match field:
        case Flag():
            found: list[Any] = [True, False]
        case Word() | Connector():
            found = list(field.words)
        case Reference() | Code() | Text():
            found = ["zz-9", *_LABELS]
        case Figure() | Whole() | Number():
            found = _numbers(field, now)
        case _:
            raise TypeError(f"no other values for {type(field).__name__}")
    return [value for value in found if value != now]


_LABELS = ("A", "B", "C", "Power", "Disk", "Board", "/parts/0", "/parts/0/cables/0", "/parts/0/cables/3", "/parts/3")


def _numbers(field: Own, now: Any) -> list[Any]:
    """Return numbers on both sides, near and far; a count goes no higher than there is use for."""
    assert isinstance(field, Number | Whole | Figure)
    counts = isinstance(field, Whole) and field.low <= 1 and field.high <= _COUNTED
    high = min(field.high, _MOST) if counts else field.high
    near = [now * 2, now / 2, now * 1.01, now - 1] if isinstance(now, int | float) else []
    found = dict.fromkeys(value for value in (*near, field.low, high, *_SIZES) if field.low <= value <= high)
    return [int(value) for value in found if value == int(value)] if isinstance(field, Whole) else list(found)
