"""What a card takes through its slot."""

from typing import Final

from service.facts.fact import Fact, Kind, derived, usual
from service.facts.sources import CEM_SLOT

_WHERE: Final = "pp. 35-36"

SLOT_WATTS: Final = Fact(
    "slot.watts", 75, "W", Kind.LIMIT, CEM_SLOT, _WHERE, "published", "secondary",
    reason="A x16 graphics card once it is configured; both rails together.",
)
SLOT_12V_AMPS: Final = Fact("slot.12v.amps", 5.5, "A", Kind.LIMIT, CEM_SLOT, _WHERE, "published", "secondary")
SLOT_3V3_AMPS: Final = Fact("slot.3v3.amps", 3.0, "A", Kind.LIMIT, CEM_SLOT, _WHERE, "published", "secondary")
SLOT_12V_WATTS: Final = derived("slot.12v.watts", 66, "W", "5.5 A at 12 V", (SLOT_12V_AMPS,))
SLOT_3V3_WATTS: Final = derived("slot.3v3.watts", 9.9, "W", "3.0 A at 3.3 V", (SLOT_3V3_AMPS,))

USUAL_16_PIN: Final = usual(
    "assumed.slot.16_pin", 5, 75, "W",
    "Cards with a 16-pin plug usually take little through the slot, some take all that it gives; with what the plug "
    "cannot give as the least.",
)
USUAL_AUXILIARY: Final = usual(
    "assumed.slot.auxiliary", 25, 75, "W",
    "Cards with 6 and 8-pin plugs usually take 25 W to all of the 75 W through the slot; with what the plugs cannot "
    "give as the least.",
)
