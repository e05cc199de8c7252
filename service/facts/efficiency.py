"""Efficiency of supplies by level and mains voltage, as printed, and power factors."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Assumption, Fact, Kind, judgement
from service.facts.mains import NEC_MAX_VOLTS
from service.facts.sources import EIGHTY_PLUS, GUIDE_2_0
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
USUAL_EFFICIENCY_PERCENT: Final = Assumption(
    "assumed.efficiency", 70, 92, "%",
    "The 2.0 guide asks for 70 % at full load, and good supplies of today reach 92 %.", "published", GUIDE_2_0,
)
LOW_MAINS: Final = judgement(
    "efficiency.low_mains", NEC_MAX_VOLTS.value, "V",
    "Up to the end of the low range of mains the levels of 115 V are taken.",
)


def points(level: str, mains_volts: float) -> Points:
    """Return the efficiency of a level as (load percent, percent) at the mains voltage [V]."""
    return (LEVELS_115_VOLTS if mains_volts <= LOW_MAINS.value else LEVELS_230_VOLTS)[level]
