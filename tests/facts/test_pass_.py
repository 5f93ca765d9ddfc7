"""Holes."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.van import ask


def test_a_gland_covers_the_edge_as_a_grommet_does() -> None:
    bare = ("passes.floor-hole.grommet", "none")
    assert ask("hole", "floor-hole", "edge_covered") is True
    assert ask("hole", "floor-hole", "edge_covered", bare) is False
    assert ask("hole", "floor-hole", "edge_covered", bare, ("passes.floor-hole.gland", "true")) is True


def test_an_edge_nobody_looked_at_is_not_known() -> None:
    assert isinstance(ask("hole", "floor-hole", "edge_covered", ("passes.floor-hole.grommet", "unknown")), Unknown)


def test_a_hole_leads_from_the_battery_into_the_living_space() -> None:
    assert ask("hole", "bay-hole", "from_battery_to_living") is True
    assert ask("hole", "floor-hole", "from_battery_to_living") is False


def test_only_the_circuits_that_pass_it_are_listed() -> None:
    assert [one.id for one in ask("hole", "bay-hole", "circuits")] == ["trunk"]


def test_hard_panels_rub_and_soft_ones_do_not() -> None:
    assert ask("hole", "floor-hole", "sharp") is True
    assert isinstance(ask("hole", "floor-hole", "sharp", ("passes.floor-hole.panel", "unknown")), Unknown)
    assert ask("hole", "floor-hole", "sharp", ("passes.floor-hole.panel", "foam")) is False
