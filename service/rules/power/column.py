"""What the rules on short moments share: which moments they look at, and how they say so."""

from collections.abc import Iterator

from service.case.case import Case, MomentLoad
from service.rules.rule import Finding


def derived(case: Case) -> Iterator[MomentLoad]:
    """Yield the moments that rest on the published ratio within its range."""
    return (moment for moment in case.moments if not moment.stated and not moment.beyond_formula)


def stated(case: Case) -> Iterator[MomentLoad]:
    """Yield the moments that rest on what makers state."""
    return (moment for moment in case.moments if moment.stated)


def greatest(case: Case) -> Iterator[MomentLoad]:
    """Yield for each stretch the moment that asks for most with one card at its peak, by whatever evidence."""
    found: dict[int, MomentLoad] = {}
    for moment in case.moments:
        kept = found.setdefault(moment.microseconds, moment)
        if moment.watts > kept.watts:
            found[moment.microseconds] = moment
    yield from found.values()


def said(moment: MomentLoad, watts: float, limit_watts: float) -> Finding:
    """Return the finding that a moment passes a limit."""
    return Finding(moment.at, watts, limit_watts, "W", (("microseconds", moment.microseconds),))
