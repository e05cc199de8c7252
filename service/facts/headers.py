"""Headers and sockets on a board: how many needs one serves, the amps it gives, the volts of lights."""

from types import MappingProxyType
from typing import Final

from service.facts.contacts import DRIVE_PLUG_RAIL_AMPS
from service.facts.fact import Fact, Kind, habit

HEADER_NEEDS: Final = habit(
    "header.needs", 1, "needs a header", "One header or data port serves one need.", Kind.LIMIT,
)
FAN_HEADER_AMPS: Final = habit("header.fan", 1, "A", "An ordinary fan header gives 1 A.", Kind.LIMIT)
LIGHT_HEADER_AMPS: Final = habit("header.light", 3, "A", "A light header gives 3 A, on 5 V or 12 V.", Kind.LIMIT)
M2_AMPS: Final = Fact(
    "header.m2", 3, "A", Kind.NOMINAL, "PCI-SIG M.2 specification (from memory)", "3.3 V of a socket", "memory",
    reason="Commonly quoted: 2.5 A, with peaks to 3 A.",
)
# What a header that does not say is good for, by connector; of others no habit is known.
USUAL_AMPS: Final = MappingProxyType[str, Fact]({
    "fan-4": FAN_HEADER_AMPS, "fan-3": FAN_HEADER_AMPS, "argb-3": LIGHT_HEADER_AMPS, "rgb-4": LIGHT_HEADER_AMPS,
    "m2-m": M2_AMPS, "sata-power": DRIVE_PLUG_RAIL_AMPS,
})
ADDRESSABLE_VOLTS: Final = habit("header.light_3.volts", 5, "V", "Addressable lights on three pins run on 5 V.")
PLAIN_LIGHT_VOLTS: Final = habit("header.light_4.volts", 12, "V", "Plain lights on four pins run on 12 V.")
