"""Where supply reaches, and what is dark when a piece is taken away."""

from __future__ import annotations

from checker.circuit.elements import Link
from checker.circuit.supply import crossings, joined, passed, storage_nodes, supplied, ways
from tests.facts.house import house


def test_a_walk_without_conversion_stays_on_its_bus() -> None:
    network = house().network
    near = joined(network, ["bar-48:+"])
    assert "inverter:dc+" in near
    assert "inverter:ac-outL" not in near
    assert "converter:low+" not in near


def test_supply_passes_converters_in_the_direction_they_work() -> None:
    network = house().network
    assert "fridge:L" in supplied(network, ["bar-48:+"])
    assert "gas-alarm:+" in supplied(network, ["bar-48:+"])
    one_way = house({"equipment.alarm-supply.both ways": "false"}).network
    assert "bar-bank:+" not in supplied(one_way, ["alarm-supply:low+"])


def test_both_ways_cross_in_both_directions() -> None:
    across = crossings(house().network)
    assert ("converter", "converter:high+") in across["converter:low+"]
    assert ("converter", "converter:low+") in across["converter:high+"]
    assert across["alarm-supply:high+"] == [("alarm-supply", "alarm-supply:low+")]
    assert "alarm-supply:low+" not in across


def test_a_piece_taken_away_carries_nothing() -> None:
    network = house().network
    assert "fridge:L" not in supplied(network, storage_nodes(network), None, {"inverter"})
    assert "lights:+" not in supplied(network, storage_nodes(network), None, {"F4"})
    assert "lights:+" in supplied(network, storage_nodes(network), None, {"isolator"})


def test_only_edges_that_pass_are_walked() -> None:
    network = house().network

    def without_switches(edge: object) -> bool:
        return not (isinstance(edge, Link) and edge.when == "hand")

    assert "inverter:dc+" not in joined(network, ["bar-bank:+"], without_switches)


def test_a_diode_is_walked_from_a_to_b_only() -> None:
    edits = {"equipment.D": "{kind: diode, rating: 30 A}", "circuits.sun-out.run": "[0.5 m, F8, D, 0.1 m]"}
    network = house(edits).network
    assert "bar-48:+" in joined(network, ["sun:battery+"])
    assert "sun:battery+" not in joined(network, ["bar-48:+"])


def test_a_way_names_what_it_passes() -> None:
    network = house().network
    found = ways(network, storage_nodes(network))
    assert found.keys() == supplied(network, storage_nodes(network)).keys()
    assert {"F9", "alarm-supply"} <= passed(found, "gas-alarm:+")
    assert "isolator" not in passed(found, "gas-alarm:+")
