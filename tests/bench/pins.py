"""Time of the pin divider, and of the other formulas that a check may ask for each connector, in process."""

import time
from collections.abc import Callable
from statistics import median

from service.physics.chain import chain
from service.physics.contacts import divide_amps, worst_sharing
from service.physics.loads import amps_of_watts

_MICRO = 1e6
SIX = (0.0131, 0.0094, 0.0118, 0.0203, 0.0107, 0.0152)
MUST_US, STRETCH_US = 2.0, 1.0
FORMULAS: dict[str, Callable[[], object]] = {
    "pin divider, 6 contacts": lambda: divide_amps(50.0, SIX),
    "worst sharing, 6 contacts": lambda: worst_sharing(50.0, SIX, 0.0016, 0.012),
    "constant power, 1 load": lambda: amps_of_watts(12.0, 0.004, 600.0),
    "chain of 4, constant amps": lambda: chain(12.0, SIX[:4], (2.3, 2.3, 2.8, 2.3)),
    "chain of 4, constant power": lambda: chain(12.0, SIX[:4], (0.0,) * 4, (9.0, 6.5, 7.0, 9.0), SIX[2:]),
}


def microseconds(calls: int = 20_000, repeats: int = 7) -> dict[str, float]:
    """Return the median microseconds of one call of each formula, with the call of it."""
    return {name: median(_once(formula, calls) for _ in range(repeats)) for name, formula in FORMULAS.items()}


def _once(formula: Callable[[], object], calls: int) -> float:
    begun = time.perf_counter()
    for _ in range(calls):
        formula()
    return (time.perf_counter() - begun) / calls * _MICRO
