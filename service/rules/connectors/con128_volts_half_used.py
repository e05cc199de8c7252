"""Volts behind extensions and adapters against half of what they may fall by.

Reckoned as CON127 says. Exactly half passes. A connection that is past a stop, or that has a contact or wire with
little reserve (CON105), is not named again: it counts once.
"""

from collections.abc import Iterator

from service.case.case import Case
from service.facts.points import BAND_POINTS
from service.facts.volts import CAUTION_PERCENT
from service.rules.connectors.falls import fallen, nearest
from service.rules.connectors.strains import is_past_a_stop, worst_at
from service.rules.rule import Rule, Said


def check(case: Case) -> Iterator[Said]:
    """Yield each connection that uses up more than half of what its volts may fall by."""
    for joint in case.joints:
        drop = nearest(joint)
        if drop is None or not drop.lowest <= drop.volts < drop.cautious:
            continue
        if not is_past_a_stop(joint) and worst_at(joint, "band") is None:
            yield fallen(joint, drop, drop.cautious)


RULE = Rule(
    id="CON128", title="An extension or adapter uses up much of the volts", weight="caution",
    points=int(BAND_POINTS.value), aspect="connections", since="0.1", rests_on=(CAUTION_PERCENT, BAND_POINTS),
    check=check, planned=True,
    message="Of {nominal} V where the supply's own cable ends {measured} {unit} reach this {connector} port; below "
    "{limit} {unit} more than half of what may be lost is lost in the lead.",
    why="The supply's own regulation, warm wire and worn contacts take volts too, and then too few are left.",
    remedy="Use a cable of the supply that reaches by itself, or a shorter lead of thicker wire.",
)
