"""Amps from the wall against the rating of the supply's mains inlet.

An inlet that is not given is passed over while the smaller of the two usual ones (C14, by its rating at these
volts) would do, else it is unknown. Exactly the rating passes. Plug and cord are not on the sheet: they must be of
the same rating or above. A fuse in the plug is PWR605.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.mains import INLET_AMPS, NEC_MAX_VOLTS
from service.rules.rule import Finding, Rule, Said, Unknown

INLET = "inlet"


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when it takes more amps through its inlet than that is rated for."""
    wall = case.wall
    if wall is None or case.supply is None:
        return
    at = Place("supply", case.supply)
    if wall.inlet_amps is not None:
        if wall.amps > wall.inlet_amps:
            yield Finding(at, wall.amps, wall.inlet_amps, "A", (("mains_volts", wall.mains_volts),))
    elif wall.amps > INLET_AMPS["c14", wall.mains_volts <= NEC_MAX_VOLTS.value].value:
        yield Unknown(at, INLET)


RULE = Rule(
    id="PWR602", title="The supply takes more through its mains inlet than that is rated for", weight="stop", points=0,
    aspect="mains", since="0.1", rests_on=tuple(INLET_AMPS.values()), check=check,
    message="At {mains_volts} V the supply takes {measured} {unit} through its inlet, which is rated for {limit} "
    "{unit}.",
    why="An inlet and its cord past their rating heat at the contacts and can burn.",
    remedy="Use a supply with a larger inlet and a cord of its rating, or a higher mains voltage where there is one. "
    "Follow "
    "the maker's manual and local code, and ask a licensed electrician.",
)
