"""Short moments: 100 us, 1, 10 and 100 ms.

In each the one card that adds most stands at its excursion, the processors at their peak up to 10 ms and at their
continuous draw from 100 ms on, the rest at its sustained draw. A peak that a maker states is the greatest mean over its
stretch. So for a shorter moment it is the least that must be carried, and what is derived (the published ratio, the
guide's peak) stands beside it; over a longer one no mean is greater, and it bounds what is derived. A stated peak below
the sustained draw that is looked at cannot be true there and says nothing. The ratio of cards is published for 300 to
600 W: below, it is loose evidence; above, it still stands, since a heavier card cannot count for less.
"""

from math import inf
from typing import NamedTuple

from service.demand.cards import CardDraw
from service.demand.current import VOLTS_12
from service.demand.demand import Moment
from service.demand.processors import ProcessorDraw
from service.facts import card as card_facts
from service.facts import processor as processor_facts
from service.facts.supply import EXCURSION_MICROSECONDS
from service.parts.records import Peak
from service.physics.excursion import card_ratio

_DIGITS = 3  # of watts: what sums leave beyond them is no difference


class CardAtPeak(NamedTuple):
    """A card, the peaks that its maker states, and the scale of its power limit."""

    draw: CardDraw
    peaks: tuple[Peak, ...]
    scale: float


class _Extra(NamedTuple):
    """Watts that one part adds above its sustained draw: by its maker, and as derived where that is more, else 0.

    ``published``: what is derived lies in the range that its ratio is published for.
    """

    stated: float
    derived: float
    published: bool

    @property
    def most(self) -> float:
        """Return the watts by whichever evidence asks for more."""
        return max(self.stated, self.derived)


def moments(sustained_watts: float, cards: list[CardAtPeak], processors: list[ProcessorDraw]) -> tuple[Moment, ...]:
    """Return the watts asked for in each short moment.

    Up to three for each stretch, so that each kind of evidence is weighed by itself: all that makers state; what
    something derived adds to; and that by the ratio outside the range it is published for, where this asks for more.
    """
    return tuple(m for t in EXCURSION_MICROSECONDS for m in _moments_at(t, sustained_watts, cards, processors))


def _moments_at(
    microseconds: int, sustained_watts: float, cards: list[CardAtPeak], processors: list[ProcessorDraw]
) -> list[Moment]:
    by_card = [_of_card(microseconds, card) for card in cards]
    by_processor = [_of_processor(microseconds, draw) for draw in processors]
    base = sustained_watts + sum(extra.most for extra in by_processor)
    everything = base + sum(extra.most for extra in by_card)
    stated_card = max((extra.stated for extra in by_card), default=0.0)
    stated = sustained_watts + sum(extra.stated for extra in by_processor) + stated_card
    firm_card = max((extra.derived for extra in by_card if extra.published), default=0.0)
    loose_card = max((extra.derived for extra in by_card), default=0.0)
    if any(extra.derived for extra in by_processor):
        firm = base + max(firm_card, stated_card)
    else:
        firm = base + firm_card if firm_card else sustained_watts
    found = [Moment(microseconds, firm, everything, stated=False, beyond_formula=False)]
    if stated > sustained_watts:
        found.append(Moment(microseconds, stated, everything, stated=True, beyond_formula=False))
    if loose_card and base + loose_card > firm:
        found.append(Moment(microseconds, base + loose_card, everything, stated=False, beyond_formula=True))
    return found


def _of_card(microseconds: int, card: CardAtPeak) -> _Extra:
    watts = card.draw.board_watts
    peaks = [(peak.microseconds, peak.watts * card.scale) for peak in card.peaks]
    published = watts >= card_facts.RATIO_FROM_WATTS.value
    return _extra(microseconds, watts, card_ratio(microseconds) * watts, peaks, published=published)


def _of_processor(microseconds: int, draw: ProcessorDraw) -> _Extra:
    brief = microseconds <= processor_facts.PEAK_MAX_MICROSECONDS.value
    peak = draw.peak if brief else draw.sustained
    stated = [(length, _watts(milliamps)) for length, milliamps in draw.stated]
    return _extra(microseconds, _watts(draw.sustained), _watts(peak), stated, published=True)


def _extra(
    microseconds: int, sustained: float, excursion: float, peaks: list[tuple[int, float]], *, published: bool
) -> _Extra:
    """Return what a part adds: by stated peaks [us, W], and by an excursion [W] as far as these leave room for it."""
    if not peaks:
        return _Extra(0.0, excursion - sustained, published)
    true = [(length, watts) for length, watts in peaks if round(watts, _DIGITS) >= round(sustained, _DIGITS)]
    stated = max([sustained, *(watts for length, watts in true if _counts(length, microseconds))])
    derived = min([excursion, *(_bound(length, watts, microseconds) for length, watts in true)])
    return _Extra(stated - sustained, derived - sustained if derived > stated else 0.0, published)


def _bound(length: int, watts: float, microseconds: int) -> float:
    """Return the most that a mean over a moment [us] can be, by a peak [W] over a stretch [us] that is no longer.

    So many such stretches cover the moment; where these end with it, the peak itself.
    """
    stretches = -(-microseconds // length)
    return watts * (stretches * length / microseconds) if length <= microseconds else inf


def _watts(milliamps: int) -> float:
    return milliamps * VOLTS_12 / 1000


def _counts(length: int, microseconds: int) -> bool:
    """Say whether a stated peak [us] counts for a moment [us]: one as long or longer.

    A shorter one for the shortest.
    """
    return length >= microseconds or microseconds == EXCURSION_MICROSECONDS[0]
