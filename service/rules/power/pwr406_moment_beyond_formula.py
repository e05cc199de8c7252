"""Watts of a short moment that is decided by a card outside the range that the ratio is published for.

The ratio is published for cards of 300 to 600 W. Used below that it is loose evidence, so all it may do is advise;
PWR401 and PWR402 do not speak on such a moment.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import CARD_RATIO, RATIO_FROM_WATTS, RATIO_TO_WATTS
from service.facts.supply import SMALL_PERCENT
from service.rules.power.column import said
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each moment above the supply's own column that rests on the ratio outside its range."""
    for moment in case.moments:
        if moment.beyond_formula and not moment.stated and moment.watts > moment.own_column_watts:
            yield said(moment, moment.watts, moment.own_column_watts)


RULE = Rule(
    id="PWR406", title="A short peak may pass the supply, on loose evidence", weight="advice", points=0, aspect="power",
    since="0.1", rests_on=(RATIO_FROM_WATTS, RATIO_TO_WATTS, CARD_RATIO, SMALL_PERCENT), check=check,
    message="For {microseconds} microseconds the build may ask for {measured} {unit}, and the design "
    "guide asks a supply like this one to carry {limit} {unit}; the ratio used is not published for a card of this "
    "size.",
    why="Small cards leap too, but nobody has published by how much; the figure for large cards is the best there is.",
    remedy="Ask the card's maker for its peaks and enter them; then this is judged by what is stated.",
)
