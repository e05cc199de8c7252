"""Resistance of copper wire, NBS Handbook 100 / ASTM B258."""

from service.facts.wire import REFERENCE_CELSIUS, SOLID_OHMS_PER_METRE, STRANDED_OHMS_PER_METRE, TEMPERATURE_COEFFICIENT


def ohms_per_metre(awg: int, *, stranded: bool = False, celsius: float = REFERENCE_CELSIUS.value) -> float:
    """Return the resistance [ohm/m] of a gauge at a temperature [C].

    Raises
    ------
    KeyError
        When the table has no such gauge.
    """
    table = STRANDED_OHMS_PER_METRE if stranded else SOLID_OHMS_PER_METRE
    return table[awg] * temperature_factor(celsius)


def temperature_factor(celsius: float) -> float:
    """Return what the resistance at 20 C is to be multiplied with at a temperature [C], 10 to 100 C."""
    return 1 + TEMPERATURE_COEFFICIENT.value * (celsius - REFERENCE_CELSIUS.value)
