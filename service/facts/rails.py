"""Volts that a rail may have at the end of a supply's own cables, under any load that the supply is made for."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Fact, Kind, judgement
from service.facts.sources import GUIDE_2_0, GUIDE_3_0, PRESS_3_0

_TABLE: Final = "section 3.2.1, Table 2, p. 11"


def _limit(key: str, volts: float, reason: str = "") -> Fact:
    return Fact(key, volts, "V", Kind.LIMIT, GUIDE_2_0, _TABLE, "published", "mirror", reason=reason)


LOWEST_12: Final = _limit("rail.12v.lowest", 11.40, "5 % low; 10 % for seconds at peak load.")
LOWEST_12_NEW: Final = Fact(
    "rail.12v.lowest.atx_3", 11.16, "V", Kind.LIMIT, PRESS_3_0, "7 % low, connectors other than a card's", "published",
    "secondary", reason="Designs since ATX 3.0; their own table could not be read.",
)
LOWEST_12_AT_CARD: Final = Fact(
    "rail.12v.lowest.card", 92, "% of 12 V", Kind.LIMIT, GUIDE_3_0, "section 3.2, Table 3-5", "published", "primary",
    reason="+5 / -8 % at a card's plug, designs since ATX 3.0.",
)
HIGHEST_12: Final = _limit("rail.12v.highest", 12.60)
LOWEST_5: Final = _limit("rail.5v.lowest", 4.75, "Standby 5 V as well.")
HIGHEST_5: Final = _limit("rail.5v.highest", 5.25, "Standby 5 V as well.")
LOWEST_3_3: Final = _limit("rail.3v3.lowest", 3.14)
HIGHEST_3_3: Final = _limit("rail.3v3.highest", 3.47)
OTHERS: Final = MappingProxyType({
    "5v": (LOWEST_5, HIGHEST_5), "5vsb": (LOWEST_5, HIGHEST_5), "3v3": (LOWEST_3_3, HIGHEST_3_3),
})
METER_PERCENT: Final = judgement(
    "reading.meter", 2, "% of a reading",
    "A plain clamp or hand meter is good for some 2 %; what differs by less does not contradict anything.",
)
