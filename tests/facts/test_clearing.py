"""Least faults, clearing times and let-through of small designs, by hand and against published points."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject, trace
from checker.quantities import Range, Unknown
from tests.circuit.designs import battery, design, fuse, lamp

EQUIPMENT = "\n".join([battery("bank"), fuse("F1", 50), lamp("light")])
FEED = "  feed: {from: bank, to: light, run: [1 m via cabin, F1, 9 m via cabin], cable: red, return: same}"
# IEC 60228:2004 table 3, class 5, 35 mm2: 0.554 ohm/km at 20 °C (seen); 0.00393 per K: at 105 °C.
HOT = 0.554e-3 * (1 + 0.00393 * 85)


def of(kind: str, id: str, equipment: str = EQUIPMENT, circuits: str = FEED) -> Subject:
    found = Facts(design(equipment, circuits)).subject(kind, id)
    assert found is not None
    return found


def test_the_least_fault_is_a_low_battery_through_hot_copper_there_and_back() -> None:
    # 12 V nominal rests at 11.8 V when low; 5 mΩ stated, 7.5 mΩ reckoned; 10 m there and back.
    expected = 11.8 / (7.5e-3 + 20 * HOT)
    assert of("device", "F1").prospective_min == pytest.approx(expected, rel=1e-4)


def test_units_in_series_add_their_voltage_and_their_resistance() -> None:
    string = EQUIPMENT.replace(
        battery("bank"),
        "  bank: {kind: bank, units: 2, of: unit, arrangement: 2s1p, joined by: chain}",
    )
    parts = "parts: {unit: {kind: battery, chemistry: AGM lead acid, nominal: 12 V, internal resistance: 5 mΩ}}"
    found = Facts(design(string, FEED, parts)).subject("device", "F1")
    assert found is not None
    assert found.prospective_min == pytest.approx(23.6 / (15e-3 + 20 * HOT), rel=1e-4)


def test_the_least_fault_is_never_above_the_greatest() -> None:
    device = of("device", "F1")
    assert device.prospective_min < device.prospective_max


def test_a_device_opens_on_its_least_fault_as_the_band_says() -> None:
    device = of("device", "F1")
    # 530 A are 10.6 times 50 A; the strip of 30 mm promises 1 s at 5 times and above.
    assert device.clears_by == 1.0
    assert device.clearing_time == Range(0.0, 1.0)


def test_the_own_curve_decides_where_it_is_written() -> None:
    curve = "curve: {100 A: 2..20 s, 1000 A: 0.02..0.2 s}"
    own = EQUIPMENT.replace("breaking capacity: 5 kA", f"breaking capacity: 5 kA, {curve}")
    device = of("device", "F1", own)
    current = device.prospective_min
    assert device.clears_by == pytest.approx(20.0 * (100.0 / current) ** 2, rel=1e-6)


def test_no_battery_behind_a_device_is_none_and_not_unknown() -> None:
    equipment = "\n".join([
        "  box: {kind: dc converter, both ways: false, at fault: hiccup, sides: {high: {nominal: 48 V, current: 5 A}, "
        "low: {nominal: 12 V, current: 20 A, peak: {current: 60 A, time: 1 s}}}}", fuse("F1", 50), lamp("light"),
    ])  # fmt: skip
    device = of("device", "F1", equipment, FEED.replace("from: bank", "from: box.low"))
    assert device.fed_by_storage is False
    assert device.prospective_min is None
    assert device.limited_current == Range(0.0, 20.0)
    assert isinstance(device.limited_clears_by, Unknown)


def test_a_converter_that_limits_never_opens_a_fuse_above_its_limit() -> None:
    equipment = "\n".join([
        "  box: {kind: dc converter, both ways: false, at fault: limits, sides: {high: {nominal: 48 V, current: 5 A}, "
        "low: {nominal: 12 V, current: 20 A}}}", fuse("F1", 50), lamp("light"),
    ])  # fmt: skip
    device = of("device", "F1", equipment, FEED.replace("from: bank", "from: box.low"))
    assert device.limited_current == 20.0
    assert device.limited_clears_by == float("inf")


def test_the_peak_of_a_converter_opens_a_small_fuse() -> None:
    equipment = "\n".join([
        "  box: {kind: dc converter, both ways: false, at fault: hiccup, sides: {high: {nominal: 48 V, current: 20 A}, "
        "low: {nominal: 12 V, current: 40 A, peak: {current: 80 A, time: 1 s}}}}",
        "  F1: {kind: fuse, family: blade, rating: 10 A}", lamp("light"),
    ])  # fmt: skip
    device = of("device", "F1", equipment, FEED.replace("from: bank", "from: box.low"))
    # Blade C at 600 % and above: 0.1 s.
    assert device.limited_clears_by == 0.1


def test_a_battery_of_unknown_resistance_leaves_it_unknown() -> None:
    unknown = EQUIPMENT.replace("internal resistance: 5 mΩ", "internal resistance: unknown")
    assert isinstance(of("device", "F1", unknown).prospective_min, Unknown)


def test_a_conductor_is_charged_with_what_the_device_lets_through() -> None:
    conductor, device = of("conductor", "feed"), of("device", "F1")
    assert conductor.let_through == device.let_through
    assert conductor.withstands_fault is True


def test_parallel_batteries_add_their_currents_in_the_conductor() -> None:
    equipment = "\n".join([battery("b1"), battery("b2"), fuse("F1", 50), fuse("F2", 50), fuse("F3", 50), lamp("light"),
                           "  bar: {kind: bar, poles: [+, -]}"])  # fmt: skip
    circuits = """
  one: {from: b1, to: bar, run: [0.1 m via cabin, F1, 4 m via cabin], cable: red, return: same}
  two: {from: b2, to: bar, run: [0.1 m via cabin, F2, 4 m via cabin], cable: red, return: same}
  feed: {from: bar, to: light, run: [5 m via cabin], cable: red, return: same}
"""
    feed = of("conductor", "feed", equipment, circuits)
    one = of("device", "F1", equipment, circuits).let_through
    assert isinstance(feed.let_through, Range) and isinstance(one, Range)
    # (√E + √E)² = 4 E.
    assert feed.let_through.high == pytest.approx(4 * one.high)


def test_a_short_way_before_the_branch_device_is_left_to_the_rule_on_distance() -> None:
    equipment = "\n".join([battery("bank"), fuse("F1", 400), fuse("F2", 40), lamp("light"),
                           "  bar: {kind: bar, poles: [+, -]}"])  # fmt: skip
    circuits = """
  main: {from: bank, to: bar, run: [0.1 m via cabin, F1, 1 m via cabin], cable: red, return: same}
  feed: {from: bar, to: light, run: [STUB via cabin, F2, 5 m via cabin], cable: red, return: same}
"""
    short = of("conductor", "feed", equipment, circuits.replace("STUB", "0.2 m")).let_through
    long = of("conductor", "feed", equipment, circuits.replace("STUB", "3.5 m")).let_through
    assert short.high < long.high


def test_what_a_short_lets_into_a_live_conductor_comes_back_through_its_return() -> None:
    assert of("conductor", "feed return").is_cleared_by_device is True
    assert repr(of("conductor", "feed return").let_through) == repr(of("conductor", "feed").let_through)


def test_the_working_names_battery_band_and_assumption() -> None:
    step = trace(of("device", "F1"), "clears_by")
    notes = [note for one in (step, *step.steps) for note in one.notes]
    assert any("band: " in note for note in notes)
    assert any("bank: 11.8 V" in note for note in notes)
    assert any("10 % charged" in note for note in notes)
    assert "equipment.bank.internal resistance" in {leaf.path for leaf in step.leaves()}


def test_a_fact_is_the_same_whether_its_working_is_shown_or_not() -> None:
    for kind, id, name in (("device", "F1", "clears_by"), ("conductor", "feed", "let_through")):
        subject = of(kind, id)
        assert trace(subject, name).value == getattr(subject, name)
