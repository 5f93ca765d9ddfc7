from __future__ import annotations

import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.circuit import sparse_large
from checker.circuit.sparse_large import large_factory
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


def test_the_way_of_large_networks_gives_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sparse_large, "LARGE", 0)
    entries = {(i, i + 1): -1.0 for i in range(40)} | {(0, 20): -0.5}
    pattern = Pattern(41, entries)
    values, matrix = values_of(pattern, 41, entries)
    factory = large_factory(pattern)
    assert factory is not None
    factor = factory.factor(values)
    assert factor is not None
    assert factor.solve([1.0] * 41) == pytest.approx(np.linalg.solve(matrix, np.ones(41)), rel=1e-12)


def test_the_way_of_large_networks_says_when_a_matrix_is_singular(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sparse_large, "LARGE", 0)
    factory = large_factory(Pattern(2, []))
    assert factory is not None
    assert factory.factor([1.0, 0.0]) is None


def test_without_scipy_the_plain_way_serves_large_networks_too(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "scipy.sparse", None)
    assert large_factory(Pattern(sparse_large.LARGE + 1, [])) is None


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
