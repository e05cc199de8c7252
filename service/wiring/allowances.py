"""What each place on the way of a current allows, and why: the numbers behind the formal limits.

Contacts and wires of 4.2 mm pitch: up to 6 A each nothing, 6 to 8 A the band, above 8 A a stop. The 16-pin plug: 9.2
A. A drive plug: its amps by rail, hard, at start-up too. A plug's rated watts, a printed rating and an adapter's rating
are limits in milliamps at nominal 12 V.
"""

from functools import lru_cache
from typing import Literal, NamedTuple

from service.facts import card as card_facts
from service.facts import contacts as facts
from service.facts import wire as wire_facts
from service.facts.fact import Fact
from service.facts.supply import as_printed
from service.parts.words import DRIVE, SIXTEEN_PIN
from service.wiring.problem import FREE, Limits, RailLimits

Cause = Literal["plug", "contact", "wire", "socket", "print", "adapter", "drive_rail", "start_wire", "volts"]
_REMEMBERED = 1024
PRINTED_ON_CABLE = "cable.rated_watts"
PRINTED_ON_ADAPTER = "adapter.rated_watts"
"""Bases that are no facts of ours: fields that a sheet states."""


class Allowance(NamedTuple):
    """One limit on one rail (0: 12 V, 1: 5 V, 2: 3.3 V), of all contacts or wires together [mA], and how many they are.

    ``basis`` is the key of the fact that the stop of one of them is taken from, or the field that states it; ``ohms``
    what lies there in the way of the current, there and back.
    """

    cause: Cause
    rail: int
    limits: Limits
    contacts: int = 0
    sixteen_pin: bool = False
    basis: str = ""
    ohms: float = 0.0


@lru_cache(maxsize=_REMEMBERED)
def merged(allowances: tuple[Allowance, ...]) -> RailLimits:
    """Return the strictest of all limits, by rail."""
    rails = []
    for rail in range(3):
        mine = [a.limits for a in allowances if a.rail == rail]
        rails.append(Limits(*(min(column) for column in zip(*mine, strict=True))) if mine else FREE)
    return (rails[0], rails[1], rails[2])


def in_milliamps(watts: float) -> int:
    """Return watts at nominal 12 V as whole milliamps, rounded up by less than one so that the rating itself passes."""
    return -int(-watts * 1000 // 12)


@lru_cache(maxsize=_REMEMBERED)
def joint(plug: str, port: str, open_contacts: int) -> tuple[Allowance, ...]:
    """Return what a plug in a port allows: its contacts, less the open ones on 12 V, and its rated watts."""
    narrow = narrower(plug, port)
    counts = facts.CONTACTS.get(narrow)
    if counts is None:
        return ()
    on_12v = max(0, counts[0] - open_contacts)
    found = [_contact(narrow, rail, n) for rail, n in enumerate((on_12v, *counts[1:])) if counts[rail]]
    rated = card_facts.PLUG_WATTS.get(narrow)
    if rated is not None:
        found.append(Allowance("plug", 0, Limits(stop=in_milliamps(rated.value))))
    return tuple(found)


def narrower(plug: str, port: str) -> str:
    """Return what counts of a plug in a port: a plug that splits, or is none of ours, is as the port that it is in."""
    return port if plug == port or plug not in facts.CONTACTS else plug


def _contact(connector: str, rail: int, count: int) -> Allowance:
    if connector in SIXTEEN_PIN:
        stop = int(facts.SIXTEEN_PIN_AMPS.value * 1000) * count
        limits = Limits(stop=stop, comfort=max(1, stop))
        return Allowance("contact", rail, limits, count, sixteen_pin=True, basis=facts.SIXTEEN_PIN_AMPS.key)
    if connector in DRIVE:
        rated = facts.DRIVE_CONTACT_AMPS[connector]
        stop = int(rated.value * 1000) * count
        comfort = int(facts.DRIVE_PLANNING_AMPS[connector].value * 1000) * count
        limits = Limits(stop=stop, start_stop=stop, comfort=max(1, comfort))
        return Allowance("drive_rail", rail, limits, count, basis=rated.key)
    return Allowance("contact", rail, _band(count), count, basis=facts.STOP_AMPS.key)


def _band(count: int, stop_amps: float = facts.STOP_AMPS.value) -> Limits:
    """Return the limits of so many contacts or wires; the band starts at the same part of the stop for thinner wire."""
    stop = int(stop_amps * 1000)
    band = int(stop * facts.BAND_AMPS.value / facts.STOP_AMPS.value)
    return Limits(stop=stop * count, band=band * count, comfort=max(1, stop * count))


@lru_cache(maxsize=_REMEMBERED)
def wires(beyond: tuple[str, ...], awg: int | None, wires_12v: int | None) -> tuple[Allowance, ...]:
    """Return what the wires of a stretch allow that leads to the plugs ``beyond`` it."""
    nearest = beyond[0]
    counts = facts.WIRES.get(nearest)
    if counts is None:
        return ()
    on_12v = counts[0] if wires_12v is None else wires_12v
    sixteen_pin = nearest in SIXTEEN_PIN
    found = []
    for rail, count in enumerate((on_12v, *counts[1:])):
        if not count:
            continue
        rated = _wire_amps(awg, sixteen_pin=sixteen_pin)
        limits = _sixteen_pin_wire(count, awg) if sixteen_pin else _band(count, rated.value)
        found.append(Allowance("wire", rail, limits, count, sixteen_pin, rated.key))
        if any(plug in DRIVE for plug in beyond):
            start = min(limits.stop, int(facts.DRIVE_CABLE_AMPS.value * 1000) * count)
            found.append(Allowance("start_wire", rail, Limits(start_band=start), count))
    return tuple(found)


def _wire_amps(awg: int | None, *, sixteen_pin: bool = False) -> Fact:
    """Return the most amps of one wire: 8 A for 18 AWG and thicker, less for thinner; 16-pin 9.2 A from 16 AWG on."""
    if sixteen_pin and (awg is None or awg <= wire_facts.SIXTEEN_PIN_AWG.value):
        return facts.SIXTEEN_PIN_AMPS
    if awg is None or awg <= wire_facts.GUIDE_AWG.value:
        return facts.STOP_AMPS
    thin = (amps for gauge, amps in wire_facts.THIN_WIRE_AMPS.items() if gauge <= awg)
    return min((facts.STOP_AMPS, *thin), key=lambda fact: fact.value)


def _sixteen_pin_wire(count: int, awg: int | None) -> Limits:
    rated = _wire_amps(awg, sixteen_pin=True)
    if rated is not facts.SIXTEEN_PIN_AMPS:
        return _band(count, rated.value)
    stop = int(rated.value * 1000) * count
    return Limits(stop=stop, comfort=stop)


def socket(contacts_12v: int) -> Allowance:
    """Return what the 12 V contacts at the supply's end allow."""
    return Allowance("socket", 0, _band(contacts_12v), contacts_12v, basis=facts.STOP_AMPS.key)


def best_socket(contacts_12v: int) -> Allowance:
    """Return what the 12 V contacts at the supply's end allow under a printed rating: as much as a 16-pin contact."""
    rated = facts.SIXTEEN_PIN_AMPS
    return Allowance("socket", 0, Limits(stop=int(rated.value * 1000) * contacts_12v), contacts_12v, basis=rated.key)


def printed(rated_watts: float, basis: str = PRINTED_ON_CABLE) -> Allowance:
    """Return what the rating printed on a cable allows, or the one that is assumed."""
    return Allowance("print", 0, Limits(stop=in_milliamps(rated_watts)), basis=basis)


def adapter(rated_watts: float, basis: str = PRINTED_ON_ADAPTER) -> Allowance:
    """Return what an adapter's rating allows, stated or assumed."""
    return Allowance("adapter", 0, Limits(stop=in_milliamps(as_printed(rated_watts))), basis=basis)
