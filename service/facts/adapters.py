"""What adapters carry, and how far they lead, where it is not given."""

from types import MappingProxyType
from typing import Final

from service.facts.card import UNPRINTED_WATTS
from service.facts.fact import Assumption, usual

_SATA: Final = usual(
    "assumed.adapter.sata", 54, 54, "W an input", "A SATA plug carries 4.5 A on 12 V, and so its adapter.",
)
_PERIPHERAL: Final = usual(
    "assumed.adapter.peripheral", 54, 96, "W an input",
    "A peripheral plug is planned with 4.5 to 8 A on 12 V, by its adapter.",
)
_CARD_6: Final = usual(
    "assumed.adapter.pcie_6", 75, 75, "W an input", "A 6-pin plug is rated 75 W, and so its adapter.",
)
_CARD_8: Final = usual(
    "assumed.adapter.pcie_8", 150, 150, "W an input",
    "An 8-pin plug is rated 150 W; adapters count one such step for each.",
)
_PROCESSOR_8: Final = usual(
    "assumed.adapter.cpu_8", 150, 300, "W an input",
    "An 8-pin processor plug is planned with up to 300 W, half through thin adapters.",
)
_OTHER: Final = usual(
    "assumed.adapter.other", 54, 75, "W an input", "Small adapters are good for about what a drive's plug carries.",
)
_MAIN_24: Final = usual(
    "assumed.adapter.atx_24", 144, 192, "W an input",
    "A 24-pin main plug has two contacts for 12 V, of 6 to 8 A each, and so what lengthens it.",
)
_MAIN_20: Final = usual(
    "assumed.adapter.atx_20", 72, 96, "W an input",
    "A 20-pin main plug has one contact for 12 V, of 6 to 8 A, and so what lengthens it.",
)
_MAIN_10: Final = usual(
    "assumed.adapter.atx12vo_10", 216, 288, "W an input",
    "The 10-pin main plug has three contacts for 12 V, of 6 to 8 A each, and so what lengthens it.",
)
_BY_INPUT: Final = MappingProxyType[str, Assumption]({
    "sata-power": _SATA, "peripheral-4": _PERIPHERAL, "pcie-6": _CARD_6, "pcie-8": _CARD_8, "cpu-8": _PROCESSOR_8,
    "12vhpwr": UNPRINTED_WATTS, "12v-2x6": UNPRINTED_WATTS,
    "atx-24": _MAIN_24, "atx-20": _MAIN_20, "atx12vo-10": _MAIN_10,
})
_DRIVE_OUTPUTS: Final = MappingProxyType[str, Assumption]({"sata-power": _SATA})
_LEAD_MM: Final = usual(
    "assumed.adapter.lead", 0, 300, "mm", "Some adapters are one body without a lead, most have 100 to 300 mm of it.",
)
_LONGER_MM: Final = usual(
    "assumed.extension.lead", 150, 500, "mm", "Leads that only make a cable longer are 150 to 500 mm.",
)


def usual_watts(takes: str, gives: str) -> Assumption:
    """Return the usual watts of an adapter for each plug that it takes; one that gives a SATA plug is good for one."""
    return _DRIVE_OUTPUTS.get(gives) or _BY_INPUT.get(takes, _OTHER)


def usual_lead_mm(*, only_longer: bool) -> Assumption:
    """Return the usual length of an adapter's lead: of one that changes the plug, or of one that only lengthens."""
    return _LONGER_MM if only_longer else _LEAD_MM
