"""Side of the supply's fan against the side where its bay has a vent.

The sides are named as the supply is mounted. A side that is not given on the supply or on the bay is unknown.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.room import FAN_CLEAR_MM
from service.rules.fitting.bays import CaseBay, candidates
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.same import same


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when no bay that takes it has its vent at the supply's fan."""
    supply = case.supply_part
    if case.supply is None or supply is None:
        return
    taken = candidates(case, supply)
    at = Place("supply", case.supply)
    if not taken:
        return
    if supply.fan_side is None:
        yield Unknown(at, "fan_side")
    else:
        yield from _against(at, supply.fan_side, taken)


def _against(at: Place, fan_side: str, taken: tuple[CaseBay, ...]) -> Iterator[Said]:
    vents = [one.bay.fan_vent for one in taken]
    if any(vent is not None and same(vent, fan_side) for vent in vents):
        return
    if None in vents:
        unstated = taken[vents.index(None)]
        yield Unknown(unstated.at, f"bays/{unstated.number}/fan_vent")
    else:
        yield Finding(at, values=(("fan_side", fan_side), ("vent", str(vents[0]))))


RULE = Rule(
    id="FIT105", title="The supply's fan faces away from the vent", weight="caution", points=3, aspect="fit",
    since="0.1", rests_on=(FAN_CLEAR_MM,), check=check,
    message="The supply's fan is at its {fan_side}, the bay's vent at the {vent}.",
    why="A fan that faces a closed wall gets no air: the supply runs hot and gives less.",
    remedy="Mount the supply the other way up if case and supply allow it, and keep the fan clear of the wall.",
)
