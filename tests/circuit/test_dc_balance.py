"""What is given is taken: powers over the whole network and currents at every node, added up here from the flows."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import event, given

from checker.circuit.dc_converter import LEAK_S
from checker.circuit.dc_elements import Branch, Converter, Diode, Element, ResistanceLoad
from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import solve
from tests.circuit.dc_networks import fitouts, vehicles


def leaving(elements: Sequence[Element], found: Solution) -> dict[str, float]:
    """Sum of the currents that leave each node (A); a node that touches one of unknown share is left out."""
    total: dict[str, float] = {}
    open_nodes: set[str] = set()
    for element in elements:
        flow = found.flows.get(element.name)
        if flow is None:
            continue
        legs = [(element.ends[:2], flow.amps)]
        if isinstance(element, Converter):
            legs.append((element.ends[2:], None if flow.amps_out is None else -flow.amps_out))
        for (plus, minus), amps in legs:
            if amps is None:
                open_nodes |= {plus, minus}
                continue
            total[plus] = total.get(plus, 0.0) + amps
            total[minus] = total.get(minus, 0.0) - amps
    return {node: amps for node, amps in total.items() if node not in open_nodes}


def check(elements: list[Element]) -> None:
    found = solve(elements)
    if isinstance(found, NoSolution):
        event("no operating point")
        assert found.reason
        return
    powers = {name: flow.watts for name, flow in found.flows.items() if flow.watts is not None}
    given_w = -sum(watts for watts in powers.values() if watts < 0.0)
    assert abs(sum(powers.values())) <= 1e-6 * max(given_w, 1e-3)
    largest = max((abs(flow.amps) for flow in found.flows.values() if flow.amps is not None), default=0.0)
    for node, amps in leaving(elements, found).items():
        assert amps == pytest.approx(0.0, abs=1e-7 * max(1.0, largest)), node
    for element in elements:
        if isinstance(element, Branch | Diode | ResistanceLoad | Converter) and element.name in powers:
            assert powers[element.name] >= -1e-9 * max(1.0, given_w), element.name  # what only takes never gives
    for element in elements:
        if isinstance(element, Converter) and element.name in found.flows:
            flow = found.flows[element.name]
            event(flow.state)
            assert flow.amps is not None and flow.amps_out is not None and flow.volts_out is not None
            taken = (flow.volts * flow.amps - element.idle_w) * element.efficiency
            leak = LEAK_S * max(0.0, flow.volts_out - (element.set_v or flow.volts_out))  # let back at rest
            assert flow.volts_out * (flow.amps_out + leak) == pytest.approx(taken, rel=1e-6, abs=1e-6)
            assert flow.amps_out <= element.limit_out_a * (1.0 + 1e-9)
            assert flow.amps <= max(element.limit_in_a * (1.0 + 1e-9), element.idle_w / flow.volts * (1.0 + 1e-9))


@given(fitouts())
def test_powers_and_currents_balance_with_converters_in_both_directions(elements: list[Element]) -> None:
    check(elements)


@given(vehicles())
def test_powers_and_currents_balance_in_a_vehicle(elements: list[Element]) -> None:
    check(elements)
