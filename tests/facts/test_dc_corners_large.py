"""Worst corners of a large network: few are solved, and values drawn at random still lie within what is predicted."""

from __future__ import annotations

from functools import cache

import pytest

from checker.circuit.dc_solve import solve_frame
from checker.facts import dc_corners
from checker.facts.dc_corners import most_corners
from checker.facts.operating_point import CASES_SAY, cases_say, points
from checker.facts.subject import Facts
from checker.reading import read_text
from tests.benchmarks.generator import coach
from tests.facts.test_dc_corners import outside

CIRCUITS = 60
DRAWS = 30


@cache
def text() -> str:
    return coach(CIRCUITS)


@pytest.mark.parametrize("few", [False, True])
@pytest.mark.parametrize("mode", ["driving", "camping", "shore"])
def test_nothing_drawn_in_a_large_coach_reads_lower_or_higher(
    mode: str, few: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also where no reading may have a corner of its own solved (`few`), as in a coach many times as large."""
    if few:
        monkeypatch.setattr(dc_corners, "OWN", 0)
    facts = Facts(read_text(text()))
    point = points(facts)[mode]
    solves = [0]

    def counted(*given: object) -> object:
        solves[0] += 1
        return solve_frame(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(dc_corners, "solve_frame", counted)
    compared, wrong = outside(point, DRAWS, seed=5)
    assert compared > DRAWS * 100
    assert wrong == []
    size = len(point.plan.makers)
    corners = 2 + most_corners(size, own=False) + most_corners(size, own=True)
    assert 0 < solves[0] <= 2 * corners  # each corner cool, and as warm as its currents make it
    assert solves[0] < 2 * 140
    assert point.short or not few
    assert cases_say(facts).startswith(CASES_SAY)
    assert (cases_say(facts) != CASES_SAY) == point.short


def test_the_larger_a_network_the_fewer_corners_are_solved() -> None:
    for own in (False, True):
        work = [size * most_corners(size, own=own) for size in (100, 1_000, 10_000)]
        assert max(work) <= max(dc_corners.STARTS, dc_corners.OWN)
        assert most_corners(100, own=own) > most_corners(1_000, own=own) > most_corners(100_000, own=own) == 0
