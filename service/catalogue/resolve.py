"""From a sheet and an edition to a build: every line becomes a part, every piece of it a unit in canonical order."""

from collections.abc import Iterator
from difflib import get_close_matches

from service.catalogue.edition import Edition, Entry, mpn_key
from service.catalogue.measured import reading_faults, with_readings
from service.catalogue.plugged import wiring_faults
from service.demand.needs import needs_of
from service.intake import bounds
from service.intake.faults import Fault, Faults
from service.intake.records import Sheet, SheetLine
from service.parts.build import Build, Unit
from service.parts.canonical import digest
from service.parts.records import Adapter, Cable, Motherboard, Part, PowerSupply
from service.parts.words import OWN_FAMILY, SIGNAL_CONNECTORS

_NEAR_IDS = 3
_LISTED_IDS = 8
# Looking for near ids costs time for each id of the edition, so it is done for the first few unknown parts only.
_LOOKED_UP = 8
_ONE_SUPPLY = "is a second power supply; one supply per build: check each machine, or each supply, by itself"
_ONE_BOARD = "is a second motherboard; one motherboard per build: check each machine by itself"

Found = tuple[Part, str]


def resolve(sheet: Sheet, edition: Edition) -> Build:
    """Return the build that a sheet describes, or raise ``Faults``."""
    found, faults = _parts(sheet, edition)
    if not faults:
        faults = [*_second_machines(sheet, found), *_totals(sheet, found), *_loose_cables(sheet, found)]
    if not faults and (sheet.wiring or sheet.readings):
        parts, quantities = [part for part, _ in found], [line.quantity for line in sheet.lines]
        faults = [
            *wiring_faults(sheet.wiring or (), parts, quantities), *reading_faults(sheet.readings, parts, quantities),
        ]
    if faults:
        raise Faults(faults)
    units, readings = with_readings(_units(sheet, found), sheet.readings)
    return Build(
        units=units, use=sheet.use, site=sheet.site, wiring=sheet.wiring, wiring_rest=sheet.wiring_rest,
        aspects=sheet.aspects, would_settle=sheet.would_settle, size=sheet.size, reference=sheet.reference,
        edition=edition.name,
        adapters_on_offer=edition.adapters,
        runs=sheet.runs, readings=readings,
    )


def _parts(sheet: Sheet, edition: Edition) -> tuple[list[Found], list[Fault]]:
    """Return part and digest of each line, and a fault for each line that names none."""
    found: list[Found] = []
    faults: list[Fault] = []
    by_id = edition.by_id
    for index, line in enumerate(sheet.lines):
        if line.spec is not None:
            found.append((line.spec, digest(line.spec)))
            continue
        entry = by_id.get(line.part_id) if line.part_id is not None else _by_number(line, edition)
        if entry is not None:
            found.append((entry.part, entry.digest))
        else:
            faults.append(_unknown(index, line, edition, near=len(faults) < _LOOKED_UP))
    return found, faults


def _by_number(line: SheetLine, edition: Edition) -> Entry | None:
    """Return the one entry with the number of a line."""
    if line.gtin is not None:
        return edition.by_gtin.get(line.gtin)
    several = edition.by_mpn.get(mpn_key(line.mpn or ""), ())
    return several[0] if len(several) == 1 else None


def _unknown(index: int, line: SheetLine, edition: Edition, *, near: bool) -> Fault:
    """Return the fault of a line that names no part, or more than one."""
    missing = f"is not in edition {edition.name}"
    if line.part_id is not None:
        alike = get_close_matches(line.part_id, edition.by_id, _NEAR_IDS) if near else []
        return Fault(f"/parts/{index}/part", f"{missing}; near it: {', '.join(alike)}" if alike else missing)
    if line.gtin is not None:
        return Fault(f"/parts/{index}/gtin", missing)
    ids = [entry.id for entry in edition.by_mpn.get(mpn_key(line.mpn or ""), ())]
    if not ids:
        return Fault(f"/parts/{index}/mpn", missing)
    listed = ", ".join(ids[:_LISTED_IDS])
    return Fault(f"/parts/{index}/mpn", f"is the number of {len(ids)} parts; name one by its id: {listed}")


def _second_machines(sheet: Sheet, found: list[Found]) -> Iterator[Fault]:
    """Yield a fault at each supply or board beyond the first."""
    for kind, name, said in ((PowerSupply, "power supply", _ONE_SUPPLY), (Motherboard, "motherboard", _ONE_BOARD)):
        at = [index for index, (part, _) in enumerate(found) if isinstance(part, kind)]
        for index in at[1:]:
            yield Fault(f"/parts/{index}", said)
        if at and sheet.lines[at[0]].quantity > 1:
            yield Fault(f"/parts/{at[0]}/quantity", f"must be 1 for a {name}; one {name.split()[-1]} per build")


def _loose_cables(sheet: Sheet, found: list[Found]) -> Iterator[Fault]:
    """Yield a fault for each socket or group that a cable bought separately names and the supply does not list.

    A cable of another family names the sockets of another supply: that is judged, not refused.
    """
    supply = next((part for part, _ in found if isinstance(part, PowerSupply)), None)
    if supply is None:
        return
    labels, groups = {socket.label for socket in supply.sockets}, {group.name for group in supply.groups}
    for index, (part, _) in enumerate(found):
        if not isinstance(part, Cable) or part.family not in (None, OWN_FAMILY, supply.cable_family):
            continue
        at = f"/parts/{index}" if sheet.lines[index].spec is None else f"/parts/{index}/spec"
        if labels and any(label not in labels for label, _ in part.occupies):
            yield Fault(f"{at}/occupies", "names a socket that the supply of this sheet does not list")
        if part.group is not None and part.group not in groups:
            yield Fault(f"{at}/group", "names a group that the supply of this sheet does not list")


def _totals(sheet: Sheet, found: list[Found]) -> Iterator[Fault]:
    """Yield a fault for each thing of which a build would have too many."""
    devices = cables = adapters = power = signal = offered = 0
    for line, (part, _) in zip(sheet.lines, found, strict=True):
        match part:
            case PowerSupply():
                cables += line.quantity * sum(cable.quantity for cable in part.cables or ())
                continue
            case Cable():
                cables += line.quantity * part.quantity
                continue
            case Adapter():
                adapters += line.quantity * part.quantity
                continue
        devices += line.quantity
        adapters += line.quantity * sum(adapter.quantity for adapter in getattr(part, "adapters", ()))
        offered += line.quantity * sum(offer.count for offer in getattr(part, "offers", ()) or ())
        for need in needs_of(part):
            if need.connector in SIGNAL_CONNECTORS:
                signal += line.quantity * need.count
            else:
                power += line.quantity * need.count
    counted = (
        (devices, bounds.MOST_DEVICES, "devices"), (cables, bounds.MOST_CABLES, "cables"),
        (adapters, bounds.MOST_ADAPTERS, "adapters"), (power, bounds.MOST_POWER_PORTS, "power ports"),
        (signal, bounds.MOST_SIGNAL_PORTS, "signal ports"), (offered, bounds.MOST_OFFERED_PORTS, "ports on offer"),
    )
    for number, most, what in counted:
        if number > most:
            yield Fault("/parts", f"makes {number} {what} in all; {most} are allowed")


def _units(sheet: Sheet, found: list[Found]) -> tuple[Unit, ...]:
    """Return every piece, in order of digest, line and copy."""
    ranked = sorted((found[index][1], index) for index in range(len(found)))
    lines = sheet.lines
    return tuple(
        Unit(found[index][0], code, index, copy) for code, index in ranked for copy in range(lines[index].quantity)
    )
