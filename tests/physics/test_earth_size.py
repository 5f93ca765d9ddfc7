"""Protective conductors by table."""

from __future__ import annotations

import pytest

from checker.outofrange import OutOfRange
from checker.physics.earth_size import earth_by_table


def mm2(line: float) -> float:
    return earth_by_table(line * 1e-6) * 1e6


@pytest.mark.parametrize(("line", "earth"), [(1.0, 1.0), (2.5, 2.5), (4.0, 2.5), (6.0, 2.5), (16.0, 6.0), (70.0, 25.0)])
def test_a_row_gives_what_is_printed(line: float, earth: float) -> None:
    assert mm2(line) == pytest.approx(earth)


def test_between_two_rows_the_next_larger_line_counts() -> None:
    assert mm2(2.6) == pytest.approx(mm2(4.0))
    assert mm2(6.1) == pytest.approx(mm2(10.0))


def test_a_larger_line_never_asks_for_less() -> None:
    found = [mm2(line / 10) for line in range(1, 701)]
    assert found == sorted(found)


def test_outside_the_table_there_is_no_number() -> None:
    for line in (0.0, -1.0, 70.1):
        with pytest.raises(OutOfRange):
            mm2(line)
