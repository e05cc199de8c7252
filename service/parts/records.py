"""One frozen record for each category of part.

A load (what a device draws) is a ``Range``; a rating, a size or a count is the one number printed on the part.
``None`` means that the figure was not given. Units end the names. Connectors are the words of ``parts.words``.
"""

from dataclasses import dataclass, field
from typing import ClassVar

from service.parts.figures import Range


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """Ports that a device has and wants fed: ``count`` equal ones.

    ``watts`` is the draw of one of them. An optional port becomes required when the device draws more than
    ``required_above_watts`` through all ports of its kind of plug together.
    """

    connector: str
    count: int = 1
    optional: bool = False
    watts: Range | None = None
    required_above_watts: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """Ports that a device gives to others: ``count`` equal ones, each good for ``max_amps`` if stated."""

    connector: str
    count: int = 1
    max_amps: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RailRange:
    """Amps by rail; a rail that is not drawn from is None."""

    v12: Range | None = None
    v5: Range | None = None
    v3_3: Range | None = None
    v5sb: Range | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Peak:
    """A stated peak: mean watts over a stretch of ``microseconds``."""

    microseconds: int
    watts: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RailLimit:
    """Most amps that a rail gives for as long as one likes."""

    rail: str
    max_amps: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """An overcurrent group: sockets and cables that share one limit in amps on one rail.

    ``feeds`` names functions (main, processor, card, drive) of cables that are in the group without saying so.
    """

    name: str
    rail: str = "12v"
    max_amps: float
    feeds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CombinedLimit:
    """Most watts that several rails give together."""

    rails: tuple[str, ...]
    watts: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Socket:
    """Equal sockets on the supply's panel. ``contacts_12v`` counts the 12 V contacts of one of them."""

    label: str
    count: int
    group: str | None = None
    contacts_12v: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Plug:
    """A plug on a cable, ``at_mm`` from the supply's panel along the cable."""

    connector: str
    at_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cable:
    """``quantity`` equal cables; plugs in order along it, from the supply outwards.

    ``occupies`` pairs a socket label with how many of those sockets one cable takes; empty for a captive cable, or
    where the supply lists no sockets. ``supply_wires_12v`` counts the 12 V wires that leave the supply's end.
    """

    category: ClassVar[str] = "cable"
    name: str = ""
    quantity: int = 1
    occupies: tuple[tuple[str, int], ...] = ()
    captive: bool | None = None
    group: str | None = None
    plugs: tuple[Plug, ...] = ()
    awg: int | None = None
    supply_wires_12v: int | None = None
    rated_watts: float | None = None
    carries_3v3: bool | None = None
    family: str | None = None
    open_contacts: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class AdapterEnd:
    """Equal plugs on one side of an adapter."""

    connector: str
    count: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Adapter:
    """Takes plugs of cables, gives plugs to ports; one that gives what it takes only makes a cable longer.

    ``rated_watts_by_inputs`` pairs inputs used with watts allowed; ``length_mm`` is that of its lead, from what it
    takes to what it gives, and ``awg`` that of its wires.
    """

    category: ClassVar[str] = "adapter"
    name: str = ""
    quantity: int = 1
    takes: AdapterEnd
    gives: AdapterEnd
    rated_watts: float | None = None
    rated_watts_by_inputs: tuple[tuple[int, float], ...] = ()
    moulded: bool = False
    length_mm: float | None = None
    awg: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PowerSupply:
    """A supply, the cables in its box and the sockets they go into."""

    category: ClassVar[str] = "power_supply"
    name: str = ""
    rated_watts: float
    design: str
    form_factor: str | None = None
    depth_mm: float | None = None
    modularity: str | None = None
    efficiency_level: str | None = None
    efficiency_points: tuple[tuple[float, float], ...] = ()
    power_factor: float | None = None
    rails: tuple[RailLimit, ...] = ()
    groups: tuple[Group, ...] = ()
    combined_limits: tuple[CombinedLimit, ...] = ()
    sockets: tuple[Socket, ...] = ()
    cables: tuple[Cable, ...] | None = None
    cable_family: str | None = None
    rated_at_celsius: float | None = None
    inlet: str | None = None
    fan_side: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Motherboard:
    """A board: what it draws itself, what it wants fed (main and processor ports), and what it offers."""

    category: ClassVar[str] = "motherboard"
    name: str = ""
    processor_socket: str | None = None
    processors: int = 1
    memory_type: str | None = None
    needs: tuple[Need, ...] = ()
    offers: tuple[Offer, ...] | None = None
    own_amps: RailRange = field(default_factory=RailRange)


@dataclass(frozen=True, slots=True, kw_only=True)
class Processor:
    """A processor. ``turbo_watts`` and ``base_watts`` are package watts; ``plug_watts`` stands at the plug already."""

    category: ClassVar[str] = "processor"
    name: str = ""
    base_watts: Range | None = None
    turbo_watts: Range | None = None
    plug_watts: Range | None = None
    class_watts: int | None = None
    socket: str | None = None
    peaks: tuple[Peak, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class GraphicsCard:
    """A graphics card; ``board_watts`` is all it draws, ``slot_watts`` what of it comes through the slot."""

    category: ClassVar[str] = "graphics_card"
    name: str = ""
    board_watts: Range
    slot_watts: Range | None = None
    needs: tuple[Need, ...] = ()
    peaks: tuple[Peak, ...] = ()
    length_mm: float | None = None
    adapters: tuple[Adapter, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ExpansionCard:
    """Any other card in a slot."""

    category: ClassVar[str] = "expansion_card"
    name: str = ""
    board_watts: Range
    slot_watts: Range | None = None
    needs: tuple[Need, ...] = ()
    peaks: tuple[Peak, ...] = ()
    length_mm: float | None = None
    adapters: tuple[Adapter, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Drive:
    """A disk or solid-state drive. ``size`` is 3.5, 2.5 or m2.

    ``power_disable``: stays off where pin 3 carries 3.3 V.
    """

    category: ClassVar[str] = "drive"
    name: str = ""
    interface: str | None = None
    size: str | None = None
    needs: tuple[Need, ...] = ()
    running_amps: RailRange = field(default_factory=RailRange)
    starting_amps: RailRange = field(default_factory=RailRange)
    power_disable: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OpticalDrive:
    """A drive for discs."""

    category: ClassVar[str] = "optical_drive"
    name: str = ""
    interface: str | None = None
    needs: tuple[Need, ...] = ()
    running_amps: RailRange = field(default_factory=RailRange)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cooler:
    """A processor cooler with fans of its own; amps at 12 V."""

    category: ClassVar[str] = "cooler"
    name: str = ""
    needs: tuple[Need, ...] = ()
    amps: Range | None = None
    starting_amps: Range | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pump:
    """A pump of a liquid loop; amps at 12 V."""

    category: ClassVar[str] = "pump"
    name: str = ""
    needs: tuple[Need, ...] = ()
    amps: Range | None = None
    starting_amps: Range | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fan:
    """A case fan; amps at 12 V."""

    category: ClassVar[str] = "fan"
    name: str = ""
    needs: tuple[Need, ...] = ()
    amps: Range | None = None
    starting_amps: Range | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Controller:
    """A hub for fans or lights; ``amps`` at 12 V is its own draw, what hangs on its ports comes on top."""

    category: ClassVar[str] = "controller"
    name: str = ""
    needs: tuple[Need, ...] = ()
    offers: tuple[Offer, ...] = ()
    amps: Range | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lead:
    """The wires of a light between its plug and its first light, in equal pairs."""

    length_mm: float
    awg: int | None = None
    parallel_pairs: int = 1
    ohms_per_contact: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A light strip's own length, and the ohms of its tracks there and back."""

    length_mm: float | None = None
    ohms_per_metre: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lighting:
    """A light strip or ring on 5 V or 12 V: amps if given, else by the number of ``leds``."""

    category: ClassVar[str] = "lighting"
    name: str = ""
    volts: int
    leds: int | None = None
    amps: Range | None = None
    needs: tuple[Need, ...] = ()
    lead: Lead | None = None
    strip: Strip | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Backplane:
    """A drive cage: plugs in by ``needs``, bays out by ``offers``."""

    category: ClassVar[str] = "backplane"
    name: str = ""
    needs: tuple[Need, ...] = ()
    offers: tuple[Offer, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Riser:
    """A powered riser: feeds the slot of a card, up to ``feeds_slot_watts``, from a plug of its own."""

    category: ClassVar[str] = "riser"
    name: str = ""
    needs: tuple[Need, ...] = ()
    feeds_slot_watts: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Bay:
    """A place for a supply. ``plugs_clear_mm`` is room beyond ``depth_mm`` that is kept clear for plugs."""

    form_factors: tuple[str, ...]
    depth_mm: float | None = None
    plugs_clear_mm: float | None = None
    fan_vent: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseBox:
    """A case. ``routes_mm`` pairs a function (main, processor, card, drive) with the way a cable has to go."""

    category: ClassVar[str] = "case"
    name: str = ""
    bays: tuple[Bay, ...] = ()
    routes_mm: tuple[tuple[str, float], ...] = ()
    card_length_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Bracket:
    """Holds a supply of one form factor in a bay for another."""

    category: ClassVar[str] = "bracket"
    name: str = ""
    from_form_factor: str
    to_form_factor: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Memory:
    """A kit of memory; ``watts`` of all its modules together."""

    category: ClassVar[str] = "memory"
    name: str = ""
    type: str | None = None
    modules: int = 1
    watts: Range | None = None


Part = (
    PowerSupply
    | Cable
    | Adapter
    | Motherboard
    | Processor
    | GraphicsCard
    | ExpansionCard
    | Drive
    | OpticalDrive
    | Cooler
    | Pump
    | Fan
    | Controller
    | Lighting
    | Backplane
    | Riser
    | CaseBox
    | Bracket
    | Memory
)
CATEGORIES: tuple[type[Part], ...] = (
    PowerSupply,
    Cable,
    Adapter,
    Motherboard,
    Processor,
    GraphicsCard,
    ExpansionCard,
    Drive,
    OpticalDrive,
    Cooler,
    Pump,
    Fan,
    Controller,
    Lighting,
    Backplane,
    Riser,
    CaseBox,
    Bracket,
    Memory,
)
