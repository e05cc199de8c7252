"""Seeded wiring problems of the size and make of real builds, by class, and their starved twins in random_problems."""

from random import Random

from service.wiring.problem import (
    FREE,
    AdapterFit,
    AdapterKind,
    CableKind,
    Device,
    Fit,
    Limits,
    Load,
    Points,
    Port,
    PortType,
    Problem,
    RailLimits,
    Role,
)

MAIN, EPS, PCIE8, PCIE6, SIXTEEN, SATA, PERIPHERAL = range(7)
CLASSES = ("small", "gaming", "storage", "workstation", "distinct", "big")
POINTS = Points(5, 3, 8, 18_750)
CONTACT_12V = (2, 4, 3, 3, 6, 3, 1)
RATED_WATTS = {PCIE8: 150, PCIE6: 75, SIXTEEN: 600}


def realistic(name: str, seed: int) -> Problem:
    """Return a problem of a class."""
    return _Build(name, seed).problem()


def joint(of: int) -> RailLimits:
    """Return what a plug in a port allows."""
    count = CONTACT_12V[of]
    if of == SATA:
        rail = Limits(stop=4_500, comfort=4_500, start_stop=4_500)
        return rail, rail, rail
    if of == PERIPHERAL:
        rail = Limits(stop=11_000, comfort=8_000, start_stop=11_000)
        return rail, rail, FREE
    if of == SIXTEEN:
        return Limits(stop=50_000, comfort=55_200), FREE, FREE
    stop = min(8_000 * count, RATED_WATTS.get(of, 10_000) * 1000 // 12)
    return Limits(stop=stop, band=6_000 * count, comfort=8_000 * count), FREE, FREE


def stretch(contacts: int, watts: int | None = None, drive: bool = False) -> RailLimits:
    """Return what a stretch of so many wires on 12 V allows, printed with so many watts."""
    stop = 8_000 * contacts
    first = Limits(stop, 6_000 * contacts, stop, start_band=stop) if drive else Limits(stop, 6_000 * contacts, stop)
    if watts is not None:
        first = first._replace(stop=min(stop, watts * 1000 // 12))
    return first, first if drive else FREE, FREE


class _Build:
    def __init__(self, name: str, seed: int) -> None:
        self.name = name
        self.luck = Random(f"{name}-{seed}")
        self.doubled = 2 if name == "big" else 1
        self.one_family = self.luck.random() < 0.6
        self.cables: list[CableKind] = []
        self.fits: list[list[Fit]] = [[] for _ in range(7)]
        self.adapter_fits: list[list[AdapterFit]] = [[] for _ in range(7)]
        self.adapters: list[AdapterKind] = []
        self.devices: list[Device] = []

    def problem(self) -> Problem:
        """Return the whole problem."""
        self._supply()
        self._all_devices()
        self._all_adapters()
        types = tuple(PortType(tuple(f), tuple(a)) for f, a in zip(self.fits, self.adapter_fits, strict=True))
        sockets = (self._sockets(), 2 if self.one_family else 3, self._drive_sockets(), 2)
        return Problem(tuple(self.devices), types, tuple(self.cables), sockets, tuple(self.adapters), (), POINTS)

    # The supply: sockets 0 for cards (and processors), 1 for processors, 2 for drives, 3 for 16-pin plugs.

    def _sockets(self) -> int:
        low, high = {"small": (3, 3), "gaming": (4, 7), "storage": (4, 4)}.get(self.name, (14, 24))
        return self.luck.randint(low, high) * self.doubled

    def _drive_sockets(self) -> int:
        low, high = {"small": (2, 2), "gaming": (3, 4), "storage": (7, 9)}.get(self.name, (5, 5))
        return self.luck.randint(low, high) * self.doubled

    def _cable(self, count: int, plugs: list[int], segment: RailLimits, takes: tuple[int, int, int, int]) -> None:
        kind = len(self.cables)
        halves = tuple(2 if plug == EPS else 1 for plug in plugs)
        self.cables.append(CableKind(count * self.doubled, takes, halves, (segment,) * len(plugs)))
        for place, plug in enumerate(plugs):
            for of in (plug, PCIE6) if plug == PCIE8 else (plug,):
                self.fits[of].append(Fit(kind, place, halves[place], joint(of)))

    def _supply(self) -> None:
        luck = self.luck
        large = self.name in ("workstation", "distinct", "big")
        eps = (1, 0, 0, 0) if self.one_family else (0, 1, 0, 0)
        self._cable(1, [MAIN], stretch(2), (0, 0, 0, 0))
        self._cable(luck.randint(1, 3), [EPS], stretch(4), eps)
        self._cable(luck.randint(4, 10) if large else luck.randint(1, 3), [PCIE8], stretch(3), (1, 0, 0, 0))
        self._cable(luck.randint(3, 8) if large else luck.randint(0, 2), [PCIE8] * 2, stretch(3), (1, 0, 0, 0))
        self._cable(luck.randint(2, 6), [SATA] * 4, stretch(1, drive=True), (0, 0, 1, 0))
        self._cable(luck.randint(1, 2), [PERIPHERAL] * 3, stretch(1, drive=True), (0, 0, 1, 0))
        if luck.random() < 0.5:
            self._cable(1, [SATA, SATA, PERIPHERAL, PERIPHERAL], stretch(1, drive=True), (0, 0, 1, 0))
        if luck.random() < 0.3:
            self._cable(1, [EPS, EPS], stretch(4), eps)
        if luck.random() < 0.5:
            watts = luck.choice((450, 600))
            takes = (2, 0, 0, 0) if luck.random() < 0.5 else (0, 0, 0, 1)
            self._cable(luck.randint(1, 2), [SIXTEEN], stretch(6, watts), takes)

    def _device(self, role: Role, ports: list[int], weights: list[int], load: Load) -> None:
        given = tuple(Port(of, True, weight) for of, weight in zip(ports, weights, strict=True))
        self.devices.append(Device(role, given, load))

    def _card(self, sixteen: bool | None = None) -> tuple[list[int], int]:
        shapes = [[PCIE8], [PCIE8] * 2, [PCIE8] * 3, [PCIE8, PCIE6], [SIXTEEN]]
        found = [SIXTEEN] if sixteen else self.luck.choice(shapes)
        rated = sum(RATED_WATTS[of] for of in found)
        return found, self.luck.randint(200, 515) if found == [SIXTEEN] else int(rated * self.luck.uniform(0.6, 1.0))

    def _cards(self, number: int, models: int) -> None:
        chosen = [self._card() for _ in range(models)]
        for at in range(number):
            ports, watts = chosen[at] if at < models else self.luck.choice(chosen)
            current = watts * 1000 // 12
            self._device("card", ports, [1] * len(ports), (current, 0, 0, int(current * 1.3), 0, 0))

    def _drives(self, number: int, models: int, of: int = SATA) -> None:
        chosen = [(self.luck.randint(400, 800), self.luck.randint(300, 900)) for _ in range(models)]
        for at in range(number):
            twelve, five = chosen[at] if at < models else self.luck.choice(chosen)
            self._device("drive", [of], [1], (twelve, five, 0, int(twelve * 3.2), five + 200, 0))

    def _all_devices(self) -> None:
        luck, name = self.luck, self.name
        self._device("main", [MAIN], [1], (6_000, 5_000, 2_000, 6_000, 5_000, 2_000))
        two = name in ("gaming", "workstation", "distinct", "big")
        current = luck.randint(8_000, 26_000)
        optional = two and luck.random() < 0.5
        ports = (Port(EPS, True, 2), Port(EPS, not optional, 1))[: 2 if two else 1]
        self.devices.append(Device("processor", ports, (current, 0, 0, current + 4000, 0, 0)))
        if name == "small":
            self._device("card", [PCIE8], [1], (10_000, 0, 0, 13_000, 0, 0))
            self._drives(2, 2)
        elif name == "gaming":
            self._cards(1, 1)
            if luck.random() < 0.3:
                self._device("card", [PCIE6], [1], (3_000, 0, 0, 3_000, 0, 0))
            self._drives(luck.randint(3, 5), 3)
            self._drives(luck.randint(0, 2), 1, luck.choice((SATA, PERIPHERAL)))
        elif name == "storage":
            self._drives(24, luck.randint(1, 3))
            self._drives(luck.randint(0, 4), 1, PERIPHERAL)
        else:
            number = 8 if name == "big" else luck.randint(4, 8)
            self._cards(number, number if name == "distinct" else luck.randint(1, 2))
            self._drives(luck.randint(10, 14) if name == "big" else luck.randint(2, 6), 3)

    def _adapter(self, count: int, gives: int, takes: int, watts: dict[int, int]) -> None:
        limits = tuple((Limits(stop=each * 1000 // 12), FREE, FREE) for each in watts.values())
        self.adapter_fits[gives].append(AdapterFit(len(self.adapters), joint(gives)))
        self.adapters.append(AdapterKind(count, 2 if gives == SIXTEEN else 1, 1, takes, tuple(watts), limits))

    def _all_adapters(self) -> None:
        number = sum(port.type == SIXTEEN for device in self.devices for port in device.ports)
        if number:
            watts = {2: 300, 3: 450} | ({4: 600} if self.luck.random() < 0.4 else {})
            self._adapter(number, SIXTEEN, PCIE8, watts)
        if self.luck.random() < 0.5:
            self._adapter(self.luck.randint(1, 3), SATA, PERIPHERAL, {1: 54})


def different_two_plug_cards(number: int) -> Problem:
    """Return cards of two plugs, no two alike, on single and double cables."""
    posed = _Build("hard", number)
    posed._cable(number, [PCIE8], stretch(3), (1, 0, 0, 0))
    posed._cable(number, [PCIE8] * 2, stretch(3), (1, 0, 0, 0))
    for at in range(number):
        current = 14_000 + 700 * at
        posed._device("card", [PCIE8] * 2, [1, 1], (current, 0, 0, current, 0, 0))
    return _finished(posed, (number + number // 2, 0, 0, 0))


def cards_on_adapters(number: int, different: bool) -> Problem:
    """Return cards of one 16-pin plug behind adapters of two to four inputs, all alike or no two alike."""
    posed = _Build("hard", number)
    posed._cable(2 * number, [PCIE8], stretch(3), (1, 0, 0, 0))
    posed._cable(number, [PCIE8] * 2, stretch(3), (1, 0, 0, 0))
    posed._adapter(number, SIXTEEN, PCIE8, {2: 300, 3: 450, 4: 600})
    for at in range(number):
        current = 30_000 + (900 * at if different else 0)
        posed._device("card", [SIXTEEN], [1], (current, 0, 0, current, 0, 0))
    return _finished(posed, (3 * number, 0, 0, 0))


def different_drives(number: int, plugs: int) -> Problem:
    """Return drives, no two alike, on chains of so many plugs."""
    posed = _Build("hard", number)
    posed._cable(number // plugs + 2, [SATA] * plugs, stretch(1, drive=True), (0, 0, 1, 0))
    for at in range(number):
        posed._device("drive", [SATA], [1], (300 + 7 * at, 250 + 3 * at, 0, 900 + 11 * at, 350, 0))
    return _finished(posed, (0, 0, number // plugs + 2, 0))


def many_optional_ports(number: int) -> Problem:
    """Return a board that has two required ports and so many optional ones of different weights."""
    posed = _Build("hard", number)
    posed._cable(number + 2, [EPS], stretch(4), (1, 0, 0, 0))
    ports = (Port(EPS, True, 2), Port(EPS, True, 2), *(Port(EPS, False, 1 + at) for at in range(number)))
    posed.devices.append(Device("processor", ports, (60_000, 0, 0, 70_000, 0, 0)))
    return _finished(posed, (number, 0, 0, 0))


def absurd(ports: int, kinds: int, seed: int) -> Problem:
    """Return a legal problem that no build has: many different ports on many kinds of cable, with adapters."""
    posed = _Build("hard", seed)
    luck = posed.luck
    for at in range(kinds):
        of = luck.choice((EPS, PCIE8, SATA, PERIPHERAL, SIXTEEN))
        more = [luck.choice((of, SATA, PERIPHERAL, PCIE8)) for _ in range(luck.randint(0, 3))]
        posed._cable(luck.randint(1, 3), [of, *more], stretch(luck.randint(1, 6)), (at % 2, 0, (at + 1) % 2, 0))
    for gives, takes in ((SIXTEEN, PCIE8), (SATA, PERIPHERAL), (PCIE8, EPS), (PERIPHERAL, SATA)):
        posed._adapter(luck.randint(2, 8), gives, takes, {1: 100, 2: 200, 3: 400})
    left = ports
    while left > 0:
        number = min(left, luck.randint(1, 4))
        chosen = tuple(
            Port(luck.choice((EPS, PCIE8, SATA, PERIPHERAL, SIXTEEN)), luck.random() < 0.8, luck.randint(1, 3))
            for _ in range(number)
        )
        current = luck.randint(500, 30_000)
        role: Role = luck.choice(("card", "drive", "rest", "processor"))
        posed.devices.append(Device(role, chosen, (current, current // 3, 0, current * 2, current // 3, 0)))
        left -= number
    return _finished(posed, (ports // 3, 0, ports // 4, 0))


def _finished(posed: _Build, sockets: tuple[int, int, int, int]) -> Problem:
    types = tuple(PortType(tuple(f), tuple(a)) for f, a in zip(posed.fits, posed.adapter_fits, strict=True))
    return Problem(tuple(posed.devices), types, tuple(posed.cables), sockets, tuple(posed.adapters), (), POINTS)
