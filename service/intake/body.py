"""From bytes to plain values: strict JSON, in which no key stands twice and nothing is out of range."""

import codecs
import json
import re
from typing import Any

import orjson

from service.intake.bounds import MOST_DEPTH
from service.intake.faults import Unreadable, escape

_STRING = re.compile(rb'"[^"\\]*(?:\\.[^"\\]*)*"([ \t\r\n]*:)?')
_COLON = b":"


def read_json(raw: bytes) -> object:
    """Return the value of a JSON text in UTF-8, or raise ``Unreadable``."""
    try:
        value: object = orjson.loads(raw)
    except orjson.JSONDecodeError as error:
        raise Unreadable(_why(raw, error)) from None
    keys = _count_keys(value)
    # Each key has a colon, so equal counts leave no room for a second key; colons in texts make the slower count due.
    if keys != raw.count(_COLON) and keys != _keys_in(raw):
        pointer = _second_key(raw)
        raise Unreadable(f"The key at {pointer} stands there more than once.", pointer)
    return value


def _count_keys(value: object) -> int:
    """Return how many keys a value has at all depths; refuse one that is nested too deep."""
    keys, level = 0, [value]
    for _ in range(MOST_DEPTH + 1):
        below: list[object] = []
        for node in level:
            if type(node) is dict:
                keys += len(node)
                below += node.values()
            elif type(node) is list:
                below += node
        if not below:
            return keys
        level = below
    raise Unreadable(f"The body is nested more than {MOST_DEPTH} deep.")


def _keys_in(raw: bytes) -> int:
    """Return how many keys are written in a valid JSON text."""
    found = _STRING.findall(raw)
    return len(found) - found.count(b"")


class _Written(list[tuple[str, Any]]):
    """The keys and values of an object as they are written."""


def _second_key(raw: bytes) -> str:
    """Return a pointer to the first key that stands twice, outermost first."""
    waiting: list[tuple[str, Any]] = [("", json.loads(raw, object_pairs_hook=_Written, parse_int=float))]
    for at, node in waiting:
        if isinstance(node, _Written):
            seen: set[str] = set()
            for key, value in node:
                pointer = f"{at}/{escape(key)}"
                if key in seen:
                    return pointer
                seen.add(key)
                waiting.append((pointer, value))
        elif isinstance(node, list):
            waiting += [(f"{at}/{index}", value) for index, value in enumerate(node)]
    raise AssertionError("no key stands twice, though the counts differ")


def _why(raw: bytes, error: orjson.JSONDecodeError) -> str:
    """Return a sentence that says why a body is not JSON, and where."""
    if raw.startswith(codecs.BOM_UTF8):
        return "The body begins with a byte order mark; leave it out."
    try:
        raw.decode("utf-8")
    except UnicodeDecodeError as broken:
        return f"The body is not UTF-8: byte {broken.start + 1} cannot be read."
    if not raw.strip():
        return "The body is empty."
    return f"The body is not JSON that can be read: line {error.lineno}, column {error.colno}."
