"""A board's extra plugs for its slots: what they carry, and what of the slots' current they take off the main port.

How a board shares the slots' current between its main port and such a plug is nowhere said. The main port is taken to
carry as much as its contacts may for long, and only what is left comes by the extra plugs; then one of them must be
fed. So neither a heavier card nor a higher stated figure of an extra plug ever relieves the main port.
"""

from service.demand.current import VOLTS_12, milliamps, milliamps_at
from service.demand.demand import NONE, Triple
from service.demand.ends import Ends
from service.facts import rest
from service.facts.contacts import CONTACTS, STOP_AMPS
from service.parts.records import Need


def past_main(main: tuple[Need, ...], load: Triple, slots: Triple) -> Triple:
    """Return what of a load on the main port is past its 12 V contacts and is the slots' current."""
    contacts = sum(CONTACTS[need.connector][0] * need.count for need in main)
    past = load[0] - milliamps(contacts * STOP_AMPS.value)
    return (min(past, slots[0]), 0, 0) if main and past > 0 else NONE


def extra_plugs(unit: int, others: tuple[Need, ...], past: Triple, ends: Ends) -> Triple:
    """Return the load of all extra plugs: stated watts, else up to a slot's worth each, or what is past the main port.

    Whichever is more.
    """
    watts = 0.0
    for need in others:
        each = ends.load(need.watts, unit, f"needs/{need.connector}/watts", rest.EXTRA_SLOT_PLUG_WATTS)
        watts += each * need.count
    return (max(milliamps_at(watts, VOLTS_12), past[0]), 0, 0)
