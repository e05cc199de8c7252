"""Volt-amperes from the wall against the volt-amperes of the UPS.

Volt-amperes are watts from the wall by the supply's power factor. Exactly the rating passes. A UPS that is given by its
watts only has at least as many volt-amperes; above those they are unknown. Watts are PWR603.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mains import UPS_PERCENT
from service.rules.power.mains import REQUEST
from service.rules.rule import Finding, Rule, Said, Unknown
from service.rules.shares import part_of

UPS_VOLT_AMPERES = "site/ups/volt_amperes"


def check(case: Case) -> Iterator[Said]:
    """Yield the UPS when the machine draws more volt-amperes than it gives."""
    wall = case.wall
    if wall is None:
        return
    if wall.ups_volt_amperes is not None:
        most = part_of(wall.ups_volt_amperes, UPS_PERCENT)
        if wall.volt_amperes > most:
            yield Finding(REQUEST, wall.volt_amperes, most, "VA")
    elif wall.ups_watts is not None and wall.volt_amperes > wall.ups_watts:
        yield Unknown(REQUEST, UPS_VOLT_AMPERES)


RULE = Rule(
    id="PWR604", title="The machine draws more volt-amperes than the UPS gives", weight="caution", points=8,
    aspect="mains", since="0.1", rests_on=(UPS_PERCENT,), check=check,
    message="The machine draws {measured} {unit} from the wall; the UPS gives {limit} {unit}.",
    why="A UPS is limited in current as well as in watts; past either it switches off when the mains fails.",
    remedy="Choose a UPS with a higher rating in volt-amperes, with room for the screen and for ageing batteries.",
)
