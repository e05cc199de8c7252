"""Depth of the supply's body against the bays that take its form factor.

The body must go into one of them; exactly its depth passes. Room for plugs behind it is FIT102, the form factor FIT103.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.supply import PRINTED_PERCENT
from service.rules.fitting.bays import CaseBay, candidates
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.shares import part_of

DEPTH = "depth_mm"


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when it is deeper than every bay that takes it."""
    supply = case.supply_part
    if case.supply is None or supply is None:
        return
    taken = candidates(case, supply)
    if not taken:
        return
    at = Place("supply", case.supply)
    if supply.depth_mm is None:
        yield Unknown(at, DEPTH)
    else:
        yield from _against(at, supply.depth_mm, taken)


def _against(at: Place, depth_mm: float, taken: tuple[CaseBay, ...]) -> Iterator[Said]:
    stated = [one.bay.depth_mm for one in taken if one.bay.depth_mm is not None]
    known = [part_of(depth, PRINTED_PERCENT) for depth in stated]
    if any(depth_mm <= room for room in known):
        return
    if len(known) == len(taken):
        yield Finding(at, depth_mm, max(known), "mm")
    else:
        open_bay = next(one for one in taken if one.bay.depth_mm is None)
        yield Unknown(open_bay.at, f"bays/{open_bay.number}/{DEPTH}")


RULE = Rule(
    id="FIT101", title="The supply is deeper than its bay", weight="stop", points=0, aspect="fit", since="0.1",
    rests_on=(PRINTED_PERCENT,), check=check,
    message="The supply is {measured} {unit} deep; the bay has {limit} {unit}.",
    why="The body does not go in, or presses on cables and drives behind it.",
    remedy="Choose a shorter supply or a case with a deeper bay.",
)
