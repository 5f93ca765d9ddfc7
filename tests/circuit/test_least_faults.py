"""Least short-circuit currents of small graphs, by hand."""

from __future__ import annotations

import pytest

from checker.circuit.elements import Link, Source, Wire
from checker.circuit.least_faults import LeastFaults
from checker.circuit.network import Network
from checker.circuit.zones import Zones
from checker.quantities import Number, Unknown
from tests.circuit.designs import battery, fuse, lamp, network

EQUIPMENT = "\n".join([battery("bank"), battery("other"), fuse("F1", 50), fuse("F2", 50), fuse("F3", 10), lamp("light"),
                       lamp("glow"), "  bar: {kind: bar, poles: [+, -]}"])  # fmt: skip
CIRCUITS = """
  main: {from: bank, to: bar, run: [1 m via cabin, F1, 2 m via cabin], cable: red, return: same}
  more: {from: other, to: bar, run: [1 m via cabin, F2, 5 m via cabin], cable: red, return: same}
  first: {from: bar, to: light, run: [1 m via cabin, F3, 9 m via cabin], cable: red, return: same}
  second: {from: bar, to: glow, run: [3 m via cabin], cable: red, return: same}
"""


def one_volt(source: Source) -> tuple[Number, Number] | None:
    """Each battery has 10 V and 1 ohm."""
    return (10.0, 1.0) if source.storage else None


def metres(wire: Wire) -> Number:
    """One ohm a metre."""
    found = 0.0
    for stretch in wire.lengths:
        assert isinstance(stretch.length.value, float)
        found += stretch.length.value
    return found


def faults(graph: Network) -> LeastFaults:
    return LeastFaults(graph, one_volt, lambda source: None, metres)


def link(graph: Network, name: str) -> Link:
    return next(one for one in graph.links if one.equipment.name == name)


def test_the_weakest_source_is_the_one_farthest_away() -> None:
    graph = network(EQUIPMENT, CIRCUITS)
    found = faults(graph).weakest(link(graph, "F3"), "F3:b")
    assert found is not None and found.source is not None
    # other: 1 ohm inside, 1 m and 5 m to the bar, 1 m to the device.
    assert (found.source.name, found.emf, found.ohms) == ("other", 10.0, 8.0)


def test_a_zone_reaches_to_its_farthest_end_and_not_through_devices() -> None:
    graph = network(EQUIPMENT, CIRCUITS)
    held = faults(graph)
    assert held.reach(link(graph, "F3"), "F3:b").ohms == 9.0
    # From F1: 2 m to the bar, then 5 m to F2, 1 m to F3 or 3 m to the lamp.
    assert held.reach(link(graph, "F1"), "F1:b").ohms == 7.0
    assert held.reach(link(graph, "F1"), "F1:a").ohms == 1.0


def test_no_source_behind_a_device_is_none() -> None:
    graph = network(EQUIPMENT, CIRCUITS)
    assert faults(graph).weakest(link(graph, "F3"), "F3:a") is None


def test_each_of_two_batteries_feeds_through_the_device_of_the_other() -> None:
    graph = network(EQUIPMENT, CIRCUITS)
    held = faults(graph)
    for name, source in (("F1", "other"), ("F2", "bank")):
        found = held.weakest(link(graph, name), f"{name}:a")
        assert found is not None and found.source is not None
        assert found.source.name == source


def test_a_ring_is_passed_by_its_whole_length() -> None:
    ring = CIRCUITS + "  again: {from: bank, to: bar, run: [4 m via cabin], cable: red, return: same}\n"
    graph = network(EQUIPMENT, ring)
    found = faults(graph).weakest(link(graph, "F3"), "F3:b")
    assert found is not None
    # A way through the ring is never longer than its stretches together: 1 + 2 + 4 m on the side of the bank.
    assert isinstance(found.ohms, float) and found.ohms >= 8.0


def test_a_device_in_a_ring_is_not_given_a_shorter_zone() -> None:
    ring = CIRCUITS + "  again: {from: bank, to: bar, run: [4 m via cabin], cable: red, return: same}\n"
    graph = network(EQUIPMENT, ring)
    reach = faults(graph).reach(link(graph, "F1"), "F1:b").ohms
    assert isinstance(reach, float) and reach >= 7.0


def test_a_stretch_nobody_saw_makes_the_answer_unknown() -> None:
    graph = network(EQUIPMENT, CIRCUITS)
    held = LeastFaults(graph, one_volt, lambda source: None, lambda wire: Unknown("not seen"))
    found = held.weakest(link(graph, "F3"), "F3:b")
    assert found is not None
    assert isinstance(found.ohms, Unknown)


@pytest.mark.parametrize(("first", "second", "together"), [("bar:+", "light:+", False), ("bar:+", "glow:+", True)])
def test_a_device_divides_zones_and_a_wire_does_not(first: str, second: str, together: bool) -> None:
    zones = Zones(network(EQUIPMENT, CIRCUITS))
    assert (zones.of(first) == zones.of(second)) is together


def test_a_zone_knows_the_devices_at_its_edge_and_the_batteries_in_it() -> None:
    zones = Zones(network(EQUIPMENT, CIRCUITS))
    assert {one.link.equipment.name for one in zones.borders(zones.of("bar:+"))} == {"F1", "F2", "F3"}
    assert [one.name for one in zones.batteries(zones.of("bank:+"))] == ["bank"]
    assert zones.batteries(zones.of("bar:+")) == []
