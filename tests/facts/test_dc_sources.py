"""Alternators, chargers and solar controllers as sources of an operating point."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.dc_designs import point_of, read, van


def test_an_alternator_gives_at_most_its_hot_output_at_that_speed() -> None:
    larger = (("current: 50 A}, high", "current: 150 A}, high"), ("12 V, current: 40 A", "12 V, current: 140 A"))
    facts = van((*larger, ("2500 rpm: 130 A", "2500 rpm: 90 A")))
    assert read(facts, "driving", "gen", "current").likely == pytest.approx(90.0)
    assert read(facts, "idle", "gen", "current").likely == pytest.approx(60.0)
    assert point_of(facts, "idle").state("gen") == "at its current limit"


def test_an_alternator_is_still_while_the_engine_is_stopped() -> None:
    point = point_of(van(), "sunny")
    assert "gen" not in point.plan.sources


def test_a_machine_without_a_curve_is_taken_as_a_typical_one_and_that_is_said() -> None:
    point = point_of(van(((",\n        hot output: {800 rpm: 60 A, 2500 rpm: 130 A}", ""),)), "driving")
    assert any("typical machine" in text for text in point.assumed)
    assert point.missing == ()


def test_an_alternator_of_which_nothing_is_known_leaves_its_bus_without_numbers() -> None:
    facts = van(((",\n        hot output: {800 rpm: 60 A, 2500 rpm: 130 A}", ""), ("rating: 150 A, ", "")))
    point = point_of(facts, "driving")
    assert point.missing == ("output of gen",)


def test_a_curve_told_for_the_shaft_is_read_at_the_speed_of_the_shaft() -> None:
    told = "{800 rpm: 60 A, 2500 rpm: 130 A}"
    facts = van(((told, "{2000 rpm: 60 A, 6500 rpm: 130 A}, rpm: shaft"),))
    from checker.facts.dc_sources import hot_limit

    point = point_of(facts, "driving")
    gen = facts.design.equipment["gen"]
    assert hot_limit(point.plan, gen).likely == pytest.approx(130.0)  # 2500 rpm, 2.6 times as fast
    assert hot_limit(point.plan, gen).low < 0.9 * 110.0  # 2.0 times as fast, and a tenth below its curve


def test_a_solar_controller_gives_what_the_sun_allows() -> None:
    # 2 modules of 100 W at 800 W/m2, four fifths of it by heat and dirt, 95 % in the controller.
    assert read(van(), "sunny", "sun", "power").likely == pytest.approx(200 * 0.8 * 0.8 * 0.95, rel=1e-6)


def test_without_sun_nothing_comes_from_it() -> None:
    assert "sun" not in point_of(van(), "shore").plan.sources


def test_a_charger_gives_its_current_on_the_shore_and_nothing_without() -> None:
    facts = van()
    assert read(facts, "shore", "wall", "current").likely == pytest.approx(20.0)
    assert "wall" not in point_of(facts, "sunny").plan.sources


def test_a_weak_shore_holds_a_charger_back() -> None:
    facts = van((("{shore: 10 A, charge: 50 %}", "{shore: 1 A, charge: 50 %, running: {kettle: 100 W}}"),))
    assert read(facts, "shore", "wall", "power").likely == pytest.approx((230.0 - 100.0) * 0.88, rel=1e-6)


def test_a_charge_voltage_that_is_not_told_leaves_no_number() -> None:
    untold = (",\n         settings: {charge voltage: 14.2 V, float: 13.5 V}", "")
    point = point_of(van((untold, ("{shore: 10 A, charge: 50 %}", "{shore: 10 A, charge: 90 %}"))), "shore")
    assert point.missing == ("charge voltage of wall",)
    found = point.volts("bus:+", "bus:-")
    assert isinstance(found, Unknown)
    assert "charge voltage of wall" in found.reason
