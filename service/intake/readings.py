"""Readings taken at the bench: from their outside shape to records; numbers are from 1 outside, from 0 inside."""

from service.intake import bounds
from service.intake.fields import Connector, Number, Whole, Word
from service.intake.shapes import Messages, One, schema
from service.intake.specs_common import PORT_CONNECTORS
from service.intake.wiring import Port, Reference, port_of
from service.parts.readings import Reading
from service.parts.words import RAILS


def _reading(
    part: tuple[int], rail: str, copy: int = 1, port: Port | None = None, volts: float | None = None,
    amps: float | None = None,
) -> Reading:
    connector, number = (None, 0) if port is None else port
    return Reading(
        line=part[0], copy=copy - 1, connector=connector, number=number, rail=rail, volts=volts, amps=amps,
    )


def _faults(reading: Reading) -> Messages:
    """Find a reading that says nothing."""
    if reading.volts is None and reading.amps is None:
        return {"volts": ["must be given, or amps"]}
    return {}


READ_PORT = schema("ReadPort", port_of, {
    "connector": Connector(PORT_CONNECTORS, required=True),
    "number": Whole(1, bounds.MOST_NEEDS * bounds.MOST_COUNT),
})
READING = schema("Reading", _reading, {
    "part": Reference(required=True),
    "copy": Whole(1, bounds.MOST_QUANTITY),
    "port": One(READ_PORT),
    "rail": Word(RAILS, required=True),
    "volts": Number(0, bounds.MOST_READ_VOLTS),
    "amps": Number(0, bounds.MOST_AMPS),
}, _faults)
