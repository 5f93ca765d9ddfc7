"""Heat through panels against hand-worked values."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.panels import CONDUCTIVITY_W_MK, box_surface, panel_transmittance, sun_rise


def test_a_thin_sheet_resists_by_the_air_at_its_faces_alone() -> None:
    # ISO 6946 [seen]: 0.13 + 0.04 m2 K/W, so 5.88 W/(m2 K) for an outside sheet, 3.85 between two rooms.
    assert panel_transmittance(0.001, 50.0, 0.04) == pytest.approx(5.88, abs=0.01)
    assert panel_transmittance(0.001, 50.0) == pytest.approx(3.85, abs=0.01)


def test_foam_adds_its_thickness_over_its_conductivity() -> None:
    # 30 mm at 0.03 W/(m K): R = 0.13 + 1 + 0.13 = 1.26.
    assert panel_transmittance(0.03, 0.03) == pytest.approx(1 / 1.26)


@given(st.floats(0, 0.2), st.floats(0.02, 200), st.floats(0.001, 0.1))
def test_a_thicker_panel_passes_less(thickness: float, conductivity: float, more: float) -> None:
    assert panel_transmittance(thickness + more, conductivity) < panel_transmittance(thickness, conductivity)


def test_six_faces_of_a_box() -> None:
    assert box_surface(1.0, 2.0, 3.0) == 22.0
    with pytest.raises(OutOfRange, match="size along y"):
        box_surface(1.0, -2.0, 3.0)


def test_bright_sun_warms_a_dark_roof_by_36_kelvin() -> None:
    # 0.9 × 1000 W/m2 × 0.04 m2 K/W, by hand.
    assert sun_rise() == pytest.approx(36.0)


def test_every_conductivity_is_a_range_the_right_way_round() -> None:
    assert all(0 < low <= high for low, high in CONDUCTIVITY_W_MK.values())
