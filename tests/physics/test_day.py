"""A battery through a day: nothing is lost, nothing is made, and limits hold."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import day

H = 3600.0
KWH = 3.6e6
STORE = day.Store(10 * KWH, 1000.0, 1.0)
powers = st.lists(st.floats(0.0, 3000.0), min_size=24, max_size=24).map(tuple)


def test_a_steady_load_empties_a_battery_in_a_straight_line() -> None:
    steps = day.through(STORE, 1.0, (100.0,) * 24, [])
    # 2.4 kWh of 10 kWh.
    assert steps[-1].charge == pytest.approx(0.76)
    assert steps[11].charge == pytest.approx(0.88)


def test_an_empty_battery_gives_nothing_and_what_is_missing_is_told() -> None:
    steps = day.through(STORE, 0.1, (500.0,) * 24, [])
    assert steps[-1].charge == 0.0
    assert sum(step.missing for step in steps) * H == pytest.approx(11 * KWH)


def test_a_full_battery_takes_nothing_and_the_rest_is_unused() -> None:
    [first, *_] = day.through(STORE, 1.0, (100.0,) * 24, [(400.0,) * 24])
    assert (first.charge, first.given, first.battery, first.unused) == (1.0, (100.0,), 0.0, 300.0)


def test_the_first_source_is_asked_first() -> None:
    [first, *_] = day.through(STORE, 1.0, (300.0,) * 24, [(200.0,) * 24, (500.0,) * 24])
    assert first.given == (200.0, 100.0)


def test_charging_stops_at_the_limit_of_the_battery() -> None:
    [first, *_] = day.through(STORE, 0.0, (0.0,) * 24, [(5000.0,) * 24])
    assert first.battery == 1000.0


def test_a_battery_blocked_by_cold_feeds_loads_and_takes_nothing() -> None:
    steps = day.through(STORE, 0.5, (100.0,) * 24, [(800.0,) * 24], [True] * 24)
    assert {step.charge for step in steps} == {0.5}
    assert steps[0].given == (100.0,)


def test_what_charging_loses_is_not_in_the_battery() -> None:
    store = day.Store(10 * KWH, 1000.0, 0.8)
    steps = day.through(store, 0.0, (0.0,) * 24, [(100.0,) * 24])
    assert steps[-1].charge == pytest.approx(2.4 * 0.8 / 10)


@given(powers, powers, powers, st.floats(0.0, 1.0), st.floats(0.5, 1.0))
def test_energy_is_kept(load: day.Profile, sun: day.Profile, engine: day.Profile, start: float, share: float) -> None:
    store = day.Store(5 * KWH, 2000.0, share)
    steps = day.through(store, start, load, [sun, engine])
    into = sum(max(step.battery, 0.0) for step in steps) * H * share
    out = sum(max(-step.battery, 0.0) for step in steps) * H
    assert steps[-1].charge * store.capacity_j == pytest.approx(start * store.capacity_j + into - out, abs=1.0)
    for n, step in enumerate(steps):
        assert sum(step.given) + step.missing == pytest.approx(step.load + step.battery, abs=1e-6)
        assert step.unused == pytest.approx(sun[n] + engine[n] - sum(step.given), abs=1e-6)
        assert 0.0 <= step.charge <= 1.0
        assert step.missing >= -1e-9


@given(powers, powers, st.floats(0.0, 1.0), st.floats(0.0, 500.0))
def test_more_load_never_leaves_more_in_the_battery(
    load: day.Profile, sun: day.Profile, start: float, more: float
) -> None:
    heavier = tuple(one + more for one in load)
    for light, heavy in zip(
        day.through(STORE, start, load, [sun]), day.through(STORE, start, heavier, [sun]), strict=True
    ):
        assert heavy.charge <= light.charge + 1e-9


@given(st.floats(0.0, 24 * H), st.just(0.0) | st.floats(1.0, 24 * H), st.sampled_from([1, 24, 96]))
def test_a_window_brings_its_energy_whatever_the_step(start: float, lasts: float, steps: int) -> None:
    profile = day.window(KWH, start, lasts, steps)
    assert day.energy_of(profile) == pytest.approx(KWH if lasts > 0 else 0.0, rel=1e-6)


def test_a_window_past_midnight_goes_on_in_the_morning() -> None:
    profile = day.window(4 * KWH, 22 * H, 4 * H, 24)
    assert profile[22] == profile[23] == profile[0] == profile[1] == pytest.approx(1000.0)
    assert sum(profile[2:22]) == 0.0


@pytest.mark.parametrize("steps", [24, 96, 1440])
def test_sunshine_brings_its_energy_and_peaks_at_noon(steps: int) -> None:
    profile = day.sunshine(KWH, 6 * H, 18 * H, steps)
    assert day.energy_of(profile) == pytest.approx(KWH)
    # Peak of half a sine: pi/2 times its mean over 12 h.
    assert max(profile) == pytest.approx(KWH / (12 * H) * math.pi / 2, rel=0.02)
    assert profile[0] == 0.0


def test_the_air_is_coldest_and_warmest_when_told() -> None:
    def at(hour: float) -> float:
        return day.air_temperature(hour * H, -5.0, 10.0, 6 * H, 15 * H)

    assert at(6) == pytest.approx(-5.0)
    assert at(15) == pytest.approx(5.0)
    assert at(10.5) == pytest.approx(0.0)
    assert at(0) == pytest.approx(at(24))


def test_what_cannot_be_is_refused() -> None:
    for call in (
        lambda: day.through(day.Store(0.0, 1.0, 1.0), 0.5, (1.0,), []),
        lambda: day.through(STORE, 1.5, (1.0,), []),
        lambda: day.through(STORE, 1.0, (), []),
        lambda: day.window(1.0, 0.0, 25 * H, 24),
        lambda: day.sunshine(1.0, 12 * H, 12 * H, 24),
    ):
        with pytest.raises(OutOfRange):
            call()


def test_what_a_battery_gave_is_told_apart_from_what_it_took() -> None:
    sun = (0.0,) * 12 + (300.0,) * 12
    steps = day.through(STORE, 0.5, (100.0,) * 24, [sun])
    assert day.drawn(steps) == pytest.approx(1.2 * KWH)
