"""Resistance of contacts, fresh and worn, and the warmth that a contact at its rating may have above the air."""

from types import MappingProxyType
from typing import Final

from service.facts.fact import Column, Fact, Kind, derived, judgement
from service.facts.sources import CONTACT_NOTES, CONTACT_SPEC, CONTACT_TEST, GUIDE_3_0
from service.facts.tables import pairs

_16_PIN_PAGE: Final = "section 5.2.2.4.3, pp. 52 and 55"

# Families of contacts: main, processor and card plugs; 12VHPWR and 12V-2x6.
PITCH_4_2_MM: Final = "4.2 mm"
SIXTEEN_PIN: Final = "16-pin"

FRESH_MEAN: Final = Fact(
    "contact.4_2_mm.fresh_mean", 5.651, "mohm a contact", Kind.NOMINAL, CONTACT_TEST, "summary of 2019-11-01",
    "published", "secondary", reason="Mean of new contacts; 5.791 was the most that was seen.",
)
FRESH_MOST: Final = Fact(
    "contact.4_2_mm.fresh_most", 10, "mohm a contact", Kind.LIMIT, CONTACT_SPEC, "section 4.3", "published",
    "secondary", reason="No new contact may have more.",
)
DURABILITY_CHANGE: Final = Fact(
    "contact.4_2_mm.change", 20, "mohm a contact", Kind.LIMIT, CONTACT_TEST, "summary of 2015-05-01", "published",
    "mirror", reason="The most that durability cycling may add, brass and tin; 3.09 was the mean.",
)
WORN_MOST: Final = derived(
    "contact.4_2_mm.worn_most", 30, "mohm a contact", "the most of a new one and the most that is added",
    (FRESH_MOST, DURABILITY_CHANGE),
)
SIXTEEN_PIN_HEALTHY: Final = Fact(
    "contact.16_pin.healthy", 0.8, "mohm a contact", Kind.NOMINAL, CONTACT_NOTES, "GS-12-1031, high power contact",
    "published", "secondary",
    reason="A reading of a healthy contact alone, by another method than the limits; the low end of what is credible.",
)
SIXTEEN_PIN_WORN_MOST: Final = Fact(
    "contact.16_pin.worn_most", 6, "mohm a contact", Kind.LIMIT,
    "PCI-SIG, CEM 5.1, as quoted by the technical press and an engineering note",
    "cable assembly, 30 matings and 20 N side load", "published", "secondary",
    reason="Measured to 50 mm along the wire, so a little copper is in it. A connector maker asks for 5.",
)
# Lowest and highest credible milliohms of one contact, by family.
CREDIBLE_MOHM: Final = MappingProxyType({
    PITCH_4_2_MM: (FRESH_MEAN, WORN_MOST),
    SIXTEEN_PIN: (SIXTEEN_PIN_HEALTHY, SIXTEEN_PIN_WORN_MOST),
})

_TABLE: Final = "housings_ps_5556_001"
_AMPS: Final = pairs(_TABLE, "circuits_to", "amps")
BRONZE_SIZES: Final = pairs(_TABLE, "circuits_from", "circuits_to")
BRONZE_AMPS: Final = Column(
    "contact.4_2_mm.bronze", _AMPS[0][1], "A a contact", Kind.LIMIT, CONTACT_SPEC, "section 4.3", "published",
    "secondary", reason="16 AWG, phosphor bronze, all circuits energised, by circuits of the housing; a guideline.",
    rows=_AMPS,
)
BRONZE_RISE: Final = Fact(
    "contact.4_2_mm.rise", 30, "C above the air", Kind.LIMIT, CONTACT_SPEC, "section 4.3", "published", "secondary",
    reason="What the amps of the same table may warm a contact by.",
)
SIXTEEN_PIN_RISE: Final = Fact(
    "contact.16_pin.rise", 30, "C above the air", Kind.LIMIT, GUIDE_3_0, _16_PIN_PAGE, "published", "mirror",
    reason="At 9.2 A a contact, all twelve energised.",
)
SIXTEEN_PIN_CIRCUITS: Final = 12
RISE_EXPONENT: Final = judgement(
    "contact.rise_exponent", 2, "power of the current",
    "Heat in a resistance goes with the square of the current, and still air is taken to carry heat off in proportion "
    "to the rise: warmer copper resists more and warmer air moves faster, which are left out.",
)
# Contacts of the housings of both families, supplies and returns and all.
CIRCUITS: Final = MappingProxyType({
    "atx-24": 24, "atx-20": 20, "atx12vo-10": 10, "cpu-8": 8, "cpu-4": 4, "pcie-8": 8, "pcie-6": 6,
    "12vhpwr": SIXTEEN_PIN_CIRCUITS, "12v-2x6": SIXTEEN_PIN_CIRCUITS,
})
