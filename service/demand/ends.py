"""Choosing one end of every range, and keeping note of what was assumed."""

from service.demand.demand import Assumed
from service.facts.fact import Assumption
from service.parts.figures import End, Range

Settled = frozenset[tuple[int, str]]


class Ends:
    """Chooses the end of each range that is looked at.

    Figures in ``settled`` stand at their favourable end all the same.

    ``assumed`` collects what was not given; ``wide`` names every range with two different ends.
    """

    def __init__(self, end: End, settled: Settled = frozenset()) -> None:
        self.unfavourable = end == "unfavourable"
        self.settled = settled
        self.assumed: list[Assumed] = []
        self.wide: list[tuple[int, str]] = []

    def load(self, given: Range | None, unit: int, field: str, assumption: Assumption, scale: float = 1.0) -> float:
        """Return a load: the more, the worse."""
        return self._pick(given, unit, field, assumption, scale, worst_is_high=True)

    def stated(self, given: Range, unit: int, field: str) -> float:
        """Return a load that is always given."""
        return given.high if self._worst(unit, field, given.low, given.high) else given.low

    def rating(self, given: float | None, unit: int, field: str, assumption: Assumption, scale: float = 1.0) -> float:
        """Return a rating or a limit: the less, the worse."""
        if given is not None:
            return given
        return self._pick(None, unit, field, assumption, scale, worst_is_high=False)

    def load_of(self, given: float | None, unit: int, field: str, assumption: Assumption) -> float:
        """Return a load that is given as one number."""
        return given if given is not None else self.load(None, unit, field, assumption)

    def _pick(
        self, given: Range | None, unit: int, field: str, assumption: Assumption, scale: float, *, worst_is_high: bool
    ) -> float:
        low, high = given if given is not None else (assumption.low * scale, assumption.high * scale)
        used = high if self._worst(unit, field, low, high) == worst_is_high else low
        if given is None:
            self.note(unit, field, low, high, used, assumption)
        return used

    def _worst(self, unit: int, field: str, low: float, high: float) -> bool:
        if low != high:
            self.wide.append((unit, field))
        return self.unfavourable and (unit, field) not in self.settled

    def worst(self, unit: int, field: str) -> bool:
        """Say whether a figure that has no single worse end is looked at from its unfavourable side.

        Marks it as a range.
        """
        self.wide.append((unit, field))
        return self.unfavourable and (unit, field) not in self.settled

    def note(self, unit: int, field: str, low: float, high: float, used: float, assumption: Assumption) -> None:
        """Keep note of a figure that was assumed."""
        self.assumed.append(Assumed(unit, field, low, high, used, assumption.unit, assumption.key))
