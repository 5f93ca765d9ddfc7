"""Levers, masses and belts."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import mechanics as me

masses = st.lists(st.tuples(st.floats(0, 3000), st.floats(-2, 8)), max_size=6)


@given(masses, st.floats(1, 8))
def test_the_axles_carry_all_the_mass_and_balance_its_moment(loads: list[tuple[float, float]], base: float) -> None:
    front, rear = me.axle_masses(loads, base)
    assert front + rear == pytest.approx(sum(mass for mass, _ in loads), abs=1e-6)
    assert rear * base == pytest.approx(sum(mass * position for mass, position in loads), abs=1e-6)


def test_behind_the_rear_axle_the_front_is_lifted() -> None:
    front, rear = me.axle_masses([(100, 5.0)], 4.0)
    assert (front, rear) == pytest.approx((-25, 125))


def test_a_wheelbase_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="distance between supports"):
        me.support_shares(1, 0)


@given(st.floats(0, 500), st.floats(0, 25))
def test_the_restraint_holds_mass_times_deceleration(mass: float, g: float) -> None:
    assert me.restraint_force(mass, g) == pytest.approx(me.weight(mass) * g)


def test_more_than_a_hundred_g_is_refused() -> None:
    with pytest.raises(OutOfRange, match="acceleration"):
        me.restraint_force(10, 100.1)


@given(st.floats(500, 6000), st.floats(0.05, 0.3), st.floats(0.05, 0.3))
def test_a_belt_turns_the_smaller_pulley_faster_and_slip_slows_it(speed: float, d1: float, d2: float) -> None:
    driven = me.driven_speed(speed, d1, d2)
    assert driven * d2 == pytest.approx(speed * d1)
    assert me.driven_speed(speed, d1, d2, 0.02) == pytest.approx(0.98 * driven)


def test_a_belt_that_only_slips_is_refused() -> None:
    with pytest.raises(OutOfRange, match="slip"):
        me.driven_speed(1000, 0.1, 0.1, 1.0)


def test_a_mass_falls_as_fast_as_it_was_lifted() -> None:
    height = 2.0
    speed = (2 * me.GRAVITY_M_S2 * height) ** 0.5
    assert me.motion_energy(3, speed) == pytest.approx(me.lifting_energy(3, height))


def test_a_lighter_mass_balances_further_out() -> None:
    assert me.balance_distance(100, 20) == 5
