"""What processors draw at their plugs: sustained, and at a peak of up to 10 ms.

``plug_watts`` and the design guide's amps by class are at the plug already; package watts are divided by the efficiency of
the board's regulator. Of several figures given, the one nearest to the plug is used: plug_watts, turbo_watts, class_watts.
"""

from typing import NamedTuple

from service.demand.current import milliamps, milliamps_at
from service.demand.ends import Ends
from service.facts import processor as facts
from service.parts.figures import Range
from service.parts.records import Peak, Processor


class ProcessorDraw(NamedTuple):
    """Milliamps at 12 V, at the plugs: sustained, and at the peak; ``stated`` peaks as (microseconds, mA), longest first."""

    unit: int
    sustained: int
    peak: int
    stated: tuple[tuple[int, int], ...]


def processor(unit: int, part: Processor, ends: Ends) -> ProcessorDraw:
    """Return the draw of one processor at its plugs."""
    if part.plug_watts is not None:
        sustained = milliamps_at(_given(part.plug_watts, unit, "plug_watts", ends), 12.0)
        return _with_peak(unit, sustained, part.peaks, 1.0, ends)
    if part.turbo_watts is None and part.class_watts in facts.CLASS_AMPS:
        continuous, peak = facts.CLASS_AMPS[part.class_watts]
        return ProcessorDraw(unit, milliamps(continuous), milliamps(peak), _stated(part.peaks, _efficiency(unit, ends)))
    efficiency = _efficiency(unit, ends)
    sustained = milliamps_at(_package_watts(unit, part, ends) / efficiency, 12.0)
    return _with_peak(unit, sustained, part.peaks, efficiency, ends)


def _package_watts(unit: int, part: Processor, ends: Ends) -> float:
    if part.turbo_watts is not None:
        return _given(part.turbo_watts, unit, "turbo_watts", ends)
    if part.base_watts is not None:
        base = _given(part.base_watts, unit, "base_watts", ends)
        return ends.load(None, unit, "turbo_watts", facts.TURBO_TO_BASE, base)
    if part.class_watts is not None:
        return ends.load(None, unit, "turbo_watts", facts.TURBO_TO_BASE, part.class_watts)
    return ends.load(None, unit, "turbo_watts", facts.PACKAGE_WATTS)


def _with_peak(unit: int, sustained: int, peaks: tuple[Peak, ...], efficiency: float, ends: Ends) -> ProcessorDraw:
    stated = _stated(peaks, efficiency)
    if stated:
        return ProcessorDraw(unit, sustained, sustained, stated)
    ratio = ends.load(None, unit, "peaks", facts.PEAK_TO_CONTINUOUS)
    return ProcessorDraw(unit, sustained, int(sustained * ratio + 0.5), ())


def _stated(peaks: tuple[Peak, ...], efficiency: float) -> tuple[tuple[int, int], ...]:
    return tuple(sorted(((p.microseconds, milliamps_at(p.watts / efficiency, 12.0)) for p in peaks), reverse=True))


def _efficiency(unit: int, ends: Ends) -> float:
    return ends.rating(None, unit, "regulator_efficiency", facts.REGULATOR_EFFICIENCY)


def _given(given: Range, unit: int, field: str, ends: Ends) -> float:
    if given.low == given.high:
        return given.low
    return given.high if ends.worst(unit, field) else given.low
