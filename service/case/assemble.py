"""Putting a case together: demand, wiring and the supply's side, at one end of every range."""

from dataclasses import replace
from typing import NamedTuple

from service.case import supply as side
from service.case.case import Case, HeaderLoad, Joint, OpenPort
from service.case.joints import Reader, impossible
from service.case.place import Place
from service.case.purchase import to_buy
from service.case.readings import raised, readings
from service.case.runs import runs
from service.case.wired import Asked, Wired, asked
from service.demand.demand import Demand
from service.demand.ends import Ends, Settled
from service.facts import rest, supply
from service.parts.build import Build, Plugged
from service.parts.figures import End
from service.parts.records import PowerSupply

_MILLI = 1000


class Assembled(NamedTuple):
    """A case, and the fields of which a range was looked at, as (unit, field)."""

    case: Case
    wide: tuple[tuple[int, str], ...]


def assemble(
    build: Build,
    end: End,
    settled: Settled = frozenset(),
    *,
    purchase: bool = False,
    worn: tuple[Plugged, ...] = (),
) -> Assembled:
    """Return the case of a build at one end of every range; ``settled`` fields stand at their favourable end.

    ``purchase``: where the plan is short of something, also look for what to buy. ``worn``: a wiring of which a plan
    keeps nothing but the contacts that are stated open.
    """
    unit = next((at for at, entry in enumerate(build.units) if isinstance(entry.part, PowerSupply)), None)
    found = asked(build, unit, end, settled, worn)
    case = _case(build, end, unit, found)
    if purchase and unit is not None:
        case = _with_purchase(case, build, unit, found.demand, found.ends)
    return Assembled(case, tuple(dict.fromkeys(found.ends.wide)))


def _with_purchase(case: Case, build: Build, unit: int, demand: Demand, ends: Ends) -> Case:
    """Return a case with what to buy; what is supposed on the way there is no business of the case's own ranges."""
    if not case.objective[0]:
        return case
    bought = to_buy(
        build, unit, demand, case,
        lambda: Ends(case.end, ends.settled), lambda changed: assemble(changed, case.end, ends.settled).case,
    )
    return replace(case, to_buy=bought) if bought else case


def _case(
    build: Build,
    end: End,
    unit: int | None,
    found: Asked,
) -> Case:
    ends, demand, wired = found.ends, found.demand, found.wired
    part = build.units[unit].part if unit is not None else None
    assert part is None or isinstance(part, PowerSupply)
    reader = None if wired is None else Reader(build, wired.frame, wired.wiring, wired.judgement)
    joints, open_ports = _connections(wired, reader)
    rated_at = ends.rating(
        part.rated_at_celsius if part is not None else None,
        unit if unit is not None else -1,
        "rated_at_celsius",
        supply.RATED_AT_CELSIUS,
    )
    room = ends.load_of(build.site.room_celsius, -1, "site/room_celsius", rest.ROOM_CELSIUS)
    rails = tuple(side.rails(part, unit, demand, ends)) if part and unit is not None else ()
    read = tuple(readings(build, part, rails, joints)) if build.readings else ()
    loaded = tuple(runs(build, ends, room))
    return Case(
        build=build,
        end=end,
        supply=unit,
        supply_part=part,
        demand=demand,
        sustained_watts=demand.sustained_watts,
        starting_watts=side.starting_watts(demand),
        joints=joints,
        stretches=tuple(reader.stretches()) if reader else (),
        open_ports=open_ports,
        shares=tuple(reader.shares()) if reader else (),
        rails=raised(rails, build) if build.readings else rails,
        combined=tuple(side.combined(part, unit, demand, ends)) if part and unit is not None else (),
        groups=tuple(side.groups(part, unit, wired.frame.problem, wired.judgement))
        if part and unit is not None and wired
        else (),
        moments=tuple(side.moments(part, unit, demand)) if part and unit is not None else (),
        wall=side.wall(build, part, unit, demand, ends) if part and unit is not None else None,
        room_celsius=room,
        rated_at_celsius=rated_at,
        promises=side.promises(part, room, rated_at) if part else None,
        headers=tuple(_headers(demand)),
        headless=tuple(Place("header", at, (connector, number)) for at, connector, number in demand.headless),
        spare=tuple(reader.spare()) if reader else (),
        loose=tuple(reader.loose()) if reader else (),
        foreign_spare=tuple(reader.foreign_spare()) if reader else (),
        to_buy=(),
        proven=demand.hung_proven and (wired is None or wired.proven),
        stopped=found.stopped,
        objective=wired.judgement.objective if wired else (),
        assumed=tuple(ends.assumed),
        runs=loaded,
        readings=read,
    )


def _connections(wired: Wired | None, reader: Reader | None) -> tuple[tuple[Joint, ...], tuple[OpenPort, ...]]:
    """Return the joints and the open ports; a port with an impossible plug is a joint and not open."""
    if wired is None or reader is None:
        return (), ()
    wrong = [impossible(each) for each in wired.frame.impossible]
    taken = {joint.at for joint in wrong}
    return (*reader.joints(), *wrong), tuple(port for port in reader.open_ports() if port.at not in taken)


def _headers(demand: Demand) -> list[HeaderLoad]:
    return [
        HeaderLoad(
            Place("header", header.unit, (header.connector,)),
            header.connector,
            header.milliamps / _MILLI,
            None if header.max_milliamps is None else header.max_milliamps / _MILLI,
        )
        for header in demand.headers
    ]

