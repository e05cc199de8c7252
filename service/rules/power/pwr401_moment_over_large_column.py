"""Derived watts of a short moment against what the published table gives a large supply with a 16-pin connector.

The moment is derived: the one card that adds most at the published ratio, processors at their peak up to 10 ms, the
rest sustained. Since it is derived it never stops. Between the supply's own column and the large one PWR402 speaks;
what a maker states is PWR403 and PWR404; cards that the ratio is not published for are PWR406.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.card import CARD_RATIO
from service.facts.supply import LARGE_PERCENT
from service.rules.power.column import derived, said
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each derived moment above what even the large column gives."""
    for moment in derived(case):
        if moment.watts > moment.large_column_watts:
            yield said(moment, moment.watts, moment.large_column_watts)


RULE = Rule(
    id="PWR401", title="A short peak is likely past even what large supplies must carry", weight="caution",
    points=8,
    aspect="power", since="0.1", rests_on=(LARGE_PERCENT, CARD_RATIO), check=check,
    message="For {microseconds} microseconds the build may ask for {measured} {unit}; of this rating "
    "the design guide asks even a large supply with a 16-pin connector to carry no more than {limit} {unit}.",
    why="A card leaps far above its sustained draw for very short times; a supply that cannot follow switches the "
    "machine off.",
    remedy="Choose a larger supply, best one built to an ATX 3.x guide, or set a lower power limit for the card.",
)
