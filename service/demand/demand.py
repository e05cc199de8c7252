"""What a build asks of its supply, at one end of every range. Currents are whole milliamps."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

Role = Literal["main", "processor", "card", "drive", "rest"]
Triple = tuple[int, int, int]
Quad = tuple[int, int, int, int]
NONE: Triple = (0, 0, 0)


class Assumed(NamedTuple):
    """A figure that was not given: unit (-1: the request), field as a pointer below the part, range, and the end used.

    ``key`` names the fact that gives the range; ``amount`` the unit of the figure.
    """

    unit: int
    field: str
    low: float
    high: float
    used: float
    amount: str
    key: str


class FeedPort(NamedTuple):
    """A port to be fed: ``number`` counts, from 0, the ports of that connector on its unit."""

    connector: str
    number: int
    required: bool
    weight: int


class Feed(NamedTuple):
    """What one device asks through its plugs [mA on 12 V, 5 V, 3.3 V], to be divided over the fed ports by weight."""

    unit: int
    role: Role
    ports: tuple[FeedPort, ...]
    sustained: Triple
    starting: Triple


class Header(NamedTuple):
    """A header of a host (board, controller) and the 12 V or 5 V milliamps that were put on the fullest of its kind."""

    unit: int
    connector: str
    milliamps: int
    max_milliamps: int | None


class Moment(NamedTuple):
    """Watts asked for over a short stretch."""

    microseconds: int
    watts: float
    all_cards_watts: float
    stated: bool
    beyond_formula: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """The whole demand. ``sustained`` and ``starting`` are by rail: 12 V, 5 V, 3.3 V, 5 V standby.

    ``slots`` pairs each card with the watts [W]
    that it takes through its slot. ``headless`` names each need that found no header: unit, connector, and which of
    the unit's headers it is; ``over`` counts the ``headers`` that carry more than they are good for. ``hung_proven``:
    no way to fill the headers is better; ``hung_choice``: another one may load the supply's plugs otherwise.
    """

    feeds: tuple[Feed, ...]
    sustained: Quad
    starting: Quad
    sustained_watts: float
    moments: tuple[Moment, ...]
    slots: tuple[tuple[int, float], ...]
    headers: tuple[Header, ...]
    headless: tuple[tuple[int, str, int], ...]
    over: int = 0
    hung_proven: bool = True
    hung_choice: bool = False
