"""What changes hands on the way from a wiring as it is plugged to a better plan.

Equal cables, and equal adapters, may stand for one another. So the plan is first renumbered: each class of equal pieces
is assigned to the pieces of that class so that as many connections as possible are just what is plugged already (an
exact assignment, class by class: adapters first, then cables). What still differs then, port by port, are the moves;
applied to the wiring as plugged they give exactly the renumbered plan.
"""

from collections import Counter
from collections.abc import Callable, Hashable, Iterable
from dataclasses import replace
from typing import NamedTuple

from service.case.assign import assign
from service.case.case import Case, FeedAdapter, FeedPlug, Joint, Loose, Spare
from service.parts.build import Build, Plugged, PluggedAdapter, PluggedPlug
from service.parts.records import Adapter, Cable, PowerSupply
from service.wiring.pieces import Piece

PortAt = tuple[int, int, str, int]


class Move(NamedTuple):
    """A port whose feed changes: ``before`` as it is plugged, ``after`` as in the better plan; None: nothing in it."""

    before: Plugged | None
    after: Plugged | None


def settled_on(build: Build, better: Case) -> Case:
    """Return a better plan with its equal pieces numbered so that most of the wiring of a build stays as plugged."""
    given = {_port(each): each for each in build.wiring or ()}
    for pieces in (_adapters, _cables):
        better = _renumbered(better, _numbers(build, given, better, pieces))
    return replace(better, joints=tuple(_in_order(given, build, joint) for joint in better.joints))


def moves(build: Build, better: Case) -> tuple[Move, ...]:
    """Return each port whose feed differs between the wiring of a build and a plan, in the order of the sheet."""
    before = {_port(each): each for each in build.wiring or ()}
    after = {_port(each): each for each in (plugged_of(build, joint) for joint in better.joints)}
    return tuple(
        Move(before.get(port), after.get(port))
        for port in sorted(before.keys() | after.keys())
        if not _is_same(before.get(port), after.get(port))
    )


def plugged_of(build: Build, joint: Joint) -> Plugged:
    """Return a connection of a plan in the shape of a wiring as plugged."""
    entry = build.units[joint.at.unit]
    adapters = tuple(
        PluggedAdapter(*_outside(build, Piece(one.unit, one.entry, one.copy)), one.inputs) for one in joint.adapters
    )
    plugs = tuple(
        PluggedPlug(*_outside(build, Piece(one.unit, one.cable, one.copy)), one.plug, one.sockets, one.open_contacts)
        for one in joint.plugs
    )
    return Plugged(entry.line, entry.copy, str(joint.at.detail[0]), int(joint.at.detail[1]), adapters, plugs)


def _port(plugged: Plugged) -> PortAt:
    return plugged[:4]


def _is_same(before: Plugged | None, after: Plugged | None) -> bool:
    """Say whether a port is fed in the same way; where a wiring names no sockets, a cable is where it belongs."""
    if before is None or after is None:
        return before is after
    return before.adapters == after.adapters and len(before.plugs) == len(after.plugs) and all(
        was == new or (was._replace(sockets=()) == new._replace(sockets=()) and _same_sockets(was, new))
        for was, new in zip(before.plugs, after.plugs, strict=True)
    )


def _same_sockets(was: PluggedPlug, new: PluggedPlug) -> bool:
    return not was.sockets or sorted(was.sockets) == sorted(new.sockets)


# -- pieces: inside (unit, entry, copy within it) and outside (line, entry, copy through the line) ---------------------


def _entry_of(build: Build, piece: Piece) -> Cable | Adapter:
    part = build.units[piece.unit].part
    if isinstance(part, Cable | Adapter):
        return part
    entries: tuple[Cable | Adapter, ...] = (
        part.cables or () if isinstance(part, PowerSupply) else part.adapters  # type: ignore[union-attr]
    )
    return entries[piece.entry]


def _outside(build: Build, piece: Piece) -> tuple[int, int | None, int]:
    unit = build.units[piece.unit]
    copy = unit.copy * _entry_of(build, piece).quantity + piece.copy
    return unit.line, (None if piece.entry < 0 else piece.entry), copy


def _cables(joint: Joint) -> Iterable[tuple[Piece, Hashable]]:
    """Yield each cable on the way to a port and which of its plugs is in use."""
    return ((Piece(one.unit, one.cable, one.copy), one.plug) for one in joint.plugs)


def _adapters(joint: Joint) -> Iterable[tuple[Piece, Hashable]]:
    """Yield each adapter on the way to a port and whether it is the one at the port."""
    return ((Piece(one.unit, one.entry, one.copy), place == 0) for place, one in enumerate(joint.adapters))


# -- renumbering -------------------------------------------------------------------------------------------------------


def _numbers(
    build: Build,
    given: dict[PortAt, Plugged],
    better: Case,
    pieces: Callable[[Joint], Iterable[tuple[Piece, Hashable]]],
) -> dict[Piece, Piece]:
    """Return which piece is to stand for which: a permutation of each class of equal pieces."""
    inside = _inside(build)
    shared: Counter[tuple[Piece, Piece]] = Counter()
    for joint in better.joints:
        new = plugged_of(build, joint)
        was = given.get(_port(new))
        if was is not None and (pieces is _adapters or was.adapters == new.adapters):
            held = _held(was, inside, adapters=pieces is _adapters)
            shared.update((one, of) for one, way in pieces(joint) for of, at in held if way == at)
    found: dict[Piece, Piece] = {}
    for alike in _classes(build, [*{one for pair in shared for one in pair}, *inside.values()]):
        rows = sorted({one for one, _ in shared if one in alike})
        columns = sorted(alike)
        chosen = assign([[shared[row, column] for column in columns] for row in rows]) if rows else []
        found |= _permutation(columns, {row: columns[at] for row, at in zip(rows, chosen, strict=True)})
    return found


def _permutation(alike: list[Piece], wanted: dict[Piece, Piece]) -> dict[Piece, Piece]:
    """Return a permutation with all that is wanted in it; the others keep their number where it is free."""
    taken = set(wanted.values())
    kept = {piece: piece for piece in alike if piece not in wanted and piece not in taken}
    free = iter(piece for piece in alike if piece not in taken and piece not in kept)
    return wanted | kept | {piece: next(free) for piece in alike if piece not in wanted and piece not in kept}


def _inside(build: Build) -> dict[tuple[int, int | None, int], Piece]:
    """Return every cable and adapter of a build by how a wiring names it."""
    found = []
    for unit, entry in enumerate(build.units):
        part = entry.part
        if isinstance(part, Cable | Adapter):
            found += [Piece(unit, -1, copy) for copy in range(part.quantity)]
        else:
            entries = part.cables or () if isinstance(part, PowerSupply) else getattr(part, "adapters", ())
            found += [Piece(unit, at, copy) for at, each in enumerate(entries) for copy in range(each.quantity)]
    return {_outside(build, piece): piece for piece in found}


def _held(
    plugged: Plugged, inside: dict[tuple[int, int | None, int], Piece], *, adapters: bool
) -> list[tuple[Piece, Hashable]]:
    if adapters:
        return [(inside[a.line, a.entry, a.copy], place == 0) for place, a in enumerate(plugged.adapters)]
    return [(inside[p.line, p.cable, p.copy], p.plug) for p in plugged.plugs]


def _classes(build: Build, pieces: Iterable[Piece]) -> list[set[Piece]]:
    """Return the pieces by class: equal but for their names; one with contacts stated open is like no other."""
    worn = {(p.line, p.cable, p.copy) for each in build.wiring or () for p in each.plugs if p.open_contacts}
    found: dict[Hashable, set[Piece]] = {}
    for piece in pieces:
        plain = replace(_entry_of(build, piece), name="", quantity=1)
        alone = piece if _outside(build, piece) in worn else None
        found.setdefault((plain, piece.entry < 0, alone), set()).add(piece)
    return list(found.values())


def _renumbered(case: Case, numbers: dict[Piece, Piece]) -> Case:
    """Return a case with pieces renumbered; those that are not in ``numbers`` keep theirs."""

    def cable(unit: int, entry: int, copy: int) -> Piece:
        return numbers.get(Piece(unit, entry, copy), Piece(unit, entry, copy))

    def plug(one: FeedPlug) -> FeedPlug:
        at = cable(one.unit, one.cable, one.copy)
        return one._replace(unit=at.unit, cable=at.entry, copy=at.copy)

    def adapter(one: FeedAdapter) -> FeedAdapter:
        at = cable(one.unit, one.entry, one.copy)
        return one._replace(unit=at.unit, entry=at.entry, copy=at.copy)

    joints = tuple(
        joint._replace(plugs=tuple(map(plug, joint.plugs)), adapters=tuple(map(adapter, joint.adapters)))
        for joint in case.joints
    )
    spare = sorted(Spare(*cable(one.unit, one.cable, one.copy)) for one in case.spare)
    loose = sorted(
        Loose(*cable(one.unit, one.cable, one.copy), one.plug, one.connector) for one in case.loose
    )
    return replace(case, joints=joints, spare=tuple(spare), loose=tuple(loose))


def _in_order(given: dict[PortAt, Plugged], build: Build, joint: Joint) -> Joint:
    """Return a joint with the plugs in one adapter's equal inputs in the order in which they stand already."""
    new = plugged_of(build, joint)
    was = given.get(_port(new))
    if was is None or len(joint.adapters) != 1 or was.adapters != new.adapters:
        return joint
    stand = [plug[:4] for plug in was.plugs]
    at = {plug[:4]: one for plug, one in zip(new.plugs, joint.plugs, strict=True)}
    if sorted(stand, key=str) != sorted(at, key=str):
        return joint
    return joint._replace(plugs=tuple(at[plug] for plug in stand))
