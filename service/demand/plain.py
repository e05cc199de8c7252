"""Headers filled want by want, in a plain order: quick, mostly the best there is, and else a good start."""

from collections.abc import Callable, Iterable

from service.demand.current import milliamps
from service.demand.placing import Problem
from service.demand.wants import Placed, Want, family
from service.facts.contacts import BAND_AMPS, CONTACTS

BOARD_MILLIAMPS = CONTACTS["atx-24"][0] * milliamps(float(BAND_AMPS.value))
"""What the main plug of a board takes in without a word; only to tell which host has more to spare."""
_Choice = Callable[["_Turn", Want, list[int]], int]


class _Turn:
    """What is still free, and what hosts carry so far."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.free = [spot.ports for spot in problem.spots]
        self.serves: dict[int, list[int]] = {}
        self.carried: dict[int, int] = {}
        self.by_family: dict[str, list[int]] = {}
        for at, spot in enumerate(problem.spots):
            self.by_family.setdefault(family(spot.connector), []).append(at)

    def below(self, unit: int) -> set[int]:
        """Return a host and all that it serves, over however many between."""
        found, waiting = {unit}, [unit]
        while waiting:
            new = [each for each in self.serves.get(waiting.pop(), ()) if each not in found]
            found.update(new)
            waiting += new
        return found

    def open_to(self, want: Want) -> list[int]:
        """Return the spots with a free port for a want, in order."""
        free = self.free
        spots = [at for at in self.by_family.get(family(want.connector), ()) if free[at]]
        if not spots or want.unit not in self.problem.hosts:
            return spots
        below = self.below(want.unit)
        return [at for at in spots if self.problem.spots[at].unit not in below]

    def take(self, want: Want, at: int) -> None:
        """Give a want a port."""
        unit = self.problem.spots[at].unit
        self.free[at] -= 1
        self.carried[unit] = self.carried.get(unit, 0) + max(want.sustained)
        if want.unit in self.problem.hosts:
            self.serves.setdefault(unit, []).append(want.unit)


def plainly(problem: Problem) -> Placed:
    """Return the placing of the plain order: each want in turn to the first port that carries it, or the strongest."""
    return _in_turn(problem, problem.wants, _first)


def by_rule_of_thumb(problem: Problem) -> list[Placed]:
    """Return placings by other orders: boards first; to the host with most to spare; the lightest disks to the bays."""
    signals = [want for want in problem.wants if want.signal]
    light = [*signals, *reversed([want for want in problem.wants if not want.signal])]
    boards_first = problem._replace(spots=problem.spots[::-1])
    return [
        _in_turn(problem, problem.wants, _roomiest),
        _in_turn(problem, light, _roomiest),
        _in_turn(problem, light, _first),
        _in_turn(boards_first, problem.wants, _first),
        _in_turn(boards_first, light, _first),
    ]


def _in_turn(problem: Problem, wants: Iterable[Want], choice: _Choice) -> Placed:
    turn = _Turn(problem)
    placed: Placed = []
    for want in wants:
        spots = turn.open_to(want)
        if not spots:
            placed.append((want, problem.ready if want.only else None))
            continue
        at = choice(turn, want, spots)
        turn.take(want, at)
        placed.append((want, problem.spots[at]))
    return placed


def _first(turn: _Turn, want: Want, spots: list[int]) -> int:
    """Return the first that carries a want, else the strongest."""
    load, of = max(want.sustained), turn.problem.spots
    for at in spots:
        if load <= of[at].limit:
            return at
    return max(spots, key=lambda at: of[at].limit)


def _roomiest(turn: _Turn, want: Want, spots: list[int]) -> int:
    """Return, of those that carry a want if any does, one on the host that has most to spare for what it carries."""
    load = max(want.sustained)
    carrying = [at for at in spots if load <= turn.problem.spots[at].limit] or spots

    def use(at: int) -> tuple[int, int]:
        unit = turn.problem.spots[at].unit
        plug = turn.problem.pins.get(unit)
        most = BOARD_MILLIAMPS if plug is None else plug.limit * plug.plugs
        return (1000 * (turn.carried.get(unit, 0) + load) // most, at)

    return min(carrying, key=use)
