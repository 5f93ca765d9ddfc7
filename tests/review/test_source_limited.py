"""A fuse that will not blow because its source limits: found at the fuse, and told so that a fitter understands."""

from __future__ import annotations

import math

import pytest

from checker.facts.subject import Facts, Subject
from checker.reading import read_text
from checker.review import Finding, review
from checker.rulebook import load_rulebook

BUS = """
fitout: 1
title: Coach side held up by a converter alone
code: au-nz
vehicle: {kind: motorhome, ambient: {low: 0 °C, high: 30 °C}}
cables:
  red-25: {size: 25 mm2, cores: 1, strands: flexible, insulation: 90 °C, voltage: 600 V}
  pair-4: {size: 4 mm2, cores: 2, strands: flexible, insulation: 90 °C, voltage: 300 V, sheath: plastic}
places:
  locker: {kind: locker, temperature: 0..30 °C, thermal insulation: none}
  cabin:  {kind: living space, temperature: 5..30 °C, thermal insulation: none}
equipment:
  house:     {kind: battery, chemistry: lithium iron phosphate, nominal: 48 V, cells: 16, capacity: 100 Ah,
              internal resistance: 6 mΩ, short circuit current: 4 kA, place: locker, bms: {discharge limit: 100 A}}
  FB:        {kind: fuse, family: class T, rating: 110 A, voltage: 125 V DC, breaking capacity: 20 kA, place: locker}
  converter: {kind: dc converter, both ways: false, isolated: false, efficiency: 0.94, at fault: limits, place: locker,
              sides: {high: {nominal: 48 V, current: 40 A}, low: {nominal: 12 V, current: 140 A}},
              settings: {feed voltage: 13.4 V}}
  F4:        {kind: fuse, family: bolt-down strip, rating: 125 A, voltage: 58 V DC, breaking capacity: 5 kA,
              place: locker}
  heater:    {kind: load, power: 400 W, voltage: 10..15 V, place: cabin}
circuits:
  in:   {from: house, to: converter.high, run: [0.1 m via locker, FB, 1 m via locker], cable: red-25, return: same}
  feed: {from: converter.low, to: heater, run: [0.2 m via locker, F4, 5 m via cabin], cable: pair-4}
modes:
  camp: {engine: stopped, running: {heater: 400 W}}
"""
HOT, WHOLE = "limited-short-spares-the-cable", "fuse-blows-on-what-its-source-gives"


def fuse(*edits: tuple[str, str]) -> Subject:
    found = Facts(read_text(BUS, "bus", edits)).subject("device", "F4")
    assert found is not None
    return found


def found(rule: str, *edits: tuple[str, str]) -> list[Finding]:
    everything = review(read_text(BUS, "bus", edits), load_rulebook()).findings
    return [one for one in everything if one.rule == rule and one.verdict != "met"]


def test_by_hand_the_short_draws_little_more_than_the_rating() -> None:
    device = fuse()
    # 140 A of the converter over 125 A: 1.12 times. The strip promises to open from 1.35 times at the earliest.
    assert device.limited_share == pytest.approx(140 / 125)
    assert device.limited_clears_by == math.inf
    # 33 CFR 183.425 Table 5 (seen), 90 °C: 40 A at 3.309 mm2, 55 A at 5.261 mm2; one pair in air of 30 °C: no factor.
    cell = 40 * (55 / 40) ** (math.log(4 / 3.3088) / math.log(5.2612 / 3.3088))
    [cable] = [one for one in device.protects if one.is_live]
    assert cable.table_capacity == pytest.approx(cell, rel=1e-3)
    assert device.limited_capacity == min(cable.table_capacity, cable.heat_capacity) <= cell


def test_the_finding_names_fuse_source_currents_and_cable() -> None:
    [one] = found(HOT)
    assert (one.about.id, one.verdict, one.signal) == ("F4", "breach", "warning")
    assert one.says.startswith("F4 will not blow on a short when converter.low alone feeds it")
    for told in ("140 A", "112 %", "125 A", "no limit"):
        assert told in one.says
    assert "A larger fuse makes it worse" in one.mend


def test_the_milder_finding_is_told_where_the_cable_stands_it() -> None:
    edits = (("circuits.feed", "{from: converter.low, to: heater, run: [0.2 m via locker, F4, 5 m via cabin], "
              "cable: {size: 70 mm2, cores: 1, insulation: 105 °C, voltage: 600 V}, return: same}"),)  # fmt: skip
    assert found(HOT, *edits) == []
    [one] = found(WHOLE, *edits)
    assert (one.about.id, one.verdict, one.signal) == ("F4", "breach", "notice")


def test_a_fuse_small_enough_or_a_converter_that_shuts_down_is_no_finding() -> None:
    small = ("equipment.F4.rating", "30 A")  # 140 A are 4.7 times: opens within seconds
    assert found(HOT, small) == found(WHOLE, small) == []
    stops = ("equipment.converter.at fault", "latches off")
    assert found(HOT, stops) == found(WHOLE, stops) == []


def test_where_it_is_not_told_what_the_converter_does_it_is_asked() -> None:
    [one] = found(HOT, ("equipment.converter.at fault", "unknown"))
    assert one.verdict == "unproven"
    assert any("at fault" in need.path for need in one.needs)


def test_a_battery_on_the_bus_blows_the_fuse() -> None:
    buffer = ("equipment.buffer", "{kind: battery, chemistry: AGM lead acid, nominal: 12 V, capacity: 20 Ah}")
    joined = ("circuits.buffer", "{from: buffer, to: converter.low, run: [0.3 m], cable: red-25, return: same}")
    assert found(HOT, buffer, joined) == found(WHOLE, buffer, joined) == []
