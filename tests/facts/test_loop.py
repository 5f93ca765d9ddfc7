"""Flexible loops."""

from __future__ import annotations

from math import inf

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

RUN = "circuits.lights.run"


def test_slack_is_free_length_less_the_widest_span() -> None:
    # 1.6 m - 1.1 m
    assert ask("loop", "drag", "slack") == pytest.approx(0.5)


def test_a_cable_cut_shorter_than_the_loop_counts() -> None:
    run = "[0.1 m via cabin, FL, 2 m via duct, 1.2 m via drag, 0.5 m via lounge]"
    assert ask("loop", "drag", "slack", (RUN, run)) == pytest.approx(0.1)


def test_the_radius_needed_is_the_figure_of_the_maker() -> None:
    assert ask("loop", "drag", "bend_needed") == pytest.approx(0.070)


def test_without_a_figure_the_published_factor_is_the_least_that_is_needed() -> None:
    # DIN VDE 0298-3 (seen): flexible cable of 8 mm to 12 mm in free movement: 4 times the diameter.
    edits = (("cables.drag-4", "{size: 4 mm2, cores: 2, strands: extra flexible, outer: 10 mm}"),)
    found = ask("loop", "drag", "bend_needed", *edits)
    assert (found.low, found.high) == (pytest.approx(0.040), inf)


def test_without_figure_and_diameter_the_radius_is_not_known() -> None:
    edits = (("cables.drag-4", "{size: 4 mm2, cores: 2, strands: extra flexible}"),)
    assert isinstance(ask("loop", "drag", "bend_needed", *edits), Unknown)


def test_a_device_within_the_moving_length_is_a_joint() -> None:
    run = "[0.1 m via cabin, 2 m via duct, 0.8 m via drag, FL, 0.8 m via drag, 0.5 m via lounge]"
    assert ask("loop", "drag", "joint_in_it", (RUN, run)) is True
    assert ask("loop", "drag", "joint_in_it") is False


def test_ordinary_flexible_cable_is_not_fine_enough() -> None:
    assert ask("loop", "drag", "extra_flexible", ("circuits.lights.cable", "pair-4")) is False


def test_a_hanging_loop_bends_by_its_slack_at_the_widest_span() -> None:
    # (1.6 m - 1.1 m) / pi; a chain sets its own radius.
    found = ask("loop", "drag", "hanging_radius", ("places.drag.guide", "hanging"))
    assert found == pytest.approx(0.5 / 3.141592653589793)
    assert ask("loop", "drag", "hanging_radius") is None
    short = ("places.drag.free length", "1 m")
    assert ask("loop", "drag", "hanging_radius", ("places.drag.guide", "hanging"), short) == 0
