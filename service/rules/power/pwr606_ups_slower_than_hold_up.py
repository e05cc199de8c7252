"""Time that the UPS takes to change over against the time that the supply's design holds its outputs up.

The time is what the guide of the design asks at full load; the 3.1 guide asks less than the 3.0 guide did. A UPS that
does not say is assumed to take 2 to 10 ms, one that is always on its battery takes none. Exactly the time passes.
Watts and volt-amperes are PWR603 and PWR604.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.hold_up import NEW_MS, NEWEST_MS, OLD_MS, TWELVE_MS
from service.rules.power.mains import REQUEST
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield the UPS when it leaves the supply without mains for longer than that has to hold out."""
    wall, promises = case.wall, case.promises
    if wall is None or promises is None or wall.ups_transfer_milliseconds is None:
        return
    if wall.ups_transfer_milliseconds > promises.hold_up_milliseconds:
        yield Finding(REQUEST, wall.ups_transfer_milliseconds, promises.hold_up_milliseconds, "ms")


RULE = Rule(
    id="PWR606", title="The UPS changes over more slowly than the supply must hold out", weight="caution", points=8,
    aspect="mains", since="0.1", rests_on=(NEWEST_MS, NEW_MS, TWELVE_MS, OLD_MS), check=check,
    message="The UPS takes {measured} {unit} to change over; at full load a supply of this design must hold its "
    "outputs up for {limit} {unit} only.",
    why="If the outputs fall before the UPS feeds them, the machine switches off the moment the mains fails.",
    remedy="Choose a UPS that changes over faster, or one that feeds from its battery all the time.",
)
