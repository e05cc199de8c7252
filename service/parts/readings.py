"""What was measured at a supply, a port or a device."""

from dataclasses import dataclass

from service.parts.figures import Range


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """Volts or amps of one rail: of a supply as it leaves its own cables, of a port, or of a device as a whole.

    ``connector`` None: no port. ``copy`` and ``number`` count from 0.
    """

    line: int
    copy: int
    connector: str | None
    number: int
    rail: str
    volts: float | None
    amps: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """A reading with what became of it: the field of its part that it settles, and the amps that the sheet states.

    ``field`` None: no figure of the part is that current. ``stated`` None: the sheet states none.
    """

    reading: Reading
    field: str | None = None
    stated: Range | None = None
