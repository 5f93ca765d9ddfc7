"""Opening times and let-through energy against published points and closed forms."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics.clearing import (
    at_once,
    energy_at,
    is_published,
    let_through,
    of_family,
    of_points,
    opening,
    promised,
)
from checker.physics.fuse_curves import operating_time

LARGE_BLADE = of_family("large blade", 40.0)


def test_a_published_point_is_met() -> None:
    # ISO 8820-3:2002, large blade at 200 %: 2 s to 50 s (seen).
    assert opening(LARGE_BLADE, 80.0) == pytest.approx((2.0, 50.0))


def test_between_the_points_it_is_the_band_of_the_family() -> None:
    assert opening(LARGE_BLADE, 110.0) == pytest.approx(operating_time("large blade", 40.0, 110.0))


def test_below_the_first_point_nothing_is_promised_and_above_the_last_the_last_holds() -> None:
    assert opening(LARGE_BLADE, 20.0) == (360000.0, math.inf)
    # ISO 8820-3:2002 at 600 %: 0.04 s to 1 s (seen).
    assert opening(LARGE_BLADE, 2000.0) == (0.0, 1.0)


def test_two_possible_series_give_two_promises() -> None:
    # Bolt-down strips of 30 mm and 51 mm at twice the rating: 100 s and 15 s.
    assert promised(of_family("bolt-down strip", 150.0), 300.0) == pytest.approx((15.0, 100.0))


def test_one_series_gives_one_promise() -> None:
    low, high = promised(LARGE_BLADE, 140.0)
    assert low == high == pytest.approx(7.0)


def test_an_own_curve_is_met_at_its_points_and_straight_on_log_log_paper_between() -> None:
    held = of_points([(1000.0, 0.01, 0.1), (100.0, 1.0, 10.0)], mechanical=False)
    assert opening(held, 100.0) == pytest.approx((1.0, 10.0))
    assert opening(held, math.sqrt(100.0 * 1000.0)) == pytest.approx((0.1, 1.0))


@pytest.mark.parametrize(
    "points",
    [[], [(0.0, 1.0, 2.0)], [(10.0, 2.0, 1.0)], [(10.0, 1.0, 2.0), (20.0, 1.5, 3.0)], [(10.0, 1, 2), (10.0, 1, 2)]],
)
def test_a_curve_that_cannot_be_is_refused(points: list[tuple[float, float, float]]) -> None:
    with pytest.raises(OutOfRange):
        of_points(points, mechanical=False)


def test_a_fuse_lets_no_more_through_beyond_its_last_point() -> None:
    # 6 x 40 A for 1 s at the most: 57 600 A2s; the greatest over smaller currents is where 5 s is crossed.
    assert energy_at(LARGE_BLADE, 240.0) == pytest.approx(57600.0)
    assert energy_at(LARGE_BLADE, 5000.0) == pytest.approx(57600.0)
    assert let_through(LARGE_BLADE, 5000.0) == pytest.approx(let_through(LARGE_BLADE, 240.0))


def test_a_breaker_keeps_its_time_beyond_its_last_point() -> None:
    held = of_points([(100.0, 0.05, 0.1)], mechanical=True)
    assert energy_at(held, 1000.0) == pytest.approx(1000.0**2 * 0.1)
    assert let_through(held, 1000.0).max_s == pytest.approx(1000.0**2 * 0.1)


def test_only_the_first_five_seconds_count() -> None:
    held = of_points([(100.0, 50.0, 100.0)], mechanical=True)
    assert let_through(held, 100.0).max_s == pytest.approx(100.0**2 * 5.0)


def test_the_greatest_energy_lies_where_five_seconds_are_crossed() -> None:
    held = of_points([(10.0, 500.0, 500.0), (1000.0, 0.05, 0.05)], mechanical=False)
    # t falls as I^-2, so I^2 t is 50 000 from 5 s on: I = 100 A.
    assert let_through(held, 1000.0).max_s == pytest.approx(50000.0)


def test_published_means_both_edges() -> None:
    assert is_published(LARGE_BLADE, 80.0)
    assert not is_published(LARGE_BLADE, 400.0)


@given(st.floats(1.0, 5000.0), st.floats(1.0, 5000.0))
def test_a_larger_current_never_opens_later_nor_lets_less_of_the_worst_through(a: float, b: float) -> None:
    low, high = min(a, b), max(a, b)
    assert opening(LARGE_BLADE, high).max_s <= opening(LARGE_BLADE, low).max_s
    assert let_through(LARGE_BLADE, high).max_s >= let_through(LARGE_BLADE, low).max_s * (1 - 1e-12)


@given(st.floats(1.0, 5000.0))
def test_the_bounds_of_energy_enclose_each_other(current: float) -> None:
    least, greatest = let_through(LARGE_BLADE, current)
    assert 0.0 <= least <= greatest


def test_what_a_maker_says_of_opening_at_once_holds_from_its_current_on_and_not_before() -> None:
    family = of_family("C curve", 10.0)
    quick = at_once(family, None, 0.01)
    assert promised(quick, 99.0) == promised(family, 99.0)
    assert promised(quick, 101.0).max_s == 0.01
    early = at_once(family, 80.0, 0.02)
    assert promised(early, 79.0).max_s == pytest.approx(promised(family, 79.0).max_s)
    assert promised(early, 81.0).max_s == 0.02
    assert promised(at_once(family, 200.0, 1.0), 300.0).max_s == 0.1, "never later than the family"


@pytest.mark.parametrize(("above", "within"), [(0.0, 0.01), (100.0, 0.0)])
def test_opening_at_once_needs_a_current_and_a_time(above: float, within: float) -> None:
    with pytest.raises(OutOfRange):
        at_once(of_family("C curve", 10.0), above, within)
