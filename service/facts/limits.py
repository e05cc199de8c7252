"""Limits that only rules compare with: published, common practice, and our own judgements, each with its source."""

from typing import Final

from service.facts.fact import Fact

_GUIDE = "Intel, ATX desktop power supply design guide 336521, rev 2.0"
_ATX12VO = "Intel, ATX12VO desktop power supply design guide 613768, rev 2.01"
_PRACTICE = "common practice, no source"


def _published(key: str, value: float, unit: str, source: str, where: str, evidence: str) -> Fact:
    return Fact(
        key=key, value=value, unit=unit, kind="limit", source=source, where=where, basis="published", evidence=evidence
    )


def _practice(key: str, value: float, unit: str, where: str) -> Fact:
    return Fact(
        key=key, value=value, unit=unit, kind="limit", source=_PRACTICE, where=where, basis="common practice",
        evidence=""
    )


def _memory(key: str, value: float, unit: str, source: str, where: str) -> Fact:
    return Fact(key=key, value=value, unit=unit, kind="limit", source=source, where=where, basis="memory", evidence="")


def _derived(key: str, value: float, unit: str, source: str, where: str) -> Fact:
    return Fact(key=key, value=value, unit=unit, kind="derived", source=source, where=where, basis="derived",
    evidence="")


def _judged(key: str, value: float, unit: str, reason: str) -> Fact:
    return Fact(
        key=key, value=value, unit=unit, kind="judgement", source="our judgement", where=reason, basis="judgement",
        evidence="",
    )


# -- load and moments
CONTINUOUS_PERCENT: Final = _published(
    "limits.continuous_percent", 100, "%", _ATX12VO, "Table 3-3, anything longer than 100 ms", "mirror"
)
HEADROOM_PERCENT: Final = _judged(
    "limits.headroom_percent", 90, "%", "the last tenth of a rating is left for ageing, dust and warm days"
)
PRINTED_PERCENT: Final = _judged(
    "limits.printed_percent", 100, "%", "what a maker prints for its own part is used in full and never past"
)
SMALL_PERCENT: Final = _published(
    "limits.small_column_percent", 150, "%", _ATX12VO,
    "Table 3-3, 100 us; 145, 135 and 110 at 1, 10 and 100 ms: 450 W or less, or no 16-pin connector", "mirror",
)
LARGE_PERCENT: Final = _published(
    "limits.large_column_percent", 200, "%", _ATX12VO,
    "Table 3-3, 100 us; 180, 160 and 120 at 1, 10 and 100 ms: above 450 W with a 16-pin connector", "mirror",
)
CARD_RATIO: Final = _published(
    "limits.card_ratio", 3, "", "PCI-SIG CEM 5.x, power excursion limits, as in 336521 rev 2.1",
    "Table 3-1: 3 up to 100 us, then 4 - 0.2171 ln(T/us), 1 from 1 s", "secondary",
)
RATIO_TO_WATTS: Final = _published(
    "limits.ratio_to_watts", 600, "W", "PCI-SIG CEM 5.x, power excursion limits, as in 336521 rev 2.1",
    "Table 3-1, for cards of 300 to 600 W", "secondary",
)
SLOW_PEAK_SECONDS: Final = _published(
    "limits.slow_peak_seconds", 17, "s", "Intel, ATX12V power supply design guide, version 2.0",
    "section 3.2.3: a peak of seconds, once a minute; no table for microseconds", "mirror",
)
CARDS_AT_PEAK: Final = _judged(
    "limits.cards_at_peak", 1, "cards", "leaps last microseconds; two cards in the same ones are rare"
)

# -- warmth and mains
AMBIENT_CELSIUS: Final = _published(
    "limits.ambient_celsius", 50, "C", "Intel, ATX power supply design guide, version 0.9",
    "section 7: derating of components is stated at 50 C", "mirror",
)
CONTINUOUS_CIRCUIT_PERCENT: Final = _published(
    "limits.continuous_circuit_percent", 80, "%", "NEC 210.19(A)(1) and 210.20(A)",
    "the circuit is at least 125 % of a load of three hours or more; 80 % is the inverse", "secondary",
)
SMALL_CIRCUIT_AMPS: Final = _judged(
    "limits.small_circuit_amps", 10, "A", "ordinary wall circuits are of 10 A or more, so a load that suits 10 A suits "
    "them"
)
UPS_PERCENT: Final = _practice(
    "limits.ups_percent", 100, "%", "a UPS is limited in watts and in volt-amperes, and both hold"
)

# -- ports, plugs and adapters
PORTS_FED_PERCENT: Final = _practice(
    "limits.ports_fed_percent", 100, "%", "every port that a maker does not call optional is fed"
)
PRINT_LEVEL_WATTS: Final = _published(
    "limits.print_level_watts", 600, "W", "Intel, 336521 rev 2.1a, SENSE0 and SENSE1",
    "levels of 600, 450, 300 and 150 W, each for this plug alone", "primary",
)
DRIVE_PLUG_RAIL_AMPS: Final = _derived(
    "limits.drive_plug_rail_amps", 4.5, "A", "SATA contact rating, as reported by an implementer",
    "three pins a rail of 1.5 A each",
)
DRIVE_PLUG_12V_WATTS: Final = _derived(
    "limits.drive_plug_12v_watts", 54, "W", "SATA contact rating, as reported by an implementer",
    "three pins of 1.5 A at 12 V",
)
DRIVE_CABLE_AMPS: Final = _practice(
    "limits.drive_cable_amps", 8, "A", "a drive cable is planned as one contact set of the plug at the supply"
)
PROCESSOR_8_CONTACTS: Final = _memory(
    "limits.processor_8_contacts", 4, "contacts", "EPS12V and ATX12V guides", "12 V contacts of the 2x4 plug"
)
PROCESSOR_4_CONTACTS: Final = _published(
    "limits.processor_4_contacts", 2, "contacts", _GUIDE, "Table 5-8, p. 55: pins 3 and 4 of the 2x2 plug", "mirror"
)
MAIN_12V_CONTACTS: Final = _published(
    "limits.main_12v_contacts", 2, "contacts", "Pinout pages for the 24-pin main connector",
    "pins 10 and 11; the 20-pin plug lacks 11", "secondary",
)
SENSED_6_PIN_WATTS: Final = _published(
    "limits.sensed_6_pin_watts", 75, "W", _GUIDE, "Table 5-6, p. 52: SENSE1 open, SENSE0 ground", "mirror"
)
PLUGS_INTERCHANGED: Final = _published(
    "limits.plugs_interchanged", 0, "plugs", _GUIDE,
    "section 2.2.1, p. 18: processor and card plugs differ in pins and keys and do not interchange", "mirror",
)
MOULDED_PLANNING_AMPS: Final = _practice(
    "limits.moulded_planning_amps", 4.5, "A", "moulded drive adapters are a known cause of fire; crimped ones are "
    "preferred"
)
COMFORT_PERCENT: Final = _judged(
    "limits.comfort_percent", 60, "%", "up to 60 % of its limit a contact stays cool for years"
)
POWER_DISABLE_PIN: Final = _published(
    "limits.power_disable_pin", 3, "pin", "Encyclopedia article on SATA, power connector table",
    "Power Disable since SATA 3.3, 3.3 V before", "secondary",
)

# -- cables and room
CABLES_INTERCHANGED: Final = _practice(
    "limits.cables_interchanged", 0, "cables", "sockets at the supply are each maker's own; cables must not be mixed"
)
REACH_MARGIN_MM: Final = _judged(
    "limits.reach_margin_mm", 0, "mm", "a plug reaches when it is at least as far along its cable as the way is long"
)
PLUG_ROOM_MM: Final = _judged(
    "limits.plug_room_mm", 50, "mm", "a plug at the supply's panel and the bend of its cable take about this much"
)
ATX_WIDTH_MM: Final = _published(
    "limits.atx_width_mm", 150, "mm", "Dealer's glossary of supply form factors",
    "ATX 150 x 86 mm, SFX 125, TFX 85, Flex ATX 81.5 mm wide: outlines that do not share their screw holes",
    "secondary",
)
FAN_CLEAR_MM: Final = _published(
    "limits.fan_clear_mm", 12.7, "mm", _GUIDE, "Venting: half an inch clear before intake and exhaust", "primary"
)

# -- headers and parts that mate
HEADER_NEEDS: Final = _practice("limits.header_needs", 1, "needs", "one header or data port serves one need")
FAN_HEADER_AMPS: Final = _practice("limits.fan_header_amps", 1, "A", "an ordinary fan header gives 1 A")
LIGHT_HEADER_AMPS: Final = _practice("limits.light_header_amps", 3, "A", "a light header gives 3 A, on 5 V or 12 V")
M2_AMPS: Final = _memory(
    "limits.m2_amps", 2.5, "A", "PCI-SIG M.2 specification", "commonly quoted for a socket, on 3.3 V"
)
ADDRESSABLE_VOLTS: Final = _practice("limits.addressable_volts", 5, "V", "three-pin header of addressable lights")
PLAIN_LIGHT_VOLTS: Final = _practice("limits.plain_light_volts", 12, "V", "four-pin header of plain lights")
SOCKETS_MATED: Final = _practice("limits.sockets_mated", 1, "sockets", "a processor is made for one socket")
MEMORY_TYPES: Final = _practice("limits.memory_types", 1, "types", "notch and volts differ from type to type")
SOCKET_PROCESSORS: Final = _practice("limits.socket_processors", 1, "processors", "one socket holds one processor")
