"""A build sheet as it was sent: lines that name parts or carry them, and what is asked of them."""

from dataclasses import dataclass

from service.parts.build import Plugged, Site, Use, WiringRest
from service.parts.readings import Reading
from service.parts.records import Part
from service.parts.runs import WireRun


@dataclass(frozen=True, slots=True)
class SheetLine:
    """One line: exactly one of ``part_id``, ``gtin`` (14 digits), ``mpn`` and ``spec`` is set."""

    part_id: str | None = None
    gtin: str | None = None
    mpn: str | None = None
    spec: Part | None = None
    quantity: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A whole sheet. ``wiring`` None: plan it. ``aspects`` None: as the listed parts suggest."""

    lines: tuple[SheetLine, ...]
    use: Use = Use()
    site: Site = Site()
    wiring: tuple[Plugged, ...] | None = None
    wiring_rest: WiringRest = "leave"
    aspects: tuple[str, ...] | None = None
    would_settle: bool = False
    size: bool = False
    reference: str | None = None
    runs: tuple[WireRun, ...] = ()
    readings: tuple[Reading, ...] = ()
