"""How findings become a score: our own scale, chosen so that it falls in the order in which a plan is chosen."""

from typing import Final

BASE_CLEAN: Final = 100
BASE_WITH_CAUTIONS: Final = 80
MOST_FOR_CAUTIONS: Final = 49
BASE_WITH_STOPS: Final = 40
STOP_POINTS: Final = 10
CAUTION_DIVISOR: Final = 5
MOST_FOR_CAUTIONS_BESIDE_STOPS: Final = 9
