"""Whether a plug reaches its port: lengths of cables and adapters against the routes of a case, if one is listed."""

from functools import lru_cache
from typing import NamedTuple

from service.demand.ends import Ends
from service.facts import adapters, routes
from service.facts.fact import Assumption
from service.parts.build import Build
from service.parts.records import CaseBox, Plug
from service.parts.words import Function
from service.wiring.mates import function_of
from service.wiring.pieces import AdapterKindOf, below, only_lengthens


class Reach(NamedTuple):
    """Millimetres that a plug is short of its port: by known figures, and where one of them was assumed. 0.

    It reaches.
    """

    short_by_mm: float = 0.0
    assumed_short_by_mm: float = 0.0


REACHES = Reach()


class Lead(NamedTuple):
    """The lead of an adapter: its length if it is given, else the range to be taken, and the field it is missing in."""

    length_mm: float | None
    unit: int
    field: str
    usual: Assumption


def lead_of(of: AdapterKindOf) -> Lead:
    """Return the lead of a kind of adapter."""
    piece = of.pieces[0]
    usual = adapters.usual_lead_mm(only_longer=only_lengthens(of.adapter))
    return Lead(of.adapter.length_mm, piece.unit, f"{below(piece, 'adapters')}length_mm", usual)


_function_of = lru_cache(maxsize=64)(function_of)


class Routes:
    """The ways cables have to go in the case of a build."""

    def __init__(self, build: Build, ends: Ends) -> None:
        self.ends = ends
        at = next((unit for unit, entry in enumerate(build.units) if isinstance(entry.part, CaseBox)), None)
        self.case = at
        part = build.units[at].part if at is not None else None
        self.known = dict(part.routes_mm) if isinstance(part, CaseBox) else {}

    def reach(self, plug: Plug, unit: int, field: str, port: str, leads: tuple[Lead, ...] = ()) -> Reach:
        """Return how far a plug, and what leads on from it, falls short of a port; without a case nothing is asked.

        A lead counts as it is given or, at this end, supposed: where all else is known, a plug is known to be short.
        """
        if self.case is None:
            return REACHES
        function = _function_of(port)
        known = self.known.get(function)
        if known is not None and plug.at_mm is not None:
            return Reach(short_by_mm=self._left(known - plug.at_mm, leads))
        way = self._way(function)
        usual = routes.USUAL_LEAD_MM[_function_of(plug.connector)]
        length = self.ends.rating(plug.at_mm, unit, f"{field}/at_mm", usual)
        return Reach(assumed_short_by_mm=self._left(way - length, leads))

    def leads_on(self, here: str, there: str, lead: Lead) -> bool:
        """Say whether a lead covers what the way to a port is longer than that to another one, where it begins."""
        functions = _function_of(here), _function_of(there)
        if self.case is None or functions[0] == functions[1]:
            return True
        return not self._left(self._way(functions[1]) - self._way(functions[0]), (lead,))

    def _way(self, function: Function) -> float:
        """Return the way to the ports of a function, as the case states it or as it usually is."""
        known = self.known.get(function)
        if known is not None:
            return known
        assert self.case is not None
        return self.ends.load(None, self.case, f"routes_mm/{function}", routes.USUAL_ROUTE_MM[function])

    def _left(self, short_mm: float, leads: tuple[Lead, ...]) -> float:
        """Return what of a gap is left when leads bridge it; a lead that is not needed is not asked for its length."""
        for lead in leads:
            if short_mm > 0:
                short_mm -= self.ends.rating(lead.length_mm, lead.unit, lead.field, lead.usual)
        return max(0.0, short_mm)
