"""Continuous load on a circuit, NEC 210.19(A)(1) and 210.20(A)."""

from service.facts.fact import WHOLE
from service.facts.mains import CONTINUOUS_FACTOR_PERCENT


def continuous_amps(circuit_amps: float) -> float:
    """Return the amps [A] that a circuit of so many amps [A] may carry for three hours and more."""
    return circuit_amps * WHOLE / CONTINUOUS_FACTOR_PERCENT.value


def circuit_amps(continuous_load_amps: float, other_load_amps: float = 0.0) -> float:
    """Return the least circuit [A] for a continuous and another load [A]."""
    return other_load_amps + continuous_load_amps * CONTINUOUS_FACTOR_PERCENT.value / WHOLE
