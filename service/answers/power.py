"""The numbers of a case as JSON: rails, groups, moments, wall, and what every connection carries."""

from typing import Any

from service.answers.pointers import cable_copy, cable_of, line_of, port
from service.case.case import Case, Drop, Heat, Joint, Passage, Promises, Wall
from service.facts.efficiency import LOW_LOAD_PERCENT, LOW_LOAD_RECOMMENDED_PERCENT
from service.facts.hold_up import EASY_LOAD_PERCENT
from service.physics.mains import (
    WATTS_A_KILOWATT,
    circuit_amps,
    continuous_amps,
    heat_btu_per_hour,
    kilowatt_hours_a_year,
)

Json = dict[str, Any]
RAILS = ("12v", "5v", "3v3")


def power(case: Case) -> Json:
    """Return the numbers of a case at its end of every range."""
    return {
        "sustained_watts": round(case.sustained_watts, 1), "starting_watts": round(case.starting_watts, 1),
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
        "promises": None if case.promises is None else _promises(case, case.promises),
        "wall": None if case.wall is None else _wall(case, case.wall),
        "connections": [_carried(case, joint) for joint in _in_order(case)],
        "cables": _cables(case),
    }


def _in_order(case: Case) -> list[Joint]:
    units = case.build.units
    return sorted(case.joints, key=lambda j: (units[j.at.unit].line, units[j.at.unit].copy, j.at.detail))


def _promises(case: Case, given: Promises) -> Json:
    """Return what the supply promises by its design and in the warmth of its room."""
    return {
        "room_celsius": case.room_celsius, "rated_at_celsius": case.rated_at_celsius,
        "room_watts": round(given.room_watts, 1),
        "hold_up": {
            "milliseconds": given.hold_up_milliseconds,
            "recommended_milliseconds": given.easy_hold_up_milliseconds,
            "recommended_at_percent": None if given.easy_hold_up_milliseconds is None else EASY_LOAD_PERCENT.value,
        },
        "low_load": None if given.low_load_watts is None else {
            "watts": round(given.low_load_watts, 1), "least_percent": LOW_LOAD_PERCENT.value,
            "recommended_percent": LOW_LOAD_RECOMMENDED_PERCENT.value,
        },
    }


def _wall(case: Case, wall: Wall) -> Json:
    hours = case.build.use.hours_a_day
    return {
        "watts": round(wall.watts, 1), "amps": round(wall.amps, 2), "volt_amperes": round(wall.volt_amperes, 1),
        "efficiency_percent": round(wall.efficiency_percent, 2), "efficiency_basis": wall.efficiency_basis,
        "power_factor": wall.power_factor, "mains_volts": wall.mains_volts,
        "continuous_rule": wall.continuous_rule, "least_circuit_amps": round(_least_circuit(wall), 2),
        "circuit_amps": wall.circuit_amps, "circuit_most_amps": _most_of_circuit(wall),
        "inlet_amps": wall.inlet_amps, "plug_fuse_amps": wall.plug_fuse_amps,
        "heat_btu_per_hour": round(heat_btu_per_hour(wall.watts)),
        "kilowatt_hours_an_hour": round(wall.watts / WATTS_A_KILOWATT, 3),
        "kilowatt_hours_a_year": None if hours is None else round(kilowatt_hours_a_year(wall.watts, hours)),
    }


def _least_circuit(wall: Wall) -> float:
    """Return the least circuit for the machine alone: 125 % of its amps where the rule for hours on end holds."""
    return circuit_amps(wall.amps) if wall.continuous_rule else wall.amps


def _most_of_circuit(wall: Wall) -> float | None:
    """Return the most that the circuit may carry for hours on end."""
    if wall.circuit_amps is None:
        return None
    return round(continuous_amps(wall.circuit_amps), 2) if wall.continuous_rule else wall.circuit_amps


def _carried(case: Case, joint: Joint) -> Json:
    near, tightest, step = joint.way
    shown = [_passage(each) for each in near]
    found: Json = {
        "part": line_of(case.build, joint.at.unit), "copy": case.build.units[joint.at.unit].copy + 1,
        "port": port(joint.at), "amps": dict(zip(RAILS, joint.sustained_amps, strict=True)),
        "starting_amps": dict(zip(RAILS, joint.starting_amps, strict=True)), "use_percent": joint.use_percent,
        "joints": shown,
    }
    if step is not None and tightest is not None:
        found["tightest"] = _passage(tightest) | {"stretch": step + 1}
    elif tightest is not None:
        found["tightest"] = shown[near.index(tightest)]
    if joint.drops:
        found["volts"] = {one.rail: _drop(one) for one in joint.drops}
    if joint.heats:
        found["warmth"] = [_heat(one) for one in joint.heats]
    return found


def _heat(heat: Heat) -> Json:
    found = {
        "at": heat.spot, "connector": heat.connector, "contacts": heat.contacts, "open_contacts": heat.open_contacts,
        "amps": round(heat.even_amps, 3), "rise_celsius": round(heat.even_rise_celsius, 1), "basis": "estimate",
    }
    if heat.hottest_amps is not None and heat.hottest_rise_celsius is not None:
        found["worst"] = {
            "amps": round(heat.hottest_amps, 3), "rise_celsius": round(heat.hottest_rise_celsius, 1),
            "contact_rating_amps": heat.rated_amps, "length_mm": heat.length_mm, "awg": heat.awg,
            "assumed": list(heat.assumed),
        }
    return found


def _drop(drop: Drop) -> Json:
    return {
        "volts": round(drop.volts, 3), "lowest_volts": round(drop.lowest, 3),
        "cautious_volts": round(drop.cautious, 3), "lost_watts": round(drop.lost_watts, 2),
    }


def _passage(at: Passage) -> Json:
    """Return what passes a place; a rating of the whole has no contacts to be counted. Ratings are whole milliamps."""
    spot, cause, rail, amps, contacts, each_amps, rated_amps, basis, reserve = at
    if not contacts:
        return {
            "at": spot, "what": cause, "rail": rail, "amps": amps, "rating_amps": rated_amps, "basis": basis,
            "reserve": round(reserve, 3),
        }
    return {
        "at": spot, "what": cause, "rail": rail, "amps": amps, "contacts": contacts,
        "amps_per_contact": round(each_amps, 3), "contact_rating_amps": rated_amps, "basis": basis,
        "reserve": round(reserve, 3),
    }


def _cables(case: Case) -> list[Json]:
    """Return what each stretch of each cable carries, the one at the supply first."""
    build = case.build
    found: dict[tuple[int, int, int], Json] = {}
    for unit, cable, copy, plug, through in case.stretches:
        if unit < 0:
            continue
        at = found.setdefault((unit, cable, copy), {
            "cable": cable_of(build, unit, cable), "copy": cable_copy(build, unit, cable, copy), "stretches": [],
        })
        at["stretches"].append({"up_to_plug": plug + 1, "carries": [_passage(each) for each in through]})
    return list(found.values())
