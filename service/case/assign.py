"""The assignment of rows to columns of greatest sum: which copy is to stand for which, so that most stays as it is."""

from collections.abc import Sequence

_FAR = 1 << 60


def assign(weights: Sequence[Sequence[int]]) -> list[int]:
    """Return for each row the column given to it, each column once at most; there are no more rows than columns.

    The Hungarian method with potentials; among equal sums the first columns that it meets, so always the same ones.
    """
    columns = len(weights[0]) if weights else 0
    of_row, of_column = [0] * (len(weights) + 1), [0] * (columns + 1)
    holder = [0] * (columns + 1)
    for row in range(1, len(weights) + 1):
        holder[0] = row
        _give(weights, of_row, of_column, holder)
    found = [0] * len(weights)
    for column in range(1, columns + 1):
        if holder[column]:
            found[holder[column] - 1] = column - 1
    return found


def _give(weights: Sequence[Sequence[int]], of_row: list[int], of_column: list[int], holder: list[int]) -> None:
    """Give a column to the row in ``holder[0]``, moving others on along the cheapest chain."""
    count = len(holder)
    least, before, seen = [_FAR] * count, [0] * count, [False] * count
    at = 0
    while holder[at]:
        seen[at] = True
        row = holder[at]
        for column in range(1, count):
            cost = -weights[row - 1][column - 1] - of_row[row] - of_column[column]
            if not seen[column] and cost < least[column]:
                least[column], before[column] = cost, at
        further = min((column for column in range(1, count) if not seen[column]), key=least.__getitem__)
        step = least[further]
        for column in range(count):
            if seen[column]:
                of_row[holder[column]] += step
                of_column[column] -= step
            else:
                least[column] -= step
        at = further
    while at:
        holder[at] = holder[before[at]]
        at = before[at]
