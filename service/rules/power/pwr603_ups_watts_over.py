"""Watts from the wall against the watts that the UPS gives.

Sustained watts of the machine alone; a screen on the same UPS comes on top. Exactly the rating passes. Where the UPS is
given by its volt-amperes only, its watts are unknown. Volt-amperes are PWR604.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mains import UPS_PERCENT
from service.rules.power.mains import REQUEST
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.shares import part_of

UPS_WATTS = "site/ups/watts"


def check(case: Case) -> Iterator[Said]:
    """Yield the UPS when the machine draws more watts than it gives."""
    wall = case.wall
    if wall is None:
        return
    if wall.ups_watts is not None:
        most = part_of(wall.ups_watts, UPS_PERCENT)
        if wall.watts > most:
            yield Finding(REQUEST, wall.watts, most, "W")
    elif wall.ups_volt_amperes is not None:
        yield Unknown(REQUEST, UPS_WATTS)


RULE = Rule(
    id="PWR603", title="The machine draws more watts than the UPS gives", weight="caution", points=8, aspect="mains",
    since="0.1", rests_on=(UPS_PERCENT,), check=check,
    message="The machine draws {measured} {unit} from the wall; the UPS gives {limit} {unit}.",
    why="A UPS past its watts switches off the moment the mains fails, which is when it is needed.",
    remedy="Choose a UPS that gives more watts, with room for the screen and for ageing batteries.",
)
