"""What shuts sources down, and switches close to appliances."""

from __future__ import annotations

from checker.facts.subject import Facts
from checker.quantities import Unknown
from checker.reading import read_text
from checker.shipped import shipped
from tests.facts.house import ask
from tests.facts.mains_subjects import COACH, subject

SWITCH = "{{kind: switch, poles: 2, rating: 16 A, voltage: 230 V AC, operated: by hand, place: {place}}}"
IN_RUN = {"circuits.heating.run": "[3 m via duct, S9, 0.5 m]", "equipment.heater.own switch": "false"}


def test_a_switch_counts_when_it_stands_in_the_place_of_the_appliance() -> None:
    near = IN_RUN | {"equipment.S9": SWITCH.format(place="cabin")}
    far = IN_RUN | {"equipment.S9": SWITCH.format(place="locker")}
    assert subject(COACH, "load", "heater", near).has_switch_close_by is True
    assert subject(COACH, "load", "heater", far).has_switch_close_by is False
    assert isinstance(subject(COACH, "load", "heater").has_switch_close_by, Unknown)


def test_what_the_list_forgets_stays_live() -> None:
    assert ask("design", "design", "live_after_shutdown", {"papers": "{shut down: [Q1, isolator, sun-switch]}"}) == ""
    forgotten = ask("design", "design", "live_after_shutdown", {"papers": "{shut down: [Q1, isolator]}"})
    assert forgotten == "lights, pump, inverter, fridge"  # from the array through its controller
    assert ask("design", "design", "shut_down", {"papers": "{shut down: [Q1]}"}) == "Q1"


def test_alarms_may_stay_live_and_a_missing_list_is_a_question() -> None:
    listed = {"papers": "{shut down: [Q1, isolator, sun-switch]}", "circuits.alarm.duty": "load"}
    assert ask("design", "design", "all_dead_after_shutdown", listed) is True
    assert isinstance(ask("design", "design", "all_dead_after_shutdown"), Unknown)


def test_the_starting_battery_is_kept_away_by_a_relay_that_lets_go_and_not_by_one_that_stays() -> None:
    listed = {"papers": "{shut down: [Q1, isolator, sun-switch]}"}
    by_hand = {"circuits.link.run": "[0.15 m via engine-bay, F2, 2 m via cabin, F3, 0.3 m via cabin]"}
    assert ask("design", "design", "all_dead_after_shutdown", listed) is True
    assert ask("design", "design", "all_dead_after_shutdown", listed | by_hand) is False


def test_a_converter_survives_reversal_keyed_or_protected() -> None:
    both = "equipment.inverter.keyed", "equipment.inverter.reverse protection"
    for keyed, protected, answer in (("true", "false", True), ("false", "true", True), ("false", "false", False)):
        found = subject(COACH, "converter", "inverter", {both[0]: keyed, both[1]: protected}).survives_reversal
        assert found is answer
    assert isinstance(subject(COACH, "converter", "inverter").survives_reversal, Unknown)
    assert ask("converter", "alternator", "survives_reversal") is None


def test_an_inverter_stands_fit_in_an_open_room_and_not_under_the_body() -> None:
    assert subject(COACH, "converter", "inverter", {"equipment.inverter.place": "cabin"}).stands_fit is True
    assert subject(COACH, "converter", "inverter", {"equipment.inverter.place": "skirt"}).stands_fit is False
    unknown = {"equipment.inverter.place": "unknown"}
    assert isinstance(subject(COACH, "converter", "inverter", unknown).stands_fit, Unknown)


def test_an_opening_told_as_a_range_is_one() -> None:
    edits = [("places.inverter-locker.vents.low", "630..770 cm2")]
    text = shipped("examples").joinpath("estuary-coach.fitout.yaml").read_text(encoding="utf-8")
    inverter = Facts(read_text(text, edits=edits)).subject("converter", "inverter")
    assert inverter is not None
    assert inverter.stands_fit is True


def test_a_charger_on_a_plug_is_not_fixed() -> None:
    assert ask("converter", "inverter", "is_fixed_to_the_mains") is True
    assert ask("converter", "inverter", "is_fixed_to_the_mains", {"equipment.inverter.off by": "unplugging"}) is False
    assert ask("converter", "converter", "is_fixed_to_the_mains") is False


def test_a_breaker_counts_only_where_the_charger_stands() -> None:
    breaker = {"equipment.inverter.off by": "breaker"}
    there, elsewhere = {"equipment.Q1.place": "locker"}, {"equipment.Q1.place": "cabin"}
    assert ask("converter", "inverter", "has_switch_close_by", breaker | there) is True
    assert ask("converter", "inverter", "has_switch_close_by", breaker | elsewhere) is False
    unseen = {"circuits.shore.run": "[unknown, 0.5 m via locker, Q1]"}
    assert isinstance(ask("converter", "inverter", "has_switch_close_by", breaker | elsewhere | unseen), Unknown)
