"""Runs of wire, and the leads of lights, at one end of every range: what reaches their end, and what a pair carries.

Wires have strands, and a pair has a joint at either end. The copper is as warm as the room; what its own current adds
to that is left out.
"""

from collections.abc import Iterator
from typing import NamedTuple

from service.case.case import RunLoad
from service.case.place import Place
from service.case.volts import supply_end_volts
from service.demand.draws import lighting
from service.demand.ends import Ends
from service.facts.contacts import BAND_AMPS, STOP_AMPS
from service.facts.fact import WHOLE
from service.facts.headers import PLAIN_LIGHT_VOLTS
from service.facts.runs import LIGHT_PERCENT, RUN_AWG, RUN_CONTACT_OHMS, STRIP_OHMS, STRIP_PITCH
from service.facts.wire import GUIDE_AWG, THIN_WIRE_AMPS
from service.parts.build import Build
from service.parts.records import Lead, Lighting, Strip
from service.parts.runs import FedStrip, WireRun
from service.physics.copper import MM_PER_METRE, pair_ohms
from service.physics.loads import collapse_amps
from service.physics.runs import CONTACTS_OF_A_RUN, Run, run
from service.physics.strip import Lit, even_strip

_MILLI = 1000
_SHEET = -1
_NO_STRIP = Strip()


class _Wire(NamedTuple):
    """Equal pairs of wires, every figure settled."""

    awg: int
    length_mm: float
    pairs: int
    contact_ohms: float
    celsius: float


def runs(build: Build, ends: Ends, celsius: float) -> Iterator[RunLoad]:
    """Yield the runs of a sheet and those of its lights, their copper at ``celsius``."""
    for index, stated in enumerate(build.runs):
        yield _of_sheet(index, stated, ends, celsius)
    for unit, entry in enumerate(build.units):
        if isinstance(entry.part, Lighting):
            yield _of_light(build, unit, entry.part, ends, celsius)


def _wire(stated: WireRun | Lead, unit: int, field: str, ends: Ends, celsius: float) -> _Wire:
    awg = None if stated.awg is None else float(stated.awg)
    return _Wire(
        int(ends.load_of(awg, unit, f"{field}/awg", RUN_AWG)),
        stated.length_mm,
        stated.parallel_pairs,
        ends.load_of(stated.ohms_per_contact, unit, f"{field}/ohms_per_contact", RUN_CONTACT_OHMS),
        celsius,
    )


def _of_sheet(index: int, stated: WireRun, ends: Ends, celsius: float) -> RunLoad:
    """Return a run of the sheet."""
    field = f"runs/{index}"
    wire = _wire(stated, _SHEET, field, ends, celsius)
    amps = 0.0 if stated.amps is None else ends.stated(stated.amps, _SHEET, f"{field}/amps")
    watts = 0.0 if stated.watts is None else ends.stated(stated.watts, _SHEET, f"{field}/watts")
    fed: Run | Lit | None
    if stated.strip is None:
        amps += collapse_amps(stated.source_volts, watts)
        fed = _run(wire, stated.source_volts, amps if stated.watts is None else 0.0, watts)
    else:
        fed, amps = _strip(wire, stated.source_volts, stated.strip, field, ends)
    band, stop = _limits(wire.awg, stated.max_amps)
    at = Place("run", _SHEET, (index,))
    return _loaded(at, wire, stated.source_volts, stated.lowest_volts, fed, amps, (band, stop))


def _run(wire: _Wire, volts: float, amps: float, watts: float) -> Run | None:
    return run(
        volts, wire.awg, wire.length_mm, lowest_volts=0.0, amps=amps, watts=watts, parallel_pairs=wire.pairs,
        ohms_per_contact=wire.contact_ohms, stranded=True, celsius=wire.celsius,
    )


def _strip(wire: _Wire, volts: float, strip: FedStrip, field: str, ends: Ends) -> tuple[Lit | None, float]:
    """Return a strip of the sheet that is fed by a wire, and its amps."""
    each = ends.stated(strip.amps_per_metre, _SHEET, f"{field}/strip/amps_per_metre")
    ohms = ends.load_of(strip.ohms_per_metre, _SHEET, f"{field}/strip/ohms_per_metre", STRIP_OHMS)
    return _lit(wire, volts, ohms, each, strip.length_mm), each * strip.length_mm / MM_PER_METRE


def _lit(wire: _Wire, volts: float, ohms_per_metre: float, amps_per_metre: float, length_mm: float) -> Lit | None:
    lead = pair_ohms(
        wire.awg, wire.length_mm, parallel_pairs=wire.pairs, ohms_per_contact=wire.contact_ohms,
        contacts_in_series=CONTACTS_OF_A_RUN, stranded=True, celsius=wire.celsius,
    )
    return even_strip(volts, lead, ohms_per_metre, amps_per_metre, length_mm)


def _limits(awg: int, stated_amps: float | None) -> tuple[float | None, float | None]:
    """Return where the band of one pair begins and where it is to stop; nothing is known of thick wire's stop."""
    if stated_amps is not None:
        return None, stated_amps
    most = _wire_amps(awg)
    return most * BAND_AMPS.value / STOP_AMPS.value, most if awg >= GUIDE_AWG.value else None


def _wire_amps(awg: int) -> float:
    """Return the most amps of one wire with its contacts: 8 A for 18 AWG and thicker, less for thinner [A]."""
    thin = [amps.value for gauge, amps in THIN_WIRE_AMPS.items() if gauge <= awg]
    return min((STOP_AMPS.value, *thin)) if awg > GUIDE_AWG.value else STOP_AMPS.value


def _loaded(
    at: Place, wire: _Wire, volts: float, lowest: float | None, fed: Run | Lit | None, amps: float,
    limits: tuple[float | None, float | None],
) -> RunLoad:
    """Put a run together; without a solution ``amps`` stand for what it carries."""
    if fed is None:
        return RunLoad(at, volts, lowest, None, amps, amps / wire.pairs, None, *limits)
    end = fed.end_volts if isinstance(fed, Run) else fed.last_volts
    pair = fed.total_amps / wire.pairs
    return RunLoad(at, volts, lowest, end, fed.total_amps, pair, fed.lost_watts, *limits)


def _of_light(build: Build, unit: int, light: Lighting, ends: Ends, celsius: float) -> RunLoad:
    """Return the lead and strip of a light. Its lead ends in a plug, so thick wire carries no more than a contact."""
    at, volts = Place("run", unit), _source_volts(build, unit, light)
    lowest = light.volts * LIGHT_PERCENT.value / WHOLE
    amps = sum(lighting(unit, light, ends).sustained) / _MILLI
    if light.lead is None:
        return RunLoad(at, volts, lowest, None, amps, amps, None, None, None, "lead")
    wire = _wire(light.lead, unit, "lead", ends, celsius)
    most = _wire_amps(wire.awg)
    limits = (most * BAND_AMPS.value / STOP_AMPS.value, most)
    length_mm = _length_mm(unit, light, ends)
    if length_mm is None:
        return RunLoad(at, volts, lowest, None, amps, amps / wire.pairs, None, *limits, "strip/length_mm")
    ohms = ends.load_of((light.strip or _NO_STRIP).ohms_per_metre, unit, "strip/ohms_per_metre", STRIP_OHMS)
    metres = length_mm / MM_PER_METRE
    fed = _lit(wire, volts, ohms, amps / metres, length_mm) if metres else _run(wire, volts, amps, 0.0)
    return _loaded(at, wire, volts, lowest, fed, amps, limits)


def _source_volts(build: Build, unit: int, light: Lighting) -> float:
    """Return the volts at the plug of a light: measured there, else those of its rail."""
    rail = "12v" if light.volts == PLAIN_LIGHT_VOLTS.value else "5v"
    mine = (build.units[unit].line, build.units[unit].copy, rail)
    read = [
        one.reading.volts for one in build.readings
        if (one.reading.line, one.reading.copy, one.reading.rail) == mine and one.reading.volts is not None
    ]
    return min(read, default=supply_end_volts(build, rail))


def _length_mm(unit: int, light: Lighting, ends: Ends) -> float | None:
    """Return how long a light is: as given, else by its number of lights; None where neither is known."""
    stated = (light.strip or _NO_STRIP).length_mm
    if stated is not None or light.leds is None:
        return stated
    return ends.load(None, unit, "strip/length_mm", STRIP_PITCH, light.leds)
