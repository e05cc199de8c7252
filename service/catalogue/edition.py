"""An edition of the catalogue: parts by id and by number, never changed once it is made."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from hashlib import blake2b
from types import MappingProxyType

from service.intake.entries import StatedEntry
from service.intake.faults import Fault
from service.parts.canonical import digest
from service.parts.records import Adapter, Part

_DIGEST_BYTES = 16


@dataclass(frozen=True, slots=True)
class Entry:
    """A part of the catalogue, compiled. ``gtin`` has 14 digits; ``digest`` is the canonical digest of the part."""

    id: str
    maker: str
    mpn: str | None
    gtin: str | None
    part: Part
    digest: str


@dataclass(frozen=True, slots=True)
class Edition:
    """Entries in order of their ids, and the same by id, by trade item number and by maker's part number.

    ``adapters`` are its adapters in order of their digests, equal ones once.
    """

    name: str
    digest: str
    entries: tuple[Entry, ...]
    by_id: Mapping[str, Entry]
    by_gtin: Mapping[str, Entry]
    by_mpn: Mapping[str, tuple[Entry, ...]]
    adapters: tuple[Adapter, ...]


def mpn_key(mpn: str) -> str:
    """Return a maker's part number without what makes no difference: capitals and spaces."""
    return "".join(mpn.split()).casefold()


def compiled(stated: StatedEntry) -> Entry:
    """Return an entry ready for use."""
    return Entry(stated.id, stated.maker, stated.mpn, stated.gtin, stated.spec, digest(stated.spec))


def edition_of(name: str, stated: Iterable[StatedEntry]) -> Edition:
    """Return an edition; ids and trade item numbers must not stand twice (see ``taken_twice``)."""
    entries = tuple(sorted(map(compiled, stated), key=lambda entry: entry.id))
    by_mpn: dict[str, tuple[Entry, ...]] = {}
    for entry in entries:
        if entry.mpn is not None:
            key = mpn_key(entry.mpn)
            by_mpn[key] = (*by_mpn.get(key, ()), entry)
    return Edition(
        name, _digest(entries), entries,
        by_id=MappingProxyType({entry.id: entry for entry in entries}),
        by_gtin=MappingProxyType({entry.gtin: entry for entry in entries if entry.gtin is not None}),
        by_mpn=MappingProxyType(by_mpn),
        adapters=_adapters(entries),
    )


def _adapters(entries: tuple[Entry, ...]) -> tuple[Adapter, ...]:
    found: dict[str, Adapter] = {}
    for entry in entries:
        if isinstance(entry.part, Adapter):
            found.setdefault(entry.digest, entry.part)
    return tuple(adapter for _, adapter in sorted(found.items()))


def taken_twice(placed: Iterable[tuple[str, StatedEntry]]) -> list[Fault]:
    """Return a fault for each id and trade item number that an earlier entry has; places are pointers."""
    faults, seen = [], dict[tuple[str, str], str]()
    for at, stated in placed:
        for field, value in (("id", stated.id), ("gtin", stated.gtin)):
            if value is None:
                continue
            first = seen.setdefault((field, value), at)
            if first != at:
                faults.append(Fault(f"{at}/{field}", f"is taken by the entry at {first} already"))
    return faults


def _digest(entries: tuple[Entry, ...]) -> str:
    """Return a digest over all that the edition says, names too."""
    made = blake2b(digest_size=_DIGEST_BYTES)
    for entry in entries:
        made.update(repr(entry).encode())
    return made.hexdigest()
