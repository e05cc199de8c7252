"""The supply's side of a case: rails, combined limits, short moments, warmth and the wall."""

from collections.abc import Sequence

from service.case.case import CombinedLoad, EfficiencyBasis, GroupLoad, MomentLoad, Promises, RailLoad, Wall
from service.case.place import Place
from service.demand.demand import Demand
from service.demand.ends import Ends
from service.facts import efficiency, hold_up, mains, supply
from service.facts.fact import WHOLE
from service.parts.build import Build, Site
from service.parts.records import PowerSupply
from service.parts.words import RAILS, SIXTEEN_PIN
from service.physics.conversion import efficiency_at, wall_amps, wall_watts
from service.physics.derating import derated_watts
from service.physics.excursion import supply_envelope_watts
from service.physics.mains import volt_amperes
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
        least = supply.least_amps(rail, part.design)
        found.append(RailLoad(place, rail, demand.sustained[at] / _MILLI, demand.starting[at] / _MILLI, most, least))
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
    """Return each short moment against the supply's envelope.

    A 2.x design promises none: its 16-pin plug brings it no large column, so the small one is its own.
    """
    promises = part.design != supply.DESIGN_WITHOUT_ENVELOPE
    has_plug = any(plug.connector in SIXTEEN_PIN for cable in part.cables or () for plug in cable.plugs)
    is_large = supply.is_large(part.rated_watts, has_plug and promises)
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


def promises(part: PowerSupply, room_celsius: float, rated_at_celsius: float) -> Promises:
    """Return what a supply promises in the warmth of the room, and by its design."""
    easy = hold_up.EASY_MS.get(part.design)
    return Promises(
        derated_watts(part.rated_watts, room_celsius, rated_at_celsius, supply.DERATING_PERCENT.value),
        hold_up.HOLD_UP_MS[part.design].value,
        None if easy is None else easy.value,
        efficiency.low_load_watts(part.design, part.rated_watts),
    )


def wall(build: Build, part: PowerSupply, unit: int, demand: Demand, ends: Ends) -> Wall:
    """Return what the machine takes from the wall at its sustained load."""
    site = build.site
    volts = ends.rating(site.mains_volts, -1, "site/mains_volts", mains.USUAL_MAINS_VOLTS)
    load = min(WHOLE, WHOLE * demand.sustained_watts / part.rated_watts)
    percent, basis = _efficiency(part, unit, load, volts, ends)
    usual = efficiency.usual_power_factor(part.efficiency_level)
    factor = ends.rating(part.power_factor, unit, "power_factor", usual)
    watts = wall_watts(demand.sustained_watts, percent)
    low_mains = volts <= mains.NEC_MAX_VOLTS.value
    inlet = mains.INLET_AMPS[part.inlet, low_mains].value if part.inlet else None
    return Wall(
        watts,
        wall_amps(watts, volts, factor),
        volt_amperes(watts, factor),
        percent,
        basis,
        factor,
        volts,
        site.code == "nec" if site.code else low_mains,
        site.circuit_amps,
        inlet,
        _plug_fuse(site, ends),
        site.ups_watts,
        site.ups_volt_amperes,
        _transfer(site, ends),
    )


def _plug_fuse(site: Site, ends: Ends) -> float | None:
    """Return the fuse in the plug; only where the code has plugs with fuses is one assumed that is not given."""
    if site.code != mains.CODE_WITH_PLUG_FUSE:
        return site.plug_fuse_amps
    return ends.rating(site.plug_fuse_amps, -1, "site/plug_fuse_amps", mains.USUAL_PLUG_FUSE_AMPS)


def _transfer(site: Site, ends: Ends) -> float | None:
    """Return how long the UPS takes to change over; None where there is no UPS."""
    if site.ups_watts is None and site.ups_volt_amperes is None:
        return None
    given = site.ups_transfer_milliseconds
    return ends.load_of(given, -1, "site/ups/transfer_milliseconds", hold_up.UPS_TRANSFER_MS)


def _efficiency(
    part: PowerSupply, unit: int, load_percent: float, volts: float, ends: Ends
) -> tuple[float, EfficiencyBasis]:
    """Return the efficiency at a load: by the sheet's own points, by level, or between what guide and trade say."""
    if part.efficiency_points:
        return efficiency_at(load_percent, part.efficiency_points), "points"
    if part.efficiency_level is not None:
        points = efficiency.points_of(part.efficiency_level, volts, part.design, part.rated_watts)
        return efficiency_at(load_percent, points), "level"
    field, most = "efficiency_level", efficiency.USUAL_EFFICIENCY_PERCENT.high
    least = efficiency_at(load_percent, efficiency.LEAST_POINTS)
    used = least if ends.worst(unit, field) else most
    ends.note(unit, field, least, most, used, efficiency.USUAL_EFFICIENCY_PERCENT)
    return used, "assumed"
