"""Amps from the wall against the fuse in the plug.

Where the code has plugs with fuses and none is given, one of 5 to 13 A is assumed; elsewhere a sheet without a fuse
says that there is none. Exactly the rating passes. The inlet is PWR602, the circuit PWR601.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.mains import FUSE_PERCENT, PLUG_FUSE_AMPS
from service.rules.power.mains import REQUEST
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the mains side when the machine takes more than the fuse in its plug carries."""
    wall = case.wall
    if wall is None or wall.plug_fuse_amps is None:
        return
    limit = part_of(wall.plug_fuse_amps, FUSE_PERCENT)
    if wall.amps > limit:
        yield Finding(REQUEST, wall.amps, limit, "A", (("mains_volts", wall.mains_volts),))


RULE = Rule(
    id="PWR605", title="The machine takes more than the fuse in its plug carries", weight="caution", points=10,
    aspect="mains", since="0.1", rests_on=(PLUG_FUSE_AMPS, FUSE_PERCENT), check=check,
    message="At {mains_volts} V the machine takes {measured} {unit}; the fuse in its plug is rated for {limit} {unit}. "
    "Local code decides, and a licensed electrician.",
    why="A fuse past its rating warms plug and socket for hours before it melts, and then the machine is off.",
    remedy="Use a cord that is made and fused for this load; never put a larger fuse on a thinner cord. Local "
    "electrical code and the cord's maker decide; ask a licensed electrician.",
)
