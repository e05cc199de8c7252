"""Number of processors on the sheet against the number that the boards take.

As many as the boards take pass. Whether processors may work in a pair is not looked at.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.mates import SOCKET_PROCESSORS
from service.parts.records import Motherboard, Processor
from service.rules.mating.units import units
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield the first board when there are more processors than places for them."""
    boards = list(units(case, Motherboard))
    count = sum(1 for _ in units(case, Processor))
    places = sum(board.processors for _, board in boards)
    if boards and count > places:
        yield Finding(Place("unit", boards[0][0]), count, places, "")


RULE = Rule(
    id="MATE103", title="More processors than the board takes", weight="stop", points=0, aspect="mating", since="0.1",
    rests_on=(SOCKET_PROCESSORS,), check=check,
    message="There are {measured} processors on the sheet; the board takes {limit}.",
    why="A processor without a socket does nothing, and its share of power was counted.",
    remedy="Take the surplus processor off the sheet, or choose a board with more sockets.",
)
