"""What needs cost more, at the least, when so many of them hang on one cable than each of them alone.

All that hangs on a cable passes its first stretch. Any so many needs carry at least what the lightest so many do, rail
by rail, and each then pays at least what that current there is worth beyond what it is charged anyhow.
"""

from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

from service.wiring.clusters import CLEAN, UNIT, joined, worth
from service.wiring.objective import COMFORT_LEVEL, PER_MILLE, POINTS_LEVEL, RAILS, Verdict, judged
from service.wiring.problem import COMFORT_FROM, NO_LIMIT, Load, Problem, RailLimits
from service.wiring.transport import Tolls
from service.wiring.ways import rounded

PAIR = 2


class Share(NamedTuple):
    """A line of a need: how it is judged so far, what it is charged anyhow, and how many needs pay that together."""

    verdict: Verdict
    charged: int
    needs: int

    @property
    def use(self) -> int:
        """Return the use [per mille] that is charged anyhow."""
        return max(COMFORT_FROM, self.verdict.use) + self.charged % UNIT[COMFORT_LEVEL - 1] // UNIT[COMFORT_LEVEL]


class Guest(NamedTuple):
    """An open need beside others on a cable.

    ``card_ma``: its current [mA] where ports of one card on one cable are a caution; ``card``: which cluster it is of,
    and how many such needs of that cluster the cable takes.
    """

    load: Load
    lines: tuple[Share, ...]
    card_ma: int = 0
    card: tuple[int, int] = (-1, 0)


class Crowd(NamedTuple):
    """What guests pay on cables of one kind: by place on a cable; and where two share one, pair after pair."""

    places: tuple[int, ...]
    pairs: tuple[int, ...] = ()

    def tolls(self, cables: int) -> Tolls:
        """Return what the guests pay one after the other on so many cables."""
        if self.pairs:
            found = [(cables, 0)]
            found += [(cables + number, toll) for number, toll in enumerate(self.pairs[:cables], 1)]
            return (*found, (2 * cables, self.pairs[-1]))
        return tuple([((number + 1) * cables, toll) for number, toll in enumerate(self.places)])

    def free(self, cables: int, room: int) -> int:
        """Return how many guests pay nothing on so many cables."""
        if self.pairs:
            return cables + sum(toll == 0 for toll in self.pairs[:cables])
        return cables * (sum(toll == 0 for toll in self.places) if self.places else room)

    @property
    def least(self) -> int:
        """Return the least that is paid, by those who pay."""
        return min(toll for toll in (*self.places, *self.pairs) if toll)


FREELY = Crowd(())
"""Nobody pays."""


def crowd(
    problem: Problem,
    trunk: RailLimits,
    room: int,
    cables: int,
    guests: Sequence[tuple[Guest, int]],
    one_card: bool,
) -> Crowd:
    """Return what guests pay on up to so many cables with so much room, no less than those before them."""
    if not guests:
        return FREELY
    sharing = _sharing(problem, guests) if one_card else []
    most = [room * max(loads) for loads in zip(*(guest.load for guest, _ in guests), strict=True)]
    if not any(sharing) and _is_clean(trunk, most):
        return FREELY
    places = _by_place(problem, trunk, room, guests, sharing)
    if room == PAIR and cables > 1:
        pairs = _by_pair(problem, trunk, cables, guests, places[1])
        if any(pairs):
            return Crowd(places, pairs)
    return Crowd(places) if any(places) else FREELY


def _is_clean(trunk: RailLimits, load: Sequence[int]) -> bool:
    a, b, c, d, e, f = load
    return joined(CLEAN, judged((a, b, c, d, e, f), trunk)) == CLEAN


def is_one_card(guests: Sequence[tuple[Guest, int]]) -> bool:
    """Say whether all guests are ports of one card that are better not together on a cable."""
    if not guests:
        return False
    card, number = guests[0][0].card
    return card >= 0 and all(guest.card[0] == card for guest, _ in guests) and sum(t for _, t in guests) == number


def _sharing(problem: Problem, guests: Sequence[tuple[Guest, int]]) -> list[int]:
    """Return what one, two, ... ports of one card on a cable pay for being so."""
    currents = accumulate(sorted(guest.card_ma for guest, times in guests for _ in range(times)))
    limit, points = problem.points.share_limit, problem.points.share * UNIT[POINTS_LEVEL]
    return [points if many and current > limit else 0 for many, current in enumerate(currents)]


def _by_place(
    problem: Problem,
    trunk: RailLimits,
    room: int,
    guests: Sequence[tuple[Guest, int]],
    sharing: Sequence[int],
) -> tuple[int, ...]:
    """Return what the first, second, ... guest on one cable pays more.

    The steps of the greatest convex function below the true one, so that they may be added up over many cables.
    """
    extra = [0]
    number = sum(times for _, times in guests)
    for many in range(1, min(room, number) + 1):
        verdict = joined(CLEAN, judged(_lightest(guests, many), trunk))
        shared = sharing[many - 1] if sharing else 0
        extra.append(shared + (0 if verdict == CLEAN or many == 1 else _paid(problem, verdict, guests, many)))
    steps = _convex(extra)
    return tuple(steps + [steps[-1] if steps else 0] * (room - len(steps)))


def _by_pair(
    problem: Problem, trunk: RailLimits, cables: int, guests: Sequence[tuple[Guest, int]], least: int
) -> tuple[int, ...]:
    """Return what pairs pay more, one after the other, however they are made.

    So many pairs pay at least the largest of: the least for each; what their currents make of them; and their comfort.
    """
    loads = sorted(load for guest, times in guests for load in (guest.load[0],) * min(times, PAIR * cables))
    comfort = _in_comfort(guests, trunk[0].comfort, PAIR * cables)
    paid, of_current = [0], 0
    for number in range(1, min(cables, len(loads) // PAIR) + 1):
        of_current += _of_heaviest(problem, trunk, guests, loads[: PAIR * number])
        paid.append(max(number * least, of_current, comfort[number - 1] if comfort else 0))
    return tuple(_convex(paid))


def _of_heaviest(
    problem: Problem, trunk: RailLimits, guests: Sequence[tuple[Guest, int]], loads: Sequence[int]
) -> int:
    """Return what the heaviest of the pairs pays that these loads make.

    However pairs are made, so many of them hold one that is no lighter than the heaviest of those that are made of as
    many of the lightest guests, the lightest of these with the heaviest.
    """
    current = max(one + other for one, other in zip(loads, reversed(loads), strict=True))
    verdict = joined(CLEAN, judged((current, 0, 0, 0, 0, 0), trunk))
    return 0 if verdict == CLEAN else _paid(problem, verdict, guests, PAIR)


def _in_comfort(guests: Sequence[tuple[Guest, int]], comfort_ma: int, most: int) -> list[int]:
    """Return what one, two, ... pairs cost in comfort together.

    Each of a pair is used as their sum is, which is charged beyond what its connection is charged anyhow; so each need
    adds twice its own use. Up to so many needs share a connection, which is charged once.
    """
    if comfort_ma >= NO_LIMIT or not all(guest.lines for guest, _ in guests):
        return []
    shared = max((line.needs for guest, _ in guests for line in guest.lines), default=1)
    charges = sorted(
        charge
        for guest, times in guests
        for charge in (2 * PER_MILLE * guest.load[0] - guest.lines[0].use * comfort_ma,) * min(times, most)
    )
    each = list(accumulate(one + other for one, other in zip(charges[::2], charges[1::2], strict=False)))
    return [max(0, -(-charge // (comfort_ma * shared))) * UNIT[COMFORT_LEVEL] for charge in each]


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
