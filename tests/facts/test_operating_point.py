"""The operating point of small designs against hand calculation, and of the example coach against trade practice."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

import checker.facts  # noqa: F401  fills the catalogue
from checker.circuit.dc_solution import Solution
from checker.facts.instruments import predicted, spot
from checker.facts.operating_point import OperatingPoint, Predicted, operating_point
from checker.facts.subject import Facts, Subject
from checker.quantities import Range, Unknown
from checker.reading import read_design, read_text
from checker.shipped import shipped
from tests.circuit.designs import HEAD, battery, fuse

COACH = Path(str(shipped("examples"))) / "estuary-coach.fitout.yaml"
FEED = "  feed: {from: bank, to: light, run: [1 m via cabin, F1, 9 m via cabin], cable: red, return: same}"
LIGHT = "  light: {kind: load, power: 120 W, voltage: 10..15 V}"


def mode_of(equipment: str, circuits: str, mode: str) -> Subject:
    """The one mode of a design of a battery, a load behind a fuse, and what a test adds."""
    head = HEAD.replace("modes: {rest: {engine: stopped}}", f"modes: {{{mode}}}")
    parts = "\n".join([battery("bank"), fuse("F1", 50), LIGHT, equipment])
    made = read_text(f"{head}\nequipment:\n{parts}\ncircuits:\n{FEED}\n{circuits}\n")
    return Facts(made).subjects("mode")[0]


def point_of(s: Subject) -> OperatingPoint:
    return operating_point(s, s.item)


@cache
def coach() -> Facts:
    return Facts(read_design(COACH))


def read(facts: Facts, mode: str, at: str, quantity: str) -> Predicted:
    s = facts.subject("mode", mode)
    assert s is not None
    one = spot(point_of(s), at, quantity)
    assert not isinstance(one, Unknown), one
    found = predicted(point_of(s), one)
    assert isinstance(found, Predicted), found
    return found


# --- trade practice: bands that a fitter of such systems expects; common practice, no source


def test_at_idle_the_alternator_about_balances_an_air_conditioner_on_the_inverter() -> None:
    facts = coach()
    assert 900.0 <= facts.design.modes["idling"].value("running")[0][1].value <= 1000.0
    bank = read(facts, "idling", "house-bank", "power")
    assert bank.likely < 100.0  # W, either way: a tenth of what the air conditioner draws
    assert bank.low == 0.0  # it may charge or discharge


def test_on_the_road_about_2700_watts_reach_the_48_volt_side() -> None:
    given = read(coach(), "driving", "converter.high", "power")
    assert given.likely > 2500.0
    assert given.likely == pytest.approx(2700.0, rel=0.05)


def test_on_the_road_the_bank_gains_and_the_starting_battery_is_not_drawn_on() -> None:
    s = coach().subject("mode", "driving")
    assert s is not None
    assert isinstance(s.house_bank_power, Range)
    assert s.house_bank_power.low > 500.0
    assert s.starting_battery_power.low > 0.0


def test_at_idle_the_converter_is_held_back_by_its_input_and_the_alternator_stands_at_its_limit() -> None:
    s = coach().subject("mode", "idling")
    assert s is not None
    point = point_of(s)
    assert point.state("converter") == "held back so that its input keeps its voltage"
    assert point.state("alternator") == "at its current limit"
    assert read(coach(), "idling", "converter.low", "voltage").likely == pytest.approx(13.2, abs=0.1)


def test_with_the_engine_stopped_the_converter_feeds_its_low_side() -> None:
    assert read(coach(), "slide-out", "converter.low", "voltage").likely == pytest.approx(13.4, abs=0.05)
    assert read(coach(), "slide-out", "converter.low", "current").likely == pytest.approx(18.0, rel=0.01)


def test_every_mode_of_the_coach_has_an_operating_point_and_its_powers_balance() -> None:
    for s in coach().subjects("mode"):
        assert s.has_operating_point is True
        for case in point_of(s).cases.values():
            assert isinstance(case, Solution)
            assert case.imbalance() < 1e-6


def test_what_the_isolator_cuts_off_is_dead() -> None:
    s = coach().subject("mode", "stored")
    assert s is not None
    one = spot(point_of(s), "bar-48", "voltage")
    assert not isinstance(one, Unknown)
    assert isinstance(predicted(point_of(s), one), Unknown)
    assert read(coach(), "stored", "gas-alarm", "current").likely == pytest.approx(2.0 / 12.5, rel=0.02)


# --- small designs


def test_a_lamp_on_a_battery_is_what_ohm_says() -> None:
    s = mode_of("", "", "use: {running: {light: 120 W}, charge: 100 %}")
    point = point_of(s)
    assert point.missing == ()
    likely = point.likely
    assert likely is not None
    # 6 cells at 2.121 V; 5 mΩ; 20 m of 35 mm2 at 15 °C (0.554 mΩ/m at 20 °C, IEC 60228 table 3, seen); fuse 80 mV at
    # 50 A; eight lugs of 2.5e-9/35e-6 ohm.
    ohm = 5e-3 + 20 * 0.554e-3 * (1 - 0.00393 * 5) + 0.08 / 50 + 8 * 2.5e-9 / 35e-6
    emf = 6 * (2.10 + 2.142) / 2
    volts = (emf + (emf**2 - 4 * ohm * 120) ** 0.5) / 2
    found = likely.between("light:+", "light:-")
    assert found == pytest.approx(volts, rel=2e-4)


def test_low_and_high_lie_around_likely() -> None:
    s = mode_of("", "", "use: {running: {light: 120 W}}")
    found = point_of(s).volts("light:+", "light:-")
    assert isinstance(found, Predicted)
    assert found.low < found.likely < found.high
    assert any("house battery" in text for text in point_of(s).assumed)


def test_what_hangs_on_an_unknown_gets_no_number_and_the_rest_does() -> None:
    more = "  other: {kind: load, power: 5 W}"
    run = "  line: {from: bank, to: other, run: [1 m, unknown], cable: red, return: same}"
    s = mode_of(more, run, "use: {running: {light: 120 W, other: 5 W}}")
    point = point_of(s)
    assert any("resistance of line" in text for text in point.missing)
    unknown = point.volts("other:+", "other:-")
    assert isinstance(unknown, Unknown)
    assert "line" in unknown.reason
    assert isinstance(point.volts("light:+", "light:-"), Predicted)


def test_a_draw_told_as_a_range_widens_what_is_predicted() -> None:
    s = mode_of("", "", "use: {running: {light: 0..500 W}}")
    found = point_of(s).volts("light:+", "light:-")
    assert isinstance(found, Predicted)
    assert found.high - found.low > 0.5


def test_a_load_beyond_its_battery_is_reported_and_never_a_number() -> None:
    s = mode_of("", "", "use: {running: {light: 9 kW}}")
    assert s.has_operating_point is False
    assert "collapses" in point_of(s).reason
    assert isinstance(s.house_bank_power, Unknown)


def test_the_facts_of_a_mode_name_their_inputs() -> None:
    from checker.facts.subject import trace

    s = mode_of("", "", "use: {running: {light: 120 W}}")
    paths = {given.path for given in trace(s, "house_bank_power").leaves()}
    assert "modes.use.running.light" in paths
    assert "equipment.bank.internal resistance" in paths
    assert "cables.red.size" in paths
