"""The plan as JSON; its connections have the very shape of ``wiring`` in a request.

So that a plan can be posted back.
"""

from typing import Any

from service.answers.pointers import adapter_of, cable_copy, cable_of, line_of, piece_number, port
from service.case.case import Case, FeedAdapter, FeedPlug, Joint
from service.case.place import Place
from service.intake.specs import spec_of
from service.parts.build import Build
from service.parts.records import Adapter, Cable, ExpansionCard, GraphicsCard

Json = dict[str, Any]


def plan(case: Case) -> Json | None:
    """Return the plan of a case, or None where there is no supply to plan for."""
    if case.supply is None:
        return None
    build = case.build
    return {
        "proven": case.proven,
        "connections": [connection(build, joint) for joint in _real(case)],
        "not_fed": [_not_fed(case, at) for at in range(len(case.open_ports))],
        "to_buy": [_purchase(case, at) for at in range(len(case.to_buy))],
        "spare_cables": _spare(case),
        "loose_plugs": [
            {
                "cable": cable_of(build, at.unit, at.cable),
                "copy": cable_copy(build, at.unit, at.cable, at.copy),
                "plug": at.plug + 1,
                "connector": at.connector,
            }
            for at in case.loose
            if at.unit >= 0
        ],
    }


def _purchase(case: Case, at: int) -> Json:
    """Return what to get, as a line of a sheet could hold it, and what it settles together with the rest."""
    purchase = case.to_buy[at]
    return {
        "plugs": _plugs(purchase.part),
        "count": purchase.pieces,
        "spec": spec_of(purchase.part),
        "stops_left": purchase.stops_left,
        "feeds": [_at(case, place) for place in purchase.feeds],
    }


def _plugs(part: Cable | Adapter) -> list[str]:
    if isinstance(part, Adapter):
        return [part.gives.connector] * part.gives.count
    return [plug.connector for plug in part.plugs]


def _at(case: Case, place: Place) -> Json:
    """Return a port and whose it is."""
    build = case.build
    return {"part": line_of(build, place.unit), "copy": build.units[place.unit].copy + 1, "port": port(place)}


def _real(case: Case) -> list[Joint]:
    """Return the joints that are made of pieces that are there, in sheet order."""
    real = [joint for joint in case.joints if all(plug.unit >= 0 for plug in joint.plugs)]
    units = case.build.units
    return sorted(real, key=lambda j: (units[j.at.unit].line, units[j.at.unit].copy, j.at.detail))


def connection(build: Build, joint: Joint) -> Json:
    """Return one connection."""
    entry = build.units[joint.at.unit]
    return {
        "part": line_of(build, joint.at.unit),
        "copy": entry.copy + 1,
        "port": port(joint.at),
        "adapters": [_adapter(build, adapter) for adapter in joint.adapters],
        "plugs": [_plug(build, plug) for plug in joint.plugs],
    }


def _adapter(build: Build, at: FeedAdapter) -> Json:
    entry = build.units[at.unit]
    entries = entry.part.adapters if isinstance(entry.part, GraphicsCard | ExpansionCard) else ()
    return {
        "adapter": adapter_of(build, at.unit, at.entry),
        "copy": piece_number(entry, at.entry, at.copy, entries),
        "inputs": at.inputs,
    }


def _plug(build: Build, at: FeedPlug) -> Json:
    return {
        "cable": cable_of(build, at.unit, at.cable),
        "copy": cable_copy(build, at.unit, at.cable, at.copy),
        "plug": at.plug + 1,
        "sockets": list(at.sockets),
        "open_contacts": at.open_contacts,
    }


def _not_fed(case: Case, at: int) -> Json:
    open_port = case.open_ports[at]
    found = _at(case, open_port.at) | {"required": open_port.required, "reason": open_port.reason}
    if open_port.short_by_mm:
        found["short_by_mm"] = round(open_port.short_by_mm, 1)
    return found


def _spare(case: Case) -> list[Json]:
    counts: dict[str, int] = {}
    for at in case.spare:
        pointer = cable_of(case.build, at.unit, at.cable)
        counts[pointer] = counts.get(pointer, 0) + 1
    return [{"cable": pointer, "copies": count} for pointer, count in sorted(counts.items())]
