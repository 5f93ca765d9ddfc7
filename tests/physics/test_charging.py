"""Voltages a battery may be charged at."""

from __future__ import annotations

import pytest

from checker.outofrange import OutOfRange
from checker.physics.charging import cell_voltage, cells_for, charge_window


def test_four_lithium_iron_cells_fill_between_13_4_and_14_6_v() -> None:
    low, high = charge_window("lithium iron phosphate", 4)
    assert (low, high) == (pytest.approx(13.4), pytest.approx(14.6))


@pytest.mark.parametrize(
    ("chemistry", "nominal", "cells"),
    [
        ("lithium iron phosphate", 12.0, (4, 4)),
        ("lithium iron phosphate", 12.8, (4, 4)),
        ("lithium iron phosphate", 24.0, (8, 8)),
        ("lithium iron phosphate", 48.0, (15, 16)),
        ("lithium iron phosphate", 51.2, (16, 17)),
        ("AGM lead acid", 12.0, (6, 6)),
        ("AGM lead acid", 48.0, (24, 25)),
    ],
)
def test_a_nameplate_voltage_stands_for_a_few_numbers_of_cells(
    chemistry: str, nominal: float, cells: tuple[int, int]
) -> None:
    assert cells_for(chemistry, nominal) == cells


def test_a_chemistry_or_a_voltage_that_is_not_held_is_refused() -> None:
    with pytest.raises(OutOfRange):
        cell_voltage("zinc air", "nominal")
    with pytest.raises(OutOfRange):
        cells_for("lithium iron phosphate", 1.0)
    with pytest.raises(OutOfRange):
        charge_window("lithium iron phosphate", 0)
