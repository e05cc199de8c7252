"""Sustained watts against what is left of the rating in a room that is warmer than the supply is rated at.

What is left is the rating less 2.5 % of it for every degree above: common practice, for few supplies print a curve. So
it cautions and never stops. Above the rating itself PWR101 speaks; that the room is too warm at all is PWR501. Exactly
what is left passes.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.case.place import Place
from service.facts.supply import AMBIENT_DESIGN_CELSIUS, CONTINUOUS_PERCENT, DERATING_PERCENT
from service.rules.rule import Finding, Rule, Said
from service.rules.shares import part_of


def check(case: Case) -> Iterator[Said]:
    """Yield the supply when the warmth of the room may leave less of its rating than is drawn for long."""
    supply, promises = case.supply_part, case.promises
    if case.supply is None or supply is None or promises is None:
        return
    if promises.room_watts < case.sustained_watts <= part_of(supply.rated_watts, CONTINUOUS_PERCENT):
        values = (("room_celsius", case.room_celsius), ("rated_at_celsius", case.rated_at_celsius))
        yield Finding(Place("supply", case.supply), case.sustained_watts, promises.room_watts, "W", values)


RULE = Rule(
    id="PWR502", title="In this warmth the supply may give less than the build draws", weight="caution", points=8,
    aspect="power", since="0.1", rests_on=(DERATING_PERCENT, AMBIENT_DESIGN_CELSIUS, CONTINUOUS_PERCENT), check=check,
    message="The build draws {measured} {unit} for long; at {room_celsius} °C a supply that is rated at "
    "{rated_at_celsius} °C may give only {limit} {unit}.",
    why="A supply gives its full rating only up to a stated warmth; above, its maker allows less, or it switches off.",
    remedy="Read the maker's figures for this warmth; choose a supply rated at a higher temperature or a larger one, "
    "or cool the room. Keep vents clear.",
)
