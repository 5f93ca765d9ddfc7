"""Air by warmth, supports of cables and crash forces against published figures and against balances by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.physics.mechanics import axle_masses, restraint_force
from checker.physics.ventilation import stack_flow
from checker.rulebook import load_rulebook
from tests.reference.published import published

KELVIN = 273.15
AREAS, RISES = st.floats(0.001, 0.5), st.floats(0.1, 6.0)
HOT = st.floats(0.5, 40.0)


@pytest.mark.parametrize("case", [(0.5, 3.0, 5.0), (0.05, 0.5, 12.0), (1.0, 2.0, 8.0)])
def test_air_by_warmth_agrees_with_the_rule_for_rooms(case: tuple[float, float, float]) -> None:
    """``Q = 0.15 A sqrt(h dT)``, A the smallest opening: WHO, Natural ventilation for infection control in health-care
    settings, estimate of the ventilation rate (from memory); the constant has two figures and a room of about 25 °C.

    The rule has one opening that throttles; ours is given a second one twenty times as large.
    """
    area, rise, warmer = case
    found = stack_flow(area, 20.0 * area, rise, 25.0, 25.0 - warmer)
    assert found == pytest.approx(0.15 * area * math.sqrt(rise * warmer), rel=0.05)


def neutral(low: float, high: float, rise: float, inside_k: float, outside_k: float) -> float:
    """Flow by the level at which inside and outside press alike: ASHRAE Handbook of Fundamentals 1997, chapter 25,
    equation 37, ``Q = Cd A sqrt(2 g dH (Ti - To) / Ti)`` from an opening to that level (seen in a public quotation).

    The level is found where as much mass comes in below as goes out above, without the formula for two openings in a
    row that the program uses. With the same density on both sides, as there, volumes are alike.
    """
    lowest, highest = 0.0, rise
    for _ in range(80):
        level = (lowest + highest) / 2.0
        came, went = (
            0.6 * area * math.sqrt(2.0 * 9.80665 * height * (inside_k - outside_k) / inside_k)
            for area, height in ((low, level), (high, rise - level))
        )
        lowest, highest = (level, highest) if came < went else (lowest, level)
    return came


@given(AREAS, AREAS, RISES, HOT)
def test_air_by_warmth_agrees_with_the_balance_about_the_neutral_level(
    low: float, high: float, rise: float, warmer: float
) -> None:
    expected = neutral(low, high, rise, 30.0 + KELVIN, 30.0 + KELVIN - warmer)
    assert stack_flow(low, high, rise, 30.0, 30.0 - warmer) == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize(
    ("limit", "rule"),
    [("support_spacing_vertical", "vertical runs not in conduit"),
     ("support_spacing_horizontal", "horizontal runs not in conduit")],
)  # fmt: skip
def test_the_spacing_of_supports_is_the_published_one(limit: str, rule: str) -> None:
    row = next(row for row in published("cable_support_spacing") if row["what"] == rule)
    held = load_rulebook().codes["intl"].limits[limit].value
    assert held == pytest.approx(float(row["max_spacing_mm"]) * 1e-3)


def test_no_published_spacing_is_below_the_one_used() -> None:
    """The horizontal one is the strictest of all that were collected, so no other publication asks for less."""
    used = load_rulebook().codes["intl"].limits["support_spacing_horizontal"].value
    spacings = [row for row in published("cable_support_spacing") if "sag" not in row["source"]]
    assert len(spacings) >= 9 and min(float(row["max_spacing_mm"]) for row in spacings) * 1e-3 == pytest.approx(used)


def test_loads_of_axles_by_hand() -> None:
    # A beam of 4 m: 100 kg over the front axle, 60 kg at 3 m, 20 kg 1 m behind the rear axle.
    # Moments about the front axle: 60 * 3 + 20 * 5 = 280 kg m, over 4 m 70 kg behind and 110 kg in front.
    assert axle_masses([(100.0, 0.0), (60.0, 3.0), (20.0, 5.0)], 4.0) == pytest.approx((110.0, 70.0))


def test_a_crash_force_by_hand() -> None:
    # 31 kg at 20 g: 31 * 20 * 9.80665 = 6080 N, the weight of 620 kg.
    assert restraint_force(31.0, 20.0) == pytest.approx(6080.1, abs=0.1)
    assert restraint_force(31.0, 20.0) / 9.80665 == pytest.approx(620.0)
