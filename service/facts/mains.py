"""Mains: volts, the share of a circuit for continuous load, inlets, and reserve of a UPS."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Assumption, Fact, Kind, derived, judgement, usual
from service.facts.sources import COUPLERS, GUIDE_2_0, NEC, PLUG_FUSES_MEMORY

USUAL_MAINS_VOLTS: Final = Assumption(
    "assumed.mains", 100, 240, "V",
    "Supplies are rated for 100 to 127 V and 200 to 240 V; where it stands is not said.",
    "published", GUIDE_2_0,
)
NEC_MAX_VOLTS: Final = Fact(
    "mains.low_range", 127, "V", Kind.LIMIT, GUIDE_2_0, "section 3.1, Table 1, p. 9", "published", "mirror",
    reason="The upper end of the low range of rated volts; below it the rules of North America are taken.",
)
CONTINUOUS_FACTOR_PERCENT: Final = Fact(
    "mains.continuous_factor", 125, "% of the continuous load", Kind.LIMIT, NEC, "continuous: 3 h or more", "published",
    "secondary",
)
CONTINUOUS_CIRCUIT_PERCENT: Final = derived(
    "mains.continuous_share", 80, "% of the circuit", "the inverse of 125 %", (CONTINUOUS_FACTOR_PERCENT,),
)
SMALL_CIRCUIT_AMPS: Final = Fact(
    "mains.small_circuit", 15, "A", Kind.NOMINAL, "arithmetic on the NEC rule, in a hobby forum",
    "15 A and 20 A circuits",
    "published", "secondary", reason="The smallest usual circuit where the rule for continuous load holds.",
)
C14_AMPS: Final = Fact("mains.c14", 10, "A", Kind.LIMIT, COUPLERS, "C13 / C14", "published", "secondary")
C20_AMPS: Final = Fact("mains.c20", 16, "A", Kind.LIMIT, COUPLERS, "C19 / C20", "published", "secondary")
C14_NORTH_AMERICA_AMPS: Final = Fact(
    "mains.c14.north_america", 15, "A", Kind.LIMIT, COUPLERS, "C13 / C14, North America", "published", "secondary",
)
C20_NORTH_AMERICA_AMPS: Final = Fact(
    "mains.c20.north_america", 20, "A", Kind.LIMIT, COUPLERS, "C19 / C20, North America", "published", "secondary",
)
# By inlet, and whether the mains is of the low range.
INLET_AMPS: Final = MappingProxyType({
    ("c14", False): C14_AMPS, ("c14", True): C14_NORTH_AMERICA_AMPS,
    ("c20", False): C20_AMPS, ("c20", True): C20_NORTH_AMERICA_AMPS,
})
PLUG_FUSE_AMPS: Final = Fact(
    "mains.plug_fuse", 13, "A", Kind.LIMIT, PLUG_FUSES_MEMORY, "", "memory",
    reason="The largest fuse that a BS 1363 plug takes; cords of computers often have 5 or 10 A.",
)
USUAL_PLUG_FUSE_AMPS: Final = usual(
    "assumed.plug_fuse", 5, PLUG_FUSE_AMPS.value, "A", "A cord with a BS 1363 plug mostly has a fuse of 5, 10 or 13 A.",
)
CODE_WITH_PLUG_FUSE: Final = "bs"
FUSE_PERCENT: Final = judgement(
    "mains.fuse", 100, "% of the printed figure",
    "A fuse carries its rating without an end; what is above it melts it sooner or later and warms the plug till then.",
)
UPS_PERCENT: Final = judgement(
    "mains.ups", 100, "% of the printed figure",
    "A UPS is held to its printed watts and volt-amperes, and allowed all of them.",
)
