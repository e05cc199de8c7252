"""What the rules on measured volts share: which end of a rail's span a reading passes."""

from service.case.case import ReadingLoad
from service.rules.rule import Finding


def outside(read: ReadingLoad) -> Finding | None:
    """Return the finding that a reading lies outside of its rail's span; None where it does not."""
    if read.volts is None or read.lowest_volts <= read.volts <= read.highest_volts:
        return None
    is_low = read.volts < read.lowest_volts
    limit = read.lowest_volts if is_low else read.highest_volts
    return Finding(read.at, read.volts, limit, "V", (("rail", read.rail), ("most", "least" if is_low else "most")))
