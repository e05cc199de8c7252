"""How many open needs one cable takes at no cost above the number of cables, beside what each costs by itself.

All that hangs on a cable passes its first stretch. A need is charged for what it passes, so up to some current there it
costs no more than its floor: that is its tolerance, by rail, sustained and at start-up. Needs share a cable freely only
if their currents together stay within the tolerance of each; so no more of them do than of the lightest fit into the
greatest tolerance. A cable with more costs at least one unit of a level above the number of cables.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from service.wiring.clusters import CLEAN, UNIT, Line, joined, worth
from service.wiring.objective import COMFORT_LEVEL, PER_MILLE, POINTS_LEVEL, RAILS, Verdict
from service.wiring.problem import NO_LIMIT, Limits, Load, Problem, RailLimits

NOT_AT_ALL: Load = (-1, -1, -1, -1, -1, -1)
EVERYTHING: Load = (NO_LIMIT, NO_LIMIT, NO_LIMIT, NO_LIMIT, NO_LIMIT, NO_LIMIT)


class Guest(NamedTuple):
    """An open need as a guest of one cable kind: its load, and the greatest current beside which it costs no more."""

    load: Load
    tolerance: Load


def tolerance(
    problem: Problem, trunk: RailLimits, lines: Iterable[tuple[Line, int]], verdict: Verdict, points: int
) -> Load:
    """Return up to what on a first stretch a need costs its lines no more than given, fed so by a plug."""
    found = EVERYTHING
    for line, allowed in lines:
        after = joined(joined(line.verdict, CLEAN), verdict)
        more = worth(problem, after) - worth(problem, line.verdict) + points * UNIT[POINTS_LEVEL]
        if more > allowed:
            return NOT_AT_ALL
        found = _least(found, _on_line(problem, trunk, after, allowed - more))
    return found


def _on_line(problem: Problem, trunk: RailLimits, after: Verdict, slack: int) -> Load:
    """Return what a line bears with so much to spare; never less than it bears."""
    if slack >= UNIT[0] >> 1:
        return EVERYTHING
    use = after.use + slack // UNIT[COMFORT_LEVEL]
    points = slack // UNIT[POINTS_LEVEL]
    band = not after.overloaded and not after.banded and problem.points.band > points
    start = not after.overloaded and not after.start_banded and problem.points.start > points
    running = [_running(limits, use, after.overloaded, band) for limits in trunk]
    starting = [_starting(limits, after.overloaded, start) for limits in trunk]
    return (running[0], running[1], running[2], starting[0], starting[1], starting[2])


def _running(limits: Limits, use: int, overloaded: bool, band: bool) -> int:
    found = NO_LIMIT if limits.comfort >= NO_LIMIT else use * limits.comfort // PER_MILLE
    if not overloaded:
        found = min(found, limits.stop)
    return min(found, limits.band) if band else found


def _starting(limits: Limits, overloaded: bool, start: bool) -> int:
    found = NO_LIMIT if overloaded else limits.start_stop
    return min(found, limits.start_band) if start else found


class Pairs(NamedTuple):
    """What sharing costs where no cable takes more than two needs: comfort [per mille], and the most pairs at that."""

    comfort: int
    most: int


def pairs(excess: int, charges: Sequence[tuple[int, int]], comfort_ma: int, lines: int) -> Pairs:
    """Return what pairs cost when needs are so many more than cables.

    Each of a pair is used as their sum is, which is charged beyond what its connection is charged anyhow; so each need
    adds twice its own use. ``charges`` are that less what is charged anyhow, in per mille times ``comfort_ma``, the
    most that a cable is comfortable with, each so many times. Up to ``lines`` needs share a connection, which is
    charged once.
    """
    each = [charge for charge, times in sorted(charges) for _ in range(times)]
    least: int | None = None
    total = 0
    most = max(0, excess)
    for number in range(len(each) // 2 + 1):
        if number:
            total += each[2 * number - 2] + each[2 * number - 1]
        if number < excess:
            continue
        charge = max(0, -(-total // (comfort_ma * lines)))
        if least is not None and charge > least:
            break
        least, most = charge, number
    return Pairs(least or 0, most)


def free_room(room: int, guests: Sequence[tuple[Guest, int]]) -> int:
    """Return how many of these guests, each so many times, one cable with so much room takes freely."""
    if not guests:
        return 0
    for rail in range(2 * RAILS):
        most = max(guest.tolerance[rail] for guest, _ in guests)
        if most < NO_LIMIT:
            room = min(room, _fitting(room, most, sorted((guest.load[rail], times) for guest, times in guests)))
    return room


def _fitting(room: int, most: int, loads: Iterable[tuple[int, int]]) -> int:
    """Return how many of the lightest loads stay within the most."""
    found = 0
    for load, times in loads:
        each = min(times, room - found)
        if load > 0:
            each = min(each, most // load)
        found += each
        most -= each * load
        if each < times:
            break
    return found


def _least(one: Load, other: Load) -> Load:
    a, b, c, d, e, f = (min(pair) for pair in zip(one, other, strict=True))
    return (a, b, c, d, e, f)


def larger(one: Load, other: Load) -> Load:
    """Return the larger of each entry."""
    a, b, c, d, e, f = (max(pair) for pair in zip(one, other, strict=True))
    return (a, b, c, d, e, f)
