"""A single run of wire that is to be judged on its own, and the strip of lights that it may lead to."""

from dataclasses import dataclass

from service.parts.figures import Range


@dataclass(frozen=True, slots=True, kw_only=True)
class FedStrip:
    """A strip that takes its current evenly along its length; ohms of its tracks there and back."""

    length_mm: float
    amps_per_metre: Range
    ohms_per_metre: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WireRun:
    """Equal pairs of wires from a source to a load: exactly one of ``amps``, ``watts`` and ``strip`` is set.

    ``max_amps`` is what one pair may carry, as the maker of its wire and contacts states.
    """

    name: str = ""
    source_volts: float
    length_mm: float
    awg: int | None = None
    parallel_pairs: int = 1
    ohms_per_contact: float | None = None
    amps: Range | None = None
    watts: Range | None = None
    strip: FedStrip | None = None
    lowest_volts: float | None = None
    max_amps: float | None = None
