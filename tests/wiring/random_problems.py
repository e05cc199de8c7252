"""Seeded random wiring problems, small enough to try every wiring, and their starved twins."""

from random import Random

from service.wiring.problem import (
    NO_LIMIT,
    UNLIMITED,
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

ROLES: tuple[Role, ...] = ("main", "processor", "card", "card", "drive", "rest")


def problem(seed: int, ports: int = 4) -> Problem:
    """Return a small problem; every feature of the statement comes up in some share of the seeds."""
    luck = Random(f"wiring-{seed}")
    types = luck.randint(1, 3)
    leaning = luck.random() < 0.4
    adapters = luck.choice((1, 2, 2)) if leaning else luck.choice((0, 0, 1, 1, 2))
    cables = tuple(_cable(luck) for _ in range(luck.randint(1, 3)))
    groups = tuple(
        GroupLimit(luck.choice((0, 0, 1)), luck.choice((3000, 6000, 9000))) for _ in range(luck.choice((0, 0, 1, 2)))
    )
    sockets = tuple(luck.randint(1, 3) for _ in range(luck.randint(0, 2)))
    cables = tuple(_placed(luck, cable, len(sockets), len(groups)) for cable in cables)
    return Problem(
        _devices(luck, 1 if leaning and luck.random() < 0.5 else types, ports),
        tuple(_port_type(luck, cables, adapters, 0.15 if leaning and of == 0 else 0.65) for of in range(types)),
        cables,
        sockets,
        tuple(_adapter(luck, types) for _ in range(adapters)),
        groups,
        Points(luck.choice((0, 3)), luck.choice((0, 2)), luck.choice((0, 5)), luck.choice((0, 4000, 6000))),
    )


def starved(whole: Problem, seed: int) -> Problem:
    """Return a problem with each cable kind gone at 30 %, sockets at 0, 1 or as they were, adapters gone at 50 %."""
    luck = Random(f"starved-{seed}")
    return whole._replace(
        cables=tuple(kind._replace(count=0) if luck.random() < 0.3 else kind for kind in whole.cables),
        sockets=tuple(luck.choice((0, 1, left)) for left in whole.sockets),
        adapters=tuple(kind._replace(count=0) if luck.random() < 0.5 else kind for kind in whole.adapters),
    )


def _limits(luck: Random, scale: int) -> RailLimits:
    if luck.random() < 0.25:
        return UNLIMITED
    return _rail(luck, scale), _rail(luck, scale) if luck.random() < 0.3 else Limits(), Limits()


def _rail(luck: Random, scale: int) -> Limits:
    def maybe(*values: int) -> int:
        return luck.choice((NO_LIMIT, *(value * scale // 10 for value in values)))

    return Limits(maybe(60, 80, 90), maybe(45, 60), maybe(60, 80, 100), maybe(80, 120), maybe(70, 100))


def _cable(luck: Random) -> CableKind:
    plugs = luck.choice((1, 1, 2, 2, 3))
    halves = tuple(luck.choice((1, 1, 2)) for _ in range(plugs))
    trunk = _limits(luck, 1000)
    even = luck.random() < 0.5
    segments = tuple(trunk if even else _limits(luck, 1000) for _ in range(plugs))
    return CableKind(luck.randint(1, 2), (), halves, segments, (), luck.random() < 0.15)


def _placed(luck: Random, cable: CableKind, sockets: int, groups: int) -> CableKind:
    takes = tuple(luck.choice((0, 1, 1, 2)) for _ in range(sockets))
    named = tuple(luck.randrange(groups) for _ in range(luck.randint(0, 3))) if groups else ()
    return cable._replace(takes=takes, groups=named)


def _port_type(luck: Random, cables: tuple[CableKind, ...], adapters: int, plugs: float) -> PortType:
    fits = []
    for kind, cable in enumerate(cables):
        limits = _limits(luck, 1000)
        alike = luck.random() < 0.6
        for plug, halves in enumerate(cable.halves):
            if luck.random() < plugs:
                own = limits if alike else _limits(luck, 1000)
                fits.append(Fit(kind, plug, luck.randint(1, halves), own, 0 if alike else luck.choice((0, 0, 1))))
    outputs = [
        AdapterFit(kind, _limits(luck, 1000), luck.choice((0, 0, 1)))
        for kind in range(adapters)
        if luck.random() < 1.0 - plugs / 2
    ]
    return PortType(tuple(fits), tuple(outputs))


def _adapter(luck: Random, types: int) -> AdapterKind:
    inputs = luck.choice(((1,), (1,), (2,), (1, 2), (2, 3)))
    return AdapterKind(
        luck.randint(1, 2),
        luck.randint(0, 2),
        luck.randint(1, 2),
        luck.randrange(types),
        inputs,
        tuple(_limits(luck, 1500) for _ in inputs),
        luck.choice((0, 0, 1)),
    )


def _devices(luck: Random, types: int, ports: int) -> tuple[Device, ...]:
    devices: list[Device] = []
    left = luck.randint(2, ports)
    while left > 0:
        if devices and luck.random() < 0.35 and len(devices[-1].ports) <= left:
            devices.append(devices[-1])
        else:
            number = min(left, luck.choice((1, 1, 2, 2, 3)))
            given = tuple(
                Port(luck.randrange(types), luck.random() < 0.7, luck.choice((1, 1, 2))) for _ in range(number)
            )
            if luck.random() < 0.5:
                given = tuple(port._replace(type=given[0].type, weight=1) for port in given)
            if luck.random() < 0.1:
                given = (given[0]._replace(must=True), *given[1:])
            running = luck.choice((0, 1000, 2500, 4001, 7000, 11000)), luck.choice((0, 0, 500)), luck.choice((0, 900))
            starting = tuple(current * luck.choice((1, 1, 2)) for current in running)
            devices.append(Device(luck.choice(ROLES), given, (*running, *starting)))  # type: ignore[arg-type]
        left -= len(devices[-1].ports)
    return tuple(devices)
