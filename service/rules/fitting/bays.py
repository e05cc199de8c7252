"""Bays of the cases on the sheet, and those of them that a supply's form factor goes into."""

from typing import NamedTuple

from service.case.case import Case
from service.case.place import Place
from service.parts.records import Bay, Bracket, CaseBox, PowerSupply
from service.rules.same import same


class CaseBay(NamedTuple):
    """A bay, where it is, and which of its case's bays (from 0) it is."""

    at: Place
    number: int
    bay: Bay


def bays(case: Case) -> tuple[CaseBay, ...]:
    """Return all bays of all cases on the sheet."""
    boxes = ((at, unit.part) for at, unit in enumerate(case.build.units) if isinstance(unit.part, CaseBox))
    return tuple(CaseBay(Place("bay", at, (i,)), i, bay) for at, box in boxes for i, bay in enumerate(box.bays))


def candidates(case: Case, supply: PowerSupply) -> tuple[CaseBay, ...]:
    """Return the bays that take the supply, by itself or in a bracket; all of them where its form factor is not "
    "given."""
    if supply.form_factor is None:
        return bays(case)
    forms = forms_of(case, supply.form_factor)
    return tuple(one for one in bays(case) if _takes(one.bay, forms))


def forms_of(case: Case, form_factor: str) -> tuple[str, ...]:
    """Return the form factors that a supply has with the brackets on the sheet: its own first."""
    brackets = (unit.part for unit in case.build.units if isinstance(unit.part, Bracket))
    return (form_factor, *(b.to_form_factor for b in brackets if same(b.from_form_factor, form_factor)))


def _takes(bay: Bay, forms: tuple[str, ...]) -> bool:
    return any(same(form, taken) for form in forms for taken in bay.form_factors)
