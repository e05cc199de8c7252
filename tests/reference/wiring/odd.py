"""Problems that no build would pose: all that the statement of the problem allows, small, and close to every limit."""

from random import Random
from typing import get_args

from service.wiring.problem import (
    NO_LIMIT,
    AdapterFit,
    AdapterKind,
    CableKind,
    Device,
    Fit,
    GroupLimit,
    Limits,
    Points,
    Port,
    PortType,
    Problem,
    RailLimits,
    Role,
)

TYPES = 3
MOST = 12
"""The largest load; limits are drawn around it and its sums."""
ROLES: tuple[Role, ...] = get_args(Role)


def _limit(rng: Random, least: int = 0) -> int:
    return rng.choice((NO_LIMIT, NO_LIMIT, rng.randrange(least, 2 * MOST)))


def _limits(rng: Random) -> RailLimits:
    if rng.random() < 0.3:
        return Limits(), Limits(), Limits()
    one, other = (
        Limits(_limit(rng), _limit(rng), _limit(rng, 1), _limit(rng), _limit(rng)) for _ in range(2)
    )
    return one, other, Limits()


def _device(rng: Random) -> Device:
    role = rng.choice((*ROLES, "card", "card"))
    ports = tuple(
        Port(rng.randrange(TYPES), rng.random() < 0.7, rng.choice((1, 1, 2, 3)), rng.random() < 0.06)
        for _ in range(rng.choice((1, 1, 2, 2, 3)))
    )
    load = [rng.randrange(MOST) if rng.random() < 0.6 else 0 for _ in range(6)]
    return Device(role, ports, (rng.randrange(MOST), load[1], load[2], load[3], load[4], load[5]))


def _cable(rng: Random, sockets: int, groups: int) -> CableKind:
    plugs = rng.choice((1, 2, 2, 3))
    number = rng.choice((1, 1, 2, 3)) if groups and rng.random() < 0.7 else 0
    named = tuple(sorted(rng.choices(range(groups), k=number))) if number else ()
    return CableKind(
        rng.choice((1, 1, 2, 3)), tuple(rng.choice((0, 1, 1, 2)) for _ in range(sockets)),
        tuple(rng.choice((1, 1, 2)) for _ in range(plugs)), tuple(_limits(rng) for _ in range(plugs)), named,
        rng.random() < 0.3,
    )


def _adapter(rng: Random) -> AdapterKind:
    inputs = rng.choice(((1,), (1,), (2,), (1, 2), (2, 3), (1, 3)))
    return AdapterKind(
        rng.choice((1, 1, 2)), rng.randrange(3), rng.choice((1, 1, 2)), rng.randrange(TYPES), inputs,
        tuple(_limits(rng) for _ in inputs), rng.choice((0, 0, 1, 4)),
    )


def _port_type(rng: Random, cables: list[CableKind], adapters: list[AdapterKind]) -> PortType:
    fits = []
    for kind, cable in enumerate(cables):
        for plug, halves in enumerate(cable.halves):
            if rng.random() < 0.6:
                fits.append(Fit(kind, plug, rng.randrange(1, halves + 1), _limits(rng), rng.choice((0, 0, 0, 3))))
    others = [
        AdapterFit(kind, _limits(rng), rng.choice((0, 0, 2))) for kind in range(len(adapters)) if rng.random() < 0.5
    ]
    return PortType(tuple(fits), tuple(others))


def chained(rng: Random) -> Problem:
    """Return a problem whose ports of type 0 take adapters alone, most of them fed by further adapters."""
    devices = [
        each._replace(ports=tuple(port._replace(type=rng.choice((0, 0, 1, 2))) for port in each.ports))
        for each in (_device(rng) for _ in range(rng.choice((1, 2, 2, 3))))
    ]
    cables = [_cable(rng, 1, 1)._replace(takes=(1,)) for _ in range(rng.choice((2, 3)))]
    far, near = rng.choice((1, 2)), rng.choice((1, 2))
    adapters = [_adapter(rng)._replace(input_type=1) for _ in range(far)]
    adapters += [_adapter(rng)._replace(input_type=2) for _ in range(near)]
    fits = [_port_type(rng, cables, []).fits for _ in range(TYPES)]

    def others(kinds: range) -> tuple[AdapterFit, ...]:
        return tuple(AdapterFit(kind, _limits(rng), rng.choice((0, 0, 2))) for kind in kinds)

    types = (
        PortType((), others(range(far))),
        PortType(fits[1] if rng.random() < 0.4 else (), others(range(far, far + near))),
        PortType(fits[2]),
    )
    points = Points(rng.randrange(8), rng.randrange(8), rng.randrange(8), rng.randrange(MOST))
    group = (GroupLimit(rng.randrange(3), rng.randrange(2 * MOST)),)
    return Problem(tuple(devices), types, tuple(cables), (rng.randrange(2, 7),), tuple(adapters), group, points)


def odd(rng: Random) -> Problem:
    """Return a random problem; some devices are there twice, so that equal ones occur."""
    devices = [_device(rng) for _ in range(rng.choice((1, 2, 2, 3)))]
    devices += rng.choices(devices, k=rng.choice((0, 1, 1, 2)))
    sockets = tuple(rng.randrange(5) for _ in range(rng.choice((1, 2))))
    groups = [GroupLimit(rng.randrange(3), rng.randrange(2 * MOST)) for _ in range(rng.choice((0, 0, 1, 2)))]
    cables = [_cable(rng, len(sockets), len(groups)) for _ in range(rng.choice((1, 2, 3)))]
    adapters = [_adapter(rng) for _ in range(rng.choice((0, 1, 2, 3)))]
    types = tuple(_port_type(rng, cables, adapters) for _ in range(TYPES))
    points = Points(rng.randrange(8), rng.randrange(8), rng.randrange(8), rng.randrange(MOST))
    return Problem(tuple(devices), types, tuple(cables), sockets, tuple(adapters), tuple(groups), points)
