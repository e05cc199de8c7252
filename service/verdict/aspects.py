"""Which aspects of a build are looked at, by the categories on its sheet, and what is not and why."""

from typing import NamedTuple

from service.parts.build import Build
from service.parts.records import CATEGORIES, Lighting
from service.parts.words import ASPECTS, Aspect

_SUPPLY = frozenset({"power_supply"})
TAKES_POWER = frozenset(kind.category for kind in CATEGORIES) - _SUPPLY - {"cable", "adapter", "case", "bracket"}
"""Categories of which a supply feeds something, straight or by others."""
_RUN = "run"
"""Stands among the categories of a sheet that lists runs, or lights by a lead."""
_NEEDS: dict[Aspect, tuple[frozenset[str], ...]] = {
    "power": (_SUPPLY, TAKES_POWER),
    "connections": (_SUPPLY, TAKES_POWER),
    "mains": (_SUPPLY, TAKES_POWER),
    "signals": (frozenset({"motherboard"}),),
    "fit": (frozenset({"case"}), frozenset({"power_supply", "graphics_card", "expansion_card"})),
    "mating": (frozenset({"motherboard"}), frozenset({"processor", "memory"})),
    "runs": (frozenset({_RUN}),),
}
# Without a board, what these draw through it is in no plug's load.
_ON_A_BOARD = frozenset({"processor", "memory", "graphics_card", "expansion_card"})


class NotChecked(NamedTuple):
    """An aspect that was not looked at: ``not_asked``, or the categories one of which is missing."""

    aspect: Aspect
    not_asked: bool
    missing: tuple[str, ...]


def aspects_of(build: Build) -> tuple[frozenset[Aspect], list[NotChecked]]:
    """Return the aspects that are looked at, and those that are not."""
    listed = {entry.part.category for entry in build.units}
    if build.runs or ("lighting" in listed and _has_lead(build)):
        listed.add(_RUN)
    active: set[Aspect] = set()
    left_out = []
    for aspect in ASPECTS:
        missing = next((needed for needed in _NEEDS[aspect] if not needed & listed), None)
        asked = build.aspects is None or aspect in build.aspects
        if asked and (missing is None or (aspect == "runs" and active and "lighting" in listed)):
            active.add(aspect)
        elif not asked or aspect != "runs":
            left_out.append(NotChecked(aspect, not asked, tuple(sorted(missing or ()))))
    if "connections" in active and "motherboard" not in listed and listed & _ON_A_BOARD:
        left_out.append(NotChecked("connections", False, ("motherboard",)))
    return frozenset(active), left_out


def _has_lead(build: Build) -> bool:
    """Say whether there is a light of which the lead is known; of others only that can be said, beside the rest."""
    return any(isinstance(entry.part, Lighting) and entry.part.lead is not None for entry in build.units)
