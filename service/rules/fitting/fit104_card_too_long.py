"""Length of each card against the length that the case takes.

Exactly that length passes. Height and thickness of cards, and the bend of the cable above them, are not looked at.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.supply import PRINTED_PERCENT
from service.parts.records import CaseBox, ExpansionCard, GraphicsCard
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.shares import part_of

Box = tuple[int, CaseBox]


def check(case: Case) -> Iterator[Said]:
    """Yield each card that is longer than the case takes."""
    boxes = [(at, unit.part) for at, unit in enumerate(case.build.units) if isinstance(unit.part, CaseBox)]
    if not boxes:
        return
    for at, unit in enumerate(case.build.units):
        if isinstance(unit.part, GraphicsCard | ExpansionCard):
            yield from _card(at, unit.part.length_mm, boxes)


def _card(at: int, length_mm: float | None, boxes: list[Box]) -> Iterator[Said]:
    unstated = next((place for place, box in boxes if box.card_length_mm is None), None)
    stated = max((box.card_length_mm for _, box in boxes if box.card_length_mm is not None), default=0.0)
    longest = part_of(stated, PRINTED_PERCENT)
    if length_mm is None:
        yield Unknown(Place("unit", at), "length_mm")
    elif length_mm > longest:
        if unstated is None:
            yield Finding(Place("unit", at), length_mm, longest, "mm")
        else:
            yield Unknown(Place("unit", unstated), "card_length_mm")


RULE = Rule(
    id="FIT104", title="A card is longer than the case takes", weight="stop", points=0, aspect="fit", since="0.1",
    rests_on=(PRINTED_PERCENT,), check=check,
    message="The card is {measured} {unit} long; the case takes {limit} {unit}.",
    why="The card does not go in, or presses on fans and cables in front of it.",
    remedy="Choose a shorter card or a longer case; some cases gain room when a drive cage is taken out.",
)
