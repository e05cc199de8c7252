"""Units that are none of the metric ones, as they are defined."""

from typing import Final

from service.facts.fact import Fact, Kind
from service.facts.sources import UNITS

BTU_JOULES: Final = Fact(
    "unit.btu", 1055.05585262, "J", Kind.NOMINAL, UNITS, "btu_IT, 4.1868 J a calorie, lb F by g C", "published",
    "secondary", reason="The International Table unit, which heating and air conditioning is sized in.",
)
