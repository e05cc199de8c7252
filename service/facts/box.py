"""What is taken of the cables in a supply's box where it is not stated: gauge, wires at the supply's end, sockets."""

from typing import Final

from service.facts.fact import Assumption, usual
from service.facts.sources import GUIDE_3_0
from service.facts.wire import GUIDE_AWG, SIXTEEN_PIN_AWG

_FOR_ALL: Final = "So for every cable of this box that does not say."

CABLE_AWG: Final = Assumption(
    "assumed.cable.awg", GUIDE_AWG.value, GUIDE_AWG.value, "AWG",
    f"Wires are taken as the guide's 18 AWG; thinner ones carry less. {_FOR_ALL}", "published", GUIDE_3_0,
)
CABLE_16_PIN_AWG: Final = Assumption(
    "assumed.cable.awg_16_pin", SIXTEEN_PIN_AWG.value, SIXTEEN_PIN_AWG.value, "AWG",
    f"Wires of 16-pin cables are taken as the guide's 16 AWG; thinner ones carry less. {_FOR_ALL}", "published",
    GUIDE_3_0,
)
CABLE_WIRES: Final = usual(
    "assumed.cable.wires", 1, 6, "12 V wires",
    "A cable is taken to have a 12 V wire for each 12 V contact of its first plug, a drive cable one in all. "
    f"{_FOR_ALL}",
)
CABLE_SOCKET: Final = usual(
    "assumed.cable.socket", 0, 1, "sockets",
    "A cable is taken to stand in the sockets of a cable for the same purpose; else, at the worst, in one that no "
    f"other cable names, or that is often the same: card and processor. {_FOR_ALL}",
)
NO_CABLE_SOCKET: Final = usual(
    "assumed.cable.no_socket", 0, 1, "sockets",
    f"Nothing says in which socket this cable stands, so none is counted for it, and there may be too few. {_FOR_ALL}",
)
