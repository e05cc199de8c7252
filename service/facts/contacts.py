"""Contacts: how many a plug has on each rail, and what one of them carries.

Counts are (12 V, 5 V, 3.3 V). Plugs that split count as the port that they stand in.
"""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Fact, Kind, derived, habit, judgement
from service.facts.sources import GUIDE_3_0, HANDBOOK, SATA

Counts = tuple[int, int, int]

CONTACTS: Final = MappingProxyType[str, Counts]({
    "atx-24": (2, 5, 4), "atx-20": (1, 4, 3), "atx12vo-10": (3, 0, 0),
    "cpu-8": (4, 0, 0), "cpu-4": (2, 0, 0),
    "pcie-8": (3, 0, 0), "pcie-6": (3, 0, 0), "12vhpwr": (6, 0, 0), "12v-2x6": (6, 0, 0),
    "sata-power": (3, 3, 3), "peripheral-4": (1, 1, 0), "floppy-4": (1, 1, 0),
})
# A drive cable brings one wire for each rail, however many contacts its plugs have.
WIRES: Final = MappingProxyType[str, Counts]({
    **CONTACTS, "sata-power": (1, 1, 1), "atx-20+4": (2, 5, 4), "cpu-4+4": (4, 0, 0), "pcie-6+2": (3, 0, 0),
})

_PIN_LOAD: Final = "section 2.2.1, p. 18"
BAND_AMPS: Final = Fact(
    "contact.band", 6, "A a contact", Kind.LIMIT, GUIDE_3_0, _PIN_LOAD, "published", "mirror",
    reason="18 AWG is what most parts need at a load of 6 to 8 A a pin; the low end carries no doubt.",
)
STOP_AMPS: Final = Fact(
    "contact.stop", 8, "A a contact", Kind.LIMIT, GUIDE_3_0, _PIN_LOAD, "published", "mirror",
    reason="The high end of the same sentence; the standard 2x2 and 2x3 contacts are rated 8 A as well, and the 10-pin "
    "plug of 12 V only boards is planned with it.",
)
SIXTEEN_PIN_AMPS: Final = Fact(
    "contact.16_pin", 9.2, "A a contact", Kind.LIMIT, GUIDE_3_0, "section 5.2.2.4.3, Table 5-7, pp. 52 and 55",
    "published", "mirror",
    reason="All twelve contacts energised, 30 C rise. A connector maker gives 9.5 A; the guide's figure is taken.",
)
SIXTEEN_PIN_MAKER_AMPS: Final = Fact(
    "contact.16_pin.maker", 9.5, "A a contact", Kind.LIMIT,
    "product specification of a 12V-2x6 connector, as quoted in two engineering notes", "GS-12-1706", "published",
    "secondary",
    reason="Kept beside the guide's 9.2 A, which is the one in use.",
)
PROCESSOR_8_CONTACTS: Final = Fact(
    "contact.cpu_8.count", 4, "12 V contacts", Kind.NOMINAL, "EPS12V and ATX12V guides (from memory)", "2x4 plug",
    "memory",
)
PROCESSOR_4_CONTACTS: Final = Fact(
    "contact.cpu_4.count", 2, "12 V contacts", Kind.NOMINAL, GUIDE_3_0, "section 5.2.2.5, Table 5-8, p. 55",
    "published",
    "mirror",
)
MAIN_12V_CONTACTS: Final = Fact(
    "contact.main.count", 2, "12 V contacts", Kind.NOMINAL, "pinout pages for the 24-pin main connector",
    "pins 10 and 11",
    "published", "secondary", reason="The 20-pin plug lacks pin 11, and 12, 23 and 24.",
)

SATA_PIN_AMPS: Final = Fact(
    "contact.sata", 1.5, "A a pin", Kind.LIMIT, SATA, "power segment", "published", "secondary",
    reason="What the connector must carry, not what a supply must give.",
)
SATA_PINS: Final = Fact(
    "contact.sata.count", 3, "pins a rail", Kind.NOMINAL, SATA, "power segment", "published", "secondary",
)
DRIVE_PLUG_RAIL_AMPS: Final = derived(
    "contact.sata.rail", 4.5, "A a rail", "3 pins of 1.5 A", (SATA_PINS, SATA_PIN_AMPS),
)
DRIVE_PLUG_12V_WATTS: Final = derived(
    "contact.sata.12v_watts", 54, "W", "4.5 A at 12 V", (DRIVE_PLUG_RAIL_AMPS,),
)
PERIPHERAL_AMPS: Final = Fact(
    "contact.peripheral", 11, "A a contact", Kind.LIMIT, HANDBOOK, "Table 18.17", "published", "secondary",
    reason="The contact, not the wire.",
)
PERIPHERAL_PLANNING_AMPS: Final = habit(
    "contact.peripheral.planning", 8, "A a contact", "Round contacts are often loose, and the wire is 18 AWG.",
)
FLOPPY_AMPS: Final = Fact(
    "contact.floppy", 2, "A a contact", Kind.LIMIT, "data of 2.5 mm floppy plugs (from memory)", "4-pin plug", "memory",
)
DRIVE_CABLE_AMPS: Final = habit(
    "contact.drive_cable", 8, "A a wire", "A drive cable has one wire for each rail; plan it with no more.", Kind.LIMIT,
)
DRIVE_CONTACT_AMPS: Final = MappingProxyType({
    "sata-power": SATA_PIN_AMPS, "peripheral-4": PERIPHERAL_AMPS, "floppy-4": FLOPPY_AMPS,
})
DRIVE_PLANNING_AMPS: Final = MappingProxyType({
    "sata-power": SATA_PIN_AMPS, "peripheral-4": PERIPHERAL_PLANNING_AMPS, "floppy-4": FLOPPY_AMPS,
})
POWER_DISABLE_PIN: Final = Fact(
    "contact.sata.power_disable", 3, "pin number", Kind.NOMINAL, "encyclopedia article on SATA",
    "power connector table",
    "published", "secondary", reason="3.3 V before, Power Disable since SATA 3.3.",
)
MOULDED_HABIT: Final = judgement(
    "contact.moulded", 0, "moulded adapters",
    "Crimped contacts can be looked at, moulded ones cannot; moulded 4-pin to SATA adapters have caused fires.",
)
