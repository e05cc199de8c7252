"""The supply's side of a case: rails, combined limits, short moments, warmth and the wall."""

from collections.abc import Sequence

from service.case.case import CombinedLoad, GroupLoad, MomentLoad, RailLoad, Wall
from service.case.place import Place
from service.demand.demand import Demand
from service.demand.ends import Ends
from service.facts import efficiency, mains, supply
from service.parts.build import Build
from service.parts.records import PowerSupply
from service.parts.words import RAILS, SIXTEEN_PIN
from service.physics.conversion import efficiency_at, wall_amps, wall_watts
from service.physics.excursion import supply_envelope_watts
from service.wiring.objective import Judgement, group_loads
from service.wiring.problem import Problem

_MILLI = 1000
_NOMINAL_VOLTS: dict[str, float] = {"12v": 12.0, "5v": 5.0, "3v3": 3.3, "5vsb": 5.0}
_TWELVE_VOLT_ONLY = "atx12vo"
_SMALL_RAILS = ("5v", "3v3")


def rails(part: PowerSupply, unit: int, demand: Demand, ends: Ends) -> list[RailLoad]:
    """Return each rail's load against what it gives; a 12 V only supply has no 5 V and 3.3 V."""
    given = {limit.rail: limit.max_amps for limit in part.rails}
    found = []
    for at, rail in enumerate(RAILS):
        if part.design == _TWELVE_VOLT_ONLY and rail != "12v" and rail not in given:
            continue
        usual, scale = supply.usual_rail_amps(rail, part.design, part.rated_watts)
        most = ends.rating(given.get(rail), unit, f"rails/{rail}/max_amps", usual, scale)
        place = Place("rail", unit, (rail,))
        found.append(RailLoad(place, rail, demand.sustained[at] / _MILLI, demand.starting[at] / _MILLI, most))
    return found


def combined(part: PowerSupply, unit: int, demand: Demand, ends: Ends) -> list[CombinedLoad]:
    """Return each combined limit's load at nominal volts, sustained and at start-up.

    Where a supply states none, one of its small rails is assumed; a 12 V only supply has no small rails.
    """
    running = _watts_by_rail(demand.sustained)
    starting = _watts_by_rail(demand.starting)
    limits = [
        (Place("combined", unit, (at,)), limit.rails, limit.watts) for at, limit in enumerate(part.combined_limits)
    ]
    if not limits and part.design != _TWELVE_VOLT_ONLY:
        watts = ends.rating(None, unit, "combined_limits", supply.SMALL_RAILS_TOGETHER_WATTS)
        limits = [(Place("combined", unit), _SMALL_RAILS, watts)]
    return [
        CombinedLoad(at, rails, sum(running[r] for r in rails), sum(starting[r] for r in rails), watts)
        for at, rails, watts in limits
    ]


def starting_watts(demand: Demand) -> float:
    """Return the watts of all rails at start-up, at nominal volts."""
    return sum(_watts_by_rail(demand.starting).values())


def _watts_by_rail(milliamps: Sequence[int]) -> dict[str, float]:
    return {rail: milliamps[at] / _MILLI * _NOMINAL_VOLTS[rail] for at, rail in enumerate(RAILS)}


def groups(part: PowerSupply, unit: int, problem: Problem, judgement: Judgement) -> list[GroupLoad]:
    """Return what a plan puts on each overcurrent group, sustained and at start-up."""
    starting = group_loads(problem, judgement.segments, starting=True)
    return [
        GroupLoad(
            Place("group", unit, (at,)), group.name, group.rail, running / _MILLI, start / _MILLI, group.max_amps
        )
        for at, (group, running, start) in enumerate(zip(part.groups, judgement.groups, starting, strict=True))
    ]


def moments(part: PowerSupply, unit: int, demand: Demand) -> list[MomentLoad]:
    """Return each short moment against the supply's envelope; a 2.x design promises none."""
    promises = part.design != supply.DESIGN_WITHOUT_ENVELOPE
    has_plug = any(plug.connector in SIXTEEN_PIN for cable in part.cables or () for plug in cable.plugs)
    is_large = supply.is_large(part.rated_watts, has_plug)
    found = []
    for at, moment in enumerate(demand.moments):
        own = supply_envelope_watts(part.rated_watts, moment.microseconds, large=is_large)
        large = supply_envelope_watts(part.rated_watts, moment.microseconds, large=True)
        found.append(
            MomentLoad(
                Place("moment", unit, (moment.microseconds, at)),
                moment.microseconds,
                moment.watts,
                moment.all_cards_watts,
                moment.stated,
                moment.beyond_formula,
                own if promises else None,
                own,
                large,
            )
        )
    return found


def wall(build: Build, part: PowerSupply, unit: int, demand: Demand, ends: Ends) -> Wall:
    """Return what the machine takes from the wall at its sustained load."""
    site = build.site
    volts = ends.rating(site.mains_volts, -1, "site/mains_volts", mains.USUAL_MAINS_VOLTS)
    load = min(100.0, 100.0 * demand.sustained_watts / part.rated_watts)
    percent = _efficiency(part, unit, load, volts, ends)
    factor = ends.rating(part.power_factor, unit, "power_factor", efficiency.USUAL_POWER_FACTOR)
    watts = wall_watts(demand.sustained_watts, percent)
    low_mains = volts <= mains.NEC_MAX_VOLTS.value
    inlet = mains.INLET_AMPS[part.inlet, low_mains].value if part.inlet else None
    return Wall(
        watts,
        wall_amps(watts, volts, factor),
        watts / factor,
        percent,
        factor,
        volts,
        site.code == "nec" if site.code else low_mains,
        site.circuit_amps,
        inlet,
        site.ups_watts,
        site.ups_volt_amperes,
    )


def _efficiency(part: PowerSupply, unit: int, load_percent: float, volts: float, ends: Ends) -> float:
    if part.efficiency_points:
        return efficiency_at(load_percent, part.efficiency_points)
    if part.efficiency_level is None:
        return ends.rating(None, unit, "efficiency_level", efficiency.USUAL_EFFICIENCY_PERCENT)
    return efficiency_at(load_percent, efficiency.points(part.efficiency_level, volts))
