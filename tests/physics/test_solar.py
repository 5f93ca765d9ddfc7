"""Solar: cold voltage, currents to design for, temperatures, power."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import solar


@given(st.floats(10, 60), st.floats(-0.01, 0), st.floats(-60, 120), st.floats(-60, 120))
def test_a_colder_cell_has_no_less_voltage(volts: float, per_k: float, one: float, other: float) -> None:
    cold, warm = sorted((one, other))
    assert solar.voltage_at(volts, per_k, cold) >= solar.voltage_at(volts, per_k, warm)
    assert solar.voltage_at(volts, per_k, 25.0) == volts


@pytest.mark.parametrize(("celsius", "per_k"), [(-60.1, -0.003), (120.1, -0.003), (0, 0.0001), (0, -0.0101)])
def test_outside_the_straight_line_there_is_no_voltage(celsius: float, per_k: float) -> None:
    with pytest.raises(OutOfRange):
        solar.voltage_at(40, per_k, celsius)


def test_a_string_in_the_cold_by_hand() -> None:
    # 3 x 24 V, -0.3 %/K, -5 °C: 30 K below 25 °C
    assert solar.string_voltage(solar.voltage_at(24, -0.003, -5), 3) == pytest.approx(78.48)


@given(st.floats(0.1, 20))
def test_conductors_are_chosen_for_five_quarters_twice(amps: float) -> None:
    assert solar.conductor_current(amps) == pytest.approx(1.5625 * amps)
    assert solar.greatest_current(amps) == pytest.approx(1.25 * amps)


@given(st.integers(1, 20), st.floats(0.1, 20))
def test_a_string_is_fed_back_by_all_the_others(strings: int, amps: float) -> None:
    assert solar.reverse_string_current(strings, amps) == pytest.approx((strings - 1) * 1.25 * amps)


@given(st.floats(0, 1400), st.floats(-20, 50), st.floats(35, 60))
def test_without_sun_the_cell_is_as_cold_as_the_air_and_sun_only_warms(sun: float, air: float, noct: float) -> None:
    assert solar.cell_temperature(0, air, noct) == air
    assert solar.cell_temperature(sun, air, noct) >= air
    assert solar.cell_temperature(800, 20, noct) == pytest.approx(noct)


@given(st.floats(0, 30), st.floats(0, 30))
def test_wind_cools(one: float, other: float) -> None:
    calm, windy = sorted((one, other))
    for read in (
        lambda wind: solar.cell_temperature_in_wind(1000, 25, wind, 45, 0.2),
        lambda wind: solar.module_temperature_in_wind(1000, 25, wind, 25, 6.84),
    ):
        assert read(windy) <= read(calm)


@pytest.mark.parametrize("sun", [-0.1, 1400.1])
def test_more_than_the_brightest_sun_is_refused(sun: float) -> None:
    for call in (
        lambda: solar.cell_temperature(sun, 20, 45),
        lambda: solar.module_power(100, sun, 25, -0.004),
        lambda: solar.cell_temperature_in_wind(sun, 20, 1, 45, 0.2),
        lambda: solar.module_temperature_in_wind(sun, 20, 1, 25, 7),
    ):
        with pytest.raises(OutOfRange, match="irradiance"):
            call()


def test_at_test_conditions_a_module_gives_its_rating() -> None:
    assert solar.module_power(175, 1000, 25, -0.004) == 175


@given(st.lists(st.floats(0, 1), max_size=6))
def test_losses_one_after_the_other_stay_between_the_greatest_and_all(losses: list[float]) -> None:
    combined = solar.combined_loss(losses)
    assert max(losses, default=0) - 1e-9 <= combined <= min(1, sum(losses)) + 1e-9


def test_a_loss_above_all_is_refused() -> None:
    with pytest.raises(OutOfRange, match="loss"):
        solar.combined_loss([0.1, 1.1])
