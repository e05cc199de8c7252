"""What passes each contact and wire on the way to a port, what it is rated for and by which fact.

The stretches of a cable are told once each, for all that hangs beyond them: the first carries what all plugs take, the
last what the last one takes.
"""

from collections.abc import Iterable
from math import inf
from typing import NamedTuple

from service.case.case import Passage, Spot, Stretch, Way
from service.wiring.allowances import Allowance
from service.wiring.objective import Judgement
from service.wiring.pose import Frame
from service.wiring.problem import NOTHING, Load

RAILS = ("12v", "5v", "3v3")
_MILLI = 1000
_NOT_OF_COPPER = frozenset({"plug", "start_wire", "volts"})
"""Limits that are no contact's or wire's for long: a plug's watts, what a wire carries at start-up, volts."""
SegmentAt = tuple[int, int, int]


class Stretched(NamedTuple):
    """What passes one stretch of a cable, and the tightest place from the supply up to its end, with its stretch."""

    passages: tuple[Passage, ...]
    tightest: Passage | None
    step: int


def passages(allowances: Iterable[Allowance], load: Load, spot: Spot) -> list[Passage]:
    """Return what passes each contact, wire and rating of one place: on 12 V, and on a rail with less reserve."""
    found = []
    least: dict[str, float] = {}
    for cause, rail, limits, contacts, _, basis, _ in allowances:
        carried = load[rail]
        if not carried or cause in _NOT_OF_COPPER:
            continue
        reserve = limits.stop / carried
        if rail and least.get(cause, inf) <= reserve:
            continue
        least[cause] = reserve
        each = (contacts or 1) * _MILLI
        found.append(Passage(
            spot, cause, RAILS[rail], carried / _MILLI, contacts, carried / each, limits.stop / each, basis, reserve,
        ))
    return found


def stretched(frame: Frame, judgement: Judgement) -> dict[SegmentAt, Stretched]:
    """Return what passes each stretch of each cable in use."""
    found: dict[SegmentAt, Stretched] = {}
    for kind, copy, step in sorted(judgement.segments):
        load = judgement.segments[kind, copy, step]
        through = () if load == NOTHING else tuple(passages(frame.segments[kind][step], load, "of_cable"))
        worst, at = tightest(through), step
        if step:
            before = found[kind, copy, step - 1]
            if worst is None or (before.tightest is not None and before.tightest.reserve <= worst.reserve):
                worst, at = before.tightest, before.step
        found[kind, copy, step] = Stretched(through, worst, at)
    return found


def stretches(frame: Frame, along: dict[SegmentAt, Stretched]) -> list[Stretch]:
    """Return the stretches that carry current, by cable and in order along it."""
    found = []
    for (kind, copy, step), (through, _, _) in along.items():
        piece = frame.cables[kind].pieces[copy]
        if through:
            found.append(Stretch(piece.unit, piece.entry, piece.copy, step, through))
    return sorted(found)


def way(near: list[Passage], ends: Iterable[Stretched]) -> Way:
    """Return the way to a port: what passes the joints ``near`` it, and the tightest place up to the supply.

    ``ends`` are the last stretches on the way, of each plug one; they have no order of their own.
    """
    best = tightest(near)
    cables = [(end.tightest.reserve, end.step, end.tightest) for end in ends if end.tightest is not None]
    if cables:
        reserve, step, there = min(cables)
        if best is None or reserve < best.reserve:
            return Way(tuple(near), there, step)
    return Way(tuple(near), best, None)


def tightest(through: Iterable[Passage]) -> Passage | None:
    """Return the place with the least reserve, the first of equals."""
    return min(through, key=_reserve, default=None)


def _reserve(passage: Passage) -> float:
    return passage.reserve
