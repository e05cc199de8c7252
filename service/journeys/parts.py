"""The parts of an edition: a page of them in short, and one with its spec."""

from bisect import bisect_right
from itertools import islice
from typing import Any

from service.catalogue.edition import Edition, Entry
from service.intake.specs import spec_of


def list_parts(edition: Edition, limit: int, category: str | None = None, after: str | None = None) -> dict[str, Any]:
    """Return a page of parts in ascending order of id: those beyond the id ``after``, which need not exist.

    ``next`` is what to send as ``after`` for the following page, or None on the last one.
    """
    start = 0 if after is None else bisect_right(edition.entries, after, key=_id)
    wanted = (
        entry for entry in islice(edition.entries, start, None) if category is None or entry.part.category == category
    )
    page = list(islice(wanted, limit + 1))
    more = len(page) > limit
    return {
        "edition": edition.name, "parts": [_short(entry) for entry in page[:limit]],
        "next": page[limit - 1].id if more else None,
    }


def get_part(edition: Edition, part_id: str) -> dict[str, Any] | None:
    """Return one part with its spec, or None."""
    entry = edition.by_id.get(part_id)
    if entry is None:
        return None
    return {"edition": edition.name} | _short(entry) | {"spec": spec_of(entry.part)}


def _short(entry: Entry) -> dict[str, Any]:
    return {
        "id": entry.id, "category": entry.part.category, "name": entry.part.name, "maker": entry.maker,
        "gtin": entry.gtin, "mpn": entry.mpn,
    }


def _id(entry: Entry) -> str:
    return entry.id
