"""Volts at the end of a supply's own cables: as measured, else nominal."""

from service.demand.current import VOLTS_3_3, VOLTS_5, VOLTS_12
from service.parts.build import Build
from service.parts.records import PowerSupply

_NOMINAL = {"12v": VOLTS_12, "5v": VOLTS_5, "3v3": VOLTS_3_3, "5vsb": VOLTS_5}


def supply_end_volts(build: Build, rail: str) -> float:
    """Return the volts of a rail at the end of the supply's own cables."""
    if not build.readings:
        return _NOMINAL[rail]
    supplies = {(unit.line, unit.copy) for unit in build.units if isinstance(unit.part, PowerSupply)}
    read = [
        one.reading.volts for one in build.readings
        if (one.reading.line, one.reading.copy) in supplies and one.reading.rail == rail
        and one.reading.volts is not None
    ]
    return min(read, default=_NOMINAL[rail])
