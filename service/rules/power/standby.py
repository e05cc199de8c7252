"""The standby rail, which lives while all others are off, and the rails that carry the machine at work."""

from collections.abc import Iterator

from service.case.case import Case, RailLoad

STANDBY = "5vsb"


def at_work(case: Case) -> Iterator[RailLoad]:
    """Yield the rails that are on only while the machine runs."""
    return (rail for rail in case.rails if rail.rail != STANDBY)


def standby(case: Case) -> Iterator[RailLoad]:
    """Yield the standby rail, where the supply has one."""
    return (rail for rail in case.rails if rail.rail == STANDBY)
