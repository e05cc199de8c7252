"""What processors draw: the guide's amps by class, and what is taken where a figure is not given."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Assumption, Column, Fact, Kind, supposed, usual
from service.facts.sources import GUIDE_3_0
from service.facts.tables import pairs

_TABLE: Final = "processor_336521_rev_2_0_table_2_1"
_WHERE: Final = "section 2.1, Table 2-1, p. 17"
_CONTINUOUS: Final = pairs(_TABLE, "tdp_watts", "continuous_amps")
_PEAK: Final = pairs(_TABLE, "tdp_watts", "peak_amps")

CLASS_CONTINUOUS_AMPS: Final = Column(
    "processor.class.continuous", _CONTINUOUS[0][1], "A at the plug", Kind.NOMINAL, GUIDE_3_0, _WHERE, "published",
    "primary",
    reason="The 165 W class; longer than 1 s. A later page names a Table 2-12: that is Table 2-1 with a footnote mark.",
    rows=_CONTINUOUS,
)
CLASS_PEAK_AMPS: Final = Column(
    "processor.class.peak", _PEAK[0][1], "A at the plug", Kind.NOMINAL, GUIDE_3_0, _WHERE, "published", "primary",
    reason="The 165 W class; at most 10 ms.", rows=_PEAK,
)
# By class in watts: continuous and peak amps at 12 V, at the plug.
CLASS_AMPS: Final = MappingProxyType[int | None, tuple[float, float]]({
    int(tdp): (continuous, peak)
    for (tdp, continuous), (_, peak) in zip(CLASS_CONTINUOUS_AMPS.rows, CLASS_PEAK_AMPS.rows, strict=True)
})
PEAK_MAX_MILLISECONDS: Final = Fact(
    "processor.peak.longest_ms", 10, "ms", Kind.LIMIT, GUIDE_3_0, _WHERE, "published", "primary",
)
PEAK_MAX_MICROSECONDS: Final = Fact(
    "processor.peak.longest", 10_000, "us", Kind.DERIVED, GUIDE_3_0, "1000 times the milliseconds", "derived",
    parents=(PEAK_MAX_MILLISECONDS,),
)
REGULATOR_EFFICIENCY: Final = supposed(
    "assumed.processor.regulator", 0.85, 0.92, "of the watts at the plug",
    "Package watts pass the board's regulator; at load, plain boards lose about 15 %, good ones 8 %, traces included.",
)
PLUG_WATTS_BY_BASE: Final = supposed(
    "assumed.processor.plug", 38, 450, "W",
    "From its base watts through a good regulator up to what the guide's next class at or above takes from 12 V for "
    "longer than a second; above the last class, 165 W, by that one's ratio.",
)
ANY_PLUG_WATTS: Final = usual(
    "assumed.processor.any", 38, 450, "W",
    "Nothing is said of the processor: from one of 35 W up to the guide's heaviest class, 37.5 A at its plugs.",
)
PEAK_TO_CONTINUOUS: Final = Assumption(
    "assumed.processor.peak", 1.0, 1.73, "times continuous",
    "In the guide's table peaks are 1.07 to 1.73 times the continuous amps; boards with a fixed limit show none.",
    "published", GUIDE_3_0,
)


def most_amps(base_watts: float) -> float:
    """Return the continuous amps [A] of the guide's next class at or above [W], or by the ratio of the last."""
    classes = sorted(CLASS_CONTINUOUS_AMPS.rows)
    last_watts, last_amps = classes[-1]
    return next((amps for watts, amps in classes if watts >= base_watts), last_amps * base_watts / last_watts)
