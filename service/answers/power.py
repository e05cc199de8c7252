"""The numbers of a case as JSON: rails, groups, moments, wall, and what every connection carries."""

from typing import Any

from service.answers.pointers import line_of, port
from service.case.case import Case, Joint, Wall

Json = dict[str, Any]
RAILS = ("12v", "5v", "3v3")


def power(case: Case) -> Json:
    """Return the numbers of a case at its end of every range."""
    return {
        "sustained_watts": round(case.sustained_watts, 1),
        "rails": {
            rail.rail: {"sustained_amps": round(rail.sustained_amps, 3), "starting_amps": round(rail.starting_amps, 3),
                        "max_amps": round(rail.max_amps, 3)}
            for rail in case.rails
        },
        "groups": [
            {"name": group.name, "rail": group.rail, "amps": round(group.amps, 3), "max_amps": group.max_amps}
            for group in case.groups
        ],
        "moments": [
            {"microseconds": m.microseconds, "watts": round(m.watts, 1), "all_cards_watts": round(m.all_cards_watts, 1),
             "stated": m.stated, "beyond_formula": m.beyond_formula,
             "promised_watts": None if m.promised_watts is None else round(m.promised_watts, 1)}
            for m in case.moments
        ],
        "wall": None if case.wall is None else _wall(case.wall),
        "connections": [_carried(case, joint) for joint in _in_order(case)],
    }


def _in_order(case: Case) -> list[Joint]:
    units = case.build.units
    return sorted(case.joints, key=lambda j: (units[j.at.unit].line, units[j.at.unit].copy, j.at.detail))


def _wall(wall: Wall) -> Json:
    return {
        "watts": round(wall.watts, 1), "amps": round(wall.amps, 2), "volt_amperes": round(wall.volt_amperes, 1),
        "efficiency_percent": round(wall.efficiency_percent, 2), "power_factor": wall.power_factor,
        "mains_volts": wall.mains_volts,
    }


def _carried(case: Case, joint: Joint) -> Json:
    return {
        "part": line_of(case.build, joint.at.unit), "copy": case.build.units[joint.at.unit].copy + 1,
        "port": port(joint.at), "amps": dict(zip(RAILS, joint.sustained_amps, strict=True)),
        "starting_amps": dict(zip(RAILS, joint.starting_amps, strict=True)), "use_percent": joint.use_percent,
    }
