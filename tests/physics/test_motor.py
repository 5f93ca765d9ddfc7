"""Motors and other loads at the start."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import motor


@given(st.floats(6, 60), st.floats(1, 300), st.floats(1e-3, 0.02))
def test_added_resistance_starts_with_the_current_asked_for(volts: float, amps: float, armature: float) -> None:
    added = motor.starting_resistance(volts, amps, armature)
    assert motor.locked_current(volts, added + armature) == pytest.approx(amps)


@given(st.floats(6, 60), st.floats(0.005, 0.1))
def test_at_standstill_there_is_no_back_emf(volts: float, ohms: float) -> None:
    assert motor.back_emf(volts, motor.locked_current(volts, ohms), ohms) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("efficiency", [0.0, 1.01])
def test_an_efficiency_outside_nought_to_one_is_refused(efficiency: float) -> None:
    with pytest.raises(OutOfRange, match="efficiency"):
        motor.running_current(100, 12, efficiency)


def test_numbers_by_hand() -> None:
    assert motor.running_current(96, 12, 0.8) == pytest.approx(10)
    assert motor.cold_current(2.5, 4.8, 0.35) == pytest.approx(34.29, abs=0.01)
    assert motor.hydraulic_energy(0.1, 10) == pytest.approx(9810)


@pytest.mark.parametrize(
    "call",
    [
        lambda: motor.locked_current(12, 0),
        lambda: motor.starting_resistance(12, 0, 0.01),
        lambda: motor.cold_current(1, 1, 0),
        lambda: motor.running_current(1, 0, 0.5),
    ],
)
def test_what_has_no_answer_is_refused(call) -> None:
    with pytest.raises(OutOfRange):
        call()


def test_a_source_that_limits_leaves_a_standing_motor_its_share() -> None:
    assert motor.voltage_at_limit(13.2, 60.0, 120.0) == pytest.approx(6.6)
    assert motor.voltage_at_limit(13.2, 60.0, 60.0) == 13.2
