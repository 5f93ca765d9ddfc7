"""Converters: power in is power out and heat."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import converter as co


@given(st.floats(1, 5000), st.floats(9, 60), st.floats(0.5, 1))
def test_input_power_is_output_and_loss(watts: float, volts: float, efficiency: float) -> None:
    drawn = co.dc_input_current(watts, volts, efficiency) * volts
    assert drawn == pytest.approx(watts + co.loss(watts, efficiency))
    assert co.output_power(drawn, efficiency) == pytest.approx(watts)


@given(st.floats(9, 60), st.floats(9, 60))
def test_a_lower_input_voltage_draws_more(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert co.dc_input_current(1000, low, 0.9) >= co.dc_input_current(1000, high, 0.9)


@pytest.mark.parametrize("efficiency", [0.0, -0.1, 1.01, float("nan")])
def test_an_efficiency_outside_nought_to_one_is_refused(efficiency: float) -> None:
    for call in (lambda: co.dc_input_current(100, 12, efficiency), lambda: co.loss(100, efficiency)):
        with pytest.raises(OutOfRange, match="efficiency"):
            call()


@pytest.mark.parametrize("share", [0.0005, 1.001])
def test_the_part_load_curve_ends(share: float) -> None:
    with pytest.raises(OutOfRange, match="share of rated input"):
        co.part_load_output(share * 100, 100, 0.95, 0.9637)


@given(st.floats(1, 400), st.floats(0, 1))
def test_a_chopper_gives_its_duty_and_its_mean_never_exceeds_its_rms(volts: float, duty: float) -> None:
    mean = co.chopper_mean(volts, duty)
    assert co.chopper_duty(volts, mean) == pytest.approx(duty)
    assert mean <= co.chopper_rms(volts, duty) * (1 + 1e-12)


def test_a_chopper_cannot_step_up() -> None:
    with pytest.raises(OutOfRange, match="duty"):
        co.chopper_duty(12, 13)
