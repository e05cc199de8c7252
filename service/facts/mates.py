"""What goes with what: ports and plugs, cables and the supply that they came with, processors, memory and boards."""

from typing import Final

from service.facts.fact import Fact, Kind, habit
from service.facts.sources import GUIDE_3_0

PORTS_FED_PERCENT: Final = habit(
    "mates.ports_fed", 100, "% of required ports", "Every port that a maker does not call optional is fed.", Kind.LIMIT,
)
PLUGS_INTERCHANGED: Final = Fact(
    "mates.plugs_interchanged", 0, "plugs", Kind.LIMIT, GUIDE_3_0, "section 2.2.1, p. 18", "published", "mirror",
    reason="Processor and card plugs differ in pins and keys and do not interchange.",
)
CABLES_INTERCHANGED: Final = habit(
    "mates.cables_interchanged", 0, "cables",
    "Sockets at the supply are each maker's own, and cables must not be mixed.", Kind.LIMIT,
)
SOCKETS_MATED: Final = habit("mates.sockets", 1, "sockets a processor", "A processor is made for one socket.")
MEMORY_TYPES: Final = habit("mates.memory_types", 1, "types a board", "Notch and volts of memory differ by type.")
SOCKET_PROCESSORS: Final = habit("mates.socket_processors", 1, "processors", "One socket holds one processor.")
