"""Which aspects of a build are looked at, by the categories on its sheet, and what is not and why."""

from typing import NamedTuple

from service.parts.build import Build
from service.parts.records import CATEGORIES
from service.parts.words import ASPECTS, Aspect

_SUPPLY = frozenset({"power_supply"})
TAKES_POWER = frozenset(kind.category for kind in CATEGORIES) - _SUPPLY - {"cable", "adapter", "case", "bracket"}
"""Categories of which a supply feeds something, straight or by others."""
_NEEDS: dict[Aspect, tuple[frozenset[str], ...]] = {
    "power": (_SUPPLY, TAKES_POWER),
    "connections": (_SUPPLY, TAKES_POWER),
    "mains": (_SUPPLY, TAKES_POWER),
    "signals": (frozenset({"motherboard"}),),
    "fit": (frozenset({"case"}), frozenset({"power_supply", "graphics_card", "expansion_card"})),
    "mating": (frozenset({"motherboard"}), frozenset({"processor", "memory"})),
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
    active: set[Aspect] = set()
    left_out = []
    for aspect in ASPECTS:
        missing = next((needed for needed in _NEEDS[aspect] if not needed & listed), None)
        asked = build.aspects is None or aspect in build.aspects
        if asked and missing is None:
            active.add(aspect)
        else:
            left_out.append(NotChecked(aspect, not asked, tuple(sorted(missing or ()))))
    if "connections" in active and "motherboard" not in listed and listed & _ON_A_BOARD:
        left_out.append(NotChecked("connections", False, ("motherboard",)))
    return frozenset(active), left_out
