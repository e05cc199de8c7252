"""A single run of wire, judged on its own: what reaches its end, and whether that is enough."""

from typing import NamedTuple

from service.facts.wire import REFERENCE_CELSIUS
from service.physics.copper import pair_ohms
from service.physics.loads import amps_of_watts, heat_watts

CONTACTS_OF_A_RUN = 4
"""A joint at either end, with a contact there and one back."""


class Run(NamedTuple):
    """A run that is fed.

    Volts at its end [V], amps of all pairs [A] and of one pair, which is what one contact carries [A], watts lost [W],
    ohms there and back [ohm]; ``reserve_volts`` is what its end has above the lowest volts, below 0 if it has less.
    """

    end_volts: float
    total_amps: float
    pair_amps: float
    lost_watts: float
    path_ohms: float
    reserve_volts: float


def run(
    source_volts: float, awg: int, length_mm: float, *, lowest_volts: float, amps: float = 0.0, watts: float = 0.0,
    parallel_pairs: int = 1, ohms_per_contact: float = 0.0, contacts_in_series: int = CONTACTS_OF_A_RUN,
    stranded: bool = False, celsius: float = REFERENCE_CELSIUS.value,
) -> Run | None:
    """Return what a run of equal pairs of wires brings to its end.

    Parameters
    ----------
    source_volts : float
        Volts where it begins. [V]
    awg : int
        Gauge of its wires. [1]
    length_mm : float
        Length one way. [mm]
    lowest_volts : float
        The least that the end may have. [V]
    amps : float
        What the end takes at constant current. [A]
    watts : float
        What the end takes at constant power, beside that. [W]
    parallel_pairs : int
        Pairs of a wire there and a wire back. [1]
    ohms_per_contact : float
        Resistance of one contact. [ohm]
    contacts_in_series : int
        Contacts of one pair, there and back together. [1]
    stranded : bool
        As ``copper.ohms_per_metre``.
    celsius : float
        Warmth of the copper. [C]

    Returns
    -------
    Run or None
        None: there is no solution, for no volts are left, or the run cannot carry so many watts.

    Raises
    ------
    ValueError
        If volts are not above 0, or amps or watts are negative; and as ``copper.pair_ohms``.

    References
    ----------
    Ohm's law; ``loads.amps_of_watts``, to which constant current is a source of fewer volts.
    """
    if not source_volts > 0 or not amps >= 0:
        raise ValueError("volts are above 0, and amps are not negative")
    ohms = pair_ohms(
        awg, length_mm, parallel_pairs=parallel_pairs, ohms_per_contact=ohms_per_contact,
        contacts_in_series=contacts_in_series, stranded=stranded, celsius=celsius,
    )
    left = source_volts - ohms * amps
    more = amps_of_watts(left, ohms, watts) if left > 0 else None
    if more is None:
        return None
    whole = amps + more
    end = source_volts - ohms * whole
    return Run(end, whole, whole / parallel_pairs, heat_watts(whole, ohms), ohms, end - lowest_volts)
