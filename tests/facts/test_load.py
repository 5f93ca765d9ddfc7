"""Loads of either system and the switches that darken them."""

from __future__ import annotations

import checker.facts  # noqa: F401 - fills the catalogue
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown, Window
from tests.circuit.designs import battery, design, fuse, lamp
from tests.facts.mains_subjects import COACH, VAN, subject

SWITCH = "  {name}: {{kind: switch, rating: 100 A, poles: 1, operated: by hand}}"


def isolators(load: Subject) -> list[str]:
    return [switch.id for switch in load.isolated_by]


def bench(circuits: str, *equipment: str) -> Subject:
    everything = "\n".join([battery("bank"), fuse("F1", 50), lamp("light"), *equipment])
    found = Facts(design(everything, circuits)).subject("load", "light")
    assert found is not None
    return found


def test_a_switch_in_the_only_way_isolates() -> None:
    feed = "  feed: {from: bank, to: light, run: [1 m via cabin, F1, S1, 1 m], cable: red, return: same}"
    assert isolators(bench(feed, SWITCH.format(name="S1"))) == ["S1"]


def test_a_second_way_leaves_no_isolator() -> None:
    feed = (
        "  feed: {from: bank, to: light, run: [1 m via cabin, S1, 1 m], cable: red, return: same}\n"
        "  spare: {from: bank, to: light, run: [1 m via cabin, F1, 1 m], cable: red, return: same}"
    )
    assert isolators(bench(feed, SWITCH.format(name="S1"))) == []


def test_switches_before_a_converter_count_and_those_behind_another_source_do_not() -> None:
    mains = subject(COACH, "load", "heater")
    # S1 and the changeover stand in every way; Q1, Q2 are no switches, and either source can do without the other.
    assert isolators(mains) == ["S1", "K2"]
    assert isolators(subject(COACH, "load", "lamp")) == []


def test_what_a_load_asks_is_read_and_what_it_lacks_is_not_invented() -> None:
    heater = subject(COACH, "load", "heater")
    assert heater.system == "ac"
    assert heater.voltage_window == Window(207.0, 253.0)
    assert heater.protection_class == "I"
    assert isinstance(subject(VAN, "load", "sockets").voltage_window, Unknown)


def test_a_list_of_essential_loads_settles_which_are_not() -> None:
    assert isinstance(subject(COACH, "load", "lamp").is_essential, Unknown)
    listed = {"essential": "[lamp]"}
    assert subject(COACH, "load", "lamp", listed).is_essential is True
    assert subject(COACH, "load", "heater", listed).is_essential is False


def test_a_lamp_runs_from_both_when_both_reach_it_or_when_it_is_written() -> None:
    assert subject(COACH, "load", "lamp").runs_from_both is False
    assert subject(COACH, "load", "lamp", {"equipment.lamp.dual voltage": "true"}).runs_from_both is True
    assert isinstance(
        subject(COACH, "load", "lamp", {"equipment.lamp.dual voltage": "unknown"}).runs_from_both, Unknown
    )
