"""What a neighbour sees of a start, by hand."""

from __future__ import annotations

import pytest

from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown
from checker.reading import read_text
from tests.circuit.designs import HEAD, battery, fuse

PUMP = "  pump: {kind: motor, running: 10 A, start: {current: 40 A, time: 0.2 s}, voltage: 10..15 V}"
HEATER = "  heater: {kind: load, current: 5 A, voltage: 11..15 V}"
CIRCUITS = """
  feed: {from: bank, to: bar, run: [0.2 m via cabin, F1, 4.8 m via cabin], cable: red, return: same}
  pump: {from: bar, to: pump, run: [1 m via cabin], cable: red, return: same}
  heat: {from: bar, to: heater, run: [2 m via cabin], cable: red, return: same}
"""
MODES = "modes: {rest: {engine: stopped, running: {pump: 10 A, heater: 5 A}}}"
# IEC 60228:2004 table 3, class 5, 35 mm2 (seen), at 105 °C; per metre, there and back.
LOOP = 2 * 0.554e-3 * (1 + 0.00393 * 85)


def heater(pump: str = PUMP, circuits: str = CIRCUITS) -> Subject:
    head = HEAD.replace("modes: {rest: {engine: stopped}}", MODES)
    parts = "\n".join(
        [battery("bank"), fuse("F1", 50), "  bar: {kind: bar, poles: [+, -], rating: 100 A}", pump, HEATER]
    )
    found = Facts(read_text(f"{head}\nequipment:\n{parts}\ncircuits:\n{circuits}\n")).subject("load", "heater")
    assert found is not None
    return found


def test_the_start_pulls_at_the_battery_and_at_the_shared_feeder_alone() -> None:
    # The feeder also carries the 15 A that run, the heater's own two metres 5 A; 7.5 mΩ for a low battery.
    left = 11.8 - 40 * (7.5e-3 + 5 * LOOP) - 15 * 5 * LOOP - 5 * 2 * LOOP
    assert heater().voltage_beside_start == pytest.approx(left, rel=1e-3)


def test_a_load_on_a_feeder_of_its_own_sees_no_neighbour() -> None:
    apart = CIRCUITS.replace("heat: {from: bar,", "heat: {from: bank,")
    assert heater(circuits=apart).voltage_beside_start is None


def test_a_motor_whose_start_is_not_told_leaves_its_neighbour_open() -> None:
    silent = PUMP.replace("start: {current: 40 A, time: 0.2 s}", "start: {current: unknown}")
    assert isinstance(heater(silent).voltage_beside_start, Unknown)


def inverter(told: str, pump: str = PUMP) -> object:
    one = f"  inv: {{kind: inverter, power: 300 W, dc: {{nominal: 12 V, voltage: {told}}}, ac: {{voltage: 230 V}}}}"
    added = "  inv: {from: bar, to: inv.dc, run: [2 m via cabin], cable: red, return: same}\n"
    found = heater(f"{pump}\n{one}", CIRCUITS + added).facts.subject("converter", "inv")
    assert found is not None
    return found.start_margin


def test_an_inverter_sees_less_than_it_works_down_to_by_as_much_as_the_start_takes() -> None:
    high, low = inverter("9..16 V"), inverter("11..16 V")
    assert isinstance(high, float)
    assert isinstance(low, float)
    assert high - low == pytest.approx(2.0)
    harder = inverter("9..16 V", PUMP.replace("40 A", "80 A"))
    assert isinstance(harder, float)
    assert harder < high


def test_neither_an_unknown_start_nor_the_starter_of_the_engine_is_taken_for_a_number() -> None:
    assert isinstance(inverter("9..16 V", PUMP.replace("40 A", "unknown")), Unknown)
    assert isinstance(inverter("unknown"), Unknown)
    assert inverter("9..16 V", PUMP.replace("kind: motor", "kind: motor, purpose: engine")) is None
