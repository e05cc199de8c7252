"""What is promised of moments: more load, a higher peak, or a peak left out never asks for less."""

from hypothesis import assume, given
from hypothesis import strategies as st

from service.demand.cards import CardDraw
from service.demand.moments import CardAtPeak, moments
from service.demand.processors import ProcessorDraw
from service.facts.supply import EXCURSION_MICROSECONDS
from service.parts.records import Peak
from service.physics.excursion import card_ratio

LENGTHS = st.sampled_from([10, 100, 300, 1_000, 10_000, 50_000, 100_000, 1_000_000])
PEAKS = st.lists(st.builds(Peak, microseconds=LENGTHS, watts=st.integers(100, 1500)), max_size=3)
WATTS = st.integers(100, 600)


def asked(watts: float, peaks: list[Peak], processor: int = 0) -> dict[int, list[float]]:
    """Return, above the sustained watts of a 900 W build, what is stated, derived and derived loosely, by moment."""
    card = CardAtPeak(CardDraw(1, watts, 0.0, 0.0, 0.0, None), tuple(peaks), 1.0)
    found: dict[int, list[float]] = {t: [0.0, 0.0, 0.0] for t in EXCURSION_MICROSECONDS}
    for one in moments(300.0 + watts, [card], [ProcessorDraw(2, 8_000, 8_000 + processor, ())]):
        found[one.microseconds][0 if one.stated else 2 if one.beyond_formula else 1] = one.watts
    return found


@given(watts=WATTS, more=st.integers(1, 300), peaks=PEAKS, processor=st.sampled_from([0, 5_000]))
def test_a_heavier_card_never_asks_for_less(watts: int, more: int, peaks: list[Peak], processor: int) -> None:
    assume(all(peak.watts >= watts + more for peak in peaks))
    before, after = asked(watts, peaks, processor), asked(watts + more, peaks, processor)
    assert all(max(after[t]) >= max(before[t]) - 0.001 for t in before)


@given(watts=WATTS, more=st.integers(1, 300), peaks=PEAKS, processor=st.sampled_from([0, 5_000]))
def test_a_higher_peak_never_asks_for_less(watts: int, more: int, peaks: list[Peak], processor: int) -> None:
    assume(peaks and all(peak.watts >= watts for peak in peaks))
    higher = [Peak(microseconds=peaks[0].microseconds, watts=peaks[0].watts + more), *peaks[1:]]
    before, after = asked(watts, peaks, processor), asked(watts, higher, processor)
    assert all(max(after[t]) >= max(before[t]) - 0.001 for t in before)


@given(watts=WATTS, data=st.data())
def test_a_peak_within_the_ratio_left_out_never_asks_for_less(watts: int, data: st.DataObject) -> None:
    """Of peaks that agree with each other, none above a shorter one, and as long as the moments are."""
    lengths = sorted(data.draw(st.sets(st.sampled_from(EXCURSION_MICROSECONDS), min_size=1)))
    heights = sorted((data.draw(st.integers(watts, 3 * watts)) for _ in lengths), reverse=True)
    peaks = [Peak(microseconds=length, watts=height) for length, height in zip(lengths, heights, strict=True)]
    gone = data.draw(st.sampled_from(peaks))
    assume(gone.watts <= watts * card_ratio(gone.microseconds))
    before, after = asked(watts, peaks), asked(watts, [peak for peak in peaks if peak is not gone])
    assert all(max(after[t]) >= max(before[t]) - 0.001 for t in before)
