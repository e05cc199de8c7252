"""Single runs of wire: their schema, and what does not hold together within one."""

from service.intake import bounds
from service.intake.fields import Number
from service.intake.shapes import Messages, One, schema
from service.intake.specs_common import limit_amps, load_amps, load_watts, named, strip_ohms, wire
from service.parts.runs import FedStrip, WireRun

LOADS = ("amps", "watts", "strip")
_ONE_LOAD = f"must have exactly one of {', '.join(LOADS)}"


def _faults(run: WireRun) -> Messages:
    """Find a run that has no load or several."""
    found: Messages = {}
    given = [load for load in LOADS if getattr(run, load) is not None]
    if not given:
        found["amps"] = [_ONE_LOAD]
    for load in given[1:]:
        found[load] = [_ONE_LOAD]
    return found


FED_STRIP = schema("FedStrip", FedStrip, {
    "length_mm": Number(0, bounds.MOST_RUN_MM, required=True),
    "amps_per_metre": load_amps(required=True),
    "ohms_per_metre": strip_ohms(),
})
WIRE_RUN = schema("WireRun", WireRun, named() | wire() | {
    "source_volts": Number(bounds.LEAST_RUN_VOLTS, bounds.MOST_RUN_VOLTS, required=True),
    "amps": load_amps(),
    "watts": load_watts(),
    "strip": One(FED_STRIP),
    "lowest_volts": Number(0, bounds.MOST_RUN_VOLTS),
    "max_amps": limit_amps(),
}, _faults)
