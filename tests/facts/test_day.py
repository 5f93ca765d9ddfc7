"""The day of a small house, by hand, and its agreement with the sums of the energy facts."""

from __future__ import annotations

import math

import pytest

from checker.facts.day import DayInputs, DayRun, day_inputs, day_run, profiles, refill_time, shares, trip_runs
from checker.facts.subject import Facts, Subject, trace
from checker.physics.day import energy_of
from checker.quantities import Range, Unknown
from checker.reading import read_text
from tests.circuit.designs import HEAD

EQUIPMENT = """
  bank: {kind: battery, chemistry: lithium iron phosphate, nominal: 12 V, cells: 4, capacity: 100 Ah, purpose: house,
         place: cabin, window: {charge: 0..45 °C}, bms: {charge limit: 50 A}}
  panel: {kind: solar array, modules: 1, arrangement: 1s1p, power: 200 W, open voltage: 22 V, short current: 11 A}
  sun: {kind: solar controller, output: {nominal: 12 V, current: 15 A}, idle: 0 W, settings: {charge voltage: 14 V}}
  light: {kind: lamp, power: 20 W, voltage: 10..15 V}
  cooler: {kind: fridge, power: 40 W, duty: 50 %, voltage: 10..15 V}
"""
CIRCUITS = """
  charge: {from: sun.battery, to: bank, run: [1 m], cable: red, return: same}
  roof: {from: panel, to: sun.pv, run: [1 m], cable: red, return: same}
  lights: {from: bank, to: light, run: [1 m], cable: red, return: same}
  cooling: {from: bank, to: cooler, run: [1 m], cable: red, return: same}
"""
DAY = "{sun hours: 4 h, driving: 0 h, shore: 0 h, uses: {light: 5 h, cooler: 24 h}, nights wanted: 1, keep: 20 %}"


def design(day: str = DAY, equipment: str = EQUIPMENT, low: str = "5 °C") -> Subject:
    head = HEAD.replace("low: 0 °C", f"low: {low}")
    text = f"{head}\nequipment:{equipment}\ncircuits:{CIRCUITS}\nday: {{capacity left: 100 %, {day[1:]}\n"
    return Facts(read_text(text)).subjects("design")[0]


def inputs(s: Subject) -> DayInputs:
    found = day_inputs(s)
    assert isinstance(found, DayInputs)
    return found


def test_the_profiles_hold_the_energy_of_the_facts() -> None:
    s = design()
    loads, sources = profiles(inputs(s), 96, worse=True)
    assert energy_of(loads) == pytest.approx(s.daily_use)
    assert energy_of(sources[0]) == pytest.approx(s.solar_yield)


def test_a_day_by_hand() -> None:
    # 20 W from 17 to 22 h; sun: 200 W · 4 h · 75 % = 600 Wh, of which 97 % of what charges stays.
    s = design(DAY.replace("{light: 5 h, cooler: 24 h}", "{light: 5 h}"))
    assert s.daily_use == pytest.approx(100 * 3600)
    last_hour = 600 * (1 - math.cos(math.pi / 12)) / 2  # of half a sine of 12 h; less than the lamp takes
    run = day_run(inputs(s), 0.3)
    stored = (600 - last_hour) * 0.97 - (100 - last_hour)
    assert run.worse[-1].charge == pytest.approx(0.3 + stored / 1200)
    assert run.worse == run.better


def test_the_night_takes_what_the_cooler_takes() -> None:
    run = day_run(inputs(design()), 1.0)
    # Six hours of 20 W out of 1200 Wh.
    assert run.worse[23].charge == pytest.approx(1.0 - 6 * 20 / 1200)


def test_a_use_told_in_hours_ends_at_ten_in_the_evening() -> None:
    loads, _ = profiles(inputs(design()), 24, worse=True)
    assert [round(power) for power in loads[16:23]] == [20, 40, 40, 40, 40, 40, 20]


def test_a_range_gives_a_range_and_both_ends_of_it_are_days_of_their_own() -> None:
    wide = design(DAY.replace("sun hours: 4 h", "sun hours: 2..4 h"))
    poor, rich = design(DAY.replace("sun hours: 4 h", "sun hours: 2 h")), design()
    assert isinstance(wide.lowest_charge, Range)
    assert wide.lowest_charge.low == pytest.approx(poor.lowest_charge)
    assert wide.lowest_charge.high == pytest.approx(rich.lowest_charge)


def test_what_is_not_known_is_named_and_leaves_the_fact_unknown() -> None:
    s = design(DAY.replace("shore: 0 h, ", ""))
    assert isinstance(s.lowest_charge, Unknown)
    assert "what shore brings" in str(s.lowest_charge.reason)
    assert inputs(s).left_out == ("what shore brings",)


def test_without_a_battery_there_is_no_day() -> None:
    s = design(equipment=EQUIPMENT.replace("purpose: house", "purpose: starting"))
    assert isinstance(day_inputs(s), Unknown)


def test_a_battery_that_may_not_be_charged_in_frost_waits_for_the_warm_hours() -> None:
    frost = design(low="-5 °C")
    assert frost.cold_hours == pytest.approx(12 * 3600, abs=900)
    assert design().cold_hours == 0.0
    assert design(low="-20 °C").cold_hours == 24 * 3600
    warm = day_run(inputs(frost), 0.5)
    cold = day_run(inputs(frost), 0.5, cold=True)
    assert cold.worse[-1].charge < warm.worse[-1].charge


def test_the_sun_gives_all_where_nothing_else_does() -> None:
    s = design()
    assert (s.sun_share, s.driving_share, s.shore_share) == (1.0, 0.0, 0.0)
    run = day_run(inputs(s))
    assert isinstance(run, DayRun)
    assert sum(shares(run.worse)) == pytest.approx(1.0)


def test_a_day_without_sources_never_refills() -> None:
    s = design(DAY.replace("sun hours: 4 h", "sun hours: 0 h"))
    assert refill_time(inputs(s)) == float("inf")
    assert s.refill_time == float("inf")
    assert shares(day_run(inputs(s)).worse) == (0.0, 0.0, 0.0)


def test_strong_sun_refills_within_a_day() -> None:
    s = design(DAY.replace("sun hours: 4 h", "sun hours: 6 h"))
    assert 0 < s.refill_time < 12 * 3600


def test_the_working_of_a_day_names_what_it_read() -> None:
    leaves = {leaf.path for leaf in trace(design(), "lowest_charge").leaves()}
    assert {"day.sun hours", "day.uses.light", "equipment.bank.capacity"} <= leaves


def test_the_cycles_of_a_day_by_hand() -> None:
    # Without sun a lamp of 20 W for 5 h takes 100 Wh of 1200 Wh, of which lithium may give 80 %.
    lamp = DAY.replace("{light: 5 h, cooler: 24 h}", "{light: 5 h}").replace("sun hours: 4 h", "sun hours: 0 h")
    assert design(lamp).cycles_per_day == pytest.approx(100 / 960)
    assert isinstance(design(lamp.replace("shore: 0 h, ", "")).cycles_per_day, Unknown)


def test_what_the_sun_feeds_at_once_is_no_cycle() -> None:
    # 20 W all day; half a sine of 600 Wh over 12 h passes 20 W from 29 minutes after sunrise to 29 before sunset.
    cooler = DAY.replace("{light: 5 h, cooler: 24 h}", "{cooler: 24 h}")
    peak = 600 / 12 * math.pi / 2
    edge = 12 * math.asin(20 / peak) / math.pi
    short = 20 * edge - 600 * (1 - math.cos(math.pi * edge / 12)) / 2
    assert design(cooler).cycles_per_day == pytest.approx((20 * 12 + 2 * short) / 960, rel=1e-3)


def test_a_trip_goes_on_from_where_each_day_ended() -> None:
    # 100 Wh of 1200 Wh a day, and nothing brought in: empty on the twelfth day, and the lamp is dark on the thirteenth.
    lamp = DAY.replace("{light: 5 h, cooler: 24 h}", "{light: 5 h}").replace("sun hours: 4 h", "sun hours: 0 h")
    days = trip_runs(inputs(design(lamp)), 13)
    assert [one.worse[-1].charge for one in days[:3]] == pytest.approx([1100 / 1200, 1000 / 1200, 900 / 1200])
    assert days[11].worse[-1].charge == pytest.approx(0.0, abs=1e-9)
    assert sum(step.missing for step in days[12].worse) / 4 == pytest.approx(100)
    (half,) = trip_runs(inputs(design(lamp)), 1, 0.5)
    assert half.worse[-1].charge == pytest.approx(0.5 - 100 / 1200)
