"""What goes into what, as plain statements that rules rest on."""

from typing import Final

from service.facts.fact import Fact, Kind, habit
from service.facts.sources import GUIDE_3_0

NO_INTERCHANGE: Final = Fact(
    "mate.no_interchange", 0, "ports of another kind that a plug may go into", Kind.LIMIT, GUIDE_3_0, "section 2.2.1, p. 18",
    "published", "mirror", reason="Plugs for processor and cards differ in pins and keys and do not interchange.",
)
NO_CABLE_INTERCHANGE: Final = habit(
    "mate.no_cable_interchange", 0, "supplies of another family that a cable may go into",
    "Sockets on the supply's side are each maker's own; pins differ between makers and between series of one.", Kind.LIMIT,
)
EVERY_PORT: Final = habit(
    "mate.every_port", 100, "% of required ports fed", "Boards and cards do not start, or start crippled, with a port left empty.",
    Kind.LIMIT,
)
ONE_NEED_ONE_PORT: Final = habit("mate.one_port", 1, "free port for each need", "A port takes one plug.", Kind.LIMIT)
SAME_SOCKET: Final = habit(
    "mate.processor_socket", 1, "shared socket type", "A processor goes into the socket that it is made for.", Kind.LIMIT,
)
SAME_MEMORY: Final = habit(
    "mate.memory_type", 1, "shared memory type", "The notch of a module is in another place for each type.", Kind.LIMIT,
)
ONE_SOCKET_ONE_PROCESSOR: Final = habit(
    "mate.one_processor", 1, "processor a socket", "A socket takes one processor.", Kind.LIMIT,
)
