"""Watts and amps as whole milliamps by rail, and sums of them."""

from service.demand.demand import Triple

VOLTS_12 = 12.0
VOLTS_5 = 5.0
VOLTS_3_3 = 3.3


def milliamps(amps: float) -> int:
    """Return amps [A] as whole milliamps, half up."""
    return int(amps * 1000 + 0.5)


def milliamps_at(watts: float, volts: float) -> int:
    """Return the whole milliamps that watts [W] are at nominal volts [V]."""
    return milliamps(watts / volts)


def plus(one: Triple, other: Triple) -> Triple:
    """Return the sum by rail."""
    return (one[0] + other[0], one[1] + other[1], one[2] + other[2])


def minus(one: Triple, other: Triple) -> Triple:
    """Return what is left by rail."""
    return (one[0] - other[0], one[1] - other[1], one[2] - other[2])


def most(one: Triple, other: Triple) -> Triple:
    """Return the greater by rail."""
    return (max(one[0], other[0]), max(one[1], other[1]), max(one[2], other[2]))


def watts_of(current: Triple) -> float:
    """Return the watts of milliamps on 12 V, 5 V and 3.3 V at nominal volts."""
    return (current[0] * VOLTS_12 + current[1] * VOLTS_5 + current[2] * VOLTS_3_3) / 1000
