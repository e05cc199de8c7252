"""The cables and adapters that lie beside a build, each piece by itself, and equal ones put together into kinds."""

from collections.abc import Hashable, Iterable
from dataclasses import replace
from typing import NamedTuple, TypeVar

from service.demand.ends import Ends
from service.parts.build import Build, Unit
from service.parts.records import Adapter, Cable, ExpansionCard, GraphicsCard, PowerSupply
from service.parts.words import CARD
from service.wiring.mates import function_of

K = TypeVar("K", bound=Hashable)
MOST_BOXES = 512
_BOXES: dict[str, tuple[tuple[Cable, int, int], ...]] = {}


class Piece(NamedTuple):
    """One physical cable or adapter: its unit, the entry in that part's list (-1.

    The unit itself), which of the entry.
    """

    unit: int
    entry: int
    copy: int


class CableKindOf(NamedTuple):
    """Equal cables. ``foreign``: of another family than the supply, or not known to be of its family.

    ``bought``: not there yet.
    """

    cable: Cable
    pieces: tuple[Piece, ...]
    foreign: bool = False
    bought: bool = False


class AdapterKindOf(NamedTuple):
    """Equal adapters; ``bundled``: came with a card."""

    adapter: Adapter
    pieces: tuple[Piece, ...]
    bundled: bool


def cables(build: Build, supply: int, ends: Ends, named: frozenset[Piece]) -> list[CableKindOf]:
    """Return all cables beside a build by kind, the supply's own first.

    Each piece that is ``named`` is a kind of its own.
    """
    part = build.units[supply].part
    assert isinstance(part, PowerSupply)
    found = [((cable, False), Piece(supply, entry, copy)) for cable, entry, copy in _boxed(build.units[supply])]
    for unit, entry in enumerate(build.units):
        if isinstance(entry.part, Cable):
            loose = (replace(entry.part, name="", quantity=1, captive=False), is_foreign(entry.part, part, unit, ends))
            found += [(loose, Piece(unit, -1, copy)) for copy in range(entry.part.quantity)]
    return [
        CableKindOf(cable, some, foreign)
        for (cable, foreign), pieces in _by_kind(found)
        for some in _split(pieces, named)
    ]


def _boxed(supply: Unit) -> tuple[tuple[Cable, int, int], ...]:
    """Return each cable in a supply's box without its name: the cable, its entry, which of the entry.

    Remembered by the supply's digest, as the same supplies are asked for again and again.
    """
    found = _BOXES.get(supply.digest)
    if found is None:
        part = supply.part
        assert isinstance(part, PowerSupply)
        found = tuple(
            (plain, entry, copy)
            for entry, cable in enumerate(part.cables or ())
            for plain in (replace(_with_captivity(cable, part), name="", quantity=1),)
            for copy in range(cable.quantity)
        )
        if len(_BOXES) >= MOST_BOXES:
            _BOXES.clear()
        _BOXES[supply.digest] = found
    return found


def is_foreign(cable: Cable, supply: PowerSupply, unit: int, ends: Ends) -> bool:
    """Say whether a cable bought by itself is of another pinout family; where a family is not given, at worst it is."""
    if cable.family is not None and supply.cable_family is not None:
        return cable.family != supply.cable_family
    return ends.worst(unit, "family")


def _with_captivity(cable: Cable, supply: PowerSupply) -> Cable:
    if cable.captive is not None:
        return cable
    first = function_of(cable.plugs[0].connector)
    captive = supply.modularity == "none" or (supply.modularity == "semi" and first in ("main", "processor"))
    return replace(cable, captive=captive)


def adapters(build: Build, named: frozenset[Piece]) -> list[AdapterKindOf]:
    """Return all adapters beside a build by kind, bought and bundled ones apart."""
    found: list[tuple[tuple[Adapter, bool], Piece]] = []
    for unit, entry in enumerate(build.units):
        if isinstance(entry.part, Adapter):
            plain = replace(entry.part, name="", quantity=1)
            found += [((plain, False), Piece(unit, -1, copy)) for copy in range(entry.part.quantity)]
        elif isinstance(entry.part, GraphicsCard | ExpansionCard):
            for index, adapter in enumerate(entry.part.adapters):
                plain = replace(adapter, name="", quantity=1)
                found += [((plain, True), Piece(unit, index, copy)) for copy in range(adapter.quantity)]
    return [
        AdapterKindOf(adapter, pieces, bundled)
        for (adapter, bundled), all_pieces in _by_kind(found)
        for pieces in _split(all_pieces, named)
    ]


def is_never(adapter: Adapter) -> bool:
    """Say whether an adapter must not be planned: a drive's SATA plug never feeds a card."""
    return adapter.takes.connector == "sata-power" and adapter.gives.connector in CARD


def _by_kind(found: Iterable[tuple[K, Piece]]) -> list[tuple[K, list[Piece]]]:
    kinds: dict[K, list[Piece]] = {}
    for key, piece in found:
        kinds.setdefault(key, []).append(piece)
    return list(kinds.items())


def _split(pieces: list[Piece], named: frozenset[Piece]) -> list[tuple[Piece, ...]]:
    """Return the named pieces each alone, then the rest together."""
    rest = tuple(piece for piece in pieces if piece not in named)
    return [(piece,) for piece in pieces if piece in named] + ([rest] if rest else [])
