"""What a supply promises: sustained load, short peaks by design and size, warmth, and amps by rail if not given."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import WHOLE, Assumption, Column, Fact, Kind, habit, judgement, supposed, usual
from service.facts.sources import GUIDE_0_9, GUIDE_2_0, GUIDE_12VO
from service.facts.tables import pairs

_TABLE: Final = "excursion_613768_rev_2_01_table_3_3"
_WHERE: Final = "section 3.1.2, Table 3-3, p. 23"
_SMALL: Final = pairs(_TABLE, "microseconds", "small_percent")
_LARGE: Final = pairs(_TABLE, "microseconds", "large_percent")
_DUTY: Final = pairs(_TABLE, "microseconds", "duty_percent")

SMALL_PERCENT: Final = Column(
    "supply.excursion.small", _SMALL[0][1], "% of rated watts", Kind.LIMIT, GUIDE_12VO, _WHERE, "published", "mirror",
    reason="Up to 100 us; 145 % to 1 ms, 135 % to 10 ms, 110 % to 100 ms.", rows=_SMALL,
)
LARGE_PERCENT: Final = Column(
    "supply.excursion.large", _LARGE[0][1], "% of rated watts", Kind.LIMIT, GUIDE_12VO, _WHERE, "published", "mirror",
    reason="Up to 100 us; 180 % to 1 ms, 160 % to 10 ms, 120 % to 100 ms.", rows=_LARGE,
)
TEST_DUTY_PERCENT: Final = Column(
    "supply.excursion.duty", _DUTY[0][1], "% of time", Kind.NOMINAL, GUIDE_12VO, _WHERE, "published", "mirror",
    reason="At the 100 us step; 8, 12.5 and 25 % at the longer ones. Press at launch said 10 %; the guide says 5 %.",
    rows=_DUTY,
)
EXCURSION_MICROSECONDS: Final = tuple(int(row) for row, _ in _SMALL)
CONTINUOUS_PERCENT: Final = Fact(
    "supply.continuous", 100, "% of rated watts", Kind.LIMIT, GUIDE_12VO, _WHERE, "published", "mirror",
    reason="The last row of the table: longer than 100 ms a supply gives its rating.",
)
SIZE_SPLIT_WATTS: Final = Fact(
    "supply.excursion.size_split", 450, "W", Kind.LIMIT, GUIDE_12VO, _WHERE, "published", "mirror",
    reason="The large column is for more than 450 W with a 16-pin connector; exactly 450 W stays in the small one.",
)
DESIGN_WITHOUT_ENVELOPE: Final = "atx-2"
SLOW_PEAK: Final = Fact(
    "supply.atx_2.slow_peak", 17, "s", Kind.LIMIT, GUIDE_2_0, "sections 3.2.1 and 3.2.3, Table 3, pp. 11 and 13",
    "published", "mirror",
    reason="The 2.x guides know one slow peak of up to 17 s, once a minute, and no table of microseconds.",
)
ALL_CARDS: Final = judgement(
    "supply.cards_at_peak", 1, "cards at their peak in one moment",
    "Peaks last microseconds, and two cards seldom meet in one; that all do is said as advice.",
)
PRINTED_PERCENT: Final = judgement(
    "supply.printed", 100, "% of the printed figure",
    "What a maker prints as the most is allowed in full and not passed: a print already holds its maker's margin.",
)

AMBIENT_DESIGN_CELSIUS: Final = Fact(
    "supply.ambient.design", 50, "C", Kind.NOMINAL, GUIDE_0_9, "section 7, p. 29", "published", "mirror",
    reason="Derating of components is stated at this warmth.",
)
DERATING_PERCENT: Final = habit(
    "supply.derating", 2.5, "% of rated watts for each degree",
    "Where a maker prints what is left in hotter air, the curve mostly falls by 2 to 3 % of the rating a degree.",
)
RATED_AT_CELSIUS: Final = usual(
    "assumed.rated_at", 40, 50, "C",
    "Supplies are usually rated at 40 or 50 C where it is not said; the guide asks for 50.",
)

STANDBY_AMPS: Final = Fact(
    "supply.standby", 2.0, "A", Kind.NOMINAL, GUIDE_2_0, "section 3.2.3, Table 3, p. 13", "published", "mirror",
    reason="5 V standby of the guide's example of 250 W: 2.0 A, and 2.5 A for a moment.",
)
_LEAST_WHERE: Final = "section 3.2.3, Table 3, p. 13, minimum"
_LEAST_REASON: Final = "Of the guide's example of 250 W, the smallest that it describes."
LEAST_12V_AMPS: Final = Fact(
    "supply.least.12v", 1.0, "A", Kind.NOMINAL, GUIDE_2_0, _LEAST_WHERE, "published", "mirror", reason=_LEAST_REASON,
)
LEAST_5V_AMPS: Final = Fact(
    "supply.least.5v", 0.3, "A", Kind.NOMINAL, GUIDE_2_0, _LEAST_WHERE, "published", "mirror", reason=_LEAST_REASON,
)
LEAST_3V3_AMPS: Final = Fact(
    "supply.least.3v3", 0.5, "A", Kind.NOMINAL, GUIDE_2_0, _LEAST_WHERE, "published", "mirror", reason=_LEAST_REASON,
)
LEAST_AMPS: Final = MappingProxyType({"12v": LEAST_12V_AMPS, "5v": LEAST_5V_AMPS, "3v3": LEAST_3V3_AMPS})
_V12_NEW: Final = supposed(
    "assumed.rail.12v.atx_3", 0.95, 1.0, "A",
    "Supplies of recent design convert everything from 12 V, so nearly all rated watts are there: 95 to 100 %.",
)
_V12_OLD: Final = supposed(
    "assumed.rail.12v.atx_2", 0.70, 1.0, "A",
    "Older designs keep part of the rated watts for the small rails: 70 to 100 % are on 12 V.",
)
_SMALL_RAILS: Final = MappingProxyType({
    "5v": usual("assumed.rail.5v", 15, 25, "A", "The 5 V rail of a desktop supply usually gives 15 to 25 A."),
    "3v3": usual("assumed.rail.3v3", 15, 25, "A", "The 3.3 V rail of a desktop supply usually gives 15 to 25 A."),
    "5vsb": usual("assumed.rail.5vsb", 2, 3, "A", "Standby 5 V of a desktop supply usually gives 2 to 3 A."),
})
SMALL_RAILS_TOGETHER_WATTS: Final = usual(
    "assumed.combined.small", 100, 150, "W",
    "5 V and 3.3 V share a limit on nearly every supply, usually 100 to 150 W. Where 12 V shares one too, the rated "
    "watts are taken.",
)
NOMINAL_12_VOLTS: Final = 12.0


def usual_rail_amps(rail: str, design: str, rated_watts: float) -> tuple[Assumption, float]:
    """Return the usual amps of a rail and the factor that they are to be multiplied by."""
    if rail != "12v":
        return _SMALL_RAILS[rail], 1.0
    share = _V12_OLD if design == DESIGN_WITHOUT_ENVELOPE else _V12_NEW
    return share, rated_watts / NOMINAL_12_VOLTS


def least_amps(rail: str, design: str) -> float | None:
    """Return the least amps that an old design wants on a rail, None where nothing is said."""
    least = LEAST_AMPS.get(rail) if design == DESIGN_WITHOUT_ENVELOPE else None
    return None if least is None else least.value


def is_large(rated_watts: float, has_16_pin: bool) -> bool:
    """Say whether a supply is judged by the large column: above 450 W and with a 16-pin connector."""
    return has_16_pin and rated_watts > SIZE_SPLIT_WATTS.value


def as_printed(figure: float) -> float:
    """Return what is allowed of a figure that a maker prints as the most, in its unit."""
    return figure * (PRINTED_PERCENT.value / WHOLE)
