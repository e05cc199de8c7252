"""A part that needs a header or data port, and none is left on the board and the hubs.

As many get one as there are ports, whatever they draw. Power ports are CON101. A board that does not list what it
offers is taken to have what is needed.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.headers import HEADER_NEEDS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each part that finds no header."""
    for at in case.headless:
        yield Finding(at, values=(("connector", str(at.detail[0])),))


RULE = Rule(
    id="AUX101", title="A part finds no header", weight="caution", points=3, aspect="signals", since="0.1",
    rests_on=(HEADER_NEEDS,), check=check,
    message="No header or port of its kind ({connector}) is left for this part.",
    why="The part stays dark, still or unseen; the machine runs without it.",
    remedy="Add a hub that takes its power from the supply, or choose a board with more headers.",
)
