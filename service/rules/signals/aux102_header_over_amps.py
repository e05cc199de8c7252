"""Amps of the fullest header of a kind against what it is good for.

Devices are spread over headers so that the fewest kinds are overloaded. Where the host does not say, the usual rating
of such a header is enough to pass it; above that it is unknown. Exactly the rating passes. Start-up of fans and pumps
is not judged: it lasts a second.
"""

from collections.abc import Iterator

from service.case.case import Case, HeaderLoad
from service.facts.contacts import DRIVE_PLUG_RAIL_AMPS
from service.facts.headers import FAN_HEADER_AMPS, LIGHT_HEADER_AMPS, M2_AMPS, USUAL_AMPS
from service.facts.points import HEADER_POINTS
from service.rules.rule import Finding, Rule, Said, Unknown


def check(case: Case) -> Iterator[Said]:
    """Yield each header that carries more than it is good for."""
    for header in case.headers:
        if header.max_amps is not None:
            if header.amps > header.max_amps:
                yield Finding(header.at, header.amps, header.max_amps, "A", (("connector", header.connector),))
        elif header.amps > _usual(header):
            yield Unknown(header.at, "offers")


def _usual(header: HeaderLoad) -> float:
    """Return the amps [A] that any header of this kind is good for; none where no habit is known."""
    fact = USUAL_AMPS.get(header.connector)
    return float(fact.value) if fact is not None else 0.0


RULE = Rule(
    id="AUX102", title="A header carries more than it is good for", weight="caution",
    points=int(HEADER_POINTS.value), aspect="signals", since="0.1",
    rests_on=(FAN_HEADER_AMPS, LIGHT_HEADER_AMPS, M2_AMPS, DRIVE_PLUG_RAIL_AMPS, HEADER_POINTS), check=check,
    message="One of the {connector} ports carries {measured} {unit}; it is good for {limit} {unit}.",
    why="Headers are fed by thin traces and small fuses on the board; when one goes, the board goes for repair.",
    remedy="Move fans, pump or lights to a hub that takes its power from the supply.",
)
