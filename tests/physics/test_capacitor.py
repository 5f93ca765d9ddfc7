"""Capacitors: charging, discharging, energy."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import capacitor as ca

times, taus = st.floats(0, 50), st.floats(0.01, 10)


@given(times, times, taus)
def test_the_voltage_only_rises_and_never_passes_the_supply(one: float, other: float, tau: float) -> None:
    early, late = sorted((one, other))
    assert 0 <= ca.charged_voltage(48, early, tau) <= ca.charged_voltage(48, late, tau) <= 48


@given(st.floats(0, 0.999), taus)
def test_the_time_to_a_share_reaches_that_share(share: float, tau: float) -> None:
    assert ca.charged_share(ca.time_to_charge(share, tau), tau) == pytest.approx(share, abs=1e-12)


@given(st.floats(0.01, 1), taus)
def test_the_time_to_discharge_leaves_that_voltage(share: float, tau: float) -> None:
    time = ca.time_to_discharge(100, 100 * share, tau)
    assert ca.remaining_share(time, tau) == pytest.approx(share)


@pytest.mark.parametrize("share", [-0.01, 1.0])
def test_the_full_voltage_is_never_reached(share: float) -> None:
    with pytest.raises(OutOfRange, match="share of the final voltage"):
        ca.time_to_charge(share, 1.0)


@given(st.floats(1e-6, 1), st.floats(0.1, 400))
def test_energy_voltage_and_capacitance_undo_each_other(farad: float, volts: float) -> None:
    energy = ca.stored_energy(farad, volts)
    assert ca.voltage_for_energy(farad, energy) == pytest.approx(volts)
    assert ca.capacitance_for_energy(energy, volts) == pytest.approx(farad)
    assert ca.stored_charge(farad, volts) * volts / 2 == pytest.approx(energy)


def test_the_first_current_is_that_of_the_resistor_alone() -> None:
    assert ca.first_current(54.4, 10) == pytest.approx(5.44)
    assert ca.time_constant(10, 0.02) == pytest.approx(0.2)
    assert ca.capacitance_for_time_constant(0.2, 10) == pytest.approx(0.02)


@pytest.mark.parametrize(
    "call",
    [
        lambda: ca.first_current(48, 0),
        lambda: ca.time_constant(0, 1e-3),
        lambda: ca.remaining_share(-1, 1),
        lambda: ca.remaining_share(1, 0),
        lambda: ca.time_to_discharge(10, 11, 1),
        lambda: ca.voltage_for_energy(1e-3, -1),
    ],
)
def test_what_has_no_answer_is_refused(call) -> None:
    with pytest.raises(OutOfRange):
        call()
