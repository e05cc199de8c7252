"""What devices want of ports on other parts, and the ports that those offer; how the two mate."""

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from service.demand.current import milliamps
from service.demand.demand import NONE, Triple
from service.demand.draws import Draw
from service.facts.headers import USUAL_AMPS
from service.parts.records import Backplane, Controller, Motherboard, Offer
from service.parts.words import SIGNAL_CONNECTORS

_FAN = ("fan-4", "fan-3")
_RANK = {Backplane: 0, Controller: 1, Motherboard: 2}
SIGNALS = frozenset(SIGNAL_CONNECTORS)
USUAL_MILLIAMPS = {connector: milliamps(float(fact.value)) for connector, fact in USUAL_AMPS.items()}
BOARD_RANK = _RANK[Motherboard]
NO_LIMIT = 1 << 60
PLENTY = 1 << 20
MOST_KEPT = 1_024


class Host(NamedTuple):
    """A part that offers ports; ``offers`` None: not given, whatever is needed is there."""

    unit: int
    rank: int
    offers: tuple[Offer, ...] | None


class Spot(NamedTuple):
    """Equal ports of a host: ``limit`` [mA] is what one is good for, ``stated`` or else usual for its kind."""

    unit: int
    rank: int
    connector: str
    limit: int
    stated: int | None
    ports: int

    @property
    def kind(self) -> tuple[int, str]:
        """Return host and connector: what is judged as one."""
        return (self.unit, self.connector)


class Want(NamedTuple):
    """One need that a host may serve: with the device's load or, where that comes by another plug, without.

    ``number`` counts the device's headers; ``only``: no cable of the supply can serve it and it is required.
    """

    unit: int
    connector: str
    sustained: Triple
    starting: Triple
    number: int
    carries: bool
    only: bool
    optional: bool = False

    @property
    def signal(self) -> bool:
        """Say whether this is a header, and not the power plug."""
        return self.connector in SIGNALS


Placed = list[tuple[Want, Spot | None]]
"""Each want with the ports that serve it; None: none does."""


def host(unit: int, part: Backplane | Controller | Motherboard) -> Host:
    """Return a part as host."""
    return Host(unit, _RANK[type(part)], part.offers)


def family(connector: str) -> str:
    """Return what stands for all connectors that mate with one: fans of three and four pins go on each other's."""
    return _FAN[0] if connector in _FAN else connector


def limit_of(connector: str, stated: int | None) -> int:
    """Return what a port is good for [mA]: as stated, else what is usual; nothing where no habit is known."""
    return USUAL_MILLIAMPS.get(connector, 0) if stated is None else stated


def spots_of(hosts: Iterable[Host]) -> list[Spot]:
    """Return all that is offered: backplanes, controllers, boards; of one host what is good for most first."""
    spots = []
    for unit, rank, offers in sorted(hosts, key=lambda at: (at.rank, at.unit)):
        for name, limit, stated, ports in _counted(offers) if offers else ():
            spots.append(Spot(unit, rank, name, limit, stated, ports))
    return spots


@lru_cache(maxsize=MOST_KEPT)
def _counted(offers: tuple[Offer, ...]) -> tuple[tuple[str, int, int | None, int], ...]:
    """Return connector, limit, stated limit and number of equal ports, ports of one connector strongest first."""
    counts: dict[tuple[str, int, bool], int] = {}
    for offer in offers:
        stated = None if offer.max_amps is None else milliamps(offer.max_amps)
        key = (offer.connector, -limit_of(offer.connector, stated), stated is None)
        counts[key] = counts.get(key, 0) + offer.count
    return tuple((name, -less, None if bare else -less, ports) for (name, less, bare), ports in sorted(counts.items()))


def ready_spot(hosts: Iterable[Host]) -> Spot | None:
    """Return the board that is taken to have what is needed, if there is one."""
    unit = next((at.unit for at in hosts if at.offers is None), None)
    return None if unit is None else Spot(unit, BOARD_RANK + 1, "", NO_LIMIT, None, PLENTY)


def wants_of(draws: Iterable[Draw]) -> Iterator[Want]:
    """Yield the needs that a host may serve.

    A device's load comes by its power plug if there is one, else by the first header. A device with several power
    plugs goes to the supply.
    """
    for draw in draws:
        power = [need for need in draw.needs if need.connector not in SIGNALS]
        if len(power) == 1 and power[0].count == 1:
            name, optional = power[0].connector, power[0].optional
            yield Want(draw.unit, name, draw.sustained, draw.starting, 0, carries=True, only=False, optional=optional)
        place = 0
        for need in draw.needs:
            if need.connector not in SIGNALS:
                continue
            for _ in range(need.count):
                carries = not power and place == 0
                load = (draw.sustained, draw.starting) if carries else (NONE, NONE)
                required = not need.optional
                yield Want(draw.unit, need.connector, *load, place, carries, required, need.optional)
                place += 1
