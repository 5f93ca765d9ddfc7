"""Whether a mode holds: by hand on one battery, one cable and one load of constant power."""

from __future__ import annotations

import math

import pytest

from checker.facts.subject import Facts, Subject, trace
from checker.quantities import Range, Unknown
from checker.reading import read_text

ONE = """
fitout: 1
title: One load of constant power
code: intl
vehicle: {kind: campervan, ambient: {low: 20 °C, high: 20 °C}}
cables: {wire: {size: 2.5 mm2, cores: 2, insulation: 90 °C}}
places: {cabin: {kind: living space, temperature: 20..20 °C}}
equipment:
  bank:   {kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 100 Ah, internal resistance: 5 mΩ}
  heater: {kind: load, power: POWER, voltage: 1..16 V, place: cabin}
circuits:
  feed: {from: bank, to: heater, run: [20 m via cabin], cable: wire}
modes:
  on: {engine: stopped, charge: 50 %, running: {heater: POWER}}
"""
# IEC 60228:2004 table 3, class 5, 2.5 mm2: 7.98 ohm/km at 20 °C (seen), 20 m there and back; at 90 °C 1 + 0.00393 x 70.
HOT_OHM = 40 * 7.98e-3 * (1 + 0.00393 * 70)
COLD_OHM = 40 * 7.98e-3


def on(power: str, *edits: tuple[str, str]) -> Subject:
    found = Facts(read_text(ONE.replace("POWER", power), "one", edits)).subject("mode", "on")
    assert found is not None
    return found


def test_half_the_voltage_is_the_end_of_what_a_resistance_can_pass() -> None:
    # A load of constant power behind a resistance R finds a point up to U^2 / 4R. A battery of 12 V, half charged,
    # rests at 12.0 to 12.6 V: between 82 W (hot, low) and 125 W (cold, high, joints left out) nobody knows.
    surely = 12.0**2 / (4 * (HOT_OHM + 0.01))
    never = 12.8**2 / (4 * COLD_OHM)
    assert 80 < surely < 90
    assert 120 < never < 130
    assert on(f"{0.9 * surely:.0f} W").holds is True
    assert on(f"{1.1 * never:.0f} W").holds is False


def test_without_a_point_the_reason_is_told_and_nothing_is_counted() -> None:
    found = on("1 kW")
    assert "the voltage collapses: heater" in found.trouble
    assert isinstance(found.stopped, Unknown)
    assert on("20 W").trouble == ""
    assert on("20 W").stopped == 0.0


def test_what_lies_between_is_open() -> None:
    found = on("100 W", ("cables.wire.size", "2..3 mm2")).holds
    assert isinstance(found, Unknown)
    # More than the likely cable can pass, and not more than the thicker one of the range.
    assert isinstance(on("130 W", ("cables.wire.size", "2..4 mm2")).holds, Unknown)
    assert on("130 W", ("cables.wire.size", "2..2.4 mm2")).holds is False


def test_a_cable_that_nobody_knows_leaves_it_open() -> None:
    found = on("60 W", ("circuits.feed.cable", "unknown")).holds
    assert isinstance(found, Unknown)
    assert "feed" in found.reason


def test_an_inverter_that_a_low_voltage_stops_is_counted_and_named() -> None:
    stops = (
        ("equipment.inverter", "{kind: inverter, power: 1 kW, efficiency: 0.9, no load: 10 W, "
                               "dc: {nominal: 12 V, voltage: LOWEST..16 V}}"),
        ("circuits.inverting", "{from: bank, to: inverter.dc, run: [1 m via cabin], cable: wire}"),
        ("modes.on.inverter", "inverting"),
    )  # fmt: skip

    def with_lowest(volts: str) -> Subject:
        return on("5 W", *((path, text.replace("LOWEST", volts)) for path, text in stops))

    assert with_lowest("10.5 V").stopped == 0.0
    assert with_lowest("14 V").stopped == 1.0
    assert with_lowest("14 V").stopped_names == "inverter"
    assert with_lowest("10.5 V").stopped_names == ""
    edge = with_lowest("12.1 V").stopped
    assert isinstance(edge, Range) and (edge.low, edge.high) == (0.0, 1.0)


def test_the_working_reaches_the_lines_of_the_file() -> None:
    found = on("20 W")
    paths = {one.path for one in trace(found, "holds").leaves()}
    assert "equipment.bank.internal resistance" in paths
    assert math.isclose(COLD_OHM, 0.3192)


@pytest.mark.parametrize("power", ["20 W", "1 kW"])
def test_shown_and_not_shown_agree(power: str) -> None:
    found = on(power)
    assert trace(found, "holds").value == found.holds
