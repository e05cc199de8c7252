"""Efficiency of supplies by level and mains voltage, as printed, and power factors."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import WHOLE, Assumption, Fact, Kind, judgement
from service.facts.mains import NEC_MAX_VOLTS
from service.facts.sources import EIGHTY_PLUS, GUIDE_2_0, LOW_LOAD_PRESS
from service.facts.tables import read

Points = tuple[tuple[float, float], ...]
_LOADS: Final = (10.0, 20.0, 50.0, 100.0)


def _table(name: str) -> MappingProxyType[str, Points]:
    """Return a table as points (load percent, efficiency percent) by level."""
    return MappingProxyType({row["level"]: tuple(
        (load, float(row[f"{load:.0f}"])) for load in _LOADS if row[f"{load:.0f}"]
    ) for row in read(name)})


LEVELS_115_VOLTS: Final = _table("efficiency_115v")
# Titanium at full load is 91 in one text and 94 in another; 94 is taken.
LEVELS_230_VOLTS: Final = _table("efficiency_230v_eu_from_memory")

POWER_FACTOR: Final = Fact(
    "efficiency.power_factor", 0.90, "of volt-amperes", Kind.LIMIT, EIGHTY_PLUS, "White to Gold", "published",
    "secondary", reason="0.95 for Platinum and Titanium.",
)
BAND_FROM_PERCENT: Final = Fact(
    "efficiency.band.from", 20, "% of rated watts", Kind.LIMIT, EIGHTY_PLUS, "columns of 20, 50 and 100 % load",
    "published", "secondary", reason="The least load of the table; only Titanium is stated at 10 % as well.",
)
USUAL_POWER_FACTOR: Final = Assumption(
    "assumed.power_factor", POWER_FACTOR.value, 0.99, "of volt-amperes",
    "The levels ask for 0.90 or 0.95; supplies with active correction come near 1.", "published", EIGHTY_PLUS,
)
POWER_FACTOR_GOOD: Final = Fact(
    "efficiency.power_factor.good", 0.95, "of volt-amperes", Kind.LIMIT, EIGHTY_PLUS, "Platinum and Titanium",
    "published", "secondary", reason="At 50 % load, Titanium at 20 %.",
)
GOOD_POWER_FACTOR: Final = Assumption(
    "assumed.power_factor.good", POWER_FACTOR_GOOD.value, 0.99, "of volt-amperes",
    "Platinum and Titanium ask for 0.95; supplies with active correction come near 1.", "published", EIGHTY_PLUS,
)
_GOOD_LEVELS: Final = frozenset({"platinum", "titanium"})
# Load and efficiency that the 2.0 guide asks for: light, typical and full load. Every level asks for more.
LEAST_POINTS: Final[Points] = ((20.0, 60.0), (50.0, 70.0), (100.0, 70.0))
LOW_LOAD_SPLIT_WATTS: Final = Fact(
    "efficiency.low_load.split", 500, "W", Kind.LIMIT, LOW_LOAD_PRESS, "low load", "published", "secondary",
    reason="Up to 500 W rated the test is at 10 W, above at 2 % of the rating.",
)
LOW_LOAD_WATTS: Final = Fact(
    "efficiency.low_load.watts", 10, "W", Kind.NOMINAL, LOW_LOAD_PRESS, "low load, up to 500 W rated", "published",
    "secondary",
)
LOW_LOAD_SHARE_PERCENT: Final = Fact(
    "efficiency.low_load.share", 2, "% of rated watts", Kind.NOMINAL, LOW_LOAD_PRESS, "low load, above 500 W rated",
    "published", "secondary",
)
LOW_LOAD_PERCENT: Final = Fact(
    "efficiency.low_load", 60, "%", Kind.LIMIT, LOW_LOAD_PRESS, "low load", "published", "secondary",
)
LOW_LOAD_RECOMMENDED_PERCENT: Final = Fact(
    "efficiency.low_load.recommended", 70, "%", Kind.NOMINAL, LOW_LOAD_PRESS, "low load", "published", "secondary",
)
WITH_LOW_LOAD: Final = frozenset({"atx-3.0", "atx-3.1"})
"""The designs whose guide asks for an efficiency at low load."""
USUAL_EFFICIENCY_PERCENT: Final = Assumption(
    "assumed.efficiency", 60, 92, "%",
    "The 2.0 guide asks for 60 % at 20 % load and 70 % from half load on; good supplies of today reach 92 %.",
    "published", GUIDE_2_0,
)
LOW_MAINS: Final = judgement(
    "efficiency.low_mains", NEC_MAX_VOLTS.value, "V",
    "Up to the end of the low range of mains the levels of 115 V are taken.",
)


def points(level: str, mains_volts: float) -> Points:
    """Return the efficiency of a level as (load percent, percent) at the mains voltage [V]."""
    return (LEVELS_115_VOLTS if mains_volts <= LOW_MAINS.value else LEVELS_230_VOLTS)[level]


def usual_power_factor(level: str | None) -> Assumption:
    """Return the usual power factor of a level; None: the level is not known."""
    return GOOD_POWER_FACTOR if level in _GOOD_LEVELS else USUAL_POWER_FACTOR


def low_load_watts(design: str, rated_watts: float) -> float | None:
    """Return the load [W] at which a design is asked for an efficiency, None where its guide asks for none."""
    if design not in WITH_LOW_LOAD:
        return None
    if rated_watts <= LOW_LOAD_SPLIT_WATTS.value:
        return LOW_LOAD_WATTS.value
    return rated_watts * LOW_LOAD_SHARE_PERCENT.value / WHOLE


def points_of(level: str, mains_volts: float, design: str, rated_watts: float) -> Points:
    """Return the points of a level, before them that of low load where the design is asked for one."""
    found = points(level, mains_volts)
    watts = low_load_watts(design, rated_watts)
    if watts is None or WHOLE * watts / rated_watts >= found[0][0]:
        return found
    return ((WHOLE * watts / rated_watts, LOW_LOAD_PERCENT.value), *found)
