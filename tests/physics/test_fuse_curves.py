"""Time-current bands: ordered, falling, never promising more than the documents do."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.outofrange import OutOfRange
from checker.physics import fuse_curves as fc
from checker.physics.tables import table

RATINGS = [
    (family, rating)
    for family in fc.families()
    if family not in fc.NO_PUBLISHED_BAND
    for rating in (5.0, 10.0, 20.0, 30.0, 40.0, 60.0, 63.0, 100.0, 150.0, 200.0, 250.0, 400.0)
]


def _held(family: str, rating: float) -> bool:
    try:
        fc.series_of(family, rating)
    except OutOfRange:
        return False
    return True


HELD = [pair for pair in RATINGS if _held(*pair)]
devices = st.sampled_from(HELD)
multiples = st.floats(0.5, 60.0)


def test_every_family_of_the_vocabulary_is_known() -> None:
    assert set(fc.families()) == {
        "blade",
        "micro blade",
        "large blade",
        "bolt-down strip",
        "bolt-down high voltage strip",
        "class T",
        "cylindrical 10x38",
        "cartridge gG",
        "rewirable",
        "factory link",
        "B curve",
        "C curve",
        "D curve",
        "thermal",
        "dc hydraulic-magnetic",
    }
    assert {family for family, _ in HELD} == set(fc.families()) - set(fc.NO_PUBLISHED_BAND)


@given(devices, multiples)
def test_the_least_time_never_exceeds_the_greatest(device: tuple[str, float], multiple: float) -> None:
    band = fc.time_bounds(*device, multiple * device[1])
    assert 0 <= band.min_s <= band.max_s


@given(devices, multiples, multiples)
def test_a_larger_current_never_takes_longer(device: tuple[str, float], one: float, other: float) -> None:
    small, large = (fc.time_bounds(*device, multiple * device[1]) for multiple in sorted((one, other)))
    assert large.min_s <= small.min_s * (1 + 1e-9)
    assert large.max_s <= small.max_s * (1 + 1e-9)


def _names(device: tuple[str, float]) -> list[str]:
    return [one.series for one in fc.series_of(*device)]


SMALLER_AND_LARGER = [
    (small, large)
    for small in HELD
    for large in HELD
    if small[0] == large[0] and small[1] < large[1] and _names(small) == _names(large)
]


@given(st.sampled_from(SMALLER_AND_LARGER), st.floats(1, 5000))
def test_a_larger_rating_of_the_same_series_never_clears_sooner(
    pair: tuple[tuple[str, float], tuple[str, float]], current: float
) -> None:
    small, large = pair
    assert fc.time_bounds(*large, current).max_s >= fc.time_bounds(*small, current).max_s * (1 - 1e-9)
    assert fc.time_bounds(*large, current).min_s >= fc.time_bounds(*small, current).min_s * (1 - 1e-9)


@given(devices, multiples)
def test_within_the_points_both_readings_agree_and_outside_one_refuses(
    device: tuple[str, float], multiple: float
) -> None:
    series = fc.series_of(*device)
    first, last = max(one.first for one in series), min(one.last for one in series)
    current = multiple * device[1]
    if first * (1 + 1e-9) < multiple < last * (1 - 1e-9):
        assert fc.operating_time(*device, current) == fc.time_bounds(*device, current)
    elif multiple < first * (1 - 1e-9) or multiple > last * (1 + 1e-9):
        with pytest.raises(OutOfRange, match="current, A, through"):
            fc.operating_time(*device, current)


@pytest.mark.parametrize(("family", "rating"), HELD)
def test_on_the_first_and_last_point_there_is_a_number(family: str, rating: float) -> None:
    series = fc.series_of(family, rating)
    first, last = max(one.first for one in series), min(one.last for one in series)
    for multiple in (first, last):
        assert fc.operating_time(family, rating, multiple * rating) == fc.time_bounds(family, rating, multiple * rating)


def test_nothing_promises_that_a_device_opens_at_its_own_rating() -> None:
    for family, rating in HELD:
        assert math.isinf(fc.time_bounds(family, rating, rating).max_s)
        assert fc.conventional_factor(family, rating) >= 1.3


def test_beyond_the_last_point_nothing_promises_a_least_time() -> None:
    for family, rating in HELD:
        assert fc.time_bounds(family, rating, 100 * rating).min_s == 0


@given(devices, multiples)
def test_let_through_of_a_fuse_never_exceeds_time_and_current_of_the_band(
    device: tuple[str, float], multiple: float
) -> None:
    current = multiple * device[1]
    band, energy = fc.time_bounds(*device, current), fc.let_through_energy(*device, current)
    assert energy.min_s == pytest.approx(band.min_s * current**2)
    assert energy.min_s <= energy.max_s * (1 + 1e-9)
    assert energy.max_s <= band.max_s * current**2 * (1 + 1e-9)


def test_beyond_its_last_point_a_fuse_keeps_its_energy_and_a_breaker_its_time() -> None:
    fuse = [fc.let_through_energy("blade", 30, current).max_s for current in (180, 1000, 5000)]
    assert fuse == pytest.approx([180**2 * 0.1] * 3)
    breaker = [fc.let_through_energy("B curve", 16, current).max_s for current in (80, 800)]
    assert breaker == pytest.approx([80**2 * 0.1, 800**2 * 0.1])


def test_a_family_of_two_lengths_is_the_envelope_of_both() -> None:
    short, long = fc.series_of("bolt-down strip", 150)
    band = fc.operating_time("bolt-down strip", 150, 2 * 150)
    assert {short.series, long.series} == {"strip_bolt_in_SF30_30mm", "strip_bolt_in_SF51_51mm"}
    assert band == (pytest.approx(1.0), pytest.approx(100.0))


@pytest.mark.parametrize(
    ("family", "rating", "message"),
    [
        ("factory link", 60, "device family factory link is outside the families with a published band"),
        ("blaed", 10, "device family blaed is outside B curve, C curve, D curve, blade"),
        ("blade", 100, "rating, A, of blade 100 is outside the ratings 41..80, 1..30, 35..40"),
    ],
)
def test_what_has_no_band_is_refused_with_what_there_is(family: str, rating: float, message: str) -> None:
    with pytest.raises(OutOfRange) as caught:
        fc.time_bounds(family, rating, 100)
    assert message in str(caught.value)


def test_no_current_has_no_band() -> None:
    with pytest.raises(OutOfRange, match="current, A, 0"):
        fc.time_bounds("blade", 10, 0)


def test_the_source_names_documents_marks_and_plain_practice() -> None:
    assert fc.band_source("blade", 40) == "ISO 8820-3 [seen]"
    assert fc.band_source("class T", 100) == "UL 248-1 overload table [memory]; common practice, no source"
    assert fc.band_source("thermal", 60) == "common practice, no source"


def test_every_row_has_a_promise_and_rising_multiples_have_falling_times() -> None:
    for row in table(fc.CURVES).rows:
        assert row["min_s"] or row["max_s"]
    for family, rating in HELD:
        for one in fc.series_of(family, rating):
            for edge in (one.least, one.greatest):
                times = [time for _, time in edge]
                assert times == sorted(times, reverse=True)


def test_surge_energy_and_its_time_undo_each_other() -> None:
    assert fc.time_for_energy(fc.surge_energy(50, 0.012), 50) == pytest.approx(0.012)


def test_wire_of_half_the_fusing_current_follows_the_two_thirds_rule() -> None:
    ratio = fc.fusing_diameter_ratio(0.5)
    assert fc.fusing_current(ratio, 80.0) == pytest.approx(40.0)
