"""How much of a limit is used with ease, and how much of a supply's rating: judgements of ours."""

from typing import Final

from service.facts.fact import judgement

COMFORT_PERCENT: Final = judgement(
    "comfort.contact", 60, "% of what a wire or contact may carry",
    "Heat goes with the square of the current: at 60 % it is a third of that at the limit, worn contacts have room.",
)
HEADROOM_PERCENT: Final = judgement(
    "comfort.headroom", 90, "% of rated watts",
    "Sustained load within 90 % of the rating leaves a tenth for ageing, dust and a warm day.",
)
