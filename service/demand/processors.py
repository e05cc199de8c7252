"""What processors draw at their plugs: sustained, and at a peak of up to 10 ms.

``plug_watts`` and the design guide's amps by class are at the plug already; package watts are divided by the efficiency
of the board's regulator. Of several figures given, the one nearest to the plug is used: plug_watts, turbo_watts,
class_watts. Base watts, or a class that the guide does not list, leave open how much above them a board lets the
processor draw: up to the amps of the guide's next class.
"""

from typing import NamedTuple

from service.demand.current import VOLTS_12, milliamps, milliamps_at
from service.demand.ends import Ends
from service.facts import processor as facts
from service.parts.figures import Range
from service.parts.records import Peak, Processor


class ProcessorDraw(NamedTuple):
    """Milliamps at 12 V, at the plugs: sustained, at the peak; ``stated`` peaks: (microseconds, mA), longest first."""

    unit: int
    sustained: int
    peak: int
    stated: tuple[tuple[int, int], ...]


def processor(unit: int, part: Processor, ends: Ends) -> ProcessorDraw:
    """Return the draw of one processor at its plugs."""
    if part.plug_watts is not None:
        sustained = milliamps_at(_given(part.plug_watts, unit, "plug_watts", ends), VOLTS_12)
        return _with_peak(unit, sustained, part.peaks, 1.0, ends)
    if part.turbo_watts is None and part.class_watts in facts.CLASS_AMPS:
        continuous, peak = facts.CLASS_AMPS[part.class_watts]
        return ProcessorDraw(unit, milliamps(continuous), milliamps(peak), _stated(part.peaks, _efficiency(unit, ends)))
    if part.turbo_watts is None and (part.base_watts is not None or part.class_watts is not None):
        efficiency = _efficiency(unit, ends) if part.peaks else 1.0
        sustained = milliamps_at(_watts_by_base(unit, _base_watts(unit, part, ends), ends), VOLTS_12)
        return _with_peak(unit, sustained, part.peaks, efficiency, ends)
    if part.turbo_watts is None:
        sustained = milliamps_at(ends.load(None, unit, "turbo_watts", facts.ANY_PLUG_WATTS), VOLTS_12)
        return _with_peak(unit, sustained, part.peaks, _efficiency(unit, ends) if part.peaks else 1.0, ends)
    efficiency = _efficiency(unit, ends)
    sustained = milliamps_at(_given(part.turbo_watts, unit, "turbo_watts", ends) / efficiency, VOLTS_12)
    return _with_peak(unit, sustained, part.peaks, efficiency, ends)


def _base_watts(unit: int, part: Processor, ends: Ends) -> float:
    if part.base_watts is not None:
        return _given(part.base_watts, unit, "base_watts", ends)
    return float(part.class_watts or 0)


def _watts_by_base(unit: int, base_watts: float, ends: Ends) -> float:
    low, high = base_watts / facts.REGULATOR_EFFICIENCY.high, facts.most_amps(base_watts) * VOLTS_12
    used = high if ends.worst(unit, "plug_watts") else low
    ends.note(unit, "plug_watts", low, high, used, facts.PLUG_WATTS_BY_BASE)
    return used


def _with_peak(unit: int, sustained: int, peaks: tuple[Peak, ...], efficiency: float, ends: Ends) -> ProcessorDraw:
    ratio = ends.load(None, unit, "peaks", facts.PEAK_TO_CONTINUOUS)
    return ProcessorDraw(unit, sustained, int(sustained * ratio + 0.5), _stated(peaks, efficiency))


def _stated(peaks: tuple[Peak, ...], efficiency: float) -> tuple[tuple[int, int], ...]:
    return tuple(sorted(((p.microseconds, milliamps_at(p.watts / efficiency, VOLTS_12)) for p in peaks), reverse=True))


def _efficiency(unit: int, ends: Ends) -> float:
    return ends.rating(None, unit, "regulator_efficiency", facts.REGULATOR_EFFICIENCY)


def _given(given: Range, unit: int, field: str, ends: Ends) -> float:
    if given.low == given.high:
        return given.low
    return given.high if ends.worst(unit, field) else given.low
