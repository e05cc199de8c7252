"""Resistance and warmth of contacts: PS-5556-001, its test summaries, CEM 5.1 and 336521, as quoted in the facts."""

import pytest

from service.physics.contacts import credible_ohms
from service.physics.warmth import estimated_rise_celsius, rated_point

# Milliohms: mean of new contacts 5.651, 10 at most when new, 20 more at most after durability; a healthy contact of the
# 16-pin plug 0.8, 6 at most after 30 matings.
CREDIBLE = [("4.2 mm", 5.651, 30), ("16-pin", 0.8, 6)]
# Amps a contact, all circuits energised, at most 30 C rise: PS-5556-001 section 4.3; 336521 Table 5-7 for 16 pins.
POINTS = [
    ("4.2 mm", 2, 8), ("4.2 mm", 3, 8), ("4.2 mm", 4, 7), ("4.2 mm", 6, 7), ("4.2 mm", 8, 6), ("4.2 mm", 10, 6),
    ("4.2 mm", 12, 5), ("4.2 mm", 24, 5), ("16-pin", 12, 9.2),
]


@pytest.mark.parametrize(("family", "fresh", "worn"), CREDIBLE)
def test_credible_resistance(family: str, fresh: float, worn: float) -> None:
    assert [ohms * 1000 for ohms in credible_ohms(family)] == pytest.approx([fresh, worn], abs=0.0005)


@pytest.mark.parametrize(("family", "circuits", "amps"), POINTS)
def test_rated_point(family: str, circuits: int, amps: float) -> None:
    assert rated_point(family, circuits) == (amps, 30)
    assert estimated_rise_celsius(amps, *rated_point(family, circuits)) == 30


@pytest.mark.parametrize(("family", "circuits"), [("4.2 mm", 1), ("4.2 mm", 11), ("4.2 mm", 25), ("16-pin", 8),
                                                  ("5.08 mm", 4)])
def test_a_size_that_nothing_is_printed_for_is_not_guessed(family: str, circuits: int) -> None:
    with pytest.raises(KeyError):
        rated_point(family, circuits)
