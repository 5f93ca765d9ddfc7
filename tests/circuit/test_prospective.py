"""Short-circuit currents at every node, against hand calculation, full solutions and the walks over a tree."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.circuit.dc_elements import Branch, Element, Emf
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve
from checker.circuit.prospective import Battery, Resistances

LEAD = [("bank", "bar", 0.004), ("bar", "end", 0.016)]


def test_one_battery_is_ohms_law() -> None:
    found = Resistances(LEAD, ()).greatest([Battery("bank", 12.8, 0.005)], ())
    assert found["bank"] == pytest.approx(12.8 / 0.005)
    assert found["bar"] == pytest.approx(12.8 / 0.009)
    assert found["end"] == pytest.approx(12.8 / 0.025)


def test_two_batteries_add_behind_what_they_share() -> None:
    # 13 V behind 10 mohm and behind 20 mohm: 13 V behind 6.667 mohm, then 3.333 mohm to the end.
    net = Resistances([("b", "end", 0.01 / 3.0)], ())
    found = net.greatest([Battery("b", 13.0, 0.01), Battery("b", 13.0, 0.02)], ())
    assert found["end"] == pytest.approx(1300.0)


def test_a_ring_is_two_ways_side_by_side() -> None:
    ring = [("b", "x", 0.01), ("x", "end", 0.01), ("b", "end", 0.02)]
    assert Resistances(ring, ()).greatest([Battery("b", 12.0, 0.01)], ())["end"] == pytest.approx(12.0 / 0.02)
    assert Resistances(ring, ()).weakest([Battery("b", 12.0, 0.01)])["end"].amps == pytest.approx(12.0 / 0.02)


def test_what_limits_itself_adds_its_limit_where_it_is_joined() -> None:
    found = Resistances([*LEAD, ("p", "q", 0.1)], ("alone",)).greatest(
        [Battery("bank", 12.8, 0.005)], [("end", 70.0), ("q", 20.0)]
    )
    assert found["bank"] == pytest.approx(12.8 / 0.005 + 70.0)
    assert (found["p"], found["q"], found["alone"]) == pytest.approx((20.0, 20.0, 0.0))


def test_the_weakest_battery_is_named() -> None:
    found = Resistances([("a", "m", 0.01), ("b", "m", 0.05), ("c", "d", 0.1)], ()).weakest(
        [Battery("a", 12.0, 0.005), Battery("b", 12.0, 0.005)]
    )
    assert found["m"] == pytest.approx((12.0 / 0.055, 1))
    assert found["b"] == pytest.approx((12.0 / 0.065, 0))
    assert "c" not in found


def test_a_join_without_resistance_makes_nodes_one() -> None:
    found = Resistances([("b", "x", 0.0), ("x", "end", 0.01)], ()).greatest([Battery("b", 12.0, 0.01)], ())
    assert found["x"] == found["b"] == pytest.approx(1200.0)


def test_a_resistance_below_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="0 or more"):
        Resistances([("a", "b", -1.0)], ())


@st.composite
def meshes(draw: st.DrawFn) -> tuple[list[tuple[str, str, float]], list[Battery]]:
    count = draw(st.integers(2, 12))
    ohms = st.integers(0, 90).map(lambda one: one * 1e-3)
    inner = st.integers(2, 30).map(lambda one: one * 1e-3)
    stretches = [(f"n{draw(st.integers(0, i - 1))}", f"n{i}", draw(ohms)) for i in range(1, count)]
    for _ in range(draw(st.integers(0, 4))):
        a, b = draw(st.integers(0, count - 1)), draw(st.integers(0, count - 1))
        if a != b:
            stretches.append((f"n{a}", f"n{b}", draw(ohms)))
    batteries = [
        Battery(f"n{draw(st.integers(0, count - 1))}", draw(st.integers(118, 146)) / 10.0, draw(inner))
        for _ in range(draw(st.integers(1, 4)))
    ]
    return stretches, batteries


def shorted(stretches: list[tuple[str, str, float]], batteries: list[Battery], node: str) -> float:
    """The current into a dead short at a node, by a whole solution of its own."""
    elements: list[Element] = [Branch(f"s{i}", a, b, ohm) for i, (a, b, ohm) in enumerate(stretches)]
    elements += [Emf(f"e{i}", one.node, "gnd", one.emf_v, one.ohm) for i, one in enumerate(batteries)]
    found = solve([*elements, Emf("short", node, "gnd", 0.0, 0.0)])
    assert isinstance(found, Solution)
    amps = found.flows["short"].amps
    assert amps is not None
    return amps


@given(meshes())
def test_every_node_at_once_agrees_with_a_solution_for_each(
    mesh: tuple[list[tuple[str, str, float]], list[Battery]],
) -> None:
    stretches, batteries = mesh
    net = Resistances(stretches, ())
    greatest, weakest = net.greatest(batteries, ()), net.weakest(batteries)
    for node in net.nodes:
        assert greatest[node] == pytest.approx(shorted(stretches, batteries, node), rel=1e-8)
        alone = [shorted(stretches, [one], node) for one in batteries]
        assert weakest[node].amps == pytest.approx(min(alone), rel=1e-8)
        assert alone[weakest[node].battery] == pytest.approx(min(alone), rel=1e-8)


@given(meshes(), st.data())
def test_what_lies_between_the_ends_of_ranges_stays_between_their_currents(
    mesh: tuple[list[tuple[str, str, float]], list[Battery]], data: st.DataObject
) -> None:
    stretches, batteries = mesh
    share = st.floats(0.0, 1.0)

    def within(low: float, high: float) -> float:
        return low + (high - low) * data.draw(share)

    nodes = Resistances(stretches, ()).nodes
    near = Resistances([(a, b, 0.7 * ohm) for a, b, ohm in stretches], nodes)
    far = Resistances([(a, b, 1.5 * ohm) for a, b, ohm in stretches], nodes)
    between = Resistances([(a, b, ohm * within(0.7, 1.5)) for a, b, ohm in stretches], nodes)
    strong = [Battery(one.node, one.emf_v + 0.8, 0.8 * one.ohm) for one in batteries]
    weak = [Battery(one.node, one.emf_v - 0.8, 1.6 * one.ohm) for one in batteries]
    drawn = [Battery(one.node, one.emf_v + within(-0.8, 0.8), one.ohm * within(0.8, 1.6)) for one in batteries]
    most, fewest = near.greatest(near.level(strong, max), ()), far.greatest(far.level(weak, min), ())
    best, worst = near.weakest(strong), far.weakest(weak)
    there, alone = between.greatest(drawn, ()), between.weakest(drawn)
    for node in nodes:
        assert fewest[node] * (1.0 - 1e-9) <= there[node] <= most[node] * (1.0 + 1e-9)
        assert worst[node].amps * (1.0 - 1e-9) <= alone[node].amps <= best[node].amps * (1.0 + 1e-9)
