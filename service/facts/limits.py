"""What the rules on ports, room, headers and mates compare with and no other room needs."""

from typing import Final

from service.facts.fact import Fact, Kind, habit, judgement
from service.facts.sources import GUIDE_3_0, GUIDE_3_1

# -- ports and cables
PORTS_FED_PERCENT: Final = habit(
    "limits.ports_fed", 100, "% of required ports", "Every port that a maker does not call optional is fed.", Kind.LIMIT
)
PLUGS_INTERCHANGED: Final = Fact(
    "limits.plugs_interchanged", 0, "plugs", Kind.LIMIT, GUIDE_3_0, "section 2.2.1, p. 18", "published", "mirror",
    reason="Processor and card plugs differ in pins and keys and do not interchange.",
)
CABLES_INTERCHANGED: Final = habit(
    "limits.cables_interchanged", 0, "cables",
    "Sockets at the supply are each maker's own, and cables must not be mixed.", Kind.LIMIT,
)

# -- room
PLUG_ROOM_MM: Final = judgement(
    "limits.plug_room", 50, "mm", "A plug at the supply's panel and the bend of its cable take about this much."
)
ATX_WIDTH_MM: Final = Fact(
    "limits.atx_width", 150, "mm", Kind.NOMINAL, "a dealer's glossary of supply form factors", "ATX", "published",
    "secondary", reason="SFX is 125, TFX 85, Flex ATX 81.5 mm wide: one does not go into the place of another.",
)
FAN_CLEAR_MM: Final = Fact(
    "limits.fan_clear", 12.7, "mm", Kind.LIMIT, GUIDE_3_1, "venting", "published", "primary",
    reason="Half an inch before the fan's intake or exhaust stays clear.",
)

# -- headers
HEADER_NEEDS: Final = habit(
    "limits.header_needs", 1, "needs a header", "One header or data port serves one need.",
    Kind.LIMIT,
)
FAN_HEADER_AMPS: Final = habit("limits.fan_header", 1, "A", "An ordinary fan header gives 1 A.", Kind.LIMIT)
LIGHT_HEADER_AMPS: Final = habit("limits.light_header", 3, "A", "A light header gives 3 A, on 5 V or 12 V.", Kind.LIMIT)
M2_AMPS: Final = Fact(
    "limits.m2", 3, "A", Kind.NOMINAL, "PCI-SIG M.2 specification (from memory)", "3.3 V of a socket", "memory",
    reason="Commonly quoted: 2.5 A, with peaks to 3 A.",
)
ADDRESSABLE_VOLTS: Final = habit("limits.addressable", 5, "V", "Addressable lights on three pins run on 5 V.")
PLAIN_LIGHT_VOLTS: Final = habit("limits.plain_light", 12, "V", "Plain lights on four pins run on 12 V.")

# -- parts that mate
SOCKETS_MATED: Final = habit("limits.sockets_mated", 1, "sockets a processor", "A processor is made for one socket.")
MEMORY_TYPES: Final = habit("limits.memory_types", 1, "types a board", "Notch and volts of memory differ by type.")
SOCKET_PROCESSORS: Final = habit("limits.socket_processors", 1, "processors", "One socket holds one processor.")
