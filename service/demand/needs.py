"""The ports a part wants fed: as given, else those that parts of its kind have."""

from service.facts import drives
from service.facts.headers import PLAIN_LIGHT_VOLTS
from service.parts.records import (
    Backplane,
    Controller,
    Cooler,
    Drive,
    Fan,
    Lighting,
    Motherboard,
    Need,
    OpticalDrive,
    Part,
    Pump,
)
from service.parts.words import SIGNAL_CONNECTORS

_SIGNAL = frozenset(SIGNAL_CONNECTORS)
_DATA = frozenset({"sata-data"})
_FAN = (Need(connector="fan-4"),)
_SATA_POWER = (Need(connector="sata-power"),)
_SATA_DATA = Need(connector="sata-data")
_M2 = (Need(connector="m2-m"),)
_BOARD = (Need(connector="atx-24"), Need(connector="cpu-8"))
_LIGHT = {PLAIN_LIGHT_VOLTS.value: (Need(connector="rgb-4"),)}
_ADDRESSABLE = (Need(connector="argb-3"),)


def needs_of(part: Part) -> tuple[Need, ...]:
    """Return the needs of a part.

    A SATA drive takes a data port too, unless its needs name one. A board, a drive or a cage that names none by which
    power could come has the usual ones beside those that it names.
    """
    match part:
        case Motherboard():
            return _with_power(part.needs, _BOARD, _SIGNAL)
        case Drive():
            usual = _M2 if part.size == drives.M2 else _SATA_POWER
            return _with_data(_with_power(part.needs, usual, _DATA), part.interface)
        case OpticalDrive():
            return _with_data(_with_power(part.needs, _SATA_POWER, _DATA), part.interface)
        case Backplane():
            return _with_power(part.needs, _SATA_POWER, _SIGNAL)
        case Cooler() | Fan():
            return part.needs or _FAN
        case Pump() | Controller():
            return part.needs or _SATA_POWER
        case Lighting():
            return part.needs or _LIGHT.get(part.volts, _ADDRESSABLE)
        case _:
            return getattr(part, "needs", ())


def _with_power(needs: tuple[Need, ...], usual: tuple[Need, ...], without: frozenset[str]) -> tuple[Need, ...]:
    """Return the needs, the usual ones first where all that are named are of connectors ``without`` power."""
    return (*usual, *needs) if all(need.connector in without for need in needs) else needs


def _with_data(needs: tuple[Need, ...], interface: str | None) -> tuple[Need, ...]:
    if interface != "sata" or any(need.connector in ("sata-data", "m2-m") for need in needs):
        return needs
    return (*needs, _SATA_DATA)
