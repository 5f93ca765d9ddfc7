"""Energy and charge over time."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import energy as en


@given(st.lists(st.tuples(st.floats(0, 3000), st.floats(0, 86_400)), max_size=8))
def test_the_order_of_loads_does_not_matter(loads: list[tuple[float, float]]) -> None:
    assert en.energy_used(loads) == pytest.approx(en.energy_used(loads[::-1]))


@given(st.floats(1, 1e6), st.floats(0.01, 1))
def test_the_capacity_needed_gives_what_was_wanted(wanted: float, depth: float) -> None:
    assert en.usable(en.capacity_needed(wanted, depth), depth) == pytest.approx(wanted)


@pytest.mark.parametrize("depth", [-0.01, 1.01])
def test_a_depth_outside_nought_to_all_is_refused(depth: float) -> None:
    for call in (en.usable, en.capacity_needed):
        with pytest.raises(OutOfRange, match="depth of discharge"):
            call(100, depth)


def test_nothing_usable_can_give_nothing() -> None:
    with pytest.raises(OutOfRange, match="depth of discharge"):
        en.capacity_needed(100, 0)


def test_time_left_ends_when_the_charge_does() -> None:
    assert en.time_left(3600, (1800,), 1) == 1800
    assert en.time_left(3600, (1800, 1800), 1) == 0
    with pytest.raises(OutOfRange, match="charge left"):
        en.time_left(3600, (1800, 1801), 1)


@given(st.floats(1, 1e6), st.floats(1, 3), st.floats(60, 86_400), st.floats(0, 50))
def test_the_recharge_current_returns_the_charge_in_its_time(
    charge: float, factor: float, time: float, standing: float
) -> None:
    current = en.recharge_current(charge, factor, time, standing)
    assert (current - standing) * time == pytest.approx(charge * factor, rel=1e-6, abs=1e-3)


def test_recharge_time_adds_the_absorption() -> None:
    assert en.recharge_time(3600, 10) == 360
    assert en.recharge_time(3600, 10, 40) == 400


@pytest.mark.parametrize(
    "call",
    [
        lambda: en.recharge_current(1, 0.99, 1),
        lambda: en.recharge_current(1, 1, 0),
        lambda: en.recharge_time(1, 0),
        lambda: en.autonomy(1, 0),
        lambda: en.charge_efficiency(1, 0),
        lambda: en.load_factor(1, 0, 1),
    ],
)
def test_what_has_no_answer_is_refused(call) -> None:
    with pytest.raises(OutOfRange):
        call()


def test_a_day_by_hand() -> None:
    used = en.energy_used([(60, 5 * 3600), (1000, 1800)])
    assert used == 60 * 5 * 3600 + 1000 * 1800
    assert en.autonomy(en.battery_energy(100 * 3600, 12), 60) == pytest.approx(20 * 3600)
    assert en.load_factor(used, 1000, 86_400) == pytest.approx(used / 86.4e6)
    assert en.charge_moved(5, 3600) == 18_000
    assert en.charge_efficiency(90, 100) == 0.9
