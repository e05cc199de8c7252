"""Volts at a port behind extensions and adapters: what these take from the volts at the end of the supply's own cable.

Each is looked at where it ends: by itself, as the plan weighs it, and with what lies before it.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from service.case.case import Drop
from service.case.ways import RAILS
from service.facts.volts import NOMINAL_VOLTS
from service.physics.loads import volts_behind
from service.wiring.allowances import Allowance
from service.wiring.problem import Load
from service.wiring.volts import cautious_volts, lowest_volts

_MILLI = 1000


class Added(NamedTuple):
    """An adapter on the way: the plug that it ends in, what it allows, and what passes it [mA]."""

    gives: str
    allowances: tuple[Allowance, ...]
    load: Load


def drops(load: Load, added: Sequence[Added]) -> Iterator[Drop]:
    """Yield each rail that a port takes current from, behind the adapters that are ``added``, the one at it first."""
    for rail in range(len(RAILS)):
        falls = [fall for each in added if (fall := _fall(rail, each))]
        if not load[rail] or not falls:
            continue
        at_port = _volts(rail, falls[0] + max(falls[1:], default=0.0))
        ends = [(at_port, added[0].gives)]
        ends += [(_volts(rail, fall), each.gives) for fall, each in zip(falls[1:], added[1:], strict=False)]
        volts, gives = min(ends, key=lambda end: _left(rail, *end))
        yield Drop(
            RAILS[rail], volts, lowest_volts(rail, gives), cautious_volts(rail, gives),
            _lost_watts(rail, load[rail] / _MILLI, at_port),
        )


def _fall(rail: int, added: Added) -> float:
    """Return by how much the volts would fall in an adapter if its current stayed what it is at nominal volts."""
    return sum(each.ohms * added.load[rail] / _MILLI for each in added.allowances if each.rail == rail)


def _volts(rail: int, fall: float) -> float:
    """Return the volts behind such a fall; constant power takes more current the fewer it has."""
    nominal = NOMINAL_VOLTS[rail]
    return volts_behind(nominal, fall, nominal)


def _left(rail: int, volts: float, gives: str) -> float:
    """Return how much is left above the limit, by what the volts may fall by."""
    lowest = lowest_volts(rail, gives)
    return (volts - lowest) / (NOMINAL_VOLTS[rail] - lowest)


def _lost_watts(rail: int, amps: float, volts: float) -> float:
    """Return what a port's current, of ``amps`` at nominal volts, loses on a way that leaves it so many volts."""
    nominal = NOMINAL_VOLTS[rail]
    return (nominal - volts) * amps * nominal / volts if volts else 0.0
