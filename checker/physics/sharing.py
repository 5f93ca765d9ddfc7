"""How batteries in parallel share a current: at one bar through leads of their own, or in a chain of links."""

from __future__ import annotations

from collections.abc import Sequence

from checker.outofrange import require, require_positive

SOURCE = "equal voltages behind resistances (circuit theory)"


def shares_at_bar(branches_ohm: Sequence[float]) -> tuple[float, ...]:
    """Share of the whole current that each branch carries; together 1.

    ``s_i = g_i / sum(g)``, ``g = 1/R``: equal batteries, each with its lead, on one bar.

    Parameters
    ----------
    branches_ohm : battery with its lead, there and back, each above 0. [ohm]
    """
    for ohms in branches_ohm:
        require_positive("resistance of a branch, ohm,", ohms, SOURCE)
    conductances = [1.0 / ohms for ohms in branches_ohm]
    whole = sum(conductances)
    return tuple(one / whole for one in conductances)


def shares_in_chain(unit_ohm: float, link_ohm: float, units: int, plus_at: int, minus_at: int) -> tuple[float, ...]:
    """Share of the whole current that each unit of a chain carries; together 1.

    Equal units stand in a row; a link joins each positive to the next, another each negative. The positive leaves at
    unit `plus_at`, the negative at `minus_at`, both counted from 1. Solved from Kirchhoff's laws.

    Parameters
    ----------
    unit_ohm : resistance of one unit, above 0. [ohm]
    link_ohm : resistance of one link, 0 or more. [ohm]

    Valid for
    ---------
    2 to 100 equal units at equal state of charge.
    """
    require_positive("resistance of a unit, ohm,", unit_ohm, SOURCE)
    require("resistance of a link, ohm,", link_ohm, 0.0, float("inf"), SOURCE)
    require("units in a chain", units, 1, 100, SOURCE)
    require("unit of the positive take-off", plus_at, 1, units, SOURCE)
    require("unit of the negative take-off", minus_at, 1, units, SOURCE)
    # Loop k goes through units k and k+1 and the two links between them; what passes the links follows from what
    # the units before them carry, less what has left at the take-offs.
    rows = [[1.0] * units + [1.0]]
    for k in range(1, units):
        row = [0.0] * (units + 1)
        row[k - 1] += unit_ohm
        row[k] -= unit_ohm
        for unit in range(k):
            row[unit] += 2.0 * link_ohm
        left = (1.0 if plus_at <= k else 0.0) + (1.0 if minus_at <= k else 0.0)
        row[units] = link_ohm * left
        rows.append(row)
    return _solve(rows)


def spread(shares: Sequence[float]) -> float:
    """Difference between the greatest and the least share, as a part of the even share. [1]"""
    return (max(shares) - min(shares)) * len(shares)


def _solve(rows: list[list[float]]) -> tuple[float, ...]:
    """Gauss with pivots; the last column is the right side."""
    n = len(rows)
    for column in range(n):
        pivot = max(range(column, n), key=lambda row: abs(rows[row][column]))
        rows[column], rows[pivot] = rows[pivot], rows[column]
        for row in range(n):
            if row != column:
                factor = rows[row][column] / rows[column][column]
                rows[row] = [a - factor * b for a, b in zip(rows[row], rows[column], strict=True)]
    return tuple(rows[i][n] / rows[i][i] for i in range(n))
