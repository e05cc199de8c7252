"""The case: plain numbers at one end of every range, ready to be compared."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

from service.case.place import Place
from service.demand.demand import Assumed, Demand
from service.parts.build import Build
from service.parts.figures import End
from service.parts.records import Adapter, Cable, PowerSupply

Cause = Literal["plug", "contact", "wire", "socket", "print", "adapter", "drive_rail", "start_wire", "volts"]
Spot = Literal["at_port", "at_input", "in_adapter", "of_cable"]
EfficiencyBasis = Literal["points", "level", "assumed"]
Mate = Literal["full", "half", "impossible"]


class Strain(NamedTuple):
    """A place on the way of a connection's current that is past a limit.

    ``amps`` and ``limit_amps`` are of one contact or wire when ``contacts`` is above 0, else of all of it.
    ``level`` says which limit: ``stop`` or ``band`` (sustained), ``start_stop`` or ``start_band`` (start-up); ``spot``
    where on the way.
    """

    cause: Cause
    level: Literal["stop", "band", "start_stop", "start_band"]
    rail: str
    amps: float
    limit_amps: float
    contacts: int
    sixteen_pin: bool
    spot: Spot = "at_port"


class Passage(NamedTuple):
    """What passes one contact, wire or rating on the way, sustained, and what that is good for.

    ``amps`` are of all contacts or wires, ``each_amps`` and ``rated_amps`` of one; where ``contacts`` is 0 of all: a
    rating of the whole, or a plug that has no contact left. ``basis`` is the key of the fact that the rating is taken
    from, or the field that states it. ``reserve`` is rating by current.
    """

    spot: Spot
    cause: Cause
    rail: str
    amps: float
    contacts: int
    each_amps: float
    rated_amps: float
    basis: str
    reserve: float


class Stretch(NamedTuple):
    """A stretch of a cable in use: which cable, from 0 which plug it leads up to, and what passes it."""

    unit: int
    cable: int
    copy: int
    plug: int
    passages: tuple[Passage, ...]


class Way(NamedTuple):
    """What passes the joints near a port, and of these and the cable's stretches the tightest (``step``: which)."""

    passages: tuple[Passage, ...]
    tightest: Passage | None
    step: int | None


class Drop(NamedTuple):
    """A rail behind what was added after the supply's own cable, at the place where it is nearest to its limit.

    ``volts`` there, the ``lowest`` allowed, ``cautious`` from where on half is used; ``lost_watts`` of the port's
    current in all that was added.
    """

    rail: str
    volts: float
    lowest: float
    cautious: float
    lost_watts: float


class Heat(NamedTuple):
    """How warm the 12 V contacts of a plug may get above the air in the case: estimates.

    ``contacts`` are left beside those stated open; with an equal share of the current, and the hottest with the worst
    that is credible, None where one more open contact would leave none. ``length_mm`` and ``awg`` of the wire behind
    each, ``assumed`` those that are not given.
    """

    spot: Spot
    connector: str
    contacts: int
    open_contacts: int
    even_amps: float
    even_rise_celsius: float
    hottest_amps: float | None
    hottest_rise_celsius: float | None
    rated_amps: float
    length_mm: float
    awg: int
    assumed: tuple[str, ...]


class FeedPlug(NamedTuple):
    """A plug that feeds a port: which cable (unit, index in the supply's cables or -1, copy), which plug.

    How it mates. ``open_contacts``: those that a wiring states, beside what is known of the whole cable. ``put_in``:
    sockets in which its cable is said to stand and which are not its own, or ``all_taken``, else ().
    """

    unit: int
    cable: int
    copy: int
    plug: int
    connector: str
    mate: Mate
    sockets: tuple[str, ...]
    open_contacts: int
    rated_watts: float | None
    foreign: bool
    carries_3v3: bool | None
    short_by_mm: float
    assumed_short_by_mm: float
    put_in: tuple[str, ...]


class FeedAdapter(NamedTuple):
    """An adapter on the way: unit it belongs to, entry among a card's bundled ones or -1, copy, inputs used."""

    unit: int
    entry: int
    copy: int
    inputs: int
    moulded: bool
    bundled: bool
    takes: str
    gives: str
    rated_watts: float | None


class Joint(NamedTuple):
    """A fed port with all that lies between it and the supply.

    Amps are of the whole port, by rail (12 V, 5 V, 3.3 V); ``watts_12v`` at nominal volts, sustained. ``use_percent``
    is the worst wire or contact in percent of what is comfortable at 100. ``reason``: why a plug cannot feed the port
    it is put in, as ``OpenPort.reason`` or not_made_for or no_3v3. ``equal_watts``: ``watts_12v`` if the card shared
    equally over its plugs, 0 where that is no question.
    """

    at: Place
    role: str
    connector: str
    required: bool
    sustained_amps: tuple[float, float, float]
    starting_amps: tuple[float, float, float]
    watts_12v: float
    use_percent: float
    strains: tuple[Strain, ...]
    plugs: tuple[FeedPlug, ...]
    adapters: tuple[FeedAdapter, ...]
    reason: str = ""
    equal_watts: float = 0.0
    way: Way = Way((), None, None)
    drops: tuple[Drop, ...] = ()
    heats: tuple[Heat, ...] = ()


class OpenPort(NamedTuple):
    """A port without a source: required ones are unfed. ``crowded``: a fed neighbour is above comfort.

    ``reason``: no_such_plug, not_listed, no_such_rail, without_3v3, none_left, no_socket_left, too_short, left_out,
    not_plugged.
    """

    at: Place
    role: str
    connector: str
    required: bool
    crowded: bool
    reason: str
    short_by_mm: float


class CardShare(NamedTuple):
    """A cable that feeds two or more ports of one card, and the watts of that card which it carries."""

    at: Place
    cable: Place
    ports: int
    watts: float


class RailLoad(NamedTuple):
    """A rail of the supply: sustained and start-up amps against what it gives, and the least that it wants."""

    at: Place
    rail: str
    sustained_amps: float
    starting_amps: float
    max_amps: float
    least_amps: float | None = None


class CombinedLoad(NamedTuple):
    """Several rails that share a limit in watts: what they give together, sustained and at start-up."""

    at: Place
    rails: tuple[str, ...]
    watts: float
    starting_watts: float
    limit_watts: float


class GroupLoad(NamedTuple):
    """An overcurrent group: what the plan puts on it, sustained and at start-up."""

    at: Place
    name: str
    rail: str
    amps: float
    starting_amps: float
    max_amps: float


class MomentLoad(NamedTuple):
    """A short moment: watts asked, watts the supply promises (None.

    It promises nothing), and what the large column would give.

    ``stated``: the peak that decides was stated by a part's maker. ``beyond_formula``: a card outside 300 to 600 W
    decides. ``all_cards_watts``: the same with every card at its excursion at once.
    """

    at: Place
    microseconds: int
    watts: float
    all_cards_watts: float
    stated: bool
    beyond_formula: bool
    promised_watts: float | None
    own_column_watts: float
    large_column_watts: float


class Promises(NamedTuple):
    """What a supply promises beside its limits: watts in the room's warmth, and by its design hold-up and low load.

    ``easy_hold_up_milliseconds`` is recommended at 80 % load, ``low_load_watts`` the load at which an efficiency is
    asked for; None where its guide has no such figure.
    """

    room_watts: float
    hold_up_milliseconds: float
    easy_hold_up_milliseconds: float | None
    low_load_watts: float | None


class Wall(NamedTuple):
    """The mains side, at the sustained load. Circuit, inlet, fuse and UPS figures are None where there is none given.

    ``efficiency_basis``: what the efficiency rests on (``points`` of the sheet, ``level``, or ``assumed``).
    """

    watts: float
    amps: float
    volt_amperes: float
    efficiency_percent: float
    efficiency_basis: EfficiencyBasis
    power_factor: float
    mains_volts: float
    continuous_rule: bool
    circuit_amps: float | None
    inlet_amps: float | None
    plug_fuse_amps: float | None
    ups_watts: float | None
    ups_volt_amperes: float | None
    ups_transfer_milliseconds: float | None


class HeaderLoad(NamedTuple):
    """Headers of one connector on a host: what was put on the fullest one."""

    at: Place
    connector: str
    amps: float
    max_amps: float | None


class RunLoad(NamedTuple):
    """A run of wire: one of the sheet, or the lead and strip of a light.

    ``end_volts`` are those of its last light if it has lights; None: there is no solution, and ``amps`` are those at
    which the load breaks down. ``lowest_volts`` None: not given. ``band_amps`` and ``stop_amps`` are of one pair; None:
    nothing is known. ``missing``: the field without which nothing but the amps can be told.
    """

    at: Place
    source_volts: float
    lowest_volts: float | None
    end_volts: float | None
    amps: float
    pair_amps: float
    lost_watts: float | None
    band_amps: float | None
    stop_amps: float | None
    missing: str | None = None


class ReadingLoad(NamedTuple):
    """A reading against what it is compared with; None: not read, or nothing to compare it with.

    ``least_amps`` are those that the sheet states at least, ``most_amps`` the most that it leads to.
    """

    at: Place
    rail: str
    volts: float | None
    lowest_volts: float
    highest_volts: float
    amps: float | None
    least_amps: float | None
    most_amps: float | None

    @property
    def is_of_supply(self) -> bool:
        """Say whether it was taken at the supply itself."""
        return self.at.kind == "rail"


class Spare(NamedTuple):
    """A cable that the plan leaves in the box: unit, index in the supply's cables or -1, copy."""

    unit: int
    cable: int
    copy: int


class Loose(NamedTuple):
    """A plug of a cable in use that feeds nothing."""

    unit: int
    cable: int
    copy: int
    plug: int
    connector: str


class Purchase(NamedTuple):
    """Equal cables of the supply's own family, or adapters, that would mend the wiring with the other purchases.

    ``feeds`` are ports, of all purchases, that then have a source; ``stops_left`` those of the wiring that remain.
    """

    part: Cable | Adapter
    pieces: int
    stops_left: int
    feeds: tuple[Place, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One build at one end of every range. ``supply`` is the unit index of the power supply, or None.

    ``room_celsius`` and ``rated_at_celsius`` are as given or assumed. ``headless`` are needs for a header (signal
    side) that found none; ``spare`` cables not used, ``foreign_spare`` among them. ``stopped``: proven or not, there is
    no plan without a stop.
    """

    build: Build
    end: End
    supply: int | None
    supply_part: PowerSupply | None
    demand: Demand
    sustained_watts: float
    starting_watts: float
    joints: tuple[Joint, ...]
    stretches: tuple[Stretch, ...]
    open_ports: tuple[OpenPort, ...]
    shares: tuple[CardShare, ...]
    rails: tuple[RailLoad, ...]
    combined: tuple[CombinedLoad, ...]
    groups: tuple[GroupLoad, ...]
    moments: tuple[MomentLoad, ...]
    wall: Wall | None
    room_celsius: float
    rated_at_celsius: float
    promises: Promises | None
    headers: tuple[HeaderLoad, ...]
    headless: tuple[Place, ...]
    spare: tuple[Spare, ...]
    loose: tuple[Loose, ...]
    foreign_spare: tuple[Place, ...]
    to_buy: tuple[Purchase, ...]
    proven: bool
    stopped: bool
    objective: tuple[int, ...]
    assumed: tuple[Assumed, ...]
    runs: tuple[RunLoad, ...] = ()
    readings: tuple[ReadingLoad, ...] = ()
