"""Budgets of amps at 12 V and contacts, as the design guides do the sum."""

from service.facts.supply import NOMINAL_12_VOLTS


def twelve_volt_amps(processor_amps: float, card_watts: float, rest_amps: float) -> float:
    """Return the 12 V amps [A] of processor [A], cards [W] and the rest [A]; addendum 621484."""
    return processor_amps + card_watts / NOMINAL_12_VOLTS + rest_amps


def amps_per_contact(watts: float, volts: float, contacts: int) -> float:
    """Return the amps [A] of each of equal contacts that carry watts [W] at volts [V] together.

    Raises
    ------
    ZeroDivisionError
        When there is no contact.
    """
    return watts / volts / contacts


def watts_of_contacts(amps: float, volts: float, contacts: int) -> float:
    """Return the watts [W] of contacts at so many amps each [A] and volts [V]."""
    return amps * volts * contacts
