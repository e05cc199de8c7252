"""80 PLUS programme, 115 V internal non-redundant, as tabulated by a technical explainer."""

import pytest

from service.facts.efficiency import points
from service.physics.conversion import efficiency_at, wall_watts

MAINS_VOLTS = 115
# level, percent at 20, 50 and 100 % load
PRINTED = [
    ("white", 80, 80, 80), ("bronze", 82, 85, 82), ("silver", 85, 88, 85), ("gold", 87, 90, 87),
    ("platinum", 90, 92, 89), ("titanium", 92, 94, 90),
]


@pytest.mark.parametrize(("level", "at_20", "at_50", "at_100"), PRINTED)
def test_levels(level: str, at_20: float, at_50: float, at_100: float) -> None:
    found = [efficiency_at(load, points(level, MAINS_VOLTS)) for load in (20, 50, 100)]
    assert found == [at_20, at_50, at_100]


# Only Titanium is asked for at 10 % load: 90 %.
def test_titanium_at_a_tenth() -> None:
    assert efficiency_at(10, points("titanium", MAINS_VOLTS)) == 90


# Gold, 850 W, at 20, 50 and 100 % load: 195.4, 472.2 and 977.0 W at the wall.
@pytest.mark.parametrize(("load_percent", "output_watts", "printed"), [(20, 170, 195.4), (50, 425, 472.2),
                                                                       (100, 850, 977.0)])
def test_watts_at_the_wall(load_percent: float, output_watts: float, printed: float) -> None:
    percent = efficiency_at(load_percent, points("gold", MAINS_VOLTS))
    assert wall_watts(output_watts, percent) == pytest.approx(printed, abs=0.05)
