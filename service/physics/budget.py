"""Budgets of amps at 12 V, as the design guides do the sum."""

from service.facts.supply import NOMINAL_12_VOLTS


def twelve_volt_amps(processor_amps: float, card_watts: float, rest_amps: float) -> float:
    """Return the 12 V amps [A] of processor [A], cards [W] and the rest [A]; addendum 621484."""
    return processor_amps + card_watts / NOMINAL_12_VOLTS + rest_amps
