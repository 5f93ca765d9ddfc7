"""The force that a hold must stand, and the force it is made for."""

from __future__ import annotations

import pytest

from checker.quantities import Range, Unknown
from tests.facts.van import ask

G = 9.80665
GROSS, HOLD = "vehicle.masses.gross", "places.bay.restraint"


@pytest.mark.parametrize(
    ("gross", "many"), [("3500 kg", 20.0), ("3501 kg", 10.0), ("12000 kg", 10.0), ("12001 kg", 6.6)]
)
def test_the_acceleration_follows_the_permitted_mass(gross: str, many: float) -> None:
    # UN R100, part II, annex 8C (from memory).
    assert ask("equipment", "house", "crash_acceleration", (GROSS, gross)) == pytest.approx(many * G)


def test_a_permitted_mass_that_is_not_told_may_be_any() -> None:
    found = ask("equipment", "house", "crash_acceleration", (GROSS, "unknown"))
    assert isinstance(found, Range) and (found.low, found.high) == (pytest.approx(6.6 * G), pytest.approx(20 * G))


def test_a_boat_does_not_crash_like_that() -> None:
    assert ask("equipment", "house", "crash_force", ("vehicle.kind", "boat")) is None


def test_force_is_mass_times_acceleration() -> None:
    # 12 kg × 20 g; the bay is made for 40 kg at 20 g.
    assert ask("equipment", "house", "crash_force") == pytest.approx(12 * 20 * G)
    assert ask("equipment", "house", "hold_force") == pytest.approx(40 * 20 * G)


def test_the_hold_of_the_thing_itself_comes_before_that_of_its_place() -> None:
    own = ("equipment.house.restraint", "{for: 15 kg, acceleration: 8 g}")
    assert ask("equipment", "house", "hold_force", own) == pytest.approx(15 * 8 * G)


def test_half_of_what_a_hold_is_made_for_is_no_force() -> None:
    half = (HOLD, "{for: 40 kg}")
    assert isinstance(ask("equipment", "house", "hold_force", half), Unknown)
    assert ask("equipment", "house", "hold_acceleration_told", half) is True
    assert ask("equipment", "house", "hold_acceleration_told", (HOLD, "'true'")) is False
