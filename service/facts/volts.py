"""Volts that a device must have, what of them a lead may use up, and what leads that do not say are made of."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Fact, Kind, judgement, usual
from service.facts.sources import GUIDE_2_0, GUIDE_3_0

NOMINAL_VOLTS: Final = (12.0, 5.0, 3.3)
"""Where the supply's own cable ends, by rail: a supply that keeps its limits has its own cables' drop in them."""

_REGULATION: Final = "section 3.2.1, Table 2, p. 11"
LOWEST_12_VOLTS: Final = Fact(
    "volts.12v.lowest", 11.4, "V", Kind.LIMIT, GUIDE_2_0, _REGULATION, "published", "mirror",
    reason="What devices of every age are made for; later guides let 12 V fall by 7 %.",
)
LOWEST_5_VOLTS: Final = Fact("volts.5v.lowest", 4.75, "V", Kind.LIMIT, GUIDE_2_0, _REGULATION, "published", "mirror")
LOWEST_3_3_VOLTS: Final = Fact("volts.3v3.lowest", 3.14, "V", Kind.LIMIT, GUIDE_2_0, _REGULATION, "published", "mirror")
LOWEST_VOLTS: Final = (LOWEST_12_VOLTS, LOWEST_5_VOLTS, LOWEST_3_3_VOLTS)
LOWEST_CARD_PERCENT: Final = Fact(
    "volts.card.lowest", 92, "% of 12 V", Kind.LIMIT, GUIDE_3_0, "section 3.2, Table 3-5", "published", "primary",
    reason="+5 / -8 % at a card's plug.",
)
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
