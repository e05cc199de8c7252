"""Room in a case: for a supply, the plugs at its panel, and the air of its fan."""

from typing import Final

from service.facts.fact import Fact, Kind, judgement
from service.facts.sources import GUIDE_3_0

PLUG_ROOM_MM: Final = judgement(
    "room.plugs", 50, "mm", "A plug at the supply's panel and the bend of its cable take about this much.",
)
ATX_WIDTH_MM: Final = Fact(
    "room.atx_width", 150, "mm", Kind.NOMINAL, "a dealer's glossary of supply form factors", "ATX", "published",
    "secondary", reason="SFX is 125, TFX 85, Flex ATX 81.5 mm wide: one does not go into the place of another.",
)
FAN_CLEAR_MM: Final = Fact(
    "room.fan", 12.7, "mm", Kind.LIMIT, GUIDE_3_0, "Venting", "published", "primary",
    reason="Half an inch before the fan's intake or exhaust stays clear.",
)
