"""A build: parts made out, in canonical order, with the place on the sheet that each came from."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

from service.parts.readings import Taken
from service.parts.records import Adapter, Part
from service.parts.runs import WireRun

WiringRest = Literal["leave", "plan"]


class Unit(NamedTuple):
    """One piece of a part: ``line`` and ``copy`` (both from 0) say where on the sheet it stands."""

    part: Part
    digest: str
    line: int
    copy: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """How the machine is used. None: not given."""

    drives_starting_together: int | None = None
    graphics_limit_percent: float | None = None
    hours_a_day: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """Where the machine stands. None: not given."""

    mains_volts: float | None = None
    circuit_amps: float | None = None
    code: str | None = None
    room_celsius: float | None = None
    plug_fuse_amps: float | None = None
    ups_watts: float | None = None
    ups_volt_amperes: float | None = None
    ups_transfer_milliseconds: float | None = None


class PluggedAdapter(NamedTuple):
    """An adapter in use: a line of its own (``entry`` None) or that ``entry`` of the adapters bundled with a card.

    ``copy`` counts, from 0, through the pieces of the line and the quantity of the entry; ``inputs`` says how many
    are fed.
    """

    line: int
    entry: int | None
    copy: int
    inputs: int


class PluggedPlug(NamedTuple):
    """A plug in use: cable ``cable`` of the supply at ``line``, or (``cable`` None) the cable that is that line.

    ``copy`` counts cables from 0, ``plug`` its plugs from 0. ``sockets`` empty: where the cable belongs.
    """

    line: int
    cable: int | None
    copy: int
    plug: int
    sockets: tuple[str, ...] = ()
    open_contacts: int = 0


class Plugged(NamedTuple):
    """One fed port: the device's line and copy, and which of its ports of that connector (from 0).

    ``adapters`` from the port towards the supply; an adapter beyond the first serves the first inputs of the first one.
    ``plugs`` in the order of the inputs they serve; without adapters there is exactly one.
    """

    line: int
    copy: int
    connector: str
    number: int
    adapters: tuple[PluggedAdapter, ...]
    plugs: tuple[PluggedPlug, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """All that a check is asked about. ``units`` stand in canonical order.

    ``edition`` names the catalogue edition used; ``runs`` and ``readings`` stand in the order of the sheet.

    What was read is in the units already.

    ``adapters_on_offer`` are those that it lists, each once; they are looked at only for what to buy.

    ``wiring`` None: plan it. A tuple: judge this and, when ``wiring_rest`` is ``plan``, complete it.
    """

    units: tuple[Unit, ...]
    use: Use = Use()
    site: Site = Site()
    wiring: tuple[Plugged, ...] | None = None
    wiring_rest: WiringRest = "leave"
    aspects: tuple[str, ...] | None = None
    would_settle: bool = False
    size: bool = False
    reference: str | None = None
    edition: str = ""
    adapters_on_offer: tuple[Adapter, ...] = ()
    runs: tuple[WireRun, ...] = ()
    readings: tuple[Taken, ...] = ()
