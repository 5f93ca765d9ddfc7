"""Arcs on opening."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.arc import arc_energy, arc_time, loop_inductance


def test_an_arc_of_twice_the_supply_takes_twice_what_the_inductance_held() -> None:
    # L I^2 / 2 = 0.5 J; U_a / (U_a - U) = 2.
    assert arc_energy(100.0, 50.0, 100.0, 1e-4) == pytest.approx(1.0)
    assert arc_time(100.0, 50.0, 100.0, 1e-4) == pytest.approx(2e-4)


def test_an_arc_below_the_supply_never_dies() -> None:
    with pytest.raises(OutOfRange):
        arc_time(40.0, 48.0, 10.0, 1e-6)


@given(st.floats(60.0, 200.0), st.floats(1.0, 500.0), st.floats(1e-7, 1e-3))
def test_the_source_only_adds_to_what_the_inductance_held(arc: float, amps: float, henries: float) -> None:
    assert arc_energy(arc, 48.0, amps, henries) >= henries * amps**2 / 2 * (1 - 1e-12)


def test_inductance_grows_with_the_way() -> None:
    assert loop_inductance(4.0, 1e-6) == pytest.approx(4e-6)
