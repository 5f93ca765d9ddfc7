"""First moments of small designs, by hand."""

from __future__ import annotations

import math

import pytest

from checker.facts.subject import Facts, Subject
from checker.quantities import Range, Unknown
from tests.circuit.designs import battery, design, lamp

EQUIPMENT = "\n".join([
    "  bank: {kind: battery, chemistry: lithium iron phosphate, nominal: 48 V, cells: 16, capacity: 100 Ah, "
    "short circuit current: 5.84 kA, bms: {over voltage: 58.4 V}}",
    "  S1: {kind: switch, rating: 200 A, voltage: VOLTS V DC, precharge: separate, precharge resistance: 33 Ω, "
    "precharge time: 1.5 s}",
    "  inverter: {kind: inverter, power: 2 kW, efficiency: 0.9, dc: {nominal: 48 V, voltage: 42..60 V, "
    "input capacitance: 15 mF}, "
    "ac: {voltage: 230 V}}",
])  # fmt: skip
CIRCUITS = "  main: {from: bank, to: inverter.dc, run: [1 m via cabin, S1, 1 m via cabin], cable: red, return: same}"


def of(kind: str, id: str, equipment: str = EQUIPMENT, circuits: str = CIRCUITS, volts: float = 80) -> Subject:
    found = Facts(design(equipment.replace("VOLTS", f"{volts:g}"), circuits)).subject(kind, id)
    assert found is not None
    return found


def test_the_capacitors_behind_a_switch_are_those_of_the_inverter() -> None:
    found = of("switch", "S1")
    assert found.capacitance_behind == pytest.approx(0.015)
    # C V^2 / 2 at the highest voltage of the bank.
    assert found.closing_energy == pytest.approx(0.015 * 58.4**2 / 2)


def test_the_path_before_the_switch_is_voltage_over_short_circuit_current() -> None:
    # 10 mΩ in the battery and 1 m of 35 mm2 at 20 °C before the switch: 0.554 mΩ (IEC 60228, seen).
    assert of("switch", "S1").path_resistance == pytest.approx(10.0e-3 + 0.554e-3, rel=1e-3)


def test_closing_without_precharge_stays_below_the_short_circuit_and_inductance_makes_it_a_range() -> None:
    found = of("switch", "S1")
    assert isinstance(found.closing_current, Range)
    assert found.closing_current.high < 58.4 / found.path_resistance


def test_a_precharge_leaves_what_the_exponential_leaves() -> None:
    found = of("switch", "S1")
    left = 58.4 * math.exp(-1.5 / (33 * 0.015))
    assert found.precharge_gap == pytest.approx(left, rel=1e-6)
    assert found.precharge_power == pytest.approx(58.4**2 / 33, rel=1e-6)
    share = found.precharged_current.high / found.closing_current.high
    assert share == pytest.approx(left / 58.4, rel=1e-6)


def test_a_precharge_of_unknown_length_leaves_the_gap_unknown() -> None:
    assert isinstance(of("switch", "S1", EQUIPMENT.replace("time: 1.5 s", "time: unknown")).precharge_gap, Unknown)


def test_no_capacitors_is_none_and_not_unknown() -> None:
    equipment = "\n".join([battery("bank"), "  S1: {kind: switch, rating: 20 A, voltage: 32 V DC}", lamp("light")])
    found = of("switch", "S1", equipment, CIRCUITS.replace("inverter.dc", "light"))
    assert found.capacitance_behind is None
    assert found.closing_current is None


def test_a_contact_rated_below_the_supply_has_no_arc_that_dies() -> None:
    assert isinstance(of("switch", "S1", volts=48).opening_arc, Unknown)


def test_an_arc_takes_more_than_the_inductance_held() -> None:
    heater = EQUIPMENT + "\n  heater: {kind: load, power: 1.8 kW, voltage: 207..253 V}"
    circuits = CIRCUITS + "\n  heating: {from: inverter.ac, to: heater, run: [1 m], cable: flex}"
    found = of("switch", "S1", heater, circuits)
    amps, inductance = found.greatest_current, found.path_inductance
    # 1.8 kW over the least voltage and the efficiency of the inverter.
    assert amps == pytest.approx(1800 / 42 / 0.9)
    expected = inductance.high * amps**2 / 2 * 80 / (80 - 58.4)
    assert found.opening_arc.high == pytest.approx(expected, rel=1e-6)


def test_an_alternator_dumps_by_the_published_pulse() -> None:
    equipment = "\n".join([
        battery("bank"),
        "  gen: {kind: alternator, nominal: 12 V, rating: 150 A, set voltage: 13.8..14 V, "
        "load dump: {level: 35 V, clamped: true}}",
    ])  # fmt: skip
    found = of("converter", "gen", equipment, "  c: {from: gen.b+, to: bank, run: [1 m], cable: red, return: chassis}")
    # 10 · 12 · 6000 / (0.8 · 150 · 12000) = 0.5 ohm; (101 - 35) / 0.5 = 132 A.
    assert found.load_dump_resistance == pytest.approx(0.5)
    assert found.load_dump_current == pytest.approx(132.0)
    assert found.load_dump_energy > 0.0
