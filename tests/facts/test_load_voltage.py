"""Voltages at loads by hand."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from checker.reading import read_text
from tests.circuit.designs import HEAD, battery, fuse

MOTOR = "  pump: {kind: motor, running: 10 A, start: {current: 40 A, time: 0.2 s}, voltage: 10..15 V}"
FEED = "  feed: {from: bank, to: pump, run: [0.2 m via cabin, F1, 4.8 m via cabin], cable: red, return: same}"
# IEC 60228:2004 table 3, class 5, 35 mm2 (seen), at 105 °C.
LOOP = 10 * 0.554e-3 * (1 + 0.00393 * 85)


def load(
    equipment: str, circuits: str = FEED, modes: str = "modes: {rest: {engine: stopped, running: {pump: 10 A}}}"
) -> Subject:
    head = HEAD.replace("modes: {rest: {engine: stopped}}", modes)
    found = Facts(read_text(f"{head}\nequipment:\n{equipment}\ncircuits:\n{circuits}\n")).subject("load", "pump")
    assert found is not None
    return found


ON_BATTERY = "\n".join([battery("bank"), fuse("F1", 50), MOTOR])


def test_on_a_battery_the_lowest_is_a_low_battery_less_the_drop() -> None:
    assert load(ON_BATTERY).lowest_voltage == pytest.approx(11.8 - 10 * LOOP, rel=1e-4)


def test_a_start_also_pulls_the_battery_down() -> None:
    # 5 mΩ stated, 7.5 mΩ reckoned for a low battery.
    assert load(ON_BATTERY).start_voltage == pytest.approx(11.8 - 40 * (7.5e-3 + LOOP), rel=1e-4)


def test_where_the_loop_cannot_bring_the_start_nothing_is_left() -> None:
    assert load(ON_BATTERY.replace("current: 40 A", "current: 4 kA")).start_voltage == 0.0


def test_with_the_engine_running_the_alternator_holds_its_lower_setting() -> None:
    alternator = "  gen: {kind: alternator, nominal: 12 V, rating: 90 A, set voltage: 13.8..14.4 V}"
    charge = FEED + "\n  charge: {from: gen.b+, to: bank, run: [1 m via cabin], cable: red, return: chassis}"
    driving = "modes: {drive: {engine: 2000 rpm, running: {pump: 10 A}}}"
    found = load(f"{ON_BATTERY}\n{alternator}", charge, driving)
    assert found.lowest_voltage == pytest.approx(13.8 - 10 * LOOP, rel=1e-4)
    assert found.highest_voltage == pytest.approx(14.8)


BOX = (
    "  bank: {{kind: dc converter, both ways: false, at fault: limits, settings: {{feed voltage: 13.4 V}}, "
    "sides: {{high: {{nominal: 48 V, current: 20 A}}, "
    "low: {{nominal: 12 V, current: 30 A, peak: {{current: {peak}, time: 1 s}}}}}}}}"
)


def test_a_converter_holds_its_setting_up_to_its_peak() -> None:
    found = load(
        "\n".join([BOX.format(peak="60 A"), fuse("F1", 50), MOTOR]), FEED.replace("from: bank", "from: bank.low")
    )
    assert found.start_voltage == pytest.approx(13.4 - 40 * LOOP, rel=1e-4)


def test_beyond_its_peak_a_converter_that_limits_shares_the_voltage_with_the_motor() -> None:
    box = BOX.format(peak="35 A")
    found = load("\n".join([box, fuse("F1", 50), MOTOR]), FEED.replace("from: bank", "from: bank.low"))
    assert found.start_voltage == pytest.approx(13.4 * 35 / 40 - 40 * LOOP, rel=1e-4)


def test_beyond_its_peak_a_converter_that_may_shut_down_leaves_it_unknown() -> None:
    box = BOX.format(peak="35 A").replace("at fault: limits", "at fault: hiccup")
    found = load("\n".join([box, fuse("F1", 50), MOTOR]), FEED.replace("from: bank", "from: bank.low"))
    assert isinstance(found.start_voltage, Unknown)


def test_a_battery_of_unknown_chemistry_leaves_the_lowest_unknown() -> None:
    assert isinstance(load(ON_BATTERY.replace("AGM lead acid", "unknown")).lowest_voltage, Unknown)
