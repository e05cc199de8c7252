"""Headers and sockets on the board's side: what one of them is good for, and the volts of lights."""

from typing import Final

from service.facts.fact import Fact, Kind, habit

FAN_HEADER_AMPS: Final = habit("header.fan", 1.0, "A", "Boards rate ordinary fan headers 1 A; some rate more.", Kind.LIMIT)
LIGHT_HEADER_AMPS: Final = habit("header.light", 3.0, "A", "Boards rate headers for lights 3 A.", Kind.LIMIT)
M2_AMPS: Final = Fact(
    "header.m2", 2.5, "A", Kind.LIMIT, "PCI-SIG M.2 specification (from memory, to be confirmed)", "", "memory",
    reason="Commonly quoted for a socket on 3.3 V; boards and drives differ.",
)
ADDRESSABLE_VOLTS: Final = habit("header.argb", 5, "V", "Three-pin headers for addressable lights give 5 V.")
PLAIN_LIGHT_VOLTS: Final = habit("header.rgb", 12, "V", "Four-pin headers for plain lights give 12 V.")
