"""Form factor of the supply against the bays of the case, brackets on the sheet counted.

A bracket holds a supply of one form factor in a bay for another. Names are compared without case, spaces and hyphens.
Depth is FIT101.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.room import ATX_WIDTH_MM
from service.parts.records import CaseBox
from service.rules.fitting.bays import candidates
from service.rules.rule import Finding, Rule, Said, Unknown


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when no bay takes its form factor."""
    supply = case.supply_part
    boxes = [at for at, unit in enumerate(case.build.units) if isinstance(unit.part, CaseBox)]
    if case.supply is None or supply is None or not boxes:
        return
    if supply.form_factor is None:
        yield Unknown(Place("supply", case.supply), "form_factor")
    elif not candidates(case, supply):
        unlisted = _without_bays(case, boxes)
        if unlisted is None:
            yield Finding(Place("supply", case.supply), values=(("form_factor", supply.form_factor),))
        else:
            yield Unknown(Place("unit", unlisted), "bays")


def _without_bays(case: Case, boxes: list[int]) -> int | None:
    """Return the first case whose bays are not listed."""
    parts = ((at, case.build.units[at].part) for at in boxes)
    return next((at for at, part in parts if isinstance(part, CaseBox) and not part.bays), None)


RULE = Rule(
    id="FIT103", title="No bay takes the supply's form factor", weight="stop", points=0, aspect="fit", since="0.1",
    rests_on=(ATX_WIDTH_MM,), check=check,
    message="The supply is of form factor {form_factor}, and no bay of the case takes that.",
    why="Screw holes and cut-outs differ by form factor; a case gets its earth through the supply's screws.",
    remedy="Choose a supply of a form factor that the case takes, or a bracket made for the pair.",
)
