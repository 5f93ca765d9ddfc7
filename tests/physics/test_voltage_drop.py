"""Drops add, turn with the current, and vanish with the length."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import voltage_drop as vd

currents, lengths, ohms = st.floats(-500, 500), st.floats(0, 50), st.floats(1e-5, 0.1)


@given(currents, lengths, lengths, ohms)
def test_two_lengths_in_series_add(current: float, one: float, other: float, ohm: float) -> None:
    whole = vd.dc_voltage_drop(current, one + other, ohm)
    assert whole == pytest.approx(vd.dc_voltage_drop(current, one, ohm) + vd.dc_voltage_drop(current, other, ohm))


@given(currents, lengths, ohms)
def test_turning_the_current_turns_the_drop_and_one_wire_drops_half(current: float, length: float, ohm: float) -> None:
    assert vd.dc_voltage_drop(-current, length, ohm) == -vd.dc_voltage_drop(current, length, ohm)
    assert 2 * vd.single_wire_drop(current, length, ohm) == pytest.approx(vd.dc_voltage_drop(current, length, ohm))


@given(st.floats(0, 100), lengths, ohms)
def test_at_unity_power_factor_alternating_current_drops_as_direct(current: float, length: float, ohm: float) -> None:
    assert vd.ac_voltage_drop(current, length, ohm, 1e-4, 1.0) == vd.dc_voltage_drop(current, length, ohm)


def test_a_lagging_load_drops_over_the_reactance_too() -> None:
    # 10 A, 10 m, 0.01 and 0.002 ohm/m, factor 0.8: 200 (0.01 0.8 + 0.002 0.6)
    assert vd.ac_voltage_drop(10, 10, 0.01, 0.002, 0.8) == pytest.approx(1.84)


@pytest.mark.parametrize("factor", [-0.01, 1.01])
def test_a_power_factor_outside_nought_to_one_is_refused(factor: float) -> None:
    with pytest.raises(OutOfRange, match="power factor"):
        vd.ac_voltage_drop(1, 1, 1, 1, factor)


def test_a_negative_length_is_refused() -> None:
    for call in (
        lambda: vd.dc_voltage_drop(1, -0.1, 1),
        lambda: vd.single_wire_drop(1, -0.1, 1),
        lambda: vd.uniform_load_drop(1, -0.1, 1, fed_at_both_ends=True),
    ):
        with pytest.raises(OutOfRange, match="length, m"):
            call()


@given(st.floats(1, 300), st.floats(0.1, 20), st.floats(1.7e-8, 2.3e-8), st.floats(0.1, 5))
def test_the_area_for_a_drop_gives_that_drop(current: float, length: float, rho: float, drop: float) -> None:
    area = vd.area_for_drop(current, length, rho, drop)
    assert vd.dc_voltage_drop(current, length, rho / area) == pytest.approx(drop)


@given(st.floats(0, 5), st.floats(0.1, 100), st.floats(1e-4, 0.1))
def test_feeding_at_both_ends_drops_a_quarter(load: float, length: float, ohm: float) -> None:
    one, both = (vd.uniform_load_drop(load, length, ohm, fed_at_both_ends=ends) for ends in (False, True))
    assert one == pytest.approx(4 * both)
    assert one == pytest.approx(vd.tapped_feeder_drop((), load, length, ohm, length))


@given(st.lists(st.tuples(st.floats(0, 100), st.floats(0, 50)), max_size=5), st.floats(0, 100), st.floats(0, 100))
def test_along_a_tapped_feeder_the_drop_only_rises(taps: list[tuple[float, float]], one: float, other: float) -> None:
    near, far = sorted((one, other))
    assert vd.tapped_feeder_drop(taps, 0.1, 100, 1e-3, near) <= vd.tapped_feeder_drop(taps, 0.1, 100, 1e-3, far) + 1e-12


def test_beyond_the_end_of_a_feeder_there_is_no_drop() -> None:
    with pytest.raises(OutOfRange, match="distance"):
        vd.tapped_feeder_drop((), 0, 100, 1e-3, 100.1)


def test_share_and_resistance_of_a_loss() -> None:
    assert vd.drop_share(0.36, 12) == pytest.approx(0.03)
    assert vd.resistance_for_loss_share(12, 10, 0.03) == pytest.approx(0.036)
    with pytest.raises(OutOfRange, match="nominal voltage"):
        vd.drop_share(0.3, 0)


@given(currents, ohms)
def test_the_loss_is_drop_times_current_and_never_negative(current: float, ohm: float) -> None:
    assert vd.loss_in(ohm, current) == pytest.approx(vd.drop_over(ohm, current) * current)
    assert vd.loss_in(ohm, current) >= 0
