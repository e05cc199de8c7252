"""Canonical digests: equal for equal parts, whatever they are called."""

from dataclasses import fields
from hashlib import blake2b
from typing import Any

from service.parts.records import CATEGORIES, Part

_RANK = {kind.category: rank for rank, kind in enumerate(CATEGORIES)}


def digest(part: Part) -> str:
    """Return the canonical digest of a part: category rank, then 16 hex digits over all its fields but names."""
    text = repr(_plain(part)).encode()
    return f"{_RANK[part.category]:02d}-{blake2b(text, digest_size=8).hexdigest()}"


def _plain(value: Any) -> Any:
    """Return a record as nested tuples of plain values, without names, in field order."""
    if isinstance(value, tuple):
        return tuple(_plain(item) for item in value)
    if hasattr(value, "__dataclass_fields__"):
        return (type(value).__name__, *(_plain(getattr(value, f.name)) for f in fields(value) if f.name != "name"))
    return value
