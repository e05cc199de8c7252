"""Whether a plug reaches its port: cable lengths against the routes of the case, where a case is listed."""

from functools import lru_cache
from typing import NamedTuple

from service.demand.ends import Ends
from service.facts import routes
from service.parts.build import Build
from service.parts.records import CaseBox, Plug
from service.wiring.mates import function_of


class Reach(NamedTuple):
    """Millimetres that a plug is short of its port: by known figures, and where one of them was assumed. 0.

    It reaches.
    """

    short_by_mm: float = 0.0
    assumed_short_by_mm: float = 0.0


REACHES = Reach()
_function_of = lru_cache(maxsize=64)(function_of)


class Routes:
    """The ways cables have to go in the case of a build."""

    def __init__(self, build: Build, ends: Ends) -> None:
        self.ends = ends
        at = next((unit for unit, entry in enumerate(build.units) if isinstance(entry.part, CaseBox)), None)
        self.case = at
        part = build.units[at].part if at is not None else None
        self.known = dict(part.routes_mm) if isinstance(part, CaseBox) else {}

    def reach(self, plug: Plug, unit: int, field: str, port: str) -> Reach:
        """Return how far a plug falls short of a port of the kind; without a case nothing is asked."""
        if self.case is None:
            return REACHES
        function = _function_of(port)
        known = self.known.get(function)
        if known is not None and plug.at_mm is not None:
            return Reach(short_by_mm=max(0.0, known - plug.at_mm))
        way = known
        if way is None:
            way = self.ends.load(None, self.case, f"routes_mm/{function}", routes.USUAL_ROUTE_MM[function])
        length = self.ends.rating(plug.at_mm, unit, f"{field}/at_mm", routes.USUAL_LEAD_MM[function])
        return Reach(assumed_short_by_mm=max(0.0, way - length))
