"""What hangs on other parts: fans on headers, drives in backplanes, hubs on either; their current goes up to the host.

What there is
    *Wants* of devices, one for each header, and one for the power plug of a device that has just one. The device's load
    comes by its power plug, else by its first header. *Ports* that boards, controllers and backplanes offer, each good
    for ``max_amps``, else for what is usual for its kind, else for nothing. Fan ports of three and four pins mate with
    each other, all others with their like. A board whose ``offers`` were not given has a port, good for anything, for
    every header that is required.

A placing
    gives each want one port that mates, or none; a port serves one want; no host is served by itself or by what it
    serves, over however many hosts between. What a host carries is added to its own draw and goes up with it.

The placing that is taken is the least by these levels, in this order, all counted in whole numbers:

    1  required headers that find no port;             2  of them those that hosts themselves want;
    3  power plugs that are left to a cable though a port mates: a drive goes into a bay while there is one;
    4  hosts one of whose drive plugs on a cable of the supply passes what its pins carry on a rail, for long or while
       drives spin up, what hangs on the host counted in and divided equally over its plugs;
    5  kinds of header, by host and connector, on which some port carries more than it is good for [mA on its fullest
       rail, sustained]: what AUX102 says;
    6  optional headers that find no port though one mates.

Levels 1 to 3 hang on no current, so neither does the choice that is left for the levels below, and in no placing can a
greater load or a smaller limit lessen 4 or 5: more load, or a stated limit that is deleted (if it is no less than the
usual one), never makes the best placing look better. More ports never make it worse by these levels. On a tie the plain
order is taken where it is among the best: headers of hosts first and their power plugs last, then the heaviest,
backplanes before controllers before boards, a port that carries it before one that does not; else the first that the
search comes upon. Units stand in canonical order.

The plain order is tried first, and taken where it leaves nothing to be wished for. ``placing`` settles the rest; it has
a budget of steps, and over it the best that was found is not ``proven``. ``others`` are for the wiring: where that
speaks, ``case`` weighs them all against it.
"""

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from service.demand.current import milliamps, plus
from service.demand.demand import NONE, Header, Triple
from service.demand.draws import Draw
from service.demand.placing import FIXED, Pins, Problem, Worth, best, depth, outcomes
from service.demand.plain import by_rule_of_thumb, plainly
from service.demand.wants import (
    BOARD_RANK,
    SIGNALS,
    Host,
    Placed,
    Spot,
    Want,
    family,
    limit_of,
    ready_spot,
    spots_of,
    wants_of,
)
from service.facts.contacts import CONTACTS, DRIVE_CONTACT_AMPS

MOST_DEPTH = 600
_PLUG_LIMITS = {name: milliamps(float(fact.value) * CONTACTS[name][0]) for name, fact in DRIVE_CONTACT_AMPS.items()}


class Hung(NamedTuple):
    """Loads added to hosts by unit, units in ``fed`` that need no plug of the supply, headers as filled.

    ``headless`` needs found no header. ``choice``: another placing may load the supply's plugs otherwise.
    """

    sustained: dict[int, Triple]
    starting: dict[int, Triple]
    fed: set[int]
    headers: list[Header]
    headless: list[tuple[int, str, int]]
    worth: Worth
    proven: bool
    choice: bool


class Others(NamedTuple):
    """The placings that load the supply's plugs differently, and whether these are all."""

    hung: list[Hung]
    complete: bool


def hang(problem: Problem) -> Hung:
    """Hang what can be hung, in the best way."""
    placed = plainly(problem)
    hung = _hung(placed, problem)
    if not any(hung.worth[FIXED:]) and not _mated([want for want, spot in placed if spot is None], problem.spots):
        return hung
    if not any(hung.worth[1:]) and hung.worth.headless == _fewest_headless(problem):
        return hung
    found = best(problem) if depth(problem) <= MOST_DEPTH else None
    if found is not None and found.worth < hung.worth:
        hung = _hung(found.placed, problem)
    if found is not None and found.proven:
        return hung
    by_thumb = [_hung(each, problem) for each in by_rule_of_thumb(problem)]
    return min([hung, *by_thumb], key=lambda each: each.worth)._replace(proven=False)


def _fewest_headless(problem: Problem) -> int:
    """Return how many required headers find no port in any placing: of each kind, those beyond the ports there are."""
    short: Counter[str] = Counter([family(want.connector) for want in problem.wants if want.only])
    for spot in problem.spots:
        short[family(spot.connector)] -= spot.ports
    return sum([number for number in short.values() if number > 0])


def floor(problem: Problem) -> Hung:
    """Return what no placing undercuts: hosts carry nothing, and the fewest and lightest plugs are left to cables.

    Where devices are not in order by all rails, none of them is left.
    """
    power: dict[str, list[Want]] = {}
    for want in _mated([want for want in problem.wants if not want.signal], problem.spots):
        power.setdefault(want.connector, []).append(want)
    fed = set()
    for connector, wants in power.items():
        ports = sum(spot.ports for spot in problem.spots if spot.connector == connector)
        wants.sort(key=lambda want: (sum(want.sustained) + sum(want.starting), want.unit))
        left = max(0, len(wants) - ports)
        lightest = all(_lighter(one, other) for one in wants[:left] for other in wants[left:])
        fed |= {want.unit for want in wants[left if lightest else 0 :]}
    return Hung({}, {}, fed, [], [], Worth(0, 0, 0, 0, 0, 0), proven=True, choice=False)


def _lighter(one: Want, other: Want) -> bool:
    """Say whether a device is no heavier than another on any rail, ever, and no more in want of its plug."""
    loads = zip((*one.sustained, *one.starting), (*other.sustained, *other.starting), strict=True)
    return one.optional >= other.optional and all(mine <= its for mine, its in loads)


def others(problem: Problem) -> Others:
    """Return a placing for each different load on the supply's plugs, those that overload fewest headers first."""
    found, complete = outcomes(problem) if depth(problem) <= MOST_DEPTH else ([], False)
    found.sort(key=lambda each: (each.worth.over, each.worth))
    hung = [_hung(each.placed, problem) for each in found]
    if not complete:
        # The search has changed its last few turns only; what differs much from its first way may be better.
        hung = [*(_hung(each, problem) for each in by_rule_of_thumb(problem)), *hung]
        fixed = min(each.worth[:FIXED] for each in hung)
        hung = [each for each in hung if each.worth[:FIXED] == fixed]
    return Others(hung, complete)


def state(draws: list[Draw], hosts: list[Host], plugged: frozenset[tuple[int, str]] = frozenset()) -> Problem:
    """Return the problem of devices and hosts.

    ``plugged`` are ports, as (unit, connector), that a cable of the supply is said to feed: these do not hang.
    """
    own = frozenset(at.unit for at in hosts)
    wants = [want for want in wants_of(draws) if not plugged or (want.unit, want.connector) not in plugged]
    if len(wants) > 1:
        wants.sort(key=lambda w: (w.optional, w.signal != (w.unit in own), *_heaviest(w), w.unit, w.connector))
    return Problem(wants, spots_of(hosts), ready_spot(hosts), own, _pins(draws, own), has_board=_has_board(hosts))


def _has_board(hosts: Iterable[Host]) -> bool:
    return any(at.rank == BOARD_RANK for at in hosts)


def _heaviest(want: Want) -> tuple[int, int]:
    return (-max(want.sustained), -max(want.starting))


def _pins(draws: Iterable[Draw], hosts: frozenset[int]) -> dict[int, Pins]:
    """Return the drive plugs by which hosts hang on the supply, optional ones too: no host does better than by all."""
    found = {}
    for draw in draws:
        if draw.unit not in hosts:
            continue
        power = [need for need in draw.needs if need.connector not in SIGNALS]
        if power and all(need.connector in _PLUG_LIMITS for need in power):
            limit = min(_PLUG_LIMITS[need.connector] for need in power)
            found[draw.unit] = Pins((*draw.sustained, *draw.starting), sum(need.count for need in power), limit)
    return found


def _mated(wants: list[Want], spots: Iterable[Spot]) -> list[Want]:
    """Return those wants that mate with a port of another part."""
    if not wants:
        return wants
    offering: dict[str, set[int]] = {}
    for spot in spots:
        offering.setdefault(family(spot.connector), set()).add(spot.unit)
    return [want for want in wants if offering.get(family(want.connector), set()) - {want.unit}]


# --- what a placing amounts to ---


def _hung(placed: Placed, problem: Problem) -> Hung:
    above = {want.unit: spot for want, spot in placed if spot is not None and want.carries}
    sustained: dict[int, Triple] = {}
    starting: dict[int, Triple] = {}
    passing: dict[int, Triple] = {}
    for want, spot in placed:
        if spot is not None and want.carries:
            at = want.unit
            while at in above:
                passing[at] = plus(passing[at], want.sustained) if at in passing else want.sustained
                at = above[at].unit
                sustained[at] = plus(sustained[at], want.sustained) if at in sustained else want.sustained
                starting[at] = plus(starting[at], want.starting) if at in starting else want.starting
    headers = _headers(placed, passing)
    without = [want for want, spot in placed if spot is None]
    headless = [want for want in without if want.only]
    mated = _mated(without, problem.spots)
    worth = Worth(
        len(headless),
        sum(want.unit in problem.hosts for want in headless),
        sum(not want.signal for want in mated),
        sum(
            plug.pass_with((*sustained.get(unit, NONE), *starting.get(unit, NONE)))
            for unit, plug in problem.pins.items()
            if unit not in above
        ),
        sum(is_over(header) for header in headers),
        sum(want.signal and want.optional for want in mated),
    )
    names = sorted((want.unit, want.connector, want.number) for want in headless) if problem.has_board else []
    choice = len(problem.hosts) > 1 or any(not w.signal and spot is not None for w, spot in placed)
    choice = choice or any(want.carries for want in mated)
    return Hung(sustained, starting, set(above), headers, names, worth, True, choice)


def is_over(header: Header) -> bool:
    """Say whether a header carries more than it is good for, as stated or usual."""
    return header.milliamps > limit_of(header.connector, header.max_milliamps)


def _headers(placed: Placed, passing: dict[int, Triple]) -> list[Header]:
    """Return, for each host and connector, the port that is fullest for what it is good for."""
    fullest: dict[tuple[int, str], tuple[float, int, int, int | None]] = {}
    for want, spot in placed:
        if spot is None or not spot.connector:
            continue
        carried = max(passing[want.unit]) if want.carries else 0
        full = carried / spot.limit if spot.limit else float(carried)
        entry = (full, carried, -spot.limit, spot.stated)
        kept = fullest.get(spot.kind)
        if kept is None or entry[:3] > kept[:3]:
            fullest[spot.kind] = entry
    return [Header(unit, name, ma, stated) for (unit, name), (_, ma, _, stated) in sorted(fullest.items())]
