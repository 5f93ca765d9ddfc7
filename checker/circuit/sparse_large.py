"""The same equations for large networks, by the sparse LU of scipy where it is installed (the extra `large`)."""

from __future__ import annotations

from typing import Any

from checker.circuit.sparse_ldl import Factor, Pattern

LARGE = 300
"""Order of the equations from which scipy is asked; below, its import alone costs more than a hundred solutions."""


class LargeFactory:
    """Factorises matrices of one pattern. Raises ImportError when scipy is not installed."""

    __slots__ = ("_columns", "_matrix", "_numpy", "_rows", "_size", "_slots", "_splu")

    def __init__(self, pattern: Pattern) -> None:
        import numpy
        from scipy.sparse import csc_matrix
        from scipy.sparse.linalg import splu

        rows, columns, slots = [], [], []
        for i in range(pattern.size):
            rows.append(i)
            columns.append(i)
            slots.append(i)
        for i, j in pattern.entries:
            rows += [i, j]
            columns += [j, i]
            slots += [pattern.slot(i, j)] * 2
        self._numpy: Any = numpy
        self._matrix = csc_matrix
        self._splu = splu
        self._rows = numpy.array(rows)
        self._columns = numpy.array(columns)
        self._slots = numpy.array(slots)
        self._size = pattern.size

    def factor(self, values: list[float]) -> LargeFactor | None:
        """Factorise; None when the matrix is singular."""
        data = self._numpy.array(values)[self._slots]
        matrix = self._matrix((data, (self._rows, self._columns)), shape=(self._size, self._size))
        try:
            return LargeFactor(self._splu(matrix, permc_spec="MMD_AT_PLUS_A", options={"SymmetricMode": True}))
        except RuntimeError:  # how scipy says that the matrix is singular
            return None


class LargeFactor:
    """A factorisation by scipy."""

    __slots__ = ("_lu",)

    def __init__(self, lu: Any) -> None:
        self._lu = lu

    def solve(self, right: list[float]) -> list[float]:
        """The vector x with A x = right."""
        import numpy

        return [float(one) for one in self._lu.solve(numpy.array(right))]


def large_factory(pattern: Pattern) -> LargeFactory | None:
    """The way of scipy for a large pattern; None when the plain way is the better one or scipy is missing."""
    if pattern.size <= LARGE:
        return None
    try:
        return LargeFactory(pattern)
    except ImportError:
        return None


__all__ = ["LARGE", "Factor", "LargeFactory", "large_factory"]
