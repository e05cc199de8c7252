"""Where something stands that a rule speaks of; canonical, free of names and pointers."""

from typing import Literal, NamedTuple

Kind = Literal[
    "build", "unit", "supply", "rail", "combined", "group", "moment", "port", "cable", "header", "bay", "wall", "run"
]


_PORT_DETAIL = 2


class Place(NamedTuple):
    """A place: its kind, the unit (index into ``build.units``) or -1, and what of that unit, by number or word.

    A port is ("port", unit, (connector, number)); a rail ("rail", supply, ("12v",)); a group ("group", supply,
    (index,)); a moment ("moment", supply, (microseconds,)); a cable ("cable", unit, (cable index or -1, copy)); a run
    of the sheet ("run", -1, (index,)); others, as the run of a light ("run", unit), have no detail.
    """

    kind: Kind
    unit: int = -1
    detail: tuple[int | str, ...] = ()

    def nth(self, number: int) -> "Place":
        """Return the place of the further things, from 1, that are said of this place; 0 is the place itself."""
        return self._replace(detail=(*self.detail, number)) if number else self

    @property
    def port(self) -> "Place":
        """Return the port that a place of a port belongs to."""
        return self._replace(detail=self.detail[:_PORT_DETAIL]) if len(self.detail) > _PORT_DETAIL else self
