"""How unequally the contacts of a plug may share its current, and how warm that may make the hottest: estimates.

The worst that is credible: one more contact open, one as good as a new one, all others worn. What evens it out is the
wire behind each contact; where its length or gauge is not given, a short and thick one is taken, and that is said.
"""

from functools import lru_cache
from typing import NamedTuple

from service.case.case import Heat, Spot
from service.facts.contacts import CONTACTS, SIXTEEN_PIN_AMPS, STOP_AMPS
from service.facts.resistance import CIRCUITS, PITCH_4_2_MM
from service.facts.resistance import SIXTEEN_PIN as SIXTEEN_PIN_FAMILY
from service.facts.routes import USUAL_LEAD_MM
from service.facts.volts import USUAL_ADAPTER_AWG
from service.parts.records import Cable
from service.parts.words import SIXTEEN_PIN
from service.physics.contacts import credible_ohms, worst_sharing
from service.physics.copper import wire_ohms
from service.physics.warmth import estimated_rise_celsius, rated_point
from service.wiring.mates import function_of

SHARED = frozenset({"pcie-8"}) | SIXTEEN_PIN
"""Plugs that carry enough for it to matter."""
_MILLI = 1000
_REMEMBERED = 4096


class Behind(NamedTuple):
    """The wire behind each contact of a plug, and which of its figures are not given."""

    length_mm: float
    awg: int
    assumed: tuple[str, ...] = ()


def wire_of(cable: Cable, plug: int) -> Behind:
    """Return the wire behind the contacts of a cable's plug."""
    at_mm, connector = cable.plugs[plug].at_mm, cable.plugs[plug].connector
    if at_mm is not None:
        return behind(at_mm, cable.awg)
    return behind(USUAL_LEAD_MM[function_of(connector)].low, cable.awg, ("at_mm",))


def behind(length_mm: float, awg: int | None, assumed: tuple[str, ...] = ()) -> Behind:
    """Return a wire of this length; one whose gauge is not given is thick."""
    if awg is not None:
        return Behind(length_mm, awg, assumed)
    return Behind(length_mm, int(USUAL_ADAPTER_AWG.low), (*assumed, "awg"))


@lru_cache(maxsize=_REMEMBERED)
def heat(spot: Spot, connector: str, milliamps: int, open_contacts: int, wire: Behind) -> Heat | None:
    """Return how the 12 V contacts of a plug warm up, shared equally and at worst; None where nothing is published."""
    circuits = CIRCUITS.get(connector)
    left = CONTACTS[connector][0] - open_contacts if circuits else 0
    if circuits is None or left < 1:
        return None
    family = SIXTEEN_PIN_FAMILY if connector in SIXTEEN_PIN else PITCH_4_2_MM
    point = rated_point(family, circuits)
    amps = milliamps / _MILLI
    branch = wire_ohms(wire.awg, wire.length_mm, stranded=True)
    worst = worst_sharing(amps, [branch] * left, *credible_ohms(family))
    hottest = worst.branch_amps[worst.most_loaded] if worst else None
    return Heat(
        spot, connector, left, open_contacts, amps / left, estimated_rise_celsius(amps / left, *point), hottest,
        None if hottest is None else estimated_rise_celsius(hottest, *point),
        (SIXTEEN_PIN_AMPS if connector in SIXTEEN_PIN else STOP_AMPS).value, *wire,
    )
