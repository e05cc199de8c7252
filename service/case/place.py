"""Where something stands that a rule speaks of; canonical, free of names and pointers."""

from typing import Literal, NamedTuple

Kind = Literal["build", "unit", "supply", "rail", "combined", "group", "moment", "port", "cable", "header", "bay", "wall"]


class Place(NamedTuple):
    """A place: its kind, the unit (index into ``build.units``) or -1, and what of that unit, by number or word.

    A port is ("port", unit, (connector, number)); a rail ("rail", supply, ("12v",)); a group ("group", supply, (index,));
    a moment ("moment", supply, (microseconds,)); a cable ("cable", unit, (cable index or -1, copy)); others have no detail.
    """

    kind: Kind
    unit: int = -1
    detail: tuple[int | str, ...] = ()
