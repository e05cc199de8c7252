"""A decoded build sheet to its records, with everything that is wrong with it at once."""

from typing import Any, NamedTuple

from marshmallow import ValidationError

from service.intake import bounds
from service.intake.codes import Gtin
from service.intake.faults import NO_SUCH_FIELD, Fault, Faults, Key, from_messages
from service.intake.fields import Flag, Number, Text, Whole, Word, kind_of
from service.intake.readings import READING
from service.intake.records import Sheet, SheetLine
from service.intake.runs import WIRE_RUN
from service.intake.shapes import Many, Messages, One, Unlike, schema
from service.intake.specs import Spec
from service.intake.wiring import CONNECTION
from service.parts.build import Site, Use
from service.parts.words import ASPECTS

CODES = ("nec", "iec", "bs")
WIRING_RESTS = ("leave", "plan")
_WAYS = ("part", "gtin", "mpn", "spec")
_PARTS = "parts"


def plain_line(line: object) -> SheetLine | None:
    """Return a line that is surely good and has only ``part`` and ``quantity``; None: the schema has to look at it."""
    if type(line) is not dict:
        return None
    part, quantity = line.get("part"), line.get("quantity", 1)
    if type(part) is not str or not part.isascii() or not part.isprintable() or type(quantity) is not int:
        return None
    if not (0 < len(part) <= bounds.LONGEST_ID and 1 <= quantity <= bounds.MOST_QUANTITY):
        return None
    if len(line) != 1 + ("quantity" in line):
        return None
    return SheetLine(part, quantity=quantity)


def _line(part: str | None = None, **given: Any) -> SheetLine:
    """Make a line, of which exactly one way to name or state a part is given."""
    if (part is not None) + sum(way in given for way in _WAYS) != 1:
        raise ValidationError(f"must have exactly one of {', '.join(_WAYS)}")
    return SheetLine(part, **given)


class Line(One):
    """A line; the common ones take the short road."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        return plain_line(value) or super()._deserialize(value, attr, data)


class Ups(NamedTuple):
    """What a battery-backed supply on the mains side is rated for."""

    watts: float | None = None
    volt_amperes: float | None = None
    transfer_milliseconds: float | None = None


_NO_UPS = Ups()


def _site(ups: Ups = _NO_UPS, **given: Any) -> Site:
    return Site(
        ups_watts=ups.watts, ups_volt_amperes=ups.volt_amperes, ups_transfer_milliseconds=ups.transfer_milliseconds,
        **given,
    )


def _sheet(parts: tuple[SheetLine, ...], **given: Any) -> Sheet:
    return Sheet(lines=parts, **given)


LINE = schema("Line", _line, {
    "part": Text(bounds.LONGEST_ID),
    "gtin": Gtin(),
    "mpn": Text(bounds.LONGEST_MPN),
    "spec": Spec(),
    "quantity": Whole(1, bounds.MOST_QUANTITY),
})
USE = schema("Use", Use, {
    "drives_starting_together": Whole(1, bounds.MOST_STARTING_TOGETHER),
    "graphics_limit_percent": Number(bounds.LEAST_PERCENT, bounds.MOST_PERCENT),
    "hours_a_day": Number(0, bounds.MOST_HOURS_A_DAY),
})
UPS = schema("Ups", Ups, {
    "watts": Number(1, bounds.MOST_UPS, required=True), "volt_amperes": Number(1, bounds.MOST_UPS, required=True),
    "transfer_milliseconds": Number(0, bounds.MOST_TRANSFER_MILLISECONDS),
})
SITE = schema("Site", _site, {
    "mains_volts": Number(bounds.LEAST_MAINS_VOLTS, bounds.MOST_MAINS_VOLTS),
    "circuit_amps": Number(bounds.LEAST_CIRCUIT_AMPS, bounds.MOST_CIRCUIT_AMPS),
    "plug_fuse_amps": Number(bounds.LEAST_FUSE_AMPS, bounds.MOST_FUSE_AMPS),
    "code": Word(CODES),
    "room_celsius": Number(bounds.LEAST_ROOM_CELSIUS, bounds.MOST_ROOM_CELSIUS),
    "ups": One(UPS),
})
SHEET = schema("Sheet", _sheet, {
    "reference": Text(bounds.LONGEST_REFERENCE, least=0, allow_none=True),
    _PARTS: Many(Line(LINE), bounds.MOST_LINES, least=1, required=True),
    "use": One(USE),
    "site": One(SITE),
    "runs": Many(One(WIRE_RUN), bounds.MOST_RUNS),
    "readings": Many(One(READING), bounds.MOST_READINGS),
    "wiring": Many(One(CONNECTION), bounds.MOST_CONNECTIONS, allow_none=True),
    "wiring_rest": Word(WIRING_RESTS),
    "aspects": Unlike(Word(ASPECTS), len(ASPECTS), least=1, allow_none=True),
    "would_settle": Flag(),
    "size": Flag(),
})


def read_sheet(data: object) -> Sheet:
    """Return the sheet that a decoded body states, or raise ``Faults``; its fields are those of ``SHEET``.

    Only fields that are there are looked at, which spares most of what loading by the schema itself costs.
    """
    if type(data) is not dict:
        raise Faults([Fault("", f"must be an object, not {kind_of(data)}")])
    read: dict[str, Any] = {}
    wrong: Messages = {}
    for name, value in data.items():
        field = SHEET.fields.get(name)
        if field is None:
            wrong[Key(name)] = [NO_SUCH_FIELD]
            continue
        try:
            read[name] = field.deserialize(value)
        except ValidationError as refused:
            wrong[name] = refused.messages
    if _PARTS not in data:
        wrong[_PARTS] = ["must be given"]
    if wrong:
        raise Faults(from_messages(wrong, ""))
    return _sheet(**read)
