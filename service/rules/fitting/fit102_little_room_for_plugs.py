"""Room behind the supply for its plugs, against what plugs and bent cables take.

Room is what the bay is deeper than the body, and what the case states to keep clear beyond the bay. The room that plugs
take is a judgement of ours. Exactly that passes; a depth that is not given is left to FIT101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.room import PLUG_ROOM_MM
from service.parts.records import Bay
from service.rules.fitting.bays import candidates
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when no bay that it goes into leaves room for its plugs."""
    supply = case.supply_part
    if case.supply is None or supply is None or supply.depth_mm is None:
        return
    depth_mm = supply.depth_mm
    rooms = [_room_mm(one.bay, depth_mm) for one in candidates(case, supply)]
    known = [room for room in rooms if room is not None]
    if known and max(known) < PLUG_ROOM_MM.value:
        yield Finding(Place("supply", case.supply), max(known), PLUG_ROOM_MM.value, "mm")


def _room_mm(bay: Bay, depth_mm: float) -> float | None:
    """Return the room for plugs behind a supply; None where the body does not go in, or the bay's depth is not "
    "given."""
    if bay.depth_mm is None or depth_mm > bay.depth_mm:
        return None
    return bay.depth_mm - depth_mm + (bay.plugs_clear_mm or 0.0)


RULE = Rule(
    id="FIT102", title="Little room is left for the supply's plugs", weight="advice", points=0, aspect="fit",
    since="0.1", rests_on=(PLUG_ROOM_MM,), check=check,
    message="Behind the supply {measured} {unit} are left; plugs and bent cables take about {limit} {unit}.",
    why="Plugs that are pressed against a wall work loose, and tight bends at a plug spread its contacts.",
    remedy="Plug the cables in before the supply goes into the case, or choose a shorter supply.",
)
