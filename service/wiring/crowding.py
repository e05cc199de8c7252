"""What needs cost more, at the least, when so many of them hang on one cable than each of them alone.

All that hangs on a cable passes its first stretch. Any so many needs carry at least what the lightest so many do, rail
by rail, and each then pays at least what that current there is worth beyond what it is charged anyhow.
"""

from collections.abc import Sequence
from typing import NamedTuple

from service.wiring.clusters import CLEAN, joined, worth
from service.wiring.objective import RAILS, Verdict, judged
from service.wiring.problem import NOTHING, Load, Problem, RailLimits
from service.wiring.ways import rounded


class Share(NamedTuple):
    """A line of a need: how it is judged so far, what it is charged anyhow, and how many needs pay that together."""

    verdict: Verdict
    charged: int
    needs: int


class Guest(NamedTuple):
    """An open need beside others on a cable."""

    load: Load
    lines: tuple[Share, ...]


NOBODY = Guest(NOTHING, ())


def tolls(problem: Problem, trunk: RailLimits, room: int, guests: Sequence[tuple[Guest, int]]) -> tuple[int, ...]:
    """Return what the first, second, ... of up to ``room`` guests on one cable costs more; never less than before it.

    The steps of the greatest convex function below the true one, so that they may be added up over many cables.
    """
    extra = [0]
    number = sum(times for _, times in guests)
    for many in range(1, min(room, number) + 1):
        verdict = joined(CLEAN, judged(_lightest(guests, many), trunk))
        extra.append(0 if verdict == CLEAN or many == 1 else _paid(problem, verdict, guests, many))
    steps = _convex(extra)
    return tuple(steps + [steps[-1] if steps else 0] * (room - len(steps)))


def _lightest(guests: Sequence[tuple[Guest, int]], many: int) -> Load:
    """Return the sum of so many of the least currents, each rail by itself."""
    found = []
    for rail in range(2 * RAILS):
        left, total = many, 0
        for load, times in sorted((guest.load[rail], times) for guest, times in guests):
            each = min(times, left)
            total += each * load
            left -= each
            if not left:
                break
        found.append(total)
    a, b, c, d, e, f = found
    return a, b, c, d, e, f


def _paid(problem: Problem, verdict: Verdict, guests: Sequence[tuple[Guest, int]], many: int) -> int:
    """Return what the so many guests to whom such a verdict matters least pay for it."""
    left, total = many, 0
    for more, times in sorted((_more(problem, verdict, guest), times) for guest, times in guests):
        each = min(times, left)
        total += each * more
        left -= each
    return total


def _more(problem: Problem, verdict: Verdict, guest: Guest) -> int:
    found = 0
    for line in guest.lines:
        after = worth(problem, joined(line.verdict, verdict)) - worth(problem, line.verdict)
        found += max(0, after - line.charged) // line.needs
    return rounded(found)


def _convex(values: list[int]) -> list[int]:
    """Return the steps of the greatest convex function that is nowhere above these values; the first is 0."""
    steps: list[int] = []
    at = 0
    while at < len(values) - 1:
        slope, end = min(((values[to] - values[at]) // (to - at), -to) for to in range(at + 1, len(values)))
        slope = rounded(slope)
        steps += [slope] * (-end - at)
        at = -end
    return steps
