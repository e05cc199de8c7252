"""Entries of a catalogue file: a spec with the id, maker and numbers by which a sheet may name it."""

from typing import Any, NamedTuple

from marshmallow import ValidationError

from service.intake import bounds
from service.intake.codes import Gtin
from service.intake.faults import Fault, from_messages
from service.intake.fields import Pattern, Text, kind_of
from service.intake.shapes import schema
from service.intake.specs import Spec
from service.parts.records import Part


class StatedEntry(NamedTuple):
    """One part of a catalogue file. ``gtin`` has 14 digits."""

    id: str
    maker: str
    spec: Part
    mpn: str | None = None
    gtin: str | None = None


class Id(Text):
    """An id that may stand in an address: small letters, digits, points, dashes."""

    def __init__(self, **settings: Any) -> None:
        super().__init__(bounds.LONGEST_ID, **settings)
        said = "must be made of small letters, digits, points and dashes, and begin with a letter or digit"
        self.validators = [self.validators[0], Pattern("[a-z0-9][a-z0-9.-]*", error=said)]


ENTRY = schema("Entry", StatedEntry, {
    "id": Id(required=True),
    "maker": Text(bounds.LONGEST_NAME, required=True),
    "mpn": Text(bounds.LONGEST_MPN),
    "gtin": Gtin(),
    "spec": Spec(required=True),
})


def read_entries(data: object, at: str = "") -> tuple[list[tuple[int, StatedEntry]], list[Fault]]:
    """Return the good entries of a decoded file with their places, and the faults of all others."""
    if type(data) is not list:
        return [], [Fault(at, f"must be a list of entries, not {kind_of(data)}")]
    good: list[tuple[int, StatedEntry]] = []
    faults: list[Fault] = []
    for index, item in enumerate(data):
        try:
            good.append((index, ENTRY.load(item)))
        except ValidationError as refused:
            faults += from_messages(refused.messages, f"{at}/{index}")
    return good, faults
