"""Which plug goes into which port: fully, by half, or not at all."""

from typing import Literal

from service.parts.words import CARD, FUNCTIONS, MAIN, PLUGS, PROCESSOR, Function

Mate = Literal["full", "half", "impossible"]

_FULL: dict[tuple[str, str], int] = {
    ("atx-20+4", "atx-24"): 1,
    ("atx-20+4", "atx-20"): 1,
    ("cpu-4+4", "cpu-8"): 2,
    ("cpu-4+4", "cpu-4"): 1,
    ("pcie-6+2", "pcie-8"): 1,
    ("pcie-6+2", "pcie-6"): 1,
    ("12vhpwr", "12v-2x6"): 1,
    ("12v-2x6", "12vhpwr"): 1,
}
_HALF = frozenset({("cpu-4", "cpu-8"), ("atx-20", "atx-24"), ("pcie-6", "pcie-8")})
_SPLITS_IN_TWO = frozenset({"cpu-4+4"})


def mate(plug: str, port: str) -> Mate:
    """Return how a plug goes into a port."""
    if plug == port or (plug, port) in _FULL:
        return "full"
    return "half" if (plug, port) in _HALF else "impossible"


def halves_of(plug: str) -> int:
    """Return how many ports a plug can feed at once."""
    return 2 if plug in _SPLITS_IN_TWO else 1


def halves_taken(plug: str, port: str) -> int:
    """Return how many halves of a plug a port takes up."""
    return _FULL.get((plug, port), halves_of(plug))


def function_of(connector: str) -> Function:
    """Return what a plug or port is for; anything that is not main, processor or card counts as a drive's."""
    return _FUNCTION_OF.get(connector, "drive")


def _function_of(connector: str) -> Function:
    for function, ports in zip(FUNCTIONS, (MAIN, PROCESSOR, CARD), strict=False):
        if connector in ports or any(plug == connector and port in ports for plug, port in _FULL):
            return function
    return "drive"


_FUNCTION_OF: dict[str, Function] = {connector: _function_of(connector) for connector in PLUGS}
