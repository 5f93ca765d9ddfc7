"""Single-phase mains: impedance, power, faults, disconnection."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import ac


@given(st.floats(0.01, 100), st.floats(0, 100), st.floats(1, 400))
def test_active_and_reactive_current_make_up_the_whole(r: float, x: float, volts: float) -> None:
    current = ac.current_through(volts, ac.impedance(r, x))
    active = ac.active_current(current**2 * r, volts)
    reactive = ac.reactive_current(current, min(active, current))
    assert math.hypot(active, reactive) == pytest.approx(current)
    assert ac.power_factor(current**2 * r, ac.apparent_power(volts, current)) == pytest.approx(r / math.hypot(r, x))


def test_more_active_than_apparent_is_refused() -> None:
    with pytest.raises(OutOfRange, match="power factor"):
        ac.power_factor(101, 100)
    with pytest.raises(OutOfRange, match="active current"):
        ac.reactive_current(10, 10.1)


@given(st.floats(0, 2), st.floats(0, 2), st.floats(0.01, 2))
def test_each_part_of_the_loop_lowers_the_fault_and_the_touch_voltage_is_a_part_of_the_whole(
    source: float, line: float, protective: float
) -> None:
    loop = ac.loop_impedance(source, line, protective)
    fault = ac.earth_fault_current(230, loop)
    assert ac.earth_fault_current(230, loop + 0.1) < fault
    assert 0 <= ac.touch_voltage(fault, protective) <= 230 * (1 + 1e-9)


def test_no_impedance_has_no_current() -> None:
    with pytest.raises(OutOfRange, match="loop impedance"):
        ac.earth_fault_current(230, 0)
    with pytest.raises(OutOfRange, match="impedance"):
        ac.current_through(230, 0)


@given(st.sampled_from(["TN", "TT"]), st.floats(51, 600), st.floats(51, 600))
def test_a_higher_voltage_never_allows_longer_and_tt_never_longer_than_tn(
    system: str, one: float, other: float
) -> None:
    low, high = sorted((one, other))
    assert ac.disconnection_time(system, high, "ac") <= ac.disconnection_time(system, low, "ac")
    assert ac.disconnection_time("TT", low, "ac") <= ac.disconnection_time("TN", low, "ac")


@pytest.mark.parametrize(
    ("system", "volts", "kind"),
    [("TN", 50, "ac"), ("TN", 120, "dc"), ("TT", 48, "dc"), ("IT", 230, "ac"), ("TN", 230, "three-phase")],
)
def test_where_no_time_is_set_there_is_no_number(system: str, volts: float, kind: str) -> None:
    with pytest.raises(OutOfRange, match="supply"):
        ac.disconnection_time(system, volts, kind)


@pytest.mark.parametrize(("volts", "limit"), [(50.1, 0.8), (120, 0.8), (120.1, 0.4), (230, 0.4), (230.1, 0.2)])
def test_the_upper_end_of_a_row_belongs_to_it(volts: float, limit: float) -> None:
    assert ac.disconnection_time("TN", volts, "ac") == limit


def test_a_sine_peaks_at_root_two() -> None:
    assert ac.peak_from_rms(230) == pytest.approx(325.27, abs=0.01)
    assert ac.reactance(0.1, 50) == pytest.approx(31.416, abs=1e-3)


@given(st.floats(0.03, 3), st.floats(0.03, 3), st.floats(0, 1000))
def test_a_longer_touch_and_a_lighter_body_bear_less(one: float, other: float, soil: float) -> None:
    short, long = sorted((one, other))
    assert ac.tolerable_touch_voltage(long, soil, 50) <= ac.tolerable_touch_voltage(short, soil, 50)
    assert ac.tolerable_touch_voltage(short, soil, 50) < ac.tolerable_touch_voltage(short, soil, 70)
    assert ac.tolerable_touch_voltage(short, soil, 50) <= ac.tolerable_step_voltage(short, soil, 50)


@pytest.mark.parametrize(("time", "body"), [(0.029, 50), (3.1, 50), (1, 60)])
def test_the_body_equations_end_at_their_range(time: float, body: float) -> None:
    with pytest.raises(OutOfRange):
        ac.tolerable_touch_voltage(time, 100, body)
