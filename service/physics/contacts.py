"""Contacts side by side: how branches share a current, and the worst that they may share it.

A branch is all that one contact's current runs through on one side, there or back: its contacts and its wire. Its ends
are common with those of the other branches, so it carries current in proportion to its conductance. An open branch has
``OPEN`` ohms.
"""

from collections.abc import Sequence
from math import inf
from typing import Final, NamedTuple, NoReturn

from service.facts.resistance import CREDIBLE_MOHM
from service.physics.loads import amps_of_watts

OPEN: Final = inf
LEAST_OHMS: Final = 1e-12
"""Far less than any piece of copper that ends in a contact; what is below it is a mistake, not a branch."""
MOHM_PER_OHM: Final = 1000.0


class Fed(NamedTuple):
    """What a load gets: its volts [V] and amps [A], and the amps of each branch [A]."""

    load_volts: float
    total_amps: float
    branch_amps: tuple[float, ...]


class Sharing(NamedTuple):
    """How branches share: the amps [A] and ohms [ohm] of each, and which of them carries most."""

    branch_amps: tuple[float, ...]
    branch_ohms: tuple[float, ...]
    most_loaded: int


def amps_per_contact(watts: float, volts: float, contacts: int) -> float:
    """Return the amps of each of equal contacts that carry watts together.

    Parameters
    ----------
    watts : float
        Watts of all contacts. [W]
    volts : float
        Volts at them. [V]
    contacts : int
        How many there are. [1]

    Returns
    -------
    float
        Amps of one. [A]

    Raises
    ------
    ZeroDivisionError
        When there is no contact.
    """
    return watts / volts / contacts


def watts_of_contacts(amps: float, volts: float, contacts: int) -> float:
    """Return the watts of equal contacts that carry so many amps each.

    Parameters
    ----------
    amps : float
        Amps of one contact. [A]
    volts : float
        Volts at them. [V]
    contacts : int
        How many there are. [1]

    Returns
    -------
    float
        Watts of all contacts. [W]
    """
    return amps * volts * contacts


def parallel_ohms(branch_ohms: Sequence[float]) -> float:
    """Return the resistance of branches side by side.

    Parameters
    ----------
    branch_ohms : sequence of float, shape (n,)
        Resistance of each branch; ``OPEN`` where it is open. [ohm]

    Returns
    -------
    float
        Resistance of all; ``OPEN`` if all are open or there is none. [ohm]

    Raises
    ------
    ValueError
        If a branch has no resistance, or less.
    """
    whole = sum(_siemens(branch_ohms))
    return 1 / whole if whole else OPEN


def divide_amps(total_amps: float, branch_ohms: Sequence[float]) -> tuple[float, ...] | None:
    """Return what each branch carries of the current of a load of constant current.

    Parameters
    ----------
    total_amps : float
        Current of the load. [A]
    branch_ohms : sequence of float, shape (n,)
        As ``parallel_ohms``. [ohm]

    Returns
    -------
    tuple of float, shape (n,)
        ``total * g_i / sum(g)`` with ``g = 1 / ohms``; an open branch carries nothing. [A] None: all are open.

    Raises
    ------
    ValueError
        As ``parallel_ohms``.

    References
    ----------
    Kirchhoff's current law and Ohm's law.
    """
    siemens = _siemens(branch_ohms)
    whole = sum(siemens)
    if not whole:
        return None
    per_siemens = total_amps / whole
    return tuple([per_siemens * one for one in siemens])


def feed_watts(
    source_volts: float, branch_ohms: Sequence[float], watts: float, other_ohms: float = 0.0,
) -> Fed | None:
    """Return what a load of constant power gets through branches side by side.

    Parameters
    ----------
    source_volts : float
        Volts of the source. [V]
    branch_ohms : sequence of float, shape (n,)
        As ``parallel_ohms``. [ohm]
    watts : float
        What the load takes at its own volts. [W]
    other_ohms : float
        All that is in series with the branches, the way back for one. [ohm]

    Returns
    -------
    Fed or None
        Volts at the load [V], its amps [A] and the amps of each branch [A]. None as ``amps_of_watts``.

    Raises
    ------
    ValueError
        As ``parallel_ohms`` and ``amps_of_watts``.
    """
    ohms = parallel_ohms(branch_ohms) + other_ohms
    amps = amps_of_watts(source_volts, ohms, watts)
    if amps is None:
        return None
    shares = divide_amps(amps, branch_ohms) or (0.0,) * len(branch_ohms)
    return Fed(source_volts - ohms * amps if amps else source_volts, amps, shares)


def worst_sharing(
    total_amps: float, wire_ohms: Sequence[float], fresh_ohms: float, worn_ohms: float, open_contacts: int = 1,
) -> Sharing | None:
    """Return the sharing in which one branch carries the most that is credible.

    The branch with the least wire has fresh contacts, the next best are open, all others are worn: its own conductance
    is the greatest there is, and that of the rest the least, so no other choice of ohms in the range and of open
    branches puts more on any branch.

    Parameters
    ----------
    total_amps : float
        Current of the load. [A]
    wire_ohms : sequence of float, shape (n,)
        Resistance of the wire of each branch. [ohm]
    fresh_ohms : float
        All contacts of one branch, as good as they may be. [ohm]
    worn_ohms : float
        All contacts of one branch, as bad as they may be. [ohm]
    open_contacts : int
        How many branches are open. [1]

    Returns
    -------
    Sharing or None
        Amps [A] and ohms [ohm] of each branch, in the order given, and the place of the one that carries most. None:
        none would be left.

    Raises
    ------
    ValueError
        If worn contacts resist less than fresh ones, fewer than none are open; and as ``parallel_ohms``.
    """
    if not fresh_ohms <= worn_ohms or open_contacts < 0:
        raise ValueError("worn contacts resist no less than fresh ones, and no fewer than none are open")
    if open_contacts >= len(wire_ohms):
        return None
    most, *others = sorted(range(len(wire_ohms)), key=wire_ohms.__getitem__)
    ohms = [one + worn_ohms for one in wire_ohms]
    ohms[most] = wire_ohms[most] + fresh_ohms
    for place in others[:open_contacts]:
        ohms[place] = OPEN
    amps = divide_amps(total_amps, ohms)
    return Sharing(amps, tuple(ohms), most) if amps else None


def credible_ohms(family: str) -> tuple[float, float]:
    """Return what one contact may have, from fresh to worn.

    Parameters
    ----------
    family : str
        ``4.2 mm`` (main, processor and card plugs) or ``16-pin``.

    Returns
    -------
    tuple of float, shape (2,)
        Lowest and highest credible resistance. [ohm]

    Raises
    ------
    KeyError
        When nothing is published for the family at hand.

    References
    ----------
    As the facts in ``service.facts.resistance``: a mean of new contacts and the limits for worn ones.
    """
    fresh, worn = CREDIBLE_MOHM[family]
    return fresh.value / MOHM_PER_OHM, worn.value / MOHM_PER_OHM


def _siemens(branch_ohms: Sequence[float]) -> list[float]:
    """Return the conductances; an open branch has none."""
    return [1 / ohms if ohms >= LEAST_OHMS else _refuse() for ohms in branch_ohms]


def _refuse() -> NoReturn:
    raise ValueError("a branch has some resistance; an open one has OPEN")
