"""Lengths of runs against where their ends stand."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask


def test_the_length_of_a_run_is_the_sum_of_its_stretches() -> None:
    assert ask("circuit", "trunk", "run_length") == pytest.approx(0.15 + 0.3 + 0.4 + 0.2)


def test_a_stretch_that_was_not_seen_leaves_the_length_open() -> None:
    found = ask("circuit", "trunk", "run_length", ("circuits.trunk.run", "[0.1 m via bay, unknown, 0.4 m via cabin]"))
    assert isinstance(found, Unknown)


def test_the_least_way_goes_from_box_to_box_by_what_stands_in_the_run() -> None:
    # inlet point (4.9, 1.1, 0.8); RB from (0.5, 0.3, 0.6) to (0.6, 0.4, 0.7); socket from y = 0.5 m, 0.1 m on.
    first = ((4.9 - 0.6) ** 2 + (1.1 - 0.4) ** 2 + (0.8 - 0.7) ** 2) ** 0.5
    assert ask("circuit", "shore", "least_way") == pytest.approx(first + 0.1)


def test_what_lies_somewhere_in_a_place_is_at_least_as_far_as_the_place() -> None:
    # The fuse lies somewhere in the bay, x from 1.0 m; the switch ends at x = 0.6 m; the bar starts 0.1 m beyond it.
    assert ask("circuit", "trunk", "least_way") == pytest.approx(0.4 + 0.1)


def test_runs_past_what_has_no_box_are_compared_only_where_even_the_places_are_too_far() -> None:
    assert ask("circuit", "lights", "way_known") is False
    assert ask("circuit", "trunk", "way_known") is False  # the fuse lies somewhere in the bay
    assert (
        ask("circuit", "trunk", "way_known", ("circuits.trunk.run", "[0.1 m via bay, FH, 0.2 m via bay, main]")) is True
    )
    assert ask("circuit", "shore", "way_known") is True
