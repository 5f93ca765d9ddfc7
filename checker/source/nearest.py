"""The nearest right name to a misspelt one."""

from __future__ import annotations

from collections.abc import Iterable

LONGEST = 60
"""Longer texts are sentences, not misspelt names."""


def distance(first: str, second: str, most: int) -> int:
    """Number of letters to add, drop, change or swap with a neighbour, or `most` + 1 when it is more than `most`."""
    if abs(len(first) - len(second)) > most:
        return most + 1
    before: list[int] = []
    above = list(range(len(second) + 1))
    for i, letter in enumerate(first, 1):
        row = [i]
        for j, other in enumerate(second, 1):
            cost = min(above[j] + 1, row[j - 1] + 1, above[j - 1] + (letter != other))
            if i > 1 and j > 1 and letter == second[j - 2] and first[i - 2] == other:
                cost = min(cost, before[j - 2] + 1)
            row.append(cost)
        if min(row) > most:
            return most + 1
        before, above = above, row
    return min(above[-1], most + 1)


def _plain(name: str) -> str:
    """The same name for hyphen, underscore and blank, large and small letters."""
    return name.lower().replace("-", " ").replace("_", " ")


def nearest(name: str, options: Iterable[str]) -> str | None:
    """The option that `name` most likely stands for, or None when none is near; the first of equals."""
    if not name or len(name) > LONGEST:
        return None
    wanted = _plain(name)
    best: str | None = None
    most = 0 if len(name) == 1 else min(3, max(1, len(name) // 3))
    for option in options:
        far = distance(wanted, _plain(option), most)
        if far == 0 and option == name:
            continue
        if far <= most:
            best, most = option, far - 1
            if most < 0:
                break
    return best
