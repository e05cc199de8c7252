"""What a fact is: a figure with its unit, its source and how sure it is; and the usual range of one not given."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final, Literal

Basis = Literal["published", "memory", "common practice", "derived", "judgement"]

OUR_JUDGEMENT: Final = "our judgement"
COMMON_PRACTICE: Final = "common practice, no source"
FROM_FIGURES: Final = "arithmetic on published figures"
WHOLE: Final = 100.0  # percent


class Kind(StrEnum):
    """What a figure is for: a limit, a nominal figure, arithmetic on others, or our own opinion."""

    LIMIT = "limit"
    NOMINAL = "nominal"
    DERIVED = "derived"
    JUDGEMENT = "judgement"


@dataclass(frozen=True, slots=True)
class Fact:
    """One figure. ``where`` is the table or page, ``parents`` the facts that a derived one follows from.

    ``evidence`` says how a published figure was read: primary (the issuer's page), mirror (the issuer's document on
    another site), secondary (quoted by somebody else).
    """

    key: str
    value: float
    unit: str
    kind: str
    source: str
    where: str
    basis: Basis
    evidence: str = ""
    reason: str = ""
    parents: tuple["Fact", ...] = ()


@dataclass(frozen=True, slots=True)
class Column(Fact):
    """A column of a table as (row, figure); ``value`` is the figure of the first row."""

    rows: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Assumption:
    """The range that is taken where a figure is not given: what it usually lies between, and why."""

    key: str
    low: float
    high: float
    unit: str
    reason: str
    basis: Basis
    source: str

    def __post_init__(self) -> None:
        """Keep the assumption by its key, so that an answer can give its reason."""
        if self.low > self.high:
            raise ValueError(f"{self.key}: low end above high end")
        if _ASSUMED.setdefault(self.key, self) != self:
            raise ValueError(f"{self.key}: this key is taken")


_ASSUMED: Final[dict[str, Assumption]] = {}


def reason_of(key: str) -> str:
    """Return the reason of the assumption that has this key."""
    return _ASSUMED[key].reason


def judgement(key: str, value: float, unit: str, reason: str) -> Fact:
    """Return a figure that is our own opinion."""
    return Fact(key, value, unit, Kind.JUDGEMENT, OUR_JUDGEMENT, "", "judgement", reason=reason)


def habit(key: str, value: float, unit: str, reason: str, kind: Kind = Kind.NOMINAL) -> Fact:
    """Return a rule of thumb of the trade for which no source is claimed."""
    return Fact(key, value, unit, kind, COMMON_PRACTICE, "", "common practice", reason=reason)


def derived(key: str, value: float, unit: str, how: str, parents: tuple[Fact, ...]) -> Fact:
    """Return a figure that follows from others by arithmetic; ``how`` is the formula in words."""
    return Fact(key, value, unit, Kind.DERIVED, FROM_FIGURES, how, "derived", parents=parents)


def usual(key: str, low: float, high: float, unit: str, reason: str) -> Assumption:
    """Return a range that the trade takes for granted, without a source."""
    return Assumption(key, low, high, unit, reason, "common practice", COMMON_PRACTICE)


def supposed(key: str, low: float, high: float, unit: str, reason: str) -> Assumption:
    """Return a range that is our own opinion."""
    return Assumption(key, low, high, unit, reason, "judgement", OUR_JUDGEMENT)
