"""What people depend on has a supply; what a battery outlet may be asked for."""

from __future__ import annotations

from checker.quantities import Unknown
from tests.facts.mains_subjects import COACH, subject


def test_an_alarm_guards_people_and_a_cabin_lamp_does_not() -> None:
    alarm = {"equipment.gas-alarm": "{kind: alarm, detects: [gas], power: 1 W, voltage: 40..60 V, place: cabin}"}
    assert subject(COACH, "load", "gas-alarm", alarm).guards_people is True
    assert subject(COACH, "load", "lamp").guards_people is False
    assert subject(COACH, "load", "lamp", {"equipment.lamp.purpose": "road lamps"}).guards_people is True


def test_a_load_on_no_circuit_has_no_supply_in_a_design_and_perhaps_one_in_a_survey() -> None:
    loose = {"circuits.lighting.to": "dc-outlet"}
    assert subject(COACH, "load", "lamp").has_supply is True
    assert subject(COACH, "load", "lamp", loose).has_supply is False
    assert isinstance(subject(COACH, "load", "lamp", loose | {"purpose": "survey"}).has_supply, Unknown)
    assert isinstance(subject(COACH, "load", "lamp", {"circuits.lighting.run": "[unknown]"}).has_supply, Unknown)


def test_a_battery_outlet_gets_what_its_fuse_lets_through_and_mains_is_left_out() -> None:
    assert subject(COACH, "outlet", "dc-outlet").lasting_current == 10.0
    assert subject(COACH, "outlet", "dc-outlet", {"equipment.F2.rating": "20 A"}).lasting_current == 20.0
    assert subject(COACH, "outlet", "kitchen-outlets").lasting_current is None


def test_pumps_and_radios_are_weak_when_the_voltage_is_low_and_silence_on_a_purpose_leaves_it_open() -> None:
    assert isinstance(subject(COACH, "load", "lamp").weak_when_low, Unknown)
    assert subject(COACH, "load", "lamp", {"equipment.lamp.purpose": "none"}).weak_when_low is False
    assert subject(COACH, "load", "lamp", {"equipment.lamp.purpose": "way out"}).guards_people is True
    assert subject(COACH, "load", "heater", {"equipment.heater.purpose": "water"}).weak_when_low is True
    assert isinstance(subject(COACH, "load", "heater", {"equipment.heater.purpose": "unknown"}).weak_when_low, Unknown)
