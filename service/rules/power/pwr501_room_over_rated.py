"""Warmth of the room against the warmth that the supply is rated at.

What is not given stands in the case as an assumption. The air at the supply's fan is warmer than the room where the
case feeds it its own: that is not looked at here. Exactly the rated warmth passes. How much a supply loses above it
is its maker's to say; PWR502 goes by common practice.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.supply import AMBIENT_DESIGN_CELSIUS
from service.rules.rule import Finding, Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when the room is warmer than it is rated at."""
    if case.supply is not None and case.room_celsius > case.rated_at_celsius:
        yield Finding(Place("supply", case.supply), case.room_celsius, case.rated_at_celsius, "°C")


RULE = Rule(
    id="PWR501", title="The room is warmer than the supply is rated at", weight="caution", points=6, aspect="power",
    since="0.1", rests_on=(AMBIENT_DESIGN_CELSIUS,), check=check,
    message="The room is at {measured} {unit}; the supply gives its rated watts up to {limit} {unit}.",
    why="A supply gives its full rating only up to a stated warmth; above it gives less, runs louder and ages faster.",
    remedy="Choose a supply rated at a higher temperature, leave it more reserve, or cool the room. Keep vents clear.",
)
