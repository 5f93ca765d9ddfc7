"""Loss of supply: what a single failure leaves dark."""

from __future__ import annotations

from checker.circuit.build import build
from checker.circuit.supply import storage_nodes, supplied
from checker.facts.darkness import live_node
from checker.facts.loss import fails, losses, on_the_way
from checker.facts.subject import Facts
from checker.quantities import Unknown
from tests.circuit.mains_designs import changed_at
from tests.facts.house import ask

FAN = {
    "equipment.vent-fan": "{kind: fan, power: 10 W, voltage: 9..16 V, place: cabin}",
    "circuits.venting": "{from: alarm-supply.low, to: vent-fan, run: [1 m], cable: pair-4}",
}
BARE = {"equipment.gas-alarm.own cell": "none"}


def test_every_piece_on_the_only_way_leaves_a_load_dark() -> None:
    assert ask("load", "gas-alarm", "dark_when") == "bank, bar-bank, F9, alarm-supply"
    assert ask("load", "gas-alarm", "single_failures") == 4.0


def test_what_has_another_way_in_every_mode_is_not_counted() -> None:
    # While driving the starting battery feeds the board too, but parked only the bank does.
    assert "F2" not in ask("load", "lights", "dark_when")
    assert "converter" in ask("load", "lights", "dark_when")


def test_a_way_that_was_not_seen_leaves_the_list_open() -> None:
    assert isinstance(ask("load", "gas-alarm", "dark_when", {"circuits.alarm.run": "[unknown]"}), Unknown)


def test_a_load_that_no_battery_supplies_is_a_question() -> None:
    lone = {"circuits.alarm": "(remove)"}
    assert isinstance(ask("load", "gas-alarm", "dark_when", lone), Unknown)


def test_an_alarm_and_a_fan_on_one_converter_go_together() -> None:
    assert ask("design", "design", "alarm_and_fan_lost_by_one_fault", FAN | BARE) is True
    assert ask("design", "design", "alarm_and_fan_lost_by_one_fault", FAN) is False  # the alarm has a cell
    assert ask("design", "design", "alarm_and_fan_lost_by_one_fault") is False  # no fan


def test_losses_agree_with_taking_out_every_piece_of_equipment_in_turn() -> None:
    facts = Facts(changed_at("house-48", {"modes": "{parked: {engine: stopped, inverter: inverting}}"}))
    loads = [load.item for load in facts.subjects("load")]
    found = {one.failed: set(one.dark) for one in losses(facts, loads)}
    network = build(facts.design)
    names = [*network.equipment, *(way.name for item in network.equipment.values() for way in item.ways)]
    starts = storage_nodes(network)
    nodes = {item.name: live_node(facts, item) for item in loads}
    # K1 is open in this mode: nothing drives it.
    rest = {"K1"}
    before = supplied(network, starts, None, rest)
    expected: dict[str, set[str]] = {}
    for name in names:
        gone = {name, *network.units.get(name, ())}
        after = supplied(network, starts, None, rest | gone)
        dark = {load for load, node in nodes.items() if node in before and node not in after and load != name}
        if dark:
            expected[name] = dark
    # The walk with all contacts closed is one of the standings too, so a piece counts when it is dark in either.
    everything = supplied(network, starts)
    for name in names:
        after = supplied(network, starts, None, {name, *network.units.get(name, ())})
        dark = {load for load, node in nodes.items() if node in everything and node not in after and load != name}
        if dark:
            expected.setdefault(name, set()).update(dark)
    assert found == expected


def test_the_stretch_without_a_branch_is_told_without_a_walk_and_rightly() -> None:
    facts = Facts(changed_at("house-48", {}))
    for load in facts.subjects("load"):
        node = live_node(facts, load.item)
        assert node is not None
        told = set(load.dark_when.split(", "))
        assert told == {name for name in on_the_way(facts, node) if fails(facts, node, name) is True}
