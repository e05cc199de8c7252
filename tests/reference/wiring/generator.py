"""Seeded problems that look like real builds, by class, and their starved twins.

Currents are drawn from the ranges that supplies and parts print, so that most limits are near enough to matter. Every
choice comes from ``Random(f"{name}-{seed}")``: a class and a seed name a problem for good.
"""

from collections.abc import Callable
from random import Random

from service.wiring.problem import (
    NO_LIMIT,
    AdapterFit,
    AdapterKind,
    CableKind,
    Device,
    Fit,
    GroupLimit,
    Limits,
    Load,
    Points,
    Port,
    PortType,
    Problem,
    RailLimits,
    Role,
)
from tests.reference.wiring.odd import chained, odd

TYPES = ("main", "eps", "eps4", "pcie", "pcie6", "hpwr", "sata", "periph")
MAIN, EPS, EPS4, PCIE, PCIE6, HPWR, SATA, PERIPH = range(len(TYPES))
ODD = {"odd": odd, "chained": chained}
"""No builds at all: everything the statement allows, small and close to its limits."""
CLASSES = ("small", "gaming", "storage", "workstation", "distinct", "big")
DROP_CABLE, DROP_ADAPTER = 0.3, 0.5
S_MAIN, S_EPS, S_PCIE, S_PERIPH, S_HPWR = range(5)

Plug = tuple[tuple[int, int], ...]
"""What one plug fits: (port type, halves) pairs."""

EPS_PLUG: Plug = ((EPS, 2), (EPS4, 1))
PCIE_PLUG: Plug = ((PCIE, 1), (PCIE6, 1))
RATED = {MAIN: 12000, EPS: 28000, EPS4: 14000, PCIE: 12500, PCIE6: 6250, HPWR: 50000, SATA: 4500, PERIPH: 9000}
"""What a plug is printed for on 12 V [mA]; the port decides."""


def limits(rng: Random, amps: int, tight: float = 1.0) -> RailLimits:
    """Return limits around a printed current [mA] on 12 V, and of the kind of a thin wire on the others."""
    twelve = int(amps * tight)
    start = int(twelve * rng.choice((1.2, 1.5)))
    first = Limits(
        stop=twelve, band=int(twelve * rng.choice((0.8, 0.9))), comfort=twelve,
        start_stop=start if rng.random() < 0.6 else NO_LIMIT, start_band=int(twelve * 1.1),
    )
    five = Limits(stop=twelve, band=int(twelve * 0.85), comfort=twelve) if amps <= RATED[MAIN] else Limits()
    return first, five, Limits(comfort=twelve) if rng.random() < 0.2 else Limits()


class Bench:
    """A problem in the making."""

    def __init__(self, rng: Random) -> None:
        self.rng = rng
        self.devices: list[Device] = []
        self.fits: list[list[Fit]] = [[] for _ in TYPES]
        self.adapter_fits: list[list[AdapterFit]] = [[] for _ in TYPES]
        self.cables: list[CableKind] = []
        self.adapters: list[AdapterKind] = []
        self.groups: list[GroupLimit] = []
        self.by_type = {each: limits(rng, RATED[each], rng.choice((1.0, 1.0, 1.08))) for each in range(len(TYPES))}

    def device(self, role: Role, ports: list[tuple[int, bool, int]], load: Load) -> None:
        """Add a device of (type, required, weight) ports; now and then one that is plugged already."""
        must = 0.02
        self.devices.append(Device(role, tuple(Port(*each, self.rng.random() < must) for each in ports), load))

    def cable(
        self, count: int, takes: tuple[int, ...], plugs: list[Plug], segment: int, *,
        groups: tuple[int, ...] = (), bought: bool = False,
    ) -> None:
        """Add a cable kind with a printed current [mA] of its first segment."""
        if count < 1:
            return
        kind = len(self.cables)
        first = limits(self.rng, segment)
        later = first if self.rng.random() < 0.6 else limits(self.rng, segment, 0.8)
        rows = [first] + [later] * (len(plugs) - 1)
        halves = tuple(max(size for _, size in plug) for plug in plugs)
        self.cables.append(CableKind(count, takes, halves, tuple(rows), groups, bought))
        for place, plug in enumerate(plugs):
            for port_type, size in plug:
                points = self.rng.choice((0, 0, 0, 0, 0, 0, 0, 3))
                self.fits[port_type].append(Fit(kind, place, size, self.by_type[port_type], points))

    def adapter(self, fits: tuple[int, ...], outputs: int, input_type: int, inputs: tuple[int, ...], amps: int) -> None:
        """Add an adapter kind; ``amps`` [mA] is what each input brings."""
        rank, points = self.rng.choice(((0, 0), (1, 5), (1, 0), (2, 2)))
        each = tuple(limits(self.rng, amps * number) for number in inputs)
        kind = len(self.adapters)
        self.adapters.append(AdapterKind(self.rng.choice((1, 1, 2)), rank, outputs, input_type, inputs, each, points))
        for port_type in fits:
            fit = AdapterFit(kind, self.by_type[port_type], self.rng.choice((0, 0, 0, 2)))
            self.adapter_fits[port_type].append(fit)

    def problem(self, sockets: tuple[int, ...]) -> Problem:
        """Return what has been put together."""
        types = tuple(PortType(tuple(a), tuple(b)) for a, b in zip(self.fits, self.adapter_fits, strict=True))
        points = Points(self.rng.choice((6, 10)), self.rng.choice((4, 6)), self.rng.choice((5, 8)), 18750)
        return Problem(
            tuple(self.devices), types, tuple(self.cables), sockets, tuple(self.adapters), tuple(self.groups), points,
        )


def twelve(rng: Random, low: int, high: int, start: float = 1.0) -> Load:
    """Return a load on 12 V alone [mA]; at start-up ``start`` times as much."""
    found = rng.randrange(low, high)
    return found, 0, 0, int(found * start), 0, 0


def drive(rng: Random) -> Load:
    """Return one drive model: 12 V and 5 V, and spinning up."""
    found, five = rng.randrange(400, 900), rng.randrange(300, 800)
    return found, five, 0, rng.choice((1700, 2000, 2400)), five, 0


def base(bench: Bench, cores: int) -> None:
    """Add a board and its processor."""
    rng = bench.rng
    board = (rng.randrange(1500, 5000), rng.randrange(1500, 5500), rng.randrange(800, 3500))
    extra = [(PCIE6, False, 1)] if rng.random() < 0.3 else []
    bench.device("main", [(MAIN, True, 2 if extra else 1), *extra], (*board, *board))
    for _ in range(cores):
        load = twelve(rng, 8000, 34000, rng.choice((1.0, 1.2)))
        second = rng.choice(([], [(EPS, False, 1)], [(EPS4, False, 1)], [(EPS, True, 1)]))
        bench.device("processor", [(EPS, True, rng.choice((1, 2)) if second else 1), *second], load)


def card(rng: Random, *, slim: bool = False) -> tuple[list[tuple[int, bool, int]], Load]:
    """Return the ports and load of one card model."""
    shape = rng.choice(((PCIE,), (PCIE, PCIE), (PCIE, PCIE, PCIE), (PCIE, PCIE6), (HPWR,)))
    if slim:
        shape = rng.choice(((PCIE,), (PCIE6,)))
    heavy = {PCIE: 12000, PCIE6: 6000, HPWR: 42000}
    most = sum(heavy[each] for each in shape)
    weights = [2 if each == PCIE and PCIE6 in shape else 1 for each in shape]
    load = twelve(rng, int(most * 0.45), int(most * 1.08), rng.choice((1.0, 1.2, 1.5)))
    return [(each, True, weight) for each, weight in zip(shape, weights, strict=True)], load


def drives(bench: Bench, count: int, models: int) -> None:
    """Add drives of so many models."""
    loads = [drive(bench.rng) for _ in range(models)]
    for _ in range(count):
        bench.device("drive", [(SATA, True, 1)], bench.rng.choice(loads))


def rest(bench: Bench, count: int) -> None:
    """Add fans, pumps and hubs."""
    rng = bench.rng
    for _ in range(count):
        bench.device("rest", [(rng.choice((PERIPH, PERIPH, SATA)), rng.random() < 0.8, 1)], drive(rng))


def supply(bench: Bench, twelves: int, peripherals: int, *, size: int = 1) -> tuple[int, ...]:
    """Add the cables of a supply and return its sockets."""
    rng = bench.rng
    shared = rng.random() < 0.6
    eps_socket, pcie_socket = (S_PCIE, S_PCIE) if shared else (S_EPS, S_PCIE)
    sides = rng.random() < 0.3
    if sides:
        bench.groups.extend(GroupLimit(0, rng.choice((20000, 30000, 40000))) for _ in range(3))

    def takes(*used: int) -> tuple[int, ...]:
        return tuple(used.count(socket) for socket in range(5))

    def groups(*wanted: int) -> tuple[int, ...]:
        return wanted if sides else ()

    wire, thick = rng.choice((12500, 13500)), rng.choice((24000, 25000, 27000))
    bench.cable(1, takes(S_MAIN), [((MAIN, 1),)], 25000, groups=groups(0))
    bench.cable(rng.choice((1, 2)), takes(eps_socket), [EPS_PLUG], 28000, groups=groups(0))
    if rng.random() < 0.3:
        bench.cable(1, takes(eps_socket), [EPS_PLUG, EPS_PLUG], 32000, groups=groups(0, 1))
    bench.cable(size * rng.choice((1, 1, 2)), takes(pcie_socket), [PCIE_PLUG], wire, groups=groups(1))
    bench.cable(
        size * rng.choice((1, 2)), takes(pcie_socket), [PCIE_PLUG, PCIE_PLUG], thick,
        groups=groups(*rng.choice(((1,), (2,), (1, 2), (1, 2, 2)))),
    )
    if rng.random() < 0.2:
        bench.cable(1, takes(pcie_socket), [PCIE_PLUG], wire, groups=groups(2), bought=True)
    plain: list[Plug] = [((SATA, 1),)]
    molex: list[Plug] = [((PERIPH, 1),)]
    bench.cable((peripherals + 1) // 2, takes(S_PERIPH), plain * 4, rng.choice((10000, 11000, 12500)))
    bench.cable(rng.choice((1, 2)), takes(S_PERIPH), molex * 3, rng.choice((11000, 12500)))
    bench.cable(1, takes(S_PERIPH), plain * 2 + molex * 2, 11000)
    own = rng.random() < 0.5
    for_card = takes(S_HPWR) if own else takes(pcie_socket, pcie_socket)
    bench.cable(
        size * rng.choice((0, 1, 1)), for_card, [((HPWR, 1),)], rng.choice((37500, 50000)),
        groups=groups(1, 2) if not own else groups(2),
    )
    eps = 2 if size == 1 else 3
    return 1, eps, twelves - (0 if shared else eps), peripherals, 1 if own else 0


def adapters(bench: Bench) -> None:
    """Add what a builder may have at hand."""
    rng = bench.rng
    if rng.random() < 0.7:
        inputs = rng.choice(((2,), (3,), (2, 3), (2, 4), (3, 4), (2, 3, 4)))
        bench.adapter((HPWR,), 1, PCIE, inputs, 12500)
    if rng.random() < 0.5:
        bench.adapter((SATA,), rng.choice((1, 2)), PERIPH, (1,), 4500)
    if rng.random() < 0.25:
        bench.adapter((PCIE, PCIE6), 1, rng.choice((PERIPH, SATA)), rng.choice(((1, 2), (2,))), 6250)
    if rng.random() < 0.15:
        bench.adapter((EPS, EPS4), 1, PCIE, rng.choice(((1,), (2,), (1, 2))), 12500)
    if rng.random() < 0.15:
        bench.adapter((PCIE, PCIE6), 2, PCIE, (1,), 12500)


def small(bench: Bench) -> Problem:
    """Return five or six ports."""
    base(bench, 1)
    bench.device("card", *card(bench.rng, slim=True))
    drives(bench, 2, bench.rng.choice((1, 2)))
    sockets = supply(bench, 4, 2)
    adapters(bench)
    return bench.problem(sockets)


def gaming(bench: Bench) -> Problem:
    """Return about twelve ports with one card."""
    rng = bench.rng
    base(bench, 1)
    bench.device("card", *card(rng))
    drives(bench, rng.randrange(2, 5), rng.choice((1, 2, 3)))
    rest(bench, rng.randrange(4))
    sockets = supply(bench, rng.randrange(5, 8), rng.choice((3, 4)))
    adapters(bench)
    return bench.problem(sockets)


def storage(bench: Bench) -> Problem:
    """Return many drives of several models."""
    rng = bench.rng
    base(bench, 1)
    drives(bench, rng.randrange(8, 25), rng.choice((1, 2, 3)))
    rest(bench, rng.randrange(5))
    sockets = supply(bench, 4, rng.choice((5, 6, 7)))
    adapters(bench)
    return bench.problem(sockets)


def workstation(bench: Bench) -> Problem:
    """Return several cards of one or two models."""
    rng = bench.rng
    base(bench, rng.choice((1, 2)))
    models = [card(rng) for _ in range(rng.choice((1, 2)))]
    for _ in range(rng.randrange(2, 6)):
        bench.device("card", *rng.choice(models))
    drives(bench, rng.randrange(1, 5), 1)
    sockets = supply(bench, rng.randrange(8, 16), 3, size=3)
    adapters(bench)
    return bench.problem(sockets)


def distinct(bench: Bench) -> Problem:
    """Return cards that are all different, with adapters."""
    rng = bench.rng
    base(bench, 1)
    for _ in range(rng.randrange(3, 6)):
        bench.device("card", *card(rng))
    drives(bench, rng.randrange(1, 4), 2)
    sockets = supply(bench, rng.randrange(7, 14), 3, size=2)
    adapters(bench)
    bench.adapter((HPWR,), 1, PCIE, rng.choice(((2,), (2, 3), (3, 4))), 12500)
    return bench.problem(sockets)


def big(bench: Bench) -> Problem:
    """Return about forty ports."""
    rng = bench.rng
    base(bench, 2)
    model = card(rng)
    for _ in range(8):
        bench.device("card", *model)
    drives(bench, rng.randrange(10, 15), rng.choice((1, 2)))
    rest(bench, 3)
    sockets = supply(bench, rng.randrange(16, 24), 7, size=8)
    adapters(bench)
    return bench.problem(sockets)


MAKERS: dict[str, Callable[[Bench], Problem]] = {
    "small": small, "gaming": gaming, "storage": storage, "workstation": workstation, "distinct": distinct, "big": big,
}


def realistic(name: str, seed: int) -> Problem:
    """Return the problem of a class and a seed."""
    if name in ODD:
        return ODD[name](Random(f"{name}-{seed}"))
    return MAKERS[name](Bench(Random(f"{name}-{seed}")))


def starved(problem: Problem, rng: Random) -> Problem:
    """Return a twin that lacks cables, sockets and adapters."""
    cables = [at for at in range(len(problem.cables)) if rng.random() >= DROP_CABLE]
    kept = [at for at in range(len(problem.adapters)) if rng.random() >= DROP_ADAPTER]
    types = tuple(
        PortType(
            tuple(fit._replace(cable=cables.index(fit.cable)) for fit in each.fits if fit.cable in cables),
            tuple(fit._replace(adapter=kept.index(fit.adapter)) for fit in each.adapter_fits if fit.adapter in kept),
        )
        for each in problem.port_types
    )
    return problem._replace(
        port_types=types,
        cables=tuple(problem.cables[at] for at in cables),
        sockets=tuple(rng.choice((0, 1, number)) for number in problem.sockets),
        adapters=tuple(problem.adapters[at] for at in kept),
    )


def equal_drives(count: int, models: int) -> Problem:
    """Return only drives on chains, for growth: as many as asked, in turn of each model."""
    bench = Bench(Random(f"growth-{models}"))  # the same models at each size
    loads = [drive(bench.rng) for _ in range(models)]
    for at in range(count):
        bench.devices.append(Device("drive", (Port(SATA, True, 1),), loads[at % models]))
    chains = (count + 3) // 4 + 1
    bench.cable(chains, (1,), [((SATA, 1),)] * 4, 11000)
    return bench.problem((chains,))
