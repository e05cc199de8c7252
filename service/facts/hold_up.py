"""How long a supply holds its outputs up after the mains is gone, by design; a UPS has to change over in that time."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Fact, Kind, derived, usual
from service.facts.sources import GUIDE_2_MEMORY, GUIDE_3_0, GUIDE_3_1, GUIDE_12VO

_T5_T6: Final = "mains lost to power good low, and power good low to outputs out of limits"

OLD_MS: Final = Fact(
    "hold_up.atx_2", 17, "ms", Kind.LIMIT, GUIDE_2_MEMORY, "", "memory",
    reason="16 ms to power good low and 1 ms more.",
)
_NEW_GOOD_MS: Final = Fact(
    "hold_up.atx_3_0.power_good", 16, "ms", Kind.LIMIT, GUIDE_3_0, "Table 4-9, p. 37, T5", "published", "mirror",
    reason="At the greatest and at the least load.",
)
_NEWEST_GOOD_MS: Final = Fact(
    "hold_up.atx_3_1.power_good", 11, "ms", Kind.LIMIT, GUIDE_3_1, "Table 4-10, T5", "published", "primary",
    reason="At full and at light load.",
)
_NEWEST_EASY_MS: Final = Fact(
    "hold_up.atx_3_1.power_good.eighty", 16, "ms", Kind.NOMINAL, GUIDE_3_1, "Table 4-10, T5", "published", "primary",
    reason="Recommended at 80 % of full load.",
)
_TWELVE_GOOD_MS: Final = Fact(
    "hold_up.atx12vo.power_good", 11, "ms", Kind.LIMIT, GUIDE_12VO, "Table 4-9, T5", "published", "primary",
)
_AFTER_MS: Final = Fact(
    "hold_up.after_power_good", 1, "ms", Kind.LIMIT, GUIDE_3_1, "Table 4-10, T6", "published", "primary",
    reason="The same in the 3.0 and the 12 V only guide.",
)
NEW_MS: Final = derived("hold_up.atx_3_0", 17, "ms", _T5_T6, (_NEW_GOOD_MS, _AFTER_MS))
NEWEST_MS: Final = derived("hold_up.atx_3_1", 12, "ms", _T5_T6, (_NEWEST_GOOD_MS, _AFTER_MS))
NEWEST_EASY_MS: Final = derived("hold_up.atx_3_1.eighty", 17, "ms", _T5_T6, (_NEWEST_EASY_MS, _AFTER_MS))
TWELVE_MS: Final = derived("hold_up.atx12vo", 12, "ms", _T5_T6, (_TWELVE_GOOD_MS, _AFTER_MS))
EASY_LOAD_PERCENT: Final = Fact(
    "hold_up.easy_load", 80, "% of rated watts", Kind.NOMINAL, GUIDE_3_1, "Table 4-10", "published", "primary",
    reason="The load that the longer, recommended time is meant for.",
)
HOLD_UP_MS: Final = MappingProxyType({
    "atx-2": OLD_MS, "atx-3.0": NEW_MS, "atx-3.1": NEWEST_MS, "atx12vo": TWELVE_MS,
})
# Recommended at 80 % of full load; no other design has such a row.
EASY_MS: Final = MappingProxyType({"atx-3.1": NEWEST_EASY_MS})
UPS_TRANSFER_MS: Final = usual(
    "assumed.ups.transfer", 2, 10, "ms", "A UPS that stands by changes over in 2 to 10 ms, most in about 8 ms.",
)
