from __future__ import annotations

import pytest

from checker.circuit.dc_elements import Branch, Capacitor, Converter, Emf, Inductor, PowerLoad, Side
from checker.circuit.dc_islands import Islands
from checker.circuit.dc_nodes import Contradiction, Nodes


def test_nodes_without_resistance_between_are_one() -> None:
    nodes = Nodes([Branch("x", "a", "b", 0.0), Inductor("y", "b", "c", 1e-6, 0.0), Branch("z", "c", "d", 0.1)])
    assert nodes.find("a") == nodes.find("c")
    assert nodes.find("a")[0] != nodes.find("d")[0]


def test_ideal_sources_in_series_stand_above_each_other() -> None:
    nodes = Nodes([Emf("one", "a", "b", 12.0, 0.0), Emf("two", "b", "c", 3.0, 0.0)])
    assert nodes.find("a")[1] - nodes.find("c")[1] == pytest.approx(15.0)


def test_a_loop_of_ideal_sources_that_does_not_add_up_is_a_contradiction() -> None:
    with pytest.raises(Contradiction) as found:
        Nodes([Emf("one", "a", "b", 12.0, 0.0), Emf("two", "b", "c", 3.0, 0.0), Branch("short", "a", "c", 0.0)])
    assert found.value.name == "short"
    assert abs(found.value.volts) == pytest.approx(15.0)


def test_only_the_joins_round_a_loop_are_left_open() -> None:
    nodes = Nodes(
        [Branch(f"r{i}", f"n{i}", f"n{(i + 1) % 4}", 0.0) for i in range(4)] + [Branch("tail", "n2", "t", 0.0)]
    )
    assert nodes.loops() == frozenset({"r0", "r1", "r2", "r3"})


def test_the_ends_of_a_converter_are_its_input_and_then_its_output() -> None:
    one = Converter("c", Side("a", "b"), Side("x", "y"), 0.9, watts=1.0)
    assert one.ends == ("a", "b", "x", "y")


def test_a_chain_of_converters_is_alive_from_its_first_source() -> None:
    def step(i: int) -> Converter:
        return Converter(f"c{i}", Side(f"n{i}", "gnd"), Side(f"n{i + 1}", "gnd"), 0.9, set_v=10.0)

    chain = [step(2), step(1), step(0), PowerLoad("last", "n3", "gnd", 1.0)]
    assert Islands([*chain, Emf("b", "n0", "gnd", 12.0, 0.1)]).dead == []
    assert [one.name for one in Islands([*chain, Emf("b", "n1", "gnd", 12.0, 0.1)]).dead] == ["c0"]


def test_a_charged_capacitor_keeps_its_part_alive() -> None:
    assert Islands([Capacitor("c", "a", "gnd", 1.0, 5.0), PowerLoad("l", "a", "gnd", 1.0)]).dead == []


def test_each_part_has_one_reference_and_the_ground_comes_first() -> None:
    elements = [
        Emf("float", "p", "m", 3.0, 0.1),
        PowerLoad("torch", "p", "m", 1.0),
        Branch("earth", "m2", "gnd", 0.1),
        Emf("bank", "p2", "m2", 12.0, 0.1),
    ]
    assert sorted(Islands(elements).references) == ["gnd", "m"]
