"""Copper wire: resistance by gauge as printed, how warmth changes it, and gauges that the guides ask for."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Fact, Kind, habit, judgement
from service.facts.sources import ASTM_B258, GUIDE_3_0, NBS_100, WIRE_TABLE
from service.facts.tables import pairs, read

_METRES_PER_FOOT: Final = 0.3048
SOLID_OHMS_PER_METRE: Final = MappingProxyType({
    int(awg): ohms / (100 * _METRES_PER_FOOT) for awg, ohms in pairs("solid_copper_astm_b258", "awg", "resistance")
})
STRANDED_OHMS_PER_METRE: Final = MappingProxyType({
    int(awg): milliohms / (1000 * _METRES_PER_FOOT)
    for awg, milliohms in pairs("stranded_7_table_38", "awg", "resistance")
})
TEMPERATURE_COEFFICIENT: Final = Fact(
    "wire.temperature_coefficient", 0.00393, "per C at 20 C", Kind.NOMINAL, NBS_100, "10 to 100 C", "published",
    "secondary",
)
REFERENCE_CELSIUS: Final = Fact(
    "wire.reference", 20, "C", Kind.NOMINAL, NBS_100, "10 to 100 C", "published", "secondary",
)
RESISTIVITY: Final = Fact(
    "wire.resistivity", 0.01724, "ohm mm2/m at 20 C", Kind.NOMINAL, WIRE_TABLE, "printed as 1.724e-6 ohm cm",
    "published", "secondary", reason="IEC 60028 is said to write 1/58, which is 0.017241.",
)
# A gauge is a diameter: 36 AWG has 0.127 mm, 0000 AWG 11.684 mm, and 39 equal factors lie between.
THIN_END_AWG: Final = Fact(
    "wire.thin_end.gauge", 36, "AWG", Kind.NOMINAL, ASTM_B258, "wiregauge", "published", "secondary",
)
THIN_END_MM: Final = Fact(
    "wire.thin_end.diameter", 0.127, "mm", Kind.NOMINAL, ASTM_B258, "wiregauge", "published", "secondary",
    reason="1/200 inch.",
)
THICK_END_AWG: Final = Fact(
    "wire.thick_end.gauge", -3, "AWG", Kind.NOMINAL, ASTM_B258, "g0000", "published", "secondary",
    reason="0000 AWG is three steps before 0 AWG.",
)
END_RATIO: Final = Fact(
    "wire.end_ratio", 92, "thick end by thin end", Kind.NOMINAL, ASTM_B258, "wiregauge", "published", "secondary",
    reason="Between 36 and 0000 AWG, 39 gauges apart.",
)
STRAND_ALLOWANCE_PERCENT: Final = habit(
    "wire.strand_allowance", 4, "% of the resistance of solid wire",
    "Strands are laid in a twist and so longer than their wire: 2 to 5 %. Taken where no printed row of 7 strands is "
    "at hand; those that are printed lie 4 % above solid wire.",
)

GUIDE_AWG: Final = Fact(
    "wire.guide_gauge", 18, "AWG", Kind.NOMINAL, GUIDE_3_0, "section 2.2.1, p. 18; Tables 5-4 and 5-5", "published",
    "mirror",
    reason="What processor, 2x3 and 2x4 plugs are wired with.",
)
SIXTEEN_PIN_AWG: Final = Fact(
    "wire.16_pin_gauge", 16, "AWG", Kind.NOMINAL, GUIDE_3_0, "section 5.2.2.4.3, pp. 52 and 55", "published", "mirror",
)

_HOUSING: Final = "4.2 mm pitch product specification, brass terminal, current by gauge (from memory)"
_BY_GAUGE: Final = MappingProxyType({int(row["awg"]): row for row in read("housings_by_wire_gauge")})
_BY_AREA: Final = (
    "No table at hand goes thinner than 22 AWG; the amps of 22 AWG are lessened with the area of the copper and "
    "rounded down."
)


def _least(awg: int) -> Fact:
    """Return the least amps of a gauge over all sizes of housing: the plug that a wire ends in is not asked for."""
    amps = min(float(figure) for name, figure in _BY_GAUGE[awg].items() if name != "awg")
    return Fact(f"wire.amps.{awg}", amps, "A a wire", Kind.LIMIT, _HOUSING, "row of the gauge, least figure", "memory")


THIN_WIRE_AMPS: Final = MappingProxyType({
    20: _least(20), 22: _least(22),
    24: judgement("wire.amps.24", 2.5, "A a wire", _BY_AREA),
    26: judgement("wire.amps.26", 1.5, "A a wire", _BY_AREA),
    28: judgement("wire.amps.28", 0.9, "A a wire", _BY_AREA),
})
