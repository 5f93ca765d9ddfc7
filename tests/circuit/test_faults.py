"""The greatest fault current against hand calculation."""

from __future__ import annotations

import pytest

from checker.circuit.elements import LIVE, Wire
from checker.circuit.faults import Faults, Norton
from checker.quantities import UNKNOWN, Range
from tests.circuit.designs import battery, fuse, lamp, network

CIRCUIT = "  feed: {from: bank, to: light, run: [1 m via cabin, F1, 3 m via cabin], cable: red, return: same}"


def test_a_lead_in_series_weakens_the_fault_as_ohm_says() -> None:
    graph = network("\n".join([battery("bank"), fuse("F1", 50), lamp("light")]), CIRCUIT)
    live = graph.conductor("feed", LIVE)
    assert live is not None
    # 12 V behind 5 mΩ is 2400 A and 200 S; 1 mΩ of lead in front of the fuse: 12 V / 6 mΩ = 2000 A.
    faults = Faults(graph, lambda source: Norton(2400.0, 200.0), lambda wire: 0.001)
    assert faults.through(live.links[0]) == pytest.approx(2000.0)


def test_two_batteries_in_parallel_give_both_their_currents() -> None:
    graph = network(
        "\n".join([battery("one"), battery("two"), fuse("F1", 50), lamp("light"), "  bar: {kind: bar}"]),
        "  a: {from: one, to: bar, run: [0.1 m via cabin], cable: red, return: same}\n"
        "  b: {from: two, to: bar, run: [0.1 m via cabin], cable: red, return: same}\n"
        "  out: {from: bar, to: light, run: [0.1 m via cabin, F1, 1 m via cabin], cable: red, return: same}",
    )
    live = graph.conductor("out", LIVE)
    assert live is not None
    # Each: 12 V / (5 + 1) mΩ = 2000 A behind 6 mΩ; together 4000 A behind 3 mΩ; one more mΩ: 12 / 4 mΩ = 3000 A.
    faults = Faults(graph, lambda source: Norton(2400.0, 200.0), lambda wire: 0.001)
    assert faults.through(live.links[0]) == pytest.approx(3000.0)


def test_a_current_source_loses_nothing_on_the_way() -> None:
    graph = network(
        "  charger: {kind: charger, dc: {nominal: 12 V, current: 20 A}}\n" + fuse("F1", 50) + "\n" + battery("bank"),
        "  out: {from: charger.dc, to: bank, run: [1 m via cabin, F1, 1 m via cabin], cable: red, return: same}",
    )
    live = graph.conductor("out", LIVE)
    assert live is not None
    faults = Faults(
        graph,
        lambda source: Norton(20.0, 0.0) if source.port == "dc" else Norton(0.0, 0.0),
        lambda wire: 0.5,
    )
    assert faults.through(live.links[0]) == pytest.approx(20.0)


def test_a_lead_of_unknown_resistance_can_only_weaken_the_fault() -> None:
    graph = network("\n".join([battery("bank"), fuse("F1", 50), lamp("light")]), CIRCUIT)
    live = graph.conductor("feed", LIVE)
    assert live is not None

    def ohms(wire: Wire) -> object:
        return UNKNOWN

    faults = Faults(graph, lambda source: Norton(2400.0, 200.0), ohms)  # type: ignore[arg-type]
    assert faults.through(live.links[0]) == Range(0.0, 2400.0)
