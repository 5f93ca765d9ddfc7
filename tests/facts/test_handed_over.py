"""For whose hands the vehicle is, and how many kinds of source feed it."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.van import ask


def test_sources_are_counted_by_kind() -> None:
    assert ask("design", "design", "kinds_of_source") == 2
    assert ask("design", "design", "kinds_of_source", ("equipment.house.purpose", "starting")) == 1


def test_whose_hands_it_is_in_is_asked_for() -> None:
    assert isinstance(ask("design", "design", "used_as"), Unknown)
    assert ask("design", "design", "used_as", ("vehicle.use", "hired")) == "hired"
