"""Taking a value between two rows of a table; never before the first or after the last.

Log-log suits what follows a power law over decades (fuse curves, current against area);
linear suits the rest.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence

from checker.outofrange import require

Pairs = Sequence[tuple[float, float]]


def linear(name: str, x: float, pairs: Pairs, source: str) -> float:
    """Value at ``x`` on straight lines between the points, in the unit of the points.

    Raises
    ------
    OutOfRange : ``x`` lies before the first or after the last point.
    """
    before, after = _neighbours(name, x, pairs, source)
    if before[0] == after[0]:
        return before[1]
    share = (x - before[0]) / (after[0] - before[0])
    return before[1] + share * (after[1] - before[1])


def log_log(name: str, x: float, pairs: Pairs, source: str) -> float:
    """Value at ``x`` on straight lines between the points on log-log paper, in the unit of the points.

    All numbers must be above zero.

    Raises
    ------
    OutOfRange : ``x`` lies before the first or after the last point.
    """
    before, after = _neighbours(name, x, pairs, source)
    if before[0] == after[0] or before[1] == after[1]:
        return before[1]
    share = math.log(x / before[0]) / math.log(after[0] / before[0])
    # Held between the neighbours, because rounding could step past them by one digit.
    value = before[1] * math.exp(share * math.log(after[1] / before[1]))
    return min(max(value, min(before[1], after[1])), max(before[1], after[1]))


def row_at_or_above(name: str, x: float, pairs: Pairs, source: str) -> float:
    """Value of the first row whose key is at least ``x``: the neighbour above.

    Raises
    ------
    OutOfRange : ``x`` lies above the last key or below zero.
    """
    require(name, x, 0.0, pairs[-1][0], source)
    return pairs[bisect_left([key for key, _ in pairs], x)][1]


def nearest_key(x: float, pairs: Pairs, share: float) -> float:
    """The key that lies within a relative distance of ``x``, else ``x`` itself.

    For sizes that are printed with few digits; the distance must be well below the step between rows.
    """
    nearest = min((key for key, _ in pairs), key=lambda key: abs(key - x))
    return nearest if abs(nearest - x) <= share * nearest else x


def _neighbours(name: str, x: float, pairs: Pairs, source: str) -> tuple[tuple[float, float], tuple[float, float]]:
    require(name, x, pairs[0][0], pairs[-1][0], source)
    index = bisect_left([key for key, _ in pairs], x)
    after = pairs[index]
    return (after, after) if after[0] == x else (pairs[index - 1], after)
