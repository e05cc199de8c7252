"""Runs of wire and strips of lights: what is assumed of them, and how much of their volts they may lose."""

from typing import Final

from service.facts.fact import Assumption, habit, judgement, supposed, usual
from service.facts.resistance import FRESH_MEAN, WORN_MOST
from service.facts.sources import CONTACT_TEST

_MILLI: Final = 1000

RUN_AWG: Final = usual("assumed.run.awg", 18, 24, "AWG", "Leads inside of a PC are usually 18 to 24 AWG.")
RUN_CONTACT_OHMS: Final = Assumption(
    "assumed.run.contact", FRESH_MEAN.value / _MILLI, WORN_MOST.value / _MILLI, "ohm a contact",
    "Contacts of 4.2 mm pitch have some 6 milliohms when new, and 30 at most when worn.", "published", CONTACT_TEST,
)
STRIP_OHMS: Final = supposed(
    "assumed.strip.ohms", 0.1, 0.5, "ohm a metre",
    "Tracks 3 mm wide, of 35 to 70 um of copper, have 0.33 to 0.16 ohm a metre there and back; wide strips have less, "
    "narrow ones more.",
)
STRIP_PITCH: Final = usual(
    "assumed.strip.pitch", 7, 33, "mm", "Strips have 30 to 144 lights a metre: one for each 33 to 7 mm.",
)
HALF_BAND_PERCENT: Final = judgement(
    "run.half_band", 50, "% of the volts that may be lost",
    "A run that loses half of what it may lose works today; wear, warmth and a longer lead use up the rest.",
)
LIGHT_PERCENT: Final = habit(
    "run.light", 90, "% of the volts of a light",
    "No maker's lowest volts are at hand. Where a tenth is lost, the far lights are seen to be dimmer and redder.",
)
