"""What cards draw and what their plugs are rated for: short peaks, plugs, printed levels, shared cables."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Assumption, Column, Fact, Kind, habit, supposed
from service.facts.sources import CEM_EXCURSION, GUIDE_3_0, GUIDE_3_1

_RATIO_TABLE: Final = "section 3.1, Table 3-1"
_LIMITS: Final = "Table 3-5"
_RMS: Final = "A RMS over 1 s"

CARD_RATIO: Final = Fact(
    "card.ratio.short", 3.0, "times sustained watts", Kind.LIMIT, CEM_EXCURSION, _RATIO_TABLE, "published", "secondary",
    reason="Up to 100 us. Then 4 - 0.2171 ln(T in us) to 1 s, and 1 from there on.",
)
RATIO_CONSTANT: Final = Fact(
    "card.ratio.constant", 4.0, "times sustained watts", Kind.NOMINAL, CEM_EXCURSION, _RATIO_TABLE, "published",
    "secondary",
)
RATIO_LOG_COEFFICIENT: Final = Fact(
    "card.ratio.log", 0.2171, "times sustained watts by ln(us)", Kind.NOMINAL, CEM_EXCURSION, _RATIO_TABLE, "published",
    "secondary",
)
RATIO_SHORT_MICROSECONDS: Final = Fact(
    "card.ratio.short_until", 100, "us", Kind.LIMIT, CEM_EXCURSION, _RATIO_TABLE, "published", "secondary",
)
RATIO_LONG_MICROSECONDS: Final = Fact(
    "card.ratio.sustained_from", 1_000_000, "us", Kind.LIMIT, CEM_EXCURSION, _RATIO_TABLE, "published", "secondary",
)
RATIO_FROM_WATTS: Final = Fact(
    "card.ratio.from", 300, "W", Kind.LIMIT, CEM_EXCURSION, _RATIO_TABLE, "published", "secondary",
)
RATIO_TO_WATTS: Final = Fact(
    "card.ratio.to", 600, "W", Kind.LIMIT, CEM_EXCURSION, _RATIO_TABLE, "published", "secondary",
)

PLUG_6_WATTS: Final = Fact("card.plug_6.watts", 75, "W", Kind.LIMIT, GUIDE_3_0, _LIMITS, "published", "mirror")
PLUG_6_AMPS: Final = Fact("card.plug_6.amps", 6.75, _RMS, Kind.LIMIT, GUIDE_3_0, _LIMITS, "published", "mirror")
PLUG_8_WATTS: Final = Fact("card.plug_8.watts", 150, "W", Kind.LIMIT, GUIDE_3_0, _LIMITS, "published", "mirror")
PLUG_8_AMPS: Final = Fact("card.plug_8.amps", 13.5, _RMS, Kind.LIMIT, GUIDE_3_0, _LIMITS, "published", "mirror")
PLUG_16_WATTS: Final = Fact("card.plug_16.watts", 600, "W", Kind.LIMIT, GUIDE_3_0, _LIMITS, "published", "mirror")
PLUG_16_AMPS: Final = Fact("card.plug_16.amps", 55, _RMS, Kind.LIMIT, GUIDE_3_0, _LIMITS, "published", "mirror")
PLUG_WATTS: Final = MappingProxyType({
    "pcie-6": PLUG_6_WATTS, "pcie-8": PLUG_8_WATTS, "12vhpwr": PLUG_16_WATTS, "12v-2x6": PLUG_16_WATTS,
})
# No rule compares with these: at nominal 12 V the watts of a plug are passed first, and the published checks hold that.
PLUG_AMPS: Final = MappingProxyType({
    "pcie-6": PLUG_6_AMPS, "pcie-8": PLUG_8_AMPS, "12vhpwr": PLUG_16_AMPS, "12v-2x6": PLUG_16_AMPS,
})
LOWEST_PLUG_PERCENT: Final = Fact(
    "card.plug.lowest_volts", 92, "% of 12 V", Kind.LIMIT, GUIDE_3_0, "section 3.2, Table 3-5", "published", "primary",
    reason="+5 / -8 % at a card's plug.",
)
SENSED_6_PIN_WATTS: Final = Fact(
    "card.plug_8.sensed_as_6", 75, "W", Kind.LIMIT, GUIDE_3_0, "Table 5-6, p. 52", "published", "mirror",
    reason="SENSE1 open and SENSE0 to ground: a 2x3 plug is in.",
)
OTHER_PLUG_WATTS: Final = habit(
    "card.plug_other.watts", 75, "W",
    "A card that is fed by a plug made for drives is counted as one with a 6-pin plug.",
)

PRINTED_LEVELS_WATTS: Final = (600.0, 450.0, 300.0, 150.0)
SENSE_LEVELS: Final = Column(
    "card.plug_16.levels", 600, "W", Kind.LIMIT, GUIDE_3_1, "SENSE0 and SENSE1", "published", "primary",
    reason="The levels are 600, 450, 300 and 150 W for this plug alone. The print is taken, not the states of the "
    "pins, on which published tables differ.",
    rows=tuple((float(at), watts) for at, watts in enumerate(PRINTED_LEVELS_WATTS)),
)
UNPRINTED_WATTS: Final = Assumption(
    "assumed.plug_16.print", 150, 600, "W",
    "A 16-pin cable tells the card one of four levels, 150 to 600 W; without its print it may be any of them.",
    "published", GUIDE_3_1,
)
SHARED_CABLE_WATTS: Final = habit(
    "card.shared_cable.preferred", 225, "W", "One cable with two 8-pin plugs is accepted up to here.", Kind.LIMIT,
)
PERIPHERAL_ADAPTER_WATTS: Final = habit(
    "card.peripheral_adapter", 75, "W", "One 6-pin plug's worth is the most to take from plugs made for drives.",
    Kind.LIMIT,
)
SINGLE_CABLE_PLUGS: Final = MappingProxyType({"sata-power": 4, "peripheral-4": 3})
IDLE_SHARE: Final = supposed(
    "assumed.card.idle", 0.05, 0.20, "of board watts",
    "While a machine starts its cards wait for their driver, at a small part of what they draw at work.",
)
