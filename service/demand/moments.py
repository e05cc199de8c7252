"""Short moments: 100 us, 1, 10 and 100 ms.

In each the one card that adds most stands at its excursion, the processors at their peak up to 10 ms and at their
continuous draw from 100 ms on, the rest at its sustained draw. A card's excursion is the peak that its maker states for
that stretch or a longer one, and the published ratio of its sustained watts where none is stated for that stretch or a
shorter one: a mean over a long stretch says nothing of the peaks within it. The ratio is published for cards of 300 to
600 W: below, it is loose evidence; above, it still stands, since a heavier card cannot count for less.
"""

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


class CardAtPeak(NamedTuple):
    """A card, the peaks that its maker states, and the scale of its power limit."""

    draw: CardDraw
    peaks: tuple[Peak, ...]
    scale: float


class _Extra(NamedTuple):
    """Watts that one part adds above its sustained draw.

    How much, stated by its maker, and published ratio in its range.
    """

    watts: float
    stated: bool
    published: bool


def moments(sustained_watts: float, cards: list[CardAtPeak], processors: list[ProcessorDraw]) -> tuple[Moment, ...]:
    """Return the watts asked for in each short moment.

    Up to three for each stretch, so that each kind of evidence is weighed by itself: all that makers state; that and
    the published ratio; that and the ratio outside the range it is published for, where this asks for more.
    """
    return tuple(m for t in EXCURSION_MICROSECONDS for m in _moments_at(t, sustained_watts, cards, processors))


def _moments_at(
    microseconds: int, sustained_watts: float, cards: list[CardAtPeak], processors: list[ProcessorDraw]
) -> list[Moment]:
    each_card = [_card_extras(microseconds, card) for card in cards]
    by_card = [extra for extras in each_card for extra in extras]
    by_processor = [_processor_extra(microseconds, draw) for draw in processors]
    base = sustained_watts + sum(extra.watts for extra in by_processor)
    everything = base + sum(max(extra.watts for extra in extras) for extras in each_card)
    firm = base + max((extra.watts for extra in by_card if extra.published), default=0.0)
    loose = base + max((extra.watts for extra in by_card), default=0.0)
    stated = sustained_watts + sum(extra.watts for extra in by_processor if extra.stated)
    stated += max((extra.watts for extra in by_card if extra.stated), default=0.0)
    found = [Moment(microseconds, firm, everything, stated=False, beyond_formula=False)]
    if stated > sustained_watts:
        found.append(Moment(microseconds, stated, stated, stated=True, beyond_formula=False))
    if loose > firm:
        found.append(Moment(microseconds, loose, everything, stated=False, beyond_formula=True))
    return found


def _card_extras(microseconds: int, card: CardAtPeak) -> list[_Extra]:
    """Return what a card adds by its stated peaks, and by the ratio where no peak is stated for so short a stretch."""
    board_watts = card.draw.board_watts
    found = []
    stated = [peak.watts * card.scale for peak in card.peaks if _counts(peak.microseconds, microseconds)]
    if stated:
        found.append(_Extra(max(0.0, max(stated) - board_watts), stated=True, published=True))
    if not stated or all(peak.microseconds > microseconds for peak in card.peaks):
        published = board_watts >= card_facts.RATIO_FROM_WATTS.value
        found.append(_Extra((card_ratio(microseconds) - 1.0) * board_watts, stated=False, published=published))
    return found


def _processor_extra(microseconds: int, draw: ProcessorDraw) -> _Extra:
    stated = [milliamps for length, milliamps in draw.stated if _counts(length, microseconds)]
    if stated:
        return _Extra(max(0, max(stated) - draw.sustained) * VOLTS_12 / 1000, stated=True, published=True)
    brief = microseconds <= processor_facts.PEAK_MAX_MICROSECONDS.value
    return _Extra(max(0, draw.peak - draw.sustained) * VOLTS_12 / 1000 if brief else 0.0, stated=False, published=True)


def _counts(length: int, microseconds: int) -> bool:
    """Say whether a stated peak [us] counts for a moment [us]: one as long or longer.

    A shorter one for the shortest.
    """
    return length >= microseconds or microseconds == EXCURSION_MICROSECONDS[0]
