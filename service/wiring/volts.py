"""Volts behind an adapter: the least that its plug may have, and what current leaves that much."""

from functools import lru_cache
from typing import NamedTuple

from service.facts.contacts import CONTACTS, WIRES
from service.facts.fact import WHOLE
from service.facts.rails import LOWEST_12_AT_CARD
from service.facts.resistance import FRESH_MOST, SIXTEEN_PIN_WORN_MOST
from service.facts.volts import (
    CAUTION_PERCENT,
    DRIVE_CONTACT_MOHM,
    LOWEST_VOLTS,
    NOMINAL_VOLTS,
    SUPPLIES_BY_RETURNS,
)
from service.parts.words import CARD, DRIVE, SIXTEEN_PIN
from service.physics.contacts import MOHM_PER_OHM
from service.physics.copper import wire_ohms
from service.physics.loads import watts_above
from service.wiring.allowances import Allowance
from service.wiring.objective import RAILS
from service.wiring.problem import FREE, NO_LIMIT, Limits

NO_CONTACTS = (0, 0, 0)
REMEMBERED = 1024
"""JUDGEMENT: more adapters and uses of them than one edition has."""


class Lead(NamedTuple):
    """What an adapter adds: the plug that goes in, how many of them, and gauge and length of its wires."""

    takes: str
    inputs: int
    awg: int
    length_mm: float


@lru_cache(maxsize=REMEMBERED)
def allowed(lead: Lead, gives: str) -> tuple[Allowance, ...]:
    """Return what an adapter allows so that enough volts are left behind it: a stop at the least, a band before it.

    All is taken for constant power, which asks more the fewer volts it has.
    """
    return _allowed(ohms_of(lead), gives)


@lru_cache(maxsize=REMEMBERED)
def allowed_in_a_row(behind: Lead, ahead: Lead, gives: str) -> tuple[Allowance, ...]:
    """Return what an input of an adapter allows that is fed from another one, so that both leave enough together.

    It is the current of one input, and that of the adapter behind if that feeds nothing else.
    """
    both = zip(ohms_of(behind), ohms_of(ahead._replace(inputs=1)), strict=True)
    return _allowed(tuple(one + two if one and two else 0.0 for one, two in both), gives)


def beside(others: tuple[Allowance, ...], volts: tuple[Allowance, ...]) -> tuple[Allowance, ...]:
    """Return what a place allows by others and by volts: without limits of volts that others stop well before.

    Where current is past a stop its band counts for nothing, so nothing is lost, and a search has less to weigh.
    """
    stops = [min((each.limits.stop for each in others if each.rail == rail), default=NO_LIMIT) for rail in range(RAILS)]
    return others + tuple(
        each._replace(limits=FREE) if each.limits.band >= stops[each.rail] else each for each in volts
    )


def _allowed(ohms: tuple[float, ...], gives: str) -> tuple[Allowance, ...]:
    return tuple(
        Allowance("volts", rail, _enough_volts(rail, gives, each), ohms=each) for rail, each in enumerate(ohms) if each
    )


@lru_cache(maxsize=REMEMBERED)
def ohms_of(lead: Lead) -> tuple[float, float, float]:
    """Return what an adapter adds to each rail, there and back; 0 where its plug has no such rail [ohm].

    It adds its wires and the joint of each plug that goes into it; the joint at its port would be there without it. The
    way back of a rail is as good as the way there, but for main plugs, of which the returns are fewer.
    """
    counts, wire_counts = CONTACTS.get(lead.takes, NO_CONTACTS), WIRES.get(lead.takes, NO_CONTACTS)
    both = 1 + SUPPLIES_BY_RETURNS.get(lead.takes, 1.0)
    of_contact = joint_mohm(lead.takes) / MOHM_PER_OHM
    of_wire = wire_ohms(lead.awg, lead.length_mm, stranded=True)
    on_12v, on_5v, on_3v3 = (
        both * (of_contact / contacts + of_wire / wires) / lead.inputs if contacts else 0.0
        for contacts, wires in zip(counts, wire_counts, strict=True)
    )
    return on_12v, on_5v, on_3v3


def _enough_volts(rail: int, gives: str, ohms: float) -> Limits:
    nominal = NOMINAL_VOLTS[rail]
    stop, band = (
        int(1000 * watts_above(nominal, least(rail, gives), ohms) / nominal)
        for least in (lowest_volts, cautious_volts)
    )
    return Limits(stop=stop, band=band)


def lowest_volts(rail: int, connector: str) -> float:
    """Return the least that a rail (0: 12 V, 1: 5 V, 2: 3.3 V) may have at a plug of this kind [V]."""
    if rail == 0 and connector in CARD:
        return NOMINAL_VOLTS[0] * LOWEST_12_AT_CARD.value / WHOLE
    return LOWEST_VOLTS[rail].value


def cautious_volts(rail: int, connector: str) -> float:
    """Return the volts at which so much of the band is used that one should look twice [V]."""
    nominal = NOMINAL_VOLTS[rail]
    return nominal - (nominal - lowest_volts(rail, connector)) * CAUTION_PERCENT.value / WHOLE


def joint_mohm(connector: str) -> float:
    """Return the most that a contact of a new plug may have [mohm]; a 16-pin one with the wire at it."""
    if connector in SIXTEEN_PIN:
        return SIXTEEN_PIN_WORN_MOST.value
    return DRIVE_CONTACT_MOHM.value if connector in DRIVE else FRESH_MOST.value
