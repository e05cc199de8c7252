"""Room in the case."""

from typing import Final

from service.facts.fact import Fact, Kind, judgement
from service.facts.sources import GUIDE_3_0

FAN_CLEAR_MM: Final = Fact(
    "fit.fan_clear", 12.7, "mm", Kind.LIMIT, GUIDE_3_0, "venting", "published", "primary",
    reason="Half an inch before the intake or exhaust of the fan is to be kept clear.",
)
PLUG_ROOM_MM: Final = judgement(
    "fit.plug_room", 35, "mm",
    "The trade keeps wires straight for 35 mm behind a plug before they bend; no published page was found.",
)
FORM_FACTORS: Final = judgement(
    "fit.form_factor", 1, "shared form factor", "A supply goes where its screw holes and its outline are provided for.",
)
