"""Short circuits at the far end of each circuit in each mode, against hand calculation."""

from __future__ import annotations

import pytest

import checker.facts  # noqa: F401  fills the catalogue
from checker.facts.device import faults_of, norton
from checker.facts.subject import Facts, Subject, trace
from checker.quantities import Range, Unknown
from checker.reading import read_text
from tests.benchmarks.generator import coach

# 25 mm2 of class 5: 0.780 mohm a metre at 20 °C (IEC 60228), 0.994 mohm at the 90 °C of its insulation.
COLD, HOT = 0.780e-3, 0.780e-3 * (1.0 + 0.00393 * 70.0)
TEXT = """fitout: 1
title: faults
code: intl
vehicle: {kind: campervan, ambient: {low: 0 °C, high: 40 °C}, chassis: {resistance: 2 mΩ}}
cables: {red: {size: 25 mm2, cores: 1, strands: flexible, insulation: 90 °C}}
equipment:
  one: {kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 100 Ah, internal resistance: 5 mΩ}
  two: {kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 50 Ah, internal resistance: 9 mΩ}
  S: {kind: switch, rating: 100 A, operated: by hand}
  bus: {kind: bar, poles: [+, -]}
  alt: {kind: alternator, nominal: 12 V, rating: 100 A, set voltage: 14.2..14.4 V,
        short circuit current: 150 A}
  winch: {kind: motor, running: 40 A, stall: 200 A, voltage: 10..15 V}
  con: {kind: dc converter, both ways: false, isolated: true, efficiency: 0.9, at fault: limits,
        settings: {charge voltage: 27 V}, sides: {low: {nominal: 12 V, current: 40 A}, high: {nominal: 24 V,
        current: 10 A, peak: {current: 14 A, time: 1 s}}}}
  far: {kind: load, power: 100 W, voltage: 20..30 V}
circuits:
  a: {from: one, to: bus, run: [1 m], cable: red, return: same}
  b: {from: two, to: bus, run: [1 m, S, 2 m], cable: red, return: same}
  c: {from: alt.b+, to: bus, run: [1 m], cable: red, return: chassis}
  w: {from: bus, to: winch, run: [4 m], cable: red, return: same}
  into: {from: bus, to: con.low, run: [1 m], cable: red, return: same}
  out: {from: con.high, to: far, run: [5 m], cable: red, return: same}
modes:
  both: {engine: stopped}
  one-alone: {engine: stopped, set: {S: open}}
  unsure: {engine: stopped, set: {S: unknown}}
  driving: {engine: 2000 rpm, set: {S: open}}
  winching: {engine: stopped, set: {S: open}, running: {winch: 40 A}}
"""


def fault(circuit: str, mode: str, *changes: tuple[str, str]) -> Subject:
    text = TEXT
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    found = Facts(read_text(text)).subject("fault", f"{circuit} in {mode}")
    assert found is not None
    return found


def greatest(volts: float, *ways: float, beyond: float = 0.0) -> float:
    """Batteries of one voltage behind resistances side by side, and a lead behind all of them."""
    return volts / (1.0 / sum(1.0 / ohm for ohm in ways) + beyond)


FULL = 14.8  # the highest a 12 V AGM battery and its charger come to, as conductor.highest_voltage
ONE, TWO = 0.005 + COLD, 0.009 + 3.0 * COLD
LOW = 11.8


def test_all_sources_together_are_the_greatest() -> None:
    assert fault("w", "both").greatest == pytest.approx(greatest(FULL, ONE, TWO, beyond=4.0 * COLD), rel=2e-3)


def test_an_open_switch_takes_its_battery_out() -> None:
    assert fault("w", "one-alone").greatest == pytest.approx(greatest(FULL, ONE, beyond=4.0 * COLD), rel=2e-3)
    assert fault("w", "unsure").greatest == fault("w", "both").greatest


def test_the_weakest_battery_alone_is_the_least_hot_there_and_back() -> None:
    s = fault("w", "both")
    assert s.least == pytest.approx(LOW / (1.5 * 0.009 + 2.0 * 7.0 * HOT), rel=2e-3)
    assert s.weakest_source == "two"
    assert fault("w", "one-alone").least == pytest.approx(LOW / (1.5 * 0.005 + 2.0 * 5.0 * HOT), rel=2e-3)


def test_what_limits_itself_adds_its_limit_where_it_runs() -> None:
    quiet, driving = fault("w", "one-alone").greatest, fault("w", "driving").greatest
    assert driving == pytest.approx(quiet + 150.0, rel=1e-6)


def test_a_motor_that_turns_gives_back_up_to_its_stall_current() -> None:
    quiet, winching = fault("a", "one-alone").greatest, fault("a", "winching").greatest
    assert isinstance(winching, Range)
    assert (winching.low, winching.high) == pytest.approx((quiet, quiet + 200.0))


def test_behind_a_converter_there_is_what_it_limits_itself_to() -> None:
    s = fault("out", "both")
    assert (s.greatest, s.least, s.weakest_source) == (14.0, 10.0, "con.high")


def test_a_converter_that_does_not_say_what_it_does_may_give_nothing() -> None:
    least = fault("out", "both", ("at fault: limits,\n", "\n")).least
    assert least == Range(0.0, 10.0)


def test_an_alternator_alone_may_give_nothing_and_at_most_its_short_circuit_current() -> None:
    alone = (
        ("set: {S: open}}\n  winching", "set: {S: open, S1: open}}\n  winching"),
        ("a: {from: one, to: bus, run: [1 m]", "a: {from: one, to: bus, run: [0.5 m, S1, 0.5 m]"),
        ("  S: {", "  S1: {kind: switch, rating: 100 A, operated: by hand}\n  S: {"),
    )
    s = fault("w", "driving", *alone)
    assert (s.least, s.greatest, s.weakest_source) == (Range(0.0, 150.0), 150.0, "alt")


def test_a_second_way_round_is_counted() -> None:
    # A like lead beside the winch's: half the resistance of that stretch.
    more = ("  into:", "  w2: {from: bus, to: winch, run: [4 m], cable: red, return: same}\n  into:")
    there = fault("w", "one-alone", more)
    assert there.greatest == pytest.approx(greatest(FULL, ONE, beyond=2.0 * COLD), rel=2e-3)
    assert there.least == pytest.approx(LOW / (1.5 * 0.005 + 2.0 * 3.0 * HOT), rel=2e-3)


def test_of_a_battery_without_a_stated_resistance_nothing_is_told() -> None:
    found = fault("w", "both", ("internal resistance: 9 mΩ", "internal resistance: unknown"))
    for value in (found.greatest, found.least):
        assert isinstance(value, Unknown)
        assert "two" in value.reason


def test_a_battery_written_without_resistance_is_told_in_words() -> None:
    found = fault("w", "both", ("internal resistance: 9 mΩ", "internal resistance: 0 mΩ")).greatest
    assert isinstance(found, Unknown)
    assert "two is written as having no internal resistance" in found.reason


def test_a_battery_told_by_a_range_of_its_short_circuit_current_leaves_a_range() -> None:
    found = fault("w", "one-alone", ("internal resistance: 5 mΩ", "short circuit current: 1.9..2.1 kA")).greatest
    assert isinstance(found, Range)
    assert found.low == pytest.approx(greatest(FULL, FULL / 1900 + COLD, beyond=4.0 * COLD), rel=2e-3)
    assert found.high == pytest.approx(greatest(FULL, FULL / 2100 + COLD, beyond=4.0 * COLD), rel=2e-3)


def test_a_battery_of_unknown_voltage_gives_its_stated_current_at_most_and_perhaps_nothing() -> None:
    changed = "chemistry: unknown, nominal: unknown, capacity: 100 Ah, short circuit current: 2 kA"
    told = "chemistry: AGM lead acid, nominal: 12 V, capacity: 100 Ah, internal resistance: 5 mΩ"
    assert fault("w", "one-alone", (told, changed)).greatest == Range(0.0, 2000.0)


def test_a_stretch_of_unknown_length_leaves_a_range() -> None:
    s = fault("w", "one-alone", ("to: winch, run: [4 m]", "to: winch, run: [2..6 m]"))
    assert isinstance(s.greatest, Range) and isinstance(s.least, Range)
    assert s.greatest.low == pytest.approx(greatest(FULL, ONE, beyond=6.0 * COLD), rel=2e-3)
    assert s.greatest.high == pytest.approx(greatest(FULL, ONE, beyond=2.0 * COLD), rel=2e-3)
    assert s.least.high == pytest.approx(LOW / (1.5 * 0.005 + 2.0 * 3.0 * HOT), rel=2e-3)


def test_the_working_names_the_weakest() -> None:
    assert any("two brings the least" in note for note in trace(fault("w", "both"), "least").notes)


def test_every_end_lies_within_what_the_walks_say_for_all_states_at_once() -> None:
    facts = Facts(read_text(coach(60)))
    walks, network = faults_of(facts), facts.network
    compared = 0
    for s in facts.subjects("fault"):
        node = s.item.conductor.end
        arriving = [walks.arriving(edge, node) for edge, _ in network.near[node]]
        own = [norton(facts, source).current for source in network.sources_at.get(node, ())]
        if isinstance(s.greatest, float | Range) and all(isinstance(one, float | Range) for one in [*arriving, *own]):
            assert low(s.greatest) <= sum(map(high, [*arriving, *own])) * (1.0 + 1e-9)
            compared += 1
    assert compared > 100


def low(value: float | Range) -> float:
    return value.low if isinstance(value, Range) else value


def high(value: float | Range) -> float:
    return value.high if isinstance(value, Range) else value
