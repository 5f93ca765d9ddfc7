from __future__ import annotations

import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import splu

from checker.circuit.sparse_ldl import Pattern


@st.composite
def systems(draw: st.DrawFn) -> tuple[int, dict[tuple[int, int], float]]:
    """A symmetric matrix with a heavy diagonal."""
    size = draw(st.integers(1, 12))
    entries: dict[tuple[int, int], float] = {}
    for _ in range(draw(st.integers(0, 3 * size))):
        i, j = draw(st.integers(0, size - 1)), draw(st.integers(0, size - 1))
        if i != j:
            entries[(min(i, j), max(i, j))] = draw(st.floats(-2.0, 2.0))
    return size, entries


def values_of(pattern: Pattern, size: int, entries: dict[tuple[int, int], float]) -> tuple[list[float], np.ndarray]:
    matrix = np.zeros((size, size))
    for (i, j), value in entries.items():
        matrix[i, j] = matrix[j, i] = value
    matrix += np.diag(1.0 + np.abs(matrix).sum(axis=1))
    values = [0.0] * pattern.slots
    for i in range(size):
        values[i] = matrix[i, i]
    for i, j in entries:
        values[pattern.slot(i, j)] = matrix[i, j]
    return values, matrix


@given(systems())
def test_it_solves_what_dense_elimination_solves(system: tuple[int, dict[tuple[int, int], float]]) -> None:
    size, entries = system
    pattern = Pattern(size, entries)
    values, matrix = values_of(pattern, size, entries)
    right = [float(i + 1) for i in range(size)]
    factor = pattern.factor(values)
    assert factor.solve(right) == pytest.approx(np.linalg.solve(matrix, right), rel=1e-9, abs=1e-9)
    assert (factor.negative, factor.weak) == (0, 0)


def test_pivots_below_zero_count_the_negative_eigenvalues() -> None:
    pattern = Pattern(2, [(0, 1)])
    values = [0.0] * pattern.slots
    values[0], values[1], values[pattern.slot(0, 1)] = 1.0, 1.0, 2.0  # eigenvalues 3 and -1
    assert pattern.factor(values).negative == 1


def test_a_pivot_that_vanishes_is_counted_and_does_not_divide_by_nothing() -> None:
    factor = Pattern(2, []).factor([1.0, 0.0])
    assert factor.weak == 1
    assert factor.solve([1.0, 0.0]) == [1.0, 0.0]


def test_a_star_is_eliminated_from_its_points_and_fills_nothing_in() -> None:
    pattern = Pattern(50, [(0, i) for i in range(1, 50)])
    assert pattern.slots == 50 + 49


@given(systems(), st.data())
def test_it_solves_matrices_that_are_not_symmetric(
    system: tuple[int, dict[tuple[int, int], float]], data: st.DataObject
) -> None:
    size, entries = system
    pattern = Pattern(size, entries)
    values, matrix = values_of(pattern, size, entries)
    above = list(values)
    for i, j in entries:
        row, column = (i, j) if pattern.first(i, j) else (j, i)
        matrix[row, column] = above[pattern.slot(i, j)] = data.draw(st.floats(-2.0, 2.0))
    matrix += np.diag(np.abs(matrix).sum(axis=1) + 1.0)
    values[:size] = np.diag(matrix).tolist()
    right = [float(i + 1) for i in range(size)]
    factor = pattern.factor(values, above)
    assert factor.solve(right) == pytest.approx(np.linalg.solve(matrix, right), rel=1e-9, abs=1e-9)
    assert (factor.negative, factor.weak) == (0, 0)


@given(systems())
def test_the_diagonal_of_the_inverse_is_that_of_the_dense_inverse(
    system: tuple[int, dict[tuple[int, int], float]],
) -> None:
    size, entries = system
    pattern = Pattern(size, entries)
    values, matrix = values_of(pattern, size, entries)
    found = pattern.factor(values).inverse_diagonal()
    assert found == pytest.approx(np.diag(np.linalg.inv(matrix)).tolist(), rel=1e-9)


def test_a_large_system_agrees_with_the_sparse_solver_of_scipy() -> None:
    size = 2000
    entries = {((i - 1) // 3, i): -1.0 - i % 7 for i in range(1, size)} | {(i, i + 40): -0.3 for i in range(0, 900, 45)}
    pattern = Pattern(size, entries)
    values, matrix = values_of(pattern, size, entries)
    right = [float(i % 11) for i in range(size)]
    theirs = splu(csc_matrix(matrix)).solve(np.array(right))
    assert pattern.factor(values).solve(right) == pytest.approx(theirs, rel=1e-10, abs=1e-12)


def test_a_network_of_a_vehicle_imports_neither_numpy_nor_scipy() -> None:
    program = (
        "import sys\n"
        "from checker.circuit.dc_elements import *\n"
        "from checker.circuit.dc_solve import solve\n"
        "solve([Emf('b', 'p', 'gnd', 12.8, 0.01), PowerLoad('l', 'p', 'gnd', 60.0)])\n"
        "print([name for name in ('numpy', 'scipy') if name in sys.modules])\n"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
