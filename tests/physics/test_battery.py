"""Batteries: series and parallel, shorts, rested voltage, discharge."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import battery as ba

emfs, ohms = st.floats(2, 60), st.floats(1e-4, 0.1)


@given(emfs, ohms, st.integers(1, 8), st.floats(0, 0.01))
def test_strings_in_parallel_divide_the_resistance_and_raise_the_fault(
    emf: float, ohm: float, parallel: int, link: float
) -> None:
    one = ba.series_parallel(ba.Source(emf, ohm), 4, parallel, link)
    more = ba.series_parallel(ba.Source(emf, ohm), 4, parallel + 1, link)
    assert one.emf_v == more.emf_v == 4 * emf
    assert ba.fault_current(*more) > ba.fault_current(*one)


@given(emfs, ohms, st.integers(1, 8))
def test_equal_sources_joined_are_a_parallel_bank(emf: float, ohm: float, count: int) -> None:
    joined = ba.in_parallel((ba.Source(emf, ohm),) * count)
    assert joined == pytest.approx(ba.series_parallel(ba.Source(emf, ohm), 1, count))


@given(emfs, emfs, ohms, ohms)
def test_unlike_sources_joined_stand_between_their_voltages(e1: float, e2: float, r1: float, r2: float) -> None:
    joined = ba.in_parallel((ba.Source(e1, r1), ba.Source(e2, r2)))
    assert min(e1, e2) * (1 - 1e-9) <= joined.emf_v <= max(e1, e2) * (1 + 1e-9)
    assert joined.resistance_ohm < min(r1, r2)
    short = ba.fault_current(e1, r1) + ba.fault_current(e2, r2)
    assert ba.fault_current(*joined) == pytest.approx(short)


@given(emfs, ohms, st.floats(0.01, 10))
def test_the_load_takes_what_the_terminals_give(emf: float, ohm: float, load: float) -> None:
    current = ba.load_current(emf, ohm, load)
    terminal = ba.terminal_voltage(emf, ohm, current)
    assert terminal == pytest.approx(current * load)
    assert ba.internal_resistance(emf, terminal, current) == pytest.approx(ohm, rel=1e-6)


@pytest.mark.parametrize(
    "call",
    [
        lambda: ba.fault_current(12, 0),
        lambda: ba.in_parallel((ba.Source(12, 0.0),)),
        lambda: ba.in_parallel(()),
        lambda: ba.series_parallel(ba.Source(12, 0.01), 0, 1),
        lambda: ba.series_parallel(ba.Source(12, 0.01), 1, 1, -1),
        lambda: ba.internal_resistance(12, 11, 0),
        lambda: ba.fault_time_constant(1e-3, 0),
    ],
)
def test_what_has_no_answer_is_refused(call) -> None:
    with pytest.raises(OutOfRange):
        call()


@given(st.floats(0, 1), st.floats(0, 1))
def test_the_rested_voltage_rises_with_the_charge(one: float, other: float) -> None:
    low, high = sorted((one, other))
    middles = [sum(ba.lfp_cell_voltage(soc)) / 2 for soc in (low, high)]
    assert middles[0] <= middles[1] + 1e-9


@pytest.mark.parametrize("soc", [-0.001, 1.001])
def test_a_state_of_charge_outside_nought_to_one_is_refused(soc: float) -> None:
    with pytest.raises(OutOfRange, match="state of charge"):
        ba.lfp_cell_voltage(soc)


def test_on_the_bounds_of_charge_there_is_a_voltage() -> None:
    assert ba.lfp_cell_voltage(0.0) == pytest.approx((2.55, 3.05))
    assert ba.lfp_cell_voltage(1.0) == pytest.approx((3.34, 3.46))


@given(st.floats(1, 1.6), st.floats(1, 200), st.floats(1, 200))
def test_a_larger_current_delivers_no_more(exponent: float, one: float, other: float) -> None:
    small, large = sorted((one, other))
    delivered = [
        ba.delivered_capacity(ba.peukert_time(360_000, 72_000, amps, exponent), amps) for amps in (small, large)
    ]
    assert delivered[1] <= delivered[0] * (1 + 1e-9)


def test_at_the_rated_current_the_rated_time_comes_back() -> None:
    assert ba.peukert_time(360_000, 72_000, 5, 1.3) == pytest.approx(72_000)


@pytest.mark.parametrize("exponent", [0.99, 1.61])
def test_an_exponent_outside_practice_is_refused(exponent: float) -> None:
    with pytest.raises(OutOfRange, match="Peukert exponent"):
        ba.peukert_time(360_000, 72_000, 5, exponent)
    with pytest.raises(OutOfRange, match="Peukert exponent"):
        ba.peukert_time_one_ampere(100, 5, exponent)


@given(st.floats(1, 1.6), st.floats(1, 100))
def test_the_one_ampere_form_agrees_with_the_rated_form(exponent: float, current: float) -> None:
    rated_h, rated_a = 20.0, 5.0
    one_ampere = rated_h * rated_a**exponent
    assert ba.peukert_time_one_ampere(one_ampere, current, exponent) == pytest.approx(
        ba.peukert_time(rated_a * rated_h * 3600, rated_h * 3600, current, exponent)
    )
