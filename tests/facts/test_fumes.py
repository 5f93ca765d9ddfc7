"""What burns aboard, and whether carbon monoxide is watched for."""

from __future__ import annotations

import pytest

from checker.quantities import Unknown
from tests.facts.van import ask

ALARM = "equipment.alarm"


@pytest.mark.parametrize(
    ("edits", "names"),
    [
        ([], ["solenoid"]),
        ([("equipment.fridge", "{kind: fridge, works by: absorption, power: 120 W}")], ["solenoid", "fridge"]),
        ([("equipment.fridge", "{kind: fridge, works by: compressor, power: 45 W}")], ["solenoid"]),
        ([("equipment.heater", "{kind: load, power: 30 W, gas safe: closes on loss}")], ["solenoid", "heater"]),
        ([("equipment.gen", "{kind: generator, fuel: petrol}")], ["solenoid", "gen"]),
    ],
)
def test_what_burns_is_known_by_its_kind_and_its_gas_valve(edits: list[tuple[str, str]], names: list[str]) -> None:
    assert [one.id for one in ask("design", "design", "burners", *edits)] == names


@pytest.mark.parametrize(
    ("detects", "answer"), [("[gas]", False), ("[carbon monoxide]", True), ("[gas, carbon monoxide]", True)]
)
def test_an_alarm_watches_for_what_it_detects(detects: str, answer: bool) -> None:
    edit = (ALARM, f"{{kind: alarm, detects: {detects}, power: 2 W}}")
    assert ask("design", "design", "carbon_monoxide_watched", edit) is answer


def test_what_is_not_drawn_in_a_design_is_not_there_and_in_a_survey_perhaps_not_seen() -> None:
    assert ask("design", "design", "carbon_monoxide_watched") is False
    assert isinstance(ask("design", "design", "carbon_monoxide_watched", ("purpose", "survey")), Unknown)


def test_an_alarm_of_which_nobody_read_what_it_detects_leaves_the_question() -> None:
    edit = (ALARM, "{kind: alarm, detects: unknown, power: 2 W}")
    assert isinstance(ask("design", "design", "carbon_monoxide_watched", edit), Unknown)


def test_what_lights_gas_sparks_burns_is_plugged_in_or_is_hot() -> None:
    heater = "{kind: load, power: 40 W, place: cabin, gas safe: %s, hot surface: %s}"
    assert ask("equipment", "FS", "ignites_gas") is True
    assert ask("equipment", "inlet", "ignites_gas") is True
    assert ask("equipment", "plus", "ignites_gas") is False
    assert ask("equipment", "heater", "ignites_gas", ("equipment.heater", heater % ("none", "300 °C"))) is False
    assert ask("equipment", "heater", "ignites_gas", ("equipment.heater", heater % ("none", "301 °C"))) is True
    assert ask("equipment", "heater", "ignites_gas", ("equipment.heater", heater % ("closes on loss", "60 °C"))) is True
    unread = ("equipment.heater", heater % ("none", "unknown"))
    assert isinstance(ask("equipment", "heater", "ignites_gas", unread), Unknown)


def test_the_face_of_an_inlet_stands_in_the_open() -> None:
    place = ("equipment.inlet.place", "cabin")
    assert ask("equipment", "inlet", "to_the_outside", place, ("equipment.inlet.faces", "outside")) is True
    assert ask("equipment", "inlet", "to_the_outside", place, ("equipment.inlet.faces", "inside")) is False
    assert isinstance(ask("equipment", "inlet", "to_the_outside", place), Unknown)
    assert ask("equipment", "FS", "to_the_outside") is False


def test_of_a_bare_load_it_is_open_whether_it_lights_gas_and_what_is_protected_does_not() -> None:
    bare, told = "{kind: load, power: 1 kW}", "{kind: load, power: 1 kW, ignition protected: %s}"
    assert isinstance(ask("equipment", "heater", "ignites_gas", ("equipment.heater", bare)), Unknown)
    assert ask("equipment", "heater", "ignites_gas", ("equipment.heater", told % "false")) is True
    assert ask("equipment", "heater", "ignites_gas", ("equipment.heater", told % "true")) is False
    assert ask("equipment", "inlet", "ignites_gas", ("equipment.inlet.ignition protected", "true")) is False
    assert ask("equipment", "lamps", "ignites_gas") is False
