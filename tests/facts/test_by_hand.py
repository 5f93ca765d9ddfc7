"""Currents, faults, clearing and first moments of the coach, worked by hand from the lines of its file.

Resistances: IEC 60228:2004 table 3, class 5, ohm/km at 20 °C (seen): 25 mm2 0.780, 35 mm2 0.554, 70 mm2 0.272.
Copper gains 0.00393 per K above 20 °C; insulation of 105 °C is 85 K above.
"""

from __future__ import annotations

import math

import pytest

from checker.physics.battery import lfp_cell_voltage
from checker.quantities import Range
from tests.facts.coach import one

R25, R35, R70 = 0.780e-3, 0.554e-3, 0.272e-3
HOT = 1 + 0.00393 * 85
LIMITS = ("equipment.converter.at fault", "limits")


def test_capacity_of_the_main_cable() -> None:
    # 33 CFR 183.425 Table 5, 105 °C: 330 A at 67.43 mm2, 385 A at 85.03 mm2; 70 mm2 between them on log-log paper.
    cell = 330 * (385 / 330) ** (math.log(70 / 67.4309) / math.log(85.0288 / 67.4309))
    # Its hottest place is the inverter locker, 55 °C: square root of 50 K over 75 K, below the 0.85 from 50 °C up.
    factor = min(math.sqrt(50 / 75), 0.85)
    found = one("conductor", "bank-main")
    assert found.table_capacity == pytest.approx(cell * factor, rel=1e-3)
    assert found.carrying_capacity == min(found.table_capacity, found.heat_capacity) < 385


def test_current_of_the_main_cable_is_the_worst_that_any_mode_or_load_asks() -> None:
    # The outlets alone, 10 A at 230 V through the inverter at its lowest 42 V and 92 %; the converter alone takes 55 A.
    found = one("conductor", "bank-main").design_current
    assert isinstance(found, Range)
    assert found.high == pytest.approx(10 * 230 / 0.92 / 42)
    assert found.low == 55.0


def test_greatest_fault_at_the_main_fuse() -> None:
    # 16 full cells: 58.4 V; 2.4 kA stated: 24.3 mΩ a unit, behind 0.35 m of 25 mm2; three of them; 0.15 m of 70 mm2.
    unit = 58.4 / 2400 + 0.35 * R25
    by_hand = 58.4 / (unit / 3 + 0.15 * R70)
    assert one("device", "F1").prospective_max == pytest.approx(by_hand, rel=2e-3)
    assert by_hand == pytest.approx(7.08e3, rel=1e-2)


def test_greatest_fault_at_the_fuse_of_one_unit_comes_from_the_other_two() -> None:
    unit = 58.4 / 2400 + 0.35 * R25
    by_hand = 58.4 / (unit / 2 + 0.35 * R25)
    found = one("device", "house-bank.fuse-1").prospective_max
    # What converter, sun and inverter may add through the bar stays below a tenth.
    assert isinstance(found, Range)
    assert found.low == pytest.approx(by_hand, rel=1e-4)
    assert found.high < 1.1 * by_hand


def test_least_fault_behind_the_fuse_of_the_converter() -> None:
    # One unit alone, 10 % charged, 1.5 times 24.3 mΩ; leads there and back, as hot as their insulation; 4 m to the end.
    rested = 16 * lfp_cell_voltage(0.1)[0]
    lead = 2 * 0.35 * R25 * HOT
    main = (0.15 + 0.3 + 0.9 + 0.9 + 0.2 + 0.2) * R70 * HOT
    run = 2 * (0.1 + 0.4 + 3.1 + 0.4) * R35 * HOT
    by_hand = rested / (1.5 * 58.4 / 2400 + lead + main + run)
    device = one("device", "F7")
    assert device.prospective_min == pytest.approx(by_hand, rel=3e-3)
    # 16 times 70 A: beyond the last point, 6 times within 1 s, nothing takes longer.
    assert by_hand / 70 > 6
    assert device.clears_by == 1.0


def test_a_time_between_two_points_of_a_curve_lies_on_log_log_paper() -> None:
    # The curve of F5: 40 s at 80 A, 2.5 s at 240 A. A motor held still that takes 120 A is off after
    by_hand = 40 * (2.5 / 40) ** (math.log(120 / 80) / math.log(240 / 80))
    stalled = one("load", "slide-motor", ("equipment.slide-motor.stall", "120 A"))
    assert stalled.stall_clears_by == pytest.approx(by_hand, rel=1e-6)
    # Below the first point nothing is promised, above the last nothing is extrapolated.
    assert one("load", "slide-motor", ("equipment.slide-motor.stall", "50 A")).stall_clears_by == math.inf
    assert one("load", "slide-motor", ("equipment.slide-motor.stall", "5 kA")).stall_clears_by == 0.05


def test_what_a_conductor_stands_for_a_short_time() -> None:
    # k = sqrt(Qc (B + 20) / rho20 ln((B + 160) / (B + 105))): copper 3.45e-3 J/K mm3, 17.241e-6 ohm mm, B 234.5.
    k = math.sqrt(3.45e-3 * 254.5 / 17.241e-6 * math.log((234.5 + 160) / (234.5 + 105)))
    assert k == pytest.approx(87.5, rel=5e-3)
    assert one("conductor", "inverter-feed").short_time_limit == pytest.approx((k * 35) ** 2, rel=1e-3)
    assert one("conductor", "inverter-feed").withstands_fault is True


def test_a_link_that_both_ends_feed_has_a_device_at_each() -> None:
    near = {one.id: one for one in one("conductor", "link-12").approaches}
    assert [one.length_before_device for one in near.values() if one.source_is_storage] == [0.2]
    assert all(one.has_device for one in near.values())


def test_a_start_on_a_bus_without_a_battery_stops_at_the_peak_of_the_converter() -> None:
    # What starts with the rest beyond 260 A pulls a converter that limits down to 13.4 V times peak over asked.
    heavy = ("equipment.slide-motor.start.current", "400 A")
    converter = one("converter", "converter", LIMITS, heavy)
    asked = converter.peak_bus_current
    assert asked > 400
    assert converter.voltage_at_start == pytest.approx(13.4 * 260 / asked)
    assert one("converter", "converter").voltage_at_start == 13.4


def test_load_dump_of_the_alternator() -> None:
    # ISO 16750-2: 10 U n / (0.8 I 12000) at 6000 rev/min; 101 V at most, clamped at 35 V; 400 ms counted to 10 %.
    inner = 10 * 12 * 6000 / (0.8 * 280 * 12000)
    alternator = one("converter", "alternator")
    assert alternator.load_dump_resistance == pytest.approx(inner)
    assert alternator.load_dump_current == pytest.approx((101 - 35) / inner)
    # The falling pulse added up in steps of ten microseconds, base at its highest set voltage.
    base, tau, step = 14.6, 0.4 / math.log(10), 1e-5
    swallowed, time = 0.0, step / 2
    while (volts := base + (101 - base) * math.exp(-time / tau)) > 35:
        swallowed += 35 * (volts - 35) / inner * step
        time += step
    assert alternator.load_dump_energy == pytest.approx(swallowed, rel=1e-3)


def test_the_arc_of_the_main_switch() -> None:
    # L of 1.35 m at 0.5 to 1.2 µH/m, at most 59.5 A, arc of 80 V against 58.4 V: L I^2 / 2 times 80 / 21.6.
    found = one("switch", "bank-isolator").opening_arc
    by_hand = 0.5 * 1.2e-6 * 1.35 * (2300 / 0.92 / 42) ** 2 * 80 / (80 - 58.4)
    assert found.high == pytest.approx(by_hand, rel=1e-6)


def test_time_constants_of_a_pre_charge() -> None:
    # Three time constants reach 95 %: 22 ohm and 15 mF give 0.33 s.
    edits = (("equipment.bank-isolator.precharge", "by hand"), ("equipment.bank-isolator.precharge resistance", "22 Ω"))
    found = one("switch", "bank-isolator", *edits, ("equipment.bank-isolator.precharge time", "0.99 s"))
    assert found.precharge_share == pytest.approx(1 - math.exp(-3))
