"""Watts of a short moment with every card at its excursion at once, against the supply's promise or its own column.

Cards seldom leap in the same microseconds, so this is advice. It speaks only where several cards make the difference: a
moment that one card takes past the limit, by whatever evidence, is PWR401 to PWR404 or PWR406.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.supply import ALL_CARDS, LARGE_PERCENT, SMALL_PERCENT
from service.rules.power.column import greatest, said
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each moment that passes the limit only when all cards leap at once."""
    for moment in greatest(case):
        limit = moment.own_column_watts if moment.promised_watts is None else moment.promised_watts
        if moment.watts <= limit < moment.all_cards_watts:
            yield said(moment, moment.all_cards_watts, limit)


RULE = Rule(
    id="PWR405", title="All cards leaping at once would pass the supply", weight="advice", points=0, aspect="power",
    since="0.1", rests_on=(SMALL_PERCENT, LARGE_PERCENT, ALL_CARDS), check=check,
    message="Should all cards peak in the same {microseconds} microseconds, they ask for {measured} {unit}; the design "
    "guide asks a supply like this one to carry {limit} {unit}.",
    why="Cards that work on one job in step can leap together, though it is rare.",
    remedy="For machines that run several cards in step choose a larger supply, or limit the cards' power a little.",
)
