"""What hangs on other parts: fans on headers, drives in backplanes; their current goes up to the host.

Signal side first: every need for a port that a part of the build offers is served from there; required needs before
optional ones, what hosts need themselves first, then the heaviest, backplanes before controllers before boards, a
port that carries it before one that does not. So how many needs find no port does not hang on what they draw. What a
host carries is added to its own draw. A board whose ``offers`` were not given is taken to have what is needed.
"""

from typing import NamedTuple

from service.demand.current import plus
from service.demand.demand import NONE, Header, Triple
from service.demand.draws import Draw
from service.parts.records import Backplane, Controller, Motherboard, Offer
from service.parts.words import SIGNAL_CONNECTORS

_FAN = ("fan-4", "fan-3")
_TAKES = {"fan-4": _FAN, "fan-3": _FAN}
_SIGNAL = frozenset(SIGNAL_CONNECTORS)
_RANK = {Backplane: 0, Controller: 1, Motherboard: 2}


class Host(NamedTuple):
    """A part that offers ports; ``offers`` None: not given, whatever is needed is there."""

    unit: int
    rank: int
    offers: tuple[Offer, ...] | None


class Hung(NamedTuple):
    """Loads added to hosts by unit, needs left for cables of the supply, headers as filled.

    Needs that found no header.
    """

    sustained: dict[int, Triple]
    starting: dict[int, Triple]
    fed: set[int]
    headers: list[Header]
    headless: list[tuple[int, str, int]]


class _Port:
    """One offered port while ports are being filled."""

    __slots__ = ("connector", "load", "max_milliamps", "rank", "taken", "unit")

    def __init__(self, at: Host, offer: Offer) -> None:
        self.unit = at.unit
        self.rank = at.rank
        self.connector = offer.connector
        self.max_milliamps = None if offer.max_amps is None else int(offer.max_amps * 1000)
        self.load = NONE
        self.taken = False

    @property
    def milliamps(self) -> int:
        """Return what the port carries on its fullest rail."""
        return max(self.load)

    def carries(self, milliamps: int) -> bool:
        """Say whether the port is good for that much."""
        return self.max_milliamps is None or milliamps <= self.max_milliamps


class _Want(NamedTuple):
    """One need that a host may serve: with the device's load or, where that comes by another plug, without.

    ``number`` counts the device's headers; ``only``: no cable of the supply can serve it.
    """

    unit: int
    connector: str
    sustained: Triple
    starting: Triple
    number: int
    carries: bool
    only: bool
    optional: bool = False


def host(unit: int, part: Backplane | Controller | Motherboard) -> Host:
    """Return a part as host."""
    return Host(unit, _RANK[type(part)], part.offers)


def hang(draws: list[Draw], hosts: list[Host], plugged: frozenset[tuple[int, str]] = frozenset()) -> Hung:
    """Hang what can be hung. Units in ``fed`` get their power from a host and need no plug of the supply.

    A host may hang on another one; what it carries goes up with it. ``plugged`` are ports, as (unit, connector), that a
    cable of the supply is said to feed: these do not hang.
    """
    ports = [_Port(h, o) for h in hosts for o in h.offers or () for _ in range(o.count)]
    ports.sort(key=lambda port: (port.rank, port.unit))
    ready = next((h.unit for h in hosts if h.offers is None), None)
    has_board = any(h.rank == _RANK[Motherboard] for h in hosts)
    hung = Hung({}, {}, set(), [], [])
    own = {h.unit for h in hosts}
    above: dict[int, tuple[int, _Port | None]] = {}
    loads = []
    for want in sorted(_wants(draws), key=lambda want: (want.optional, want.unit not in own, *_heaviest(want))):
        if (want.unit, want.connector) in plugged:
            continue
        found = _serve(want, ports, ready, above)
        if found is None:
            if want.only and has_board:
                hung.headless.append((want.unit, want.connector, want.number))
            continue
        if want.carries:
            hung.fed.add(want.unit)
            above[want.unit] = found
            loads.append(want)
    for want in loads:
        _carry_up(want, above, hung)
    hung.headers.extend(_headers(ports))
    hung.headless.sort()
    return hung


def _carry_up(want: _Want, above: dict[int, tuple[int, _Port | None]], hung: Hung) -> None:
    """Add a load to every host on its way up, and to the ports that it passes between them."""
    at: int = want.unit
    while at in above:
        at, port = above[at]
        hung.sustained[at] = plus(hung.sustained.get(at, NONE), want.sustained)
        hung.starting[at] = plus(hung.starting.get(at, NONE), want.starting)
        if port is not None:
            port.load = plus(port.load, want.sustained)


def _hangs_on(unit: int, other: int, above: dict[int, tuple[int, _Port | None]]) -> bool:
    """Say whether a unit is another one, or hangs on it, by whatever many hosts between."""
    while unit != other and unit in above:
        unit = above[unit][0]
    return unit == other


def _heaviest(want: _Want) -> tuple[int, int, str]:
    return (-max(sum(want.sustained), sum(want.starting)), want.unit, want.connector)


def _wants(draws: list[Draw]) -> list[_Want]:
    return [want for draw in draws for want in _wants_of(draw)]


def _wants_of(draw: Draw) -> list[_Want]:
    """Return the needs of a device that a host may serve.

    The load comes by the power plug if there is one, else by the first header. A device with several power plugs goes
    to the supply.
    """
    power = [need for need in draw.needs if need.connector not in _SIGNAL]
    signal = [need for need in draw.needs if need.connector in _SIGNAL for _ in range(need.count)]
    wants = []
    if len(power) == 1 and power[0].count == 1:
        first = power[0]
        load = (draw.sustained, draw.starting)
        wants.append(_Want(draw.unit, first.connector, *load, 0, carries=True, only=False, optional=first.optional))
    for place, need in enumerate(signal):
        carries = not power and place == 0
        load = (draw.sustained, draw.starting) if carries else (NONE, NONE)
        required = not need.optional
        want = _Want(draw.unit, need.connector, *load, place, carries=carries, only=required, optional=need.optional)
        wants.append(want)
    return wants


def _serve(
    want: _Want, ports: list[_Port], ready: int | None, above: dict[int, tuple[int, _Port | None]]
) -> tuple[int, _Port | None] | None:
    """Return the host that serves a need, and its port if it lists any; no host hangs on what hangs on itself."""
    names = _TAKES.get(want.connector, (want.connector,))
    free = [
        port
        for port in ports
        if not port.taken and port.connector in names and not _hangs_on(port.unit, want.unit, above)
    ]
    if not free:
        return (ready, None) if want.only and ready is not None else None
    load = max(want.sustained)
    best = next((port for port in free if port.carries(load)), None)
    if best is None:
        best = max(free, key=lambda port: port.max_milliamps or 0)
    best.taken = True
    return best.unit, best


def _headers(ports: list[_Port]) -> list[Header]:
    """Return, for each host and connector, the port that is fullest for what it carries."""
    fullest: dict[tuple[int, str], _Port] = {}
    for port in ports:
        if not port.taken:
            continue
        kept = fullest.get((port.unit, port.connector))
        if kept is None or _fullness(port) > _fullness(kept):
            fullest[port.unit, port.connector] = port
    return [Header(p.unit, p.connector, p.milliamps, p.max_milliamps) for p in fullest.values()]


def _fullness(port: _Port) -> float:
    return port.milliamps / port.max_milliamps if port.max_milliamps else 0.0
