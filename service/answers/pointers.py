"""From places and units to JSON pointers into the build sheet, every part taken as filled in from its spec."""

from collections.abc import Sequence
from typing import Any

from service.case.place import Place
from service.parts.build import Build, Unit
from service.parts.records import Adapter, Cable, PowerSupply


def line_of(build: Build, unit: int) -> str:
    """Return the pointer of the line that a unit stands on."""
    return f"/parts/{build.units[unit].line}"


def field_of(build: Build, unit: int, field: str) -> str:
    """Return the pointer of a field: of a part, or with unit -1 of the request."""
    return f"/{field}" if unit < 0 else f"{line_of(build, unit)}/{field}"


def where(build: Build, place: Place) -> list[str]:
    """Return the pointers of a place."""
    if place.unit < 0:
        return [f"/runs/{place.detail[0]}"] if place.kind == "run" else [""]
    line = line_of(build, place.unit)
    match place.kind:
        case "rail":
            return [f"{line}/rails/{place.detail[0]}"]
        case "group":
            return [f"{line}/groups/{place.detail[0]}"]
        case "combined":
            return [f"{line}/combined_limits/{place.detail[0]}" if place.detail else f"{line}/combined_limits"]
        case "cable":
            return [cable_of(build, place.unit, int(place.detail[0]))]
        case "bay":
            return [f"{line}/bays/{place.detail[0]}"] if place.detail else [f"{line}/bays"]
        case _:
            return [line]


def cable_of(build: Build, unit: int, index: int) -> str:
    """Return the pointer of a cable: an entry of the supply's box, or a line of its own."""
    line = line_of(build, unit)
    return line if index < 0 else f"{line}/cables/{index}"


def adapter_of(build: Build, unit: int, index: int) -> str:
    """Return the pointer of an adapter: an entry of those bundled with a card, or a line of its own."""
    line = line_of(build, unit)
    return line if index < 0 else f"{line}/adapters/{index}"


def piece_number(entry: Unit, index: int, copy: int, entries: Sequence[Any] = ()) -> int:
    """Return which piece, from 1, counted through the copies of a line and the quantity of its entry."""
    part = entry.part
    quantity = part.quantity if isinstance(part, Cable | Adapter) else entries[index].quantity
    return entry.copy * int(quantity) + copy + 1


def cable_copy(build: Build, unit: int, index: int, copy: int) -> int:
    """Return which piece of a cable, from 1, counted as ``piece_number``."""
    part = build.units[unit].part
    entries = part.cables or () if isinstance(part, PowerSupply) else ()
    return piece_number(build.units[unit], index, copy, entries)


def port(place: Place) -> dict[str, object]:
    """Return the outside form of a port."""
    connector, number = place.detail[:2]
    return {"connector": connector, "number": int(number) + 1}
