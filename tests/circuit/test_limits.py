"""The greatest lasting current of a wire, against cases that can be added up by hand."""

from __future__ import annotations

import pytest

from checker.circuit.elements import LIVE
from checker.circuit.limits import ENDLESS, overload_currents
from checker.circuit.network import Network
from checker.quantities import Unknown
from tests.circuit.designs import battery, fuse, lamp, network


def currents(graph: Network, circuit: str) -> list[object]:
    live = graph.conductor(circuit, LIVE)
    assert live is not None
    found = overload_currents(graph)
    return [found[id(wire)] for wire in live.wires]


def test_a_battery_without_a_device_has_no_limit() -> None:
    graph = network(
        "\n".join([battery("bank"), lamp("light")]),
        "  feed: {from: bank, to: light, run: [3 m via cabin], cable: red, return: same}",
    )
    assert currents(graph, "feed") == [ENDLESS]


def test_a_fuse_limits_both_stretches_of_a_run_without_branches() -> None:
    graph = network(
        "\n".join([battery("bank"), fuse("F1", 50), lamp("light")]),
        "  feed: {from: bank, to: light, run: [1 m via cabin, F1, 3 m via cabin], cable: red, return: same}",
    )
    assert currents(graph, "feed") == [50.0, 50.0]


def test_of_two_devices_in_series_the_smaller_counts() -> None:
    graph = network(
        "\n".join([battery("bank"), fuse("F1", 50), fuse("F2", 30), lamp("light")]),
        "  feed: {from: bank, to: light, run: [1 m, F1, 1 m, F2, 1 m via cabin], cable: red, return: same}",
    )
    assert currents(graph, "feed") == [30.0, 30.0, 30.0]


def test_fuses_of_parallel_units_add_up_in_the_cable_behind_them() -> None:
    graph = network(
        "\n".join(
            [battery("one"), battery("two"), fuse("F1", 100), fuse("F2", 100), lamp("light"), "  bar: {kind: bar}"]
        ),
        "  a: {from: one, to: bar, run: [0.1 m via cabin, F1, 0.3 m via cabin], cable: red, return: same}\n"
        "  b: {from: two, to: bar, run: [0.1 m via cabin, F2, 0.3 m via cabin], cable: red, return: same}\n"
        "  out: {from: bar, to: light, run: [2 m via cabin], cable: red, return: same}",
    )
    assert currents(graph, "out") == [200.0]
    assert currents(graph, "a") == [100.0, 100.0]


def test_a_source_that_limits_itself_counts_with_its_own_current() -> None:
    graph = network(
        "  charger: {kind: charger, dc: {nominal: 12 V, current: 20 A}}\n" + battery("bank") + "\n" + fuse("F1", 60),
        "  out: {from: charger.dc, to: bank, run: [1 m via cabin, F1, 0.1 m via cabin], cable: red, return: same}",
    )
    # From the battery the fuse lets 60 A through, but a charger swallows nothing; from the charger come 20 A.
    assert currents(graph, "out") == [20.0, 20.0]


def test_an_unseen_stretch_may_hide_a_device_so_that_no_limit_becomes_unknown() -> None:
    graph = network(
        "\n".join([battery("bank"), lamp("light")]),
        "  feed: {from: bank, to: light, run: [unknown, 3 m via cabin], cable: red, return: same}",
    )
    (current,) = currents(graph, "feed")
    assert isinstance(current, Unknown)


def test_an_unreadable_rating_leaves_the_current_unknown() -> None:
    graph = network(
        "\n".join([battery("bank"), fuse("F1", 50).replace("50 A", "unknown"), lamp("light")]),
        "  feed: {from: bank, to: light, run: [1 m via cabin, F1, 3 m via cabin], cable: red, return: same}",
    )
    assert all(isinstance(current, Unknown) for current in currents(graph, "feed"))


@pytest.mark.parametrize(("throws", "expected"), [("[shore, inverter]", 16.0)])
def test_throws_of_a_changeover_never_feed_together(throws: str, expected: float) -> None:
    graph = network(
        "  inlet: {kind: shore inlet, voltage: 230 V AC, rating: 16 A}\n"
        "  inverter: {kind: inverter, power: 2300 W, dc: {nominal: 12 V}, ac: {voltage: 230 V}}\n"
        f"  K: {{kind: changeover, throws: {throws}, poles: 2}}\n"
        "  sockets: {kind: outlet, voltage: 230 V AC, rating: 10 A}",
        "  a: {from: inlet, to: K.shore, run: [1 m via cabin], cable: flex}\n"
        "  b: {from: inverter.ac, to: K.inverter, run: [1 m via cabin], cable: flex}\n"
        "  out: {from: K, to: sockets, run: [2 m via cabin], cable: flex}",
    )
    assert currents(graph, "out") == [expected]  # 16 A of the site, not 16 + 10


def test_a_ring_is_limited_only_by_what_stands_outside_it() -> None:
    graph = network(
        "\n".join([battery("bank"), fuse("F1", 40), lamp("light"), "  p: {kind: bar}", "  q: {kind: bar}"]),
        "  main: {from: bank, to: p, run: [0.1 m via cabin, F1, 1 m via cabin], cable: red, return: same}\n"
        "  left: {from: p, to: q, run: [1 m via cabin], cable: red, return: same}\n"
        "  right: {from: p, to: q, run: [1 m via cabin], cable: red, return: same}\n"
        "  out: {from: q, to: light, run: [1 m via cabin], cable: red, return: same}",
    )
    assert currents(graph, "left") == [40.0]
    assert currents(graph, "out") == [40.0]
