from __future__ import annotations

import math

import pytest
from hypothesis import given

from checker.circuit.dc_elements import (
    Branch,
    Capacitor,
    Converter,
    CurrentLoad,
    Element,
    Emf,
    PowerLoad,
    ResistanceLoad,
    Side,
    Supply,
)
from checker.circuit.dc_islands import Islands
from checker.circuit.dc_newton import Equations
from checker.circuit.dc_nodes import Nodes
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import begin_at, settle_by_steps, settle_in_time, solve
from tests.circuit.dc_networks import battery, dense, linear_networks, vehicles


def solved(elements: list[Element]) -> Solution:
    found = solve(elements)
    assert isinstance(found, Solution), found
    return found


def refused(elements: list[Element]) -> NoSolution:
    found = solve(elements)
    assert isinstance(found, NoSolution)
    return found


@given(linear_networks())
def test_linear_networks_agree_with_dense_equations(elements: list[Element]) -> None:
    found = solved(elements)
    for node, volts in dense(elements).items():
        assert found.volts[node] == pytest.approx(volts, rel=1e-9, abs=1e-9)
    assert found.imbalance() < 1e-6


@given(vehicles())
def test_the_order_of_the_elements_does_not_matter(elements: list[Element]) -> None:
    here, there = solve(elements), solve(elements[::-1])
    assert type(here) is type(there)
    if isinstance(here, Solution) and isinstance(there, Solution):
        for node, volts in here.volts.items():
            assert there.volts[node] == pytest.approx(volts, abs=1e-6)


@given(vehicles())
def test_the_ways_of_settling_that_are_kept_in_reserve_come_to_the_same_point(elements: list[Element]) -> None:
    found = solve(elements)
    if isinstance(found, NoSolution):
        return
    islands = Islands(elements)
    nodes = Nodes(islands.alive)
    equations = Equations(islands.alive, nodes, dict.fromkeys(islands.references, 0.0))
    begin = begin_at(equations, islands.alive, islands.references, None)
    for way in (settle_in_time, settle_by_steps):
        x, good, _ = way(equations, begin)
        assert good
        for node, (i, offset) in equations.pin.items():
            volts = (x[i] if i >= 0 else 0.0) + offset
            assert volts == pytest.approx(found.volts[node], abs=1e-6)


def test_a_constant_power_load_settles_on_the_upper_of_its_two_voltages() -> None:
    # V = (E + sqrt(E^2 - 4 R P)) / 2
    found = solved([battery(12.0, 0.05), PowerLoad("load", "b", "gnd", 500.0)])
    assert found.volts["b"] == pytest.approx((12.0 + math.sqrt(144.0 - 100.0)) / 2.0, rel=1e-9)


@pytest.mark.parametrize(("watts", "exists"), [(719.0, True), (721.0, False), (5000.0, False)])
def test_the_most_a_source_can_bring_is_a_quarter_of_its_short_circuit_power(watts: float, exists: bool) -> None:
    found = solve([battery(12.0, 0.05), PowerLoad("load", "b", "gnd", watts)])  # E^2 / 4R = 720 W
    if exists:
        assert isinstance(found, Solution)
    else:
        assert isinstance(found, NoSolution)
        assert found.names == ("load",)
        assert "collapses" in found.reason


def test_a_load_with_a_voltage_limit_switches_off_instead() -> None:
    found = solved([battery(12.0, 0.05), PowerLoad("load", "b", "gnd", 5000.0, lowest_v=10.5)])
    assert found.off == ("load",)
    assert found.volts["b"] == pytest.approx(12.0)


def test_of_two_loads_beyond_their_limits_the_worse_goes_first_and_may_save_the_other() -> None:
    elements: list[Element] = [
        battery(12.0, 0.02),
        Branch("lead", "b", "end", 0.01),
        PowerLoad("near", "b", "gnd", 120.0, lowest_v=11.0),
        PowerLoad("far", "end", "gnd", 700.0, lowest_v=11.0),
    ]
    assert solved(elements).off == ("far",)


def test_a_load_above_its_highest_voltage_switches_off() -> None:
    assert solved([battery(16.0), PowerLoad("radio", "b", "gnd", 50.0, highest_v=15.0)]).off == ("radio",)


def test_an_alternator_at_its_limit_gives_its_limit_and_no_more() -> None:
    elements: list[Element] = [
        Supply("alternator", "a", "gnd", 14.4, 70.0),
        Branch("cable", "a", "b", 0.002),
        battery(12.5, 0.008),
    ]
    found = solved(elements)
    assert found.flows["alternator"].amps == pytest.approx(-70.0)
    assert found.flows["alternator"].state == "at its current limit"
    assert found.volts["b"] == pytest.approx(12.5 + 70.0 * 0.008)


def test_an_alternator_takes_nothing_back() -> None:
    found = solved([Supply("alternator", "b", "gnd", 13.8, 70.0), battery(14.2, 0.01)])
    assert found.flows["alternator"].amps == pytest.approx(0.0, abs=1e-6)
    assert found.flows["alternator"].state.startswith("resting")


def test_a_current_limited_source_alone_cannot_hold_a_constant_power_above_it() -> None:
    found = refused([Supply("alternator", "b", "gnd", 14.0, 10.0), PowerLoad("load", "b", "gnd", 500.0)])
    assert "load" in found.names


def test_a_source_of_limited_power_gives_that_power() -> None:
    found = solved([Supply("sun", "b", "gnd", 56.0, 20.0, watts=300.0), battery(52.0, 0.01)])
    watts = found.flows["sun"].watts
    assert watts == pytest.approx(-300.0)
    assert found.flows["sun"].state == "at its greatest power"


def charging(hold: float | None, alternator: float) -> list[Element]:
    return [
        Supply("alternator", "l", "gnd", 14.2, alternator, droop_ohm=0.003),
        battery(12.6, 0.01, "start", "l"),
        Converter(
            "converter", Side("l", "gnd"), Side("h", "gnd"), 0.94, set_v=56.0, limit_out_a=50.0, limit_in_a=200.0,
            hold_v=hold,
        ),
        battery(52.8, 0.004, "house", "h"),
    ]  # fmt: skip


def test_a_converter_held_back_by_its_input_voltage_leaves_the_starting_battery_alone() -> None:
    found = solved(charging(13.2, 70.0))
    assert found.flows["converter"].state == "held back so that its input keeps its voltage"
    assert found.volts["l"] == pytest.approx(13.2, abs=0.1)
    assert found.flows["start"].state == "charging"


def test_a_converter_that_is_not_held_back_discharges_the_starting_battery() -> None:
    found = solved(charging(None, 70.0))
    assert found.flows["converter"].state == "at its input current limit"
    assert found.flows["start"].state == "discharging"


def test_a_converter_alone_holds_its_dead_bus_at_its_set_voltage() -> None:
    elements: list[Element] = [
        battery(52.0, 0.01),
        Converter("converter", Side("b", "gnd"), Side("l", "gnd"), 0.9, set_v=13.4, limit_out_a=100.0),
        PowerLoad("lamps", "l", "gnd", 60.0),
    ]
    found = solved(elements)
    assert found.volts["l"] == pytest.approx(13.4, abs=0.01)
    assert found.flows["bank"].watts == pytest.approx(-60.0 / 0.9, rel=1e-2)


@pytest.mark.parametrize("start", [9.0, 13.4, 18.7, 40.0])
def test_a_source_with_nothing_to_feed_holds_its_set_voltage_wherever_the_solver_began(start: float) -> None:
    elements: list[Element] = [
        battery(52.0, 0.01),
        Converter("converter", Side("b", "gnd"), Side("l", "gnd"), 0.9, set_v=13.4, limit_out_a=100.0),
        Branch("lead", "l", "end", 0.01),
        Supply("sun", "s", "gnd", 14.2, 20.0),
        Branch("sun lead", "s", "far", 0.01),
    ]
    found = solve(elements, start=dict.fromkeys(("l", "end", "s", "far"), start))
    assert isinstance(found, Solution)
    assert found.volts["end"] == pytest.approx(13.4, abs=1e-3)
    assert found.volts["far"] == pytest.approx(14.2, abs=1e-3)


def test_a_converter_whose_input_is_dead_feeds_nothing() -> None:
    elements: list[Element] = [
        battery(13.0),
        Converter("converter", Side("nowhere", "gnd"), Side("l", "gnd"), 0.9, set_v=13.4),
        PowerLoad("lamps", "l", "gnd", 60.0),
    ]
    found = solved(elements)
    assert found.dead == ("converter", "lamps")
    assert "l" not in found.volts


def test_a_converter_below_its_input_voltage_is_off_and_its_bus_goes_dead() -> None:
    elements: list[Element] = [
        battery(40.0),
        Converter("converter", Side("b", "gnd"), Side("l", "gnd"), 0.9, set_v=13.4, lowest_v=42.0),
        PowerLoad("lamps", "l", "gnd", 60.0),
    ]
    found = solved(elements)
    assert (found.off, found.dead) == (("converter",), ("lamps",))


def test_a_fixed_power_into_a_bus_of_constant_powers_has_no_answer() -> None:
    elements: list[Element] = [
        battery(52.0),
        Converter("converter", Side("b", "gnd"), Side("l", "gnd"), 0.9, watts=100.0),
        PowerLoad("lamps", "l", "gnd", 60.0),
    ]
    assert refused(elements).reason


def test_a_converter_that_cannot_carry_its_bus_is_told() -> None:
    elements: list[Element] = [
        battery(52.0),
        Converter("converter", Side("b", "gnd"), Side("l", "gnd"), 0.9, set_v=13.4, limit_out_a=10.0),
        PowerLoad("winch", "l", "gnd", 900.0),
    ]
    assert refused(elements).names == ("winch",)


def test_what_no_conductor_joins_to_a_source_is_dead_and_has_no_voltage() -> None:
    elements: list[Element] = [
        battery(13.0),
        Branch("cut off", "x", "y", 0.01),
        PowerLoad("lamp", "y", "gnd", 20.0),
    ]
    found = solved(elements)
    assert found.dead == ("cut off", "lamp")
    assert found.between("y", "gnd") is None


def test_a_floating_part_has_its_own_reference() -> None:
    elements: list[Element] = [
        battery(13.0),
        ResistanceLoad("heater", "b", "gnd", 1.0),
        Emf("cell", "p", "m", 3.0, 0.1),
        ResistanceLoad("torch", "p", "m", 2.9),
    ]
    found = solved(elements)
    assert found.flows["torch"].amps == pytest.approx(1.0)
    assert found.volts["m"] == 0.0


def test_a_load_from_one_part_to_another_without_a_way_back_carries_nothing() -> None:
    elements: list[Element] = [
        battery(13.0),
        Emf("cell", "p", "m", 12.0, 0.1),
        PowerLoad("lamp", "p", "gnd", 20.0),
    ]
    found = refused(elements)
    assert "no closed path" in found.reason


def test_a_join_without_resistance_carries_what_passes_through_it() -> None:
    elements: list[Element] = [
        battery(12.0, 0.1),
        Branch("bar", "b", "c", 0.0),
        Branch("strap", "c", "d", 0.0),
        ResistanceLoad("one", "c", "gnd", 1.9),
        ResistanceLoad("two", "d", "gnd", 3.0),
    ]
    found = solved(elements)
    assert found.volts["b"] == found.volts["d"]
    assert found.flows["strap"].amps == pytest.approx(found.volts["d"] / 3.0)
    assert found.flows["bar"].amps == pytest.approx(-(found.flows["bank"].amps or 0.0))


def test_joins_without_resistance_side_by_side_leave_their_shares_open() -> None:
    elements: list[Element] = [
        battery(12.0, 0.1),
        Branch("one", "b", "c", 0.0),
        Branch("other", "b", "c", 0.0),
        Branch("on", "c", "d", 0.0),
        ResistanceLoad("heater", "d", "gnd", 1.9),
    ]
    found = solved(elements)
    assert found.flows["one"].amps is None
    assert found.flows["other"].amps is None
    assert found.flows["on"].amps == pytest.approx(6.0)


def test_an_ideal_source_gives_what_is_drawn() -> None:
    found = solved([Emf("ideal", "b", "gnd", 12.0, 0.0), ResistanceLoad("heater", "b", "gnd", 2.0)])
    assert found.flows["ideal"].amps == pytest.approx(-6.0)
    assert found.flows["ideal"].state == "discharging"
    assert found.imbalance() < 1e-9


def test_two_ideal_sources_of_different_voltage_joined_by_nothing_are_reported() -> None:
    found = refused([Emf("a", "b", "gnd", 12.8, 0.0), Emf("c", "b", "gnd", 13.2, 0.0)])
    assert "0.4 V" in found.reason
    assert found.names == ("c",)


def test_two_ideal_sources_of_one_voltage_may_stand_side_by_side() -> None:
    pair = [Emf("a", "b", "gnd", 12.8, 0.0), Emf("c", "b", "gnd", 12.8, 0.0)]
    found = solved([*pair, CurrentLoad("l", "b", "gnd", 1.0)])
    assert found.volts["b"] == pytest.approx(12.8)
    assert found.flows["a"].amps is None


def test_a_joined_loop_of_no_resistance_does_not_hang() -> None:
    ring = [Branch(f"r{i}", f"n{i}", f"n{(i + 1) % 5}", 0.0) for i in range(5)]
    found = solved([battery(12.0, 0.1, node="n0"), *ring, ResistanceLoad("heater", "n3", "gnd", 2.0)])
    assert all(found.flows[f"r{i}"].amps is None for i in range(5))


def test_a_node_that_only_a_capacitor_holds_takes_the_voltage_of_its_feed() -> None:
    elements: list[Element] = [
        battery(51.2, 0.006),
        Branch("resistor", "b", "c", 30.0),
        Capacitor("caps", "c", "gnd", 0.018, 0.0),
        Capacitor("loose", "x", "gnd", 0.018, 0.0),
    ]
    found = solved(elements)
    assert found.volts["c"] == pytest.approx(51.2, rel=1e-9)
    assert found.flows["caps"].amps == 0.0


def test_two_elements_of_one_name_are_refused() -> None:
    with pytest.raises(ValueError, match="one name"):
        solve([battery(), battery()])


@pytest.mark.parametrize(
    "make",
    [
        lambda: Branch("x", "a", "b", -1.0),
        lambda: Branch("x", "a", "b", math.nan),
        lambda: Emf("x", "a", "b", 12.0, -0.1),
        lambda: ResistanceLoad("x", "a", "b", 0.0),
        lambda: PowerLoad("x", "a", "b", -5.0),
        lambda: Supply("x", "a", "b", 14.0, -1.0),
        lambda: Converter("x", Side("a", "b"), Side("c", "d"), 1.2, watts=5.0),
        lambda: Converter("x", Side("a", "b"), Side("c", "d"), 0.9),
    ],
)
def test_values_that_no_element_can_have_are_refused(make: object) -> None:
    assert callable(make)
    with pytest.raises(ValueError):
        make()


def test_an_empty_network_is_solved_by_nothing() -> None:
    assert solved([]).volts == {}
