"""Every placing of a small build, one by one, as ``service.demand.hosts`` states them; and such builds.

Nothing of the search is used here. Builds are starved on purpose: too few headers, weak ones, hubs on hubs.
"""

import itertools
import random
from collections.abc import Iterator
from typing import Any, NamedTuple

from service.demand.draws import Draw
from service.demand.wants import Host
from service.parts.records import Need, Offer

HEADERS = {"fan-4", "fan-3", "argb-3", "usb2-9", "sata-data"}
USUAL = {"fan-4": 1000, "fan-3": 1000, "argb-3": 3000, "rgb-4": 3000, "m2-m": 3000, "sata-power": 4500}
PINS = {"sata-power": 4500, "peripheral-4": 11_000, "floppy-4": 2000}
HUB_NEEDS = [[], ["sata-power"], ["sata-power"], ["fan-4"], ["usb2-9"], ["sata-power", "usb2-9"], ["peripheral-4"]]
DEVICE_NEEDS = [
    ["fan-4"], ["fan-4"], ["fan-3"], ["argb-3"], ["sata-power"], ["sata-power", "usb2-9"], ["fan-4", "argb-3"],
]
Six = tuple[int, ...]


class Port(NamedTuple):
    """One port: the host, what it is called, what it is good for; ``anything``: on a board that has everything."""

    unit: int
    connector: str
    limit: int
    anything: bool = False


class Plug(NamedTuple):
    """One header or the one power plug of a device, and what comes by it."""

    unit: int
    connector: str
    load: Six
    optional: bool
    carries: bool

    @property
    def header(self) -> bool:
        """Say whether this is a header, and no power plug."""
        return self.connector in HEADERS


Placing = tuple[Port | None, ...]


def plugs(draws: list[Draw]) -> list[Plug]:
    """Return what may be given a port."""
    found = []
    for draw in draws:
        load = (*draw.sustained, *draw.starting)
        power = [n for n in draw.needs if n.connector not in HEADERS]
        headers = [n for n in draw.needs if n.connector in HEADERS for _ in range(n.count)]
        if sum(n.count for n in power) == 1:
            found.append(Plug(draw.unit, power[0].connector, load, power[0].optional, carries=True))
        for place, need in enumerate(headers):
            bears = not power and place == 0
            found.append(Plug(draw.unit, need.connector, load if bears else (0,) * 6, need.optional, carries=bears))
    return found


def ports(hosts: list[Host]) -> list[Port]:
    """Return all ports there are."""
    return [
        Port(at.unit, o.connector, USUAL.get(o.connector, 0) if o.max_amps is None else round(o.max_amps * 1000))
        for at in hosts for o in at.offers or () for _ in range(o.count)
    ]


def mate(plug: Plug, port: Port) -> bool:
    """Say whether a plug goes on a port, of another part."""
    if port.unit == plug.unit:
        return False
    if port.anything:
        return plug.header and not plug.optional
    fans = {"fan-3", "fan-4"}
    return plug.connector == port.connector or {plug.connector, port.connector} <= fans


def placings(of: list[Plug], there: list[Port], ready: Port | None) -> Iterator[Placing]:
    """Yield every legal placing; of equal ports, one is tried first."""
    choices = []
    for plug in of:
        mine = sorted({p for p in there if mate(plug, p)})
        choices.append([*mine, *([ready] if ready is not None and mate(plug, ready) else []), None])
    for placing in itertools.product(*choices):
        taken = [p for p in placing if p is not None and not p.anything]
        if all(taken.count(p) <= there.count(p) for p in set(taken)) and not _circular(of, placing):
            yield placing


def _circular(of: list[Plug], placing: Placing) -> bool:
    arrows = {(plug.unit, port.unit) for plug, port in zip(of, placing, strict=True) if port is not None}
    while arrows:
        tops = {to for _, to in arrows} - {start for start, _ in arrows}
        if not tops:
            return True
        arrows = {(start, to) for start, to in arrows if to not in tops}
    return False


def loads(of: list[Plug], placing: Placing) -> tuple[dict[int, Six], list[Six]]:
    """Return what hangs on each unit, and what each plug carries."""
    parent = {p.unit: port.unit for p, port in zip(of, placing, strict=True) if p.carries and port is not None}
    hung: dict[int, list[int]] = {}
    for plug in of:
        at = plug.unit
        while plug.carries and at in parent:
            at = parent[at]
            row = hung.setdefault(at, [0] * 6)
            for rail in range(6):
                row[rail] += plug.load[rail]
    carried = [
        tuple(a + b for a, b in zip(p.load, hung.get(p.unit, [0] * 6), strict=True)) if p.carries else (0,) * 6
        for p in of
    ]
    return {unit: tuple(row) for unit, row in hung.items()}, carried


def worth(draws: list[Draw], hosts: list[Host], of: list[Plug], there: list[Port], placing: Placing) -> Six:
    """Return the six levels."""
    hung, carried = loads(of, placing)
    units = {at.unit for at in hosts}
    without = [plug for plug, port in zip(of, placing, strict=True) if port is None]
    headless = [plug for plug in without if plug.header and not plug.optional]
    mated = [plug for plug in without if any(mate(plug, port) for port in there)]
    over = {
        (port.unit, port.connector) for port, current in zip(placing, carried, strict=True)
        if port is not None and not port.anything and max(current[:3]) > port.limit
    }
    hanging = {plug.unit for plug, port in zip(of, placing, strict=True) if plug.carries and port is not None}
    pins = 0
    for draw in draws:
        power = [n for n in draw.needs if n.connector not in HEADERS]
        if draw.unit not in units or draw.unit in hanging or not power:
            continue
        number = sum(n.count for n in power)
        if any(n.connector not in PINS for n in power):
            continue
        total = [a + b for a, b in zip((*draw.sustained, *draw.starting), hung.get(draw.unit, (0,) * 6), strict=True)]
        pins += max(-(-one // number) for one in total) > min(PINS[n.connector] for n in power)
    return (
        len(headless),
        sum(plug.unit in units for plug in headless),
        sum(not plug.header for plug in mated),
        pins,
        len(over),
        sum(plug.header and plug.optional for plug in mated),
    )


def all_worths(draws: list[Draw], hosts: list[Host]) -> list[tuple[Six, object]]:
    """Return the worth of every placing, and what the wiring sees: what its plugs carry, what is left for them."""
    of, there = plugs(draws), ports(hosts)
    unit = next((at.unit for at in hosts if at.offers is None), None)
    ready = None if unit is None else Port(unit, "", 0, anything=True)
    found: list[tuple[Six, object]] = []
    for placing in placings(of, there, ready):
        hung, _ = loads(of, placing)
        hanging = {plug.unit for plug, port in zip(of, placing, strict=True) if plug.carries and port is not None}
        roots = tuple(sorted((unit, load) for unit, load in hung.items() if unit not in hanging and any(load)))
        left = sorted(
            (plug.connector, plug.load) for plug in of if not plug.header and plug.unit not in hanging
        )
        found.append((worth(draws, hosts, of, there, placing), (roots, tuple(left))))
    return found


# --- small builds ---


def _offers(rng: random.Random, names: list[str], most: int) -> tuple[Offer, ...]:
    picked = rng.sample(names, rng.randint(0, min(2, len(names))))
    amps = [None, 0.3, 0.5, 1.0, 1.0, 2.0]
    return tuple(Offer(connector=n, count=rng.randint(1, most), max_amps=rng.choice(amps)) for n in picked)


def _load(rng: random.Random) -> tuple[int, int, int]:
    return (rng.choice([0, 200, 400, 400, 900, 1500, 3000]), rng.choice([0, 0, 0, 700]), 0)


def small_build(seed: int) -> tuple[list[Draw], list[Host]]:
    """Return a small build as draws and hosts."""
    rng = random.Random(seed)
    draws: list[Draw] = []
    hosts: list[Host] = []
    names = ["fan-4", "fan-3", "argb-3", "usb2-9", "sata-power"]
    for unit in range(rng.randint(1, 2)):
        rank = rng.choice([0, 1, 1])
        hosts.append(Host(unit, rank, _offers(rng, names, 2)))
        needs = tuple(_need(rng, name) for name in rng.choice(HUB_NEEDS))
        own = (rng.choice([0, 50, 100, 2500]), 0, 0)
        draws.append(Draw(unit, "rest", needs, own, own))
    if rng.random() < 0.85:
        offers = None if rng.random() < 0.15 else _offers(rng, names, 2)
        hosts.append(Host(9, 2, offers))
    kinds = [_device(rng) for _ in range(rng.randint(1, 2))]
    for unit in range(2, 2 + rng.randint(1, 4)):
        needs, load, start = rng.choice(kinds)
        draws.append(Draw(unit, "rest", needs, load, start))
    return draws, hosts


def _need(rng: random.Random, name: str) -> Need:
    return Need(connector=name, optional=rng.random() < 0.15)


def _device(rng: random.Random) -> tuple[Any, tuple[int, int, int], tuple[int, int, int]]:
    load = _load(rng)
    start = (load[0] + rng.choice([0, 0, 1500]), load[1], load[2])
    return tuple(_need(rng, name) for name in rng.choice(DEVICE_NEEDS)), load, start
