"""Volts that a device must have, what of them a lead may use up, and what leads that do not say are made of."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import judgement, usual
from service.facts.rails import LOWEST_3_3, LOWEST_5, LOWEST_12

NOMINAL_VOLTS: Final = (12.0, 5.0, 3.3)
"""Where the supply's own cable ends, by rail: a supply that keeps its limits has its own cables' drop in them."""

LOWEST_VOLTS: Final = (LOWEST_12, LOWEST_5, LOWEST_3_3)
"""What devices of every age are made for, by rail; later guides let 12 V fall by 7 %."""
CAUTION_PERCENT: Final = judgement(
    "volts.caution", 50, "% of what the volts may fall by",
    "The supply itself, its cables and worn contacts need the other half.",
)

DRIVE_CONTACT_MOHM: Final = judgement(
    "contact.drive.most", 20, "mohm a contact",
    "No figure for the contacts of drives' plugs is at hand; blades and round pins are no better than 4.2 mm contacts, "
    "of which a new one has 10 at most.",
)
USUAL_ADAPTER_AWG: Final = usual(
    "assumed.adapter.gauge", 16, 20, "AWG", "Leads are made of 18 AWG wire, better ones of 16, cheap ones of 20.",
)
# Returns that share the current of all rails: wires of a rail, by the returns that they have.
SUPPLIES_BY_RETURNS: Final = MappingProxyType({"atx-24": 11 / 8, "atx-20": 8 / 7})
