"""What adapters carry where no rating is given: as much as each plug that they take is good for."""

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
_BY_INPUT: Final = MappingProxyType[str, Assumption]({
    "sata-power": _SATA, "peripheral-4": _PERIPHERAL, "pcie-6": _CARD_6, "pcie-8": _CARD_8, "cpu-8": _PROCESSOR_8,
    "12vhpwr": UNPRINTED_WATTS, "12v-2x6": UNPRINTED_WATTS,
})
_DRIVE_OUTPUTS: Final = MappingProxyType[str, Assumption]({"sata-power": _SATA})


def usual_watts(takes: str, gives: str) -> Assumption:
    """Return the usual watts of an adapter for each plug that it takes; one that gives a SATA plug is good for one."""
    return _DRIVE_OUTPUTS.get(gives) or _BY_INPUT.get(takes, _OTHER)
