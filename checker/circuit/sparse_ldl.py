"""Sparse equations of a symmetric pattern in plain Python: A = L D L', or A = L D U, ordered by least degree.

The pattern of a network does not change from one step of the solver to the next, so everything that depends on it
alone is worked out once: the order, the entries that fill in, and the list of products that each pivot subtracts. What
is left for each factorisation is one loop over flat lists. Nothing is exchanged for stability: the matrices of networks
have heavy diagonals, and the caller checks the residual of what it gets.

A converter's input acts on its output otherwise than the output on the input. Where there is one, the entries above the
diagonal are a list of their own beside those below it, with the same slots.
"""

from __future__ import annotations

from collections.abc import Iterable
from heapq import heapify, heappop, heappush

TINY = 1e-13
"""Share of the largest diagonal entry below which a pivot counts as zero."""


class Pattern:
    """Where a symmetric matrix of order `size` has entries; the slots of its values lie in one flat list.

    Diagonal entry i is slot i. `slot(i, j)` finds an entry off the diagonal, `slots` is the length of the list.
    `first(i, j)` tells whether row i is eliminated before row j: entry (i, j) then lies above the diagonal.
    """

    __slots__ = ("_backward", "_forward", "_pivots", "_place", "_slot", "order", "size", "slots")

    def __init__(self, size: int, pairs: Iterable[tuple[int, int]]) -> None:
        self.size = size
        near: list[set[int]] = [set() for _ in range(size)]
        for i, j in pairs:
            if i != j:
                near[i].add(j)
                near[j].add(i)
        self.order, eliminated = _eliminate(near)
        self._place = [0] * size
        for place, i in enumerate(self.order):
            self._place[i] = place
        self._slot: dict[tuple[int, int], int] = {}
        below: list[list[tuple[int, int]]] = []
        count = size
        for pivot, later in zip(self.order, eliminated, strict=True):
            rows = []
            for j in sorted(later, key=self._place.__getitem__):
                self._slot[(pivot, j)] = self._slot[(j, pivot)] = count
                rows.append((count, j))
                count += 1
            below.append(rows)
        self.slots = count
        products: list[list[tuple[int, int, int]]] = [self._subtracted(rows) for rows in below]
        self._pivots = list(zip(self.order, products, strict=True))
        self._forward = list(zip(self.order, below, strict=True))
        self._backward = self._forward[::-1]

    def _subtracted(self, rows: list[tuple[int, int]]) -> list[tuple[int, int, int]]:
        found = []
        for at, (slot_a, a) in enumerate(rows):
            found.append((a, slot_a, slot_a))
            for slot_b, b in rows[at + 1 :]:
                found.append((self._slot[(a, b)], slot_a, slot_b))
        return found

    def slot(self, i: int, j: int) -> int:
        """The slot of an entry of the pattern."""
        return i if i == j else self._slot[(i, j)]

    def first(self, i: int, j: int) -> bool:
        """Whether row i is eliminated before row j."""
        return self._place[i] < self._place[j]

    def factor(self, values: list[float], above: list[float] | None = None) -> Factor:
        """Factorise; the lists are used up. A pivot that vanishes is replaced by a small one and counted.

        `values` holds the diagonal and what lies below it, `above` what lies above it; None: the matrix is symmetric.
        """
        largest = max(map(abs, values[: self.size]), default=1.0)
        tiny = TINY * largest
        inverse = [0.0] * self.size
        weak = negative = 0
        for pivot, products in self._pivots:
            value = values[pivot]
            if -tiny < value < tiny:
                weak += 1
                value = tiny or 1.0
            elif value < 0.0:
                negative += 1
            inverse[pivot] = by = 1.0 / value
            if above is None:
                for target, a, b in products:
                    values[target] -= values[a] * values[b] * by
            else:
                for target, a, b in products:
                    values[target] -= above[a] * values[b] * by
                    above[target] -= values[a] * above[b] * by
        return Factor(self, values, values if above is None else above, inverse, weak, negative)


class Factor:
    """L, D and U of a matrix. `negative` and `weak` count pivots below zero and pivots that vanished."""

    __slots__ = ("_above", "_inverse", "_pattern", "_values", "negative", "weak")

    def __init__(
        self, pattern: Pattern, values: list[float], above: list[float], inverse: list[float], weak: int, negative: int
    ) -> None:
        self._pattern = pattern
        self._values = values
        self._above = above
        self._inverse = inverse
        self.weak = weak
        self.negative = negative

    def solve(self, right: list[float]) -> list[float]:
        """The vector x with A x = right."""
        found = list(right)
        values, above, inverse = self._values, self._above, self._inverse
        for pivot, rows in self._pattern._forward:
            here = found[pivot] * inverse[pivot]
            if here != 0.0:
                for slot, j in rows:
                    found[j] -= values[slot] * here
        for pivot, rows in self._pattern._backward:
            total = found[pivot]
            for slot, j in rows:
                total -= above[slot] * found[j]
            found[pivot] = total * inverse[pivot]
        return found

    def inverse_diagonal(self) -> list[float]:
        """Diagonal of the inverse of a symmetric matrix, from this factorisation alone.

        Only entries of the inverse where L has one are worked out, from the last pivot to the first (Takahashi's
        equations [from memory]): as much work as factorising once more.
        """
        pattern, values = self._pattern, self._values
        diagonal = [0.0] * pattern.size
        entries = [0.0] * pattern.slots
        for pivot, rows in pattern._backward:
            by = self._inverse[pivot]
            for slot, i in rows:
                total = 0.0
                for other, j in rows:
                    total += values[other] * (diagonal[i] if i == j else entries[pattern.slot(i, j)])
                entries[slot] = -total * by
            diagonal[pivot] = by - by * sum([values[slot] * entries[slot] for slot, _ in rows])
        return diagonal


def _eliminate(near: list[set[int]]) -> tuple[list[int], list[list[int]]]:
    """An order in which few entries fill in (least degree first), and for each pivot what it is still joined to."""
    queue = [(len(around), i) for i, around in enumerate(near)]
    heapify(queue)
    gone = [False] * len(near)
    order: list[int] = []
    eliminated: list[list[int]] = []
    while queue:
        degree, pivot = heappop(queue)
        around = near[pivot]
        if gone[pivot] or degree != len(around):
            continue
        gone[pivot] = True
        order.append(pivot)
        later = sorted(around)
        eliminated.append(later)
        for i in later:
            row = near[i]
            row.discard(pivot)
            row.update(around)
            row.discard(i)
            heappush(queue, (len(row), i))
    return order, eliminated
