"""The cables and adapters that lie beside a build, each piece by itself, and equal ones put together into kinds."""

from collections.abc import Hashable, Iterable
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple, TypeVar

from service.demand.ends import Ends
from service.parts.build import Build
from service.parts.records import Adapter, Cable, ExpansionCard, GraphicsCard, PowerSupply
from service.parts.words import CARD, MAIN, OWN_FAMILY, PROCESSOR, Function
from service.wiring.mates import function_of, mate

K = TypeVar("K", bound=Hashable)
REMEMBERED = 512
"""JUDGEMENT: adapters that are about in many builds at once; each is small."""


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
    """Equal adapters; ``bundled``: came with a card; ``offered``: not there yet."""

    adapter: Adapter
    pieces: tuple[Piece, ...]
    bundled: bool
    offered: bool = False


def cables(
    build: Build, supply: PowerSupply, own: tuple[CableKindOf, ...], ends: Ends, named: frozenset[Piece]
) -> list[CableKindOf]:
    """Return all cables beside a build by kind, the supply's ``own`` first; a ``named`` piece is a kind of its own."""
    beside: list[tuple[tuple[Cable, bool], Piece]] = []
    for unit, entry in enumerate(build.units):
        if isinstance(entry.part, Cable):
            plain = replace(entry.part, name="", quantity=1, captive=False)
            loose = (plain, is_foreign(entry.part, supply, unit, ends))
            beside += [(loose, Piece(unit, -1, copy)) for copy in range(entry.part.quantity)]
    if not beside and not named:
        return list(own)
    boxed = [((of.cable, False), piece) for of in own for piece in of.pieces]
    return [
        CableKindOf(cable, some, foreign)
        for (cable, foreign), pieces in _by_kind([*boxed, *beside])
        for some in _split(pieces, named)
    ]


def in_the_box(part: PowerSupply, unit: int) -> tuple[CableKindOf, ...]:
    """Return the cables in a supply's box by kind; the supply is this unit of the build."""
    found: list[tuple[Cable, Piece]] = []
    for index, cable in enumerate(part.cables or ()):
        by_make = is_captive(part, function_of(cable.plugs[0].connector))
        captive = by_make if cable.captive is None else cable.captive
        plain = replace(cable, name="", quantity=1, captive=captive)
        found += [(plain, Piece(unit, index, copy)) for copy in range(cable.quantity)]
    return tuple(CableKindOf(cable, tuple(pieces)) for cable, pieces in _by_kind(found))


def is_foreign(cable: Cable, supply: PowerSupply, unit: int, ends: Ends) -> bool:
    """Say whether a cable bought by itself is of another pinout family; where a family is not given, at worst it is."""
    if cable.family == OWN_FAMILY:
        return False
    if cable.family is not None and supply.cable_family is not None:
        return cable.family != supply.cable_family
    return ends.worst(unit, "family")


def is_captive(supply: PowerSupply, function: Function) -> bool:
    """Say whether cables of a function are captive by the make of their supply, where they do not say it themselves."""
    return supply.modularity == "none" or (supply.modularity == "semi" and function in ("main", "processor"))


def adapters(build: Build, named: frozenset[Piece]) -> list[AdapterKindOf]:
    """Return all adapters beside a build by kind, bought and bundled ones apart."""
    found: list[tuple[tuple[Adapter, bool], Piece]] = []
    for unit, entry in enumerate(build.units):
        if isinstance(entry.part, Adapter):
            plain = _plain(entry.part)
            found += [((plain, False), Piece(unit, -1, copy)) for copy in range(entry.part.quantity)]
        elif isinstance(entry.part, GraphicsCard | ExpansionCard):
            for index, adapter in enumerate(entry.part.adapters):
                plain = _plain(adapter)
                found += [((plain, True), Piece(unit, index, copy)) for copy in range(adapter.quantity)]
    return [
        AdapterKindOf(adapter, pieces, bundled)
        for (adapter, bundled), all_pieces in _by_kind(found)
        for pieces in _split(all_pieces, named)
    ]


@lru_cache(maxsize=REMEMBERED)
def _plain(adapter: Adapter) -> Adapter:
    return replace(adapter, name="", quantity=1)


def is_never(adapter: Adapter) -> bool:
    """Say whether an adapter must not be planned: a drive's SATA plug never feeds a card, processor or board."""
    return adapter.takes.connector == "sata-power" and adapter.gives.connector in CARD | PROCESSOR | MAIN


def only_lengthens(adapter: Adapter) -> bool:
    """Say whether an adapter gives the very plug that it takes, and so only makes a cable longer."""
    takes, gives = adapter.takes, adapter.gives
    return takes.count == gives.count == 1 and mate(gives.connector, takes.connector) == "full"


def below(piece: Piece, entries: str = "cables") -> str:
    """Return the pointer, below its unit's part, of the entry that a piece belongs to."""
    return "" if piece.entry < 0 else f"{entries}/{piece.entry}/"


def _by_kind(found: Iterable[tuple[K, Piece]]) -> list[tuple[K, list[Piece]]]:
    kinds: dict[K, list[Piece]] = {}
    for key, piece in found:
        kinds.setdefault(key, []).append(piece)
    return list(kinds.items())


def _split(pieces: list[Piece], named: frozenset[Piece]) -> list[tuple[Piece, ...]]:
    """Return the named pieces each alone, then the rest together."""
    rest = tuple(piece for piece in pieces if piece not in named)
    return [(piece,) for piece in pieces if piece in named] + ([rest] if rest else [])
