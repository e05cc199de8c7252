"""What a rule is and what it may say."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from service.case.case import Case
from service.case.place import Place
from service.facts.fact import Fact
from service.parts.words import Aspect, Weight

Value = str | float | int


class Finding(NamedTuple):
    """A limit that is passed at ``at``: measured and limit in ``unit``; ``values`` fill the rule's message."""

    at: Place
    measured: float | None = None
    limit: float | None = None
    unit: str = ""
    values: tuple[tuple[str, Value], ...] = ()


class Unknown(NamedTuple):
    """A limit that could not be judged at ``at``.

    ``missing`` is the field, as a pointer below the part, that is not given.
    """

    at: Place
    missing: str


Said = Finding | Unknown


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A rule's card. ``points`` count for a caution; a stop or an advice has none. ``planned``: it hangs on the wiring.

    ``message`` is English text with {names} of values, measured, limit, unit; it is the message id of every language.
    """

    id: str
    title: str
    weight: Weight
    points: int
    aspect: Aspect
    since: str
    rests_on: tuple[Fact, ...]
    check: Callable[[Case], Iterator[Said]]
    message: str
    why: str
    remedy: str
    planned: bool = False
