"""What the rules on volts share: the rail of a connection that is nearest to its limit, and the finding of it."""

from service.case.case import Drop, Joint
from service.facts.volts import NOMINAL_VOLTS
from service.rules.rule import Finding, Value

_NOMINAL = dict(zip(("12v", "5v", "3v3"), NOMINAL_VOLTS, strict=True))


def nearest(joint: Joint) -> Drop | None:
    """Return the rail whose volts are nearest to their limit, or furthest below it; None where nothing was added."""
    return min(joint.drops, key=_left, default=None) if joint.drops else None


def fallen(joint: Joint, drop: Drop, limit: float) -> Finding:
    """Return the finding of volts below a limit."""
    values: tuple[tuple[str, Value], ...] = (
        ("connector", joint.connector), ("rail", drop.rail), ("nominal", _NOMINAL[drop.rail]),
        ("lost_watts", drop.lost_watts),
    )
    return Finding(joint.at, drop.volts, limit, "V", values)


def _left(drop: Drop) -> float:
    nominal = _NOMINAL[drop.rail]
    return (drop.volts - drop.lowest) / (nominal - drop.lowest)
