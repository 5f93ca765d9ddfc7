"""Our answer beside the published one, value by value."""

from __future__ import annotations

from pathlib import Path
from typing import Any, NamedTuple

import yaml

from checker.circuit.dc_solution import NoSolution, Solution
from checker.circuit.dc_solve import solve
from tests.reference.network_form.moving import moving_values
from tests.reference.network_form.read import Published, read_network

STEADY = 0.001  # of the value
MOVING = 0.01  # of full scale: the largest published size of that quantity
DIGITS = 2e-6  # of the largest of its group: what the printed digits of values near zero can show


class Value(NamedTuple):
    """One published value and ours: `error` over what it is measured against, `allowed` likewise."""

    name: str
    published: float
    ours: float
    error: float
    allowed: float

    @property
    def agrees(self) -> bool:
        return self.error <= self.allowed


class Compared(NamedTuple):
    """One file: the values compared, what was not covered, and why there is no answer where there is none."""

    id: str
    values: tuple[Value, ...]
    uncovered: tuple[str, ...]
    refused: str

    @property
    def worst(self) -> float:
        return max((value.error for value in self.values), default=0.0)

    @property
    def differing(self) -> tuple[str, ...]:
        found = [f"{v.name}: published {v.published:g}, ours {v.ours:g}" for v in self.values if not v.agrees]
        return tuple([f"no answer: {self.refused}", *found] if self.refused else found)


def compare_file(path: Path) -> Compared:
    """Solve one file and compare; a file that is not of the form is not covered."""
    try:
        network = read_network(path)
    except (ValueError, TypeError, yaml.YAMLError) as error:
        return Compared(path.stem, (), (f"not of the form: {error}",), "")
    return compare(network)


def compare(network: Published) -> Compared:
    """Solve one network and compare every published value."""
    if network.unknown:
        return Compared(network.id, (), network.unknown, "")
    expected = network.data.get("expected")
    if not isinstance(expected, dict) or not expected:
        return Compared(network.id, (), ("no expected values",), "")
    if network.kind == "steady":
        return _steady(network, expected)
    if network.kind == "transient":
        found, uncovered, refused = moving_values(network)
        values = tuple(
            Value(name, published, ours, abs(ours - published) / scale if scale else abs(ours - published), MOVING)
            for name, published, ours, scale in found
        )
        return Compared(network.id, values, tuple(uncovered), refused)
    return Compared(network.id, (), (f"networks of the kind {network.kind}",), "")


def _steady(network: Published, expected: dict[str, Any]) -> Compared:
    found = solve(network.elements, start=_start(network))
    if isinstance(found, NoSolution):
        return Compared(network.id, (), (), found.reason)
    values: list[Value] = []
    uncovered: list[str] = []
    for group, entries in expected.items():
        ask = GROUPS.get(group)
        if ask is None or not isinstance(entries, dict):
            uncovered.append(f"expected {group}")
            continue
        scale = max((abs(float(one)) for one in entries.values()), default=0.0)
        for name, published in entries.items():
            ours = ask(network, found, name)
            if ours is None:
                uncovered.append(f"{group}.{name}")
                continue
            published = float(published)
            gap = max(0.0, abs(ours - published) - DIGITS * scale)
            error = gap / abs(published) if published else gap / max(scale, 1.0)
            values.append(Value(f"{group}.{name}", published, ours, error, STEADY))
    return Compared(network.id, tuple(values), tuple(uncovered), "")


def _start(network: Published) -> dict[str, float]:
    given = network.data.get("start_voltages_V")
    return {str(node): float(volts) for node, volts in given.items()} if isinstance(given, dict) else {}


def _node(network: Published, found: Solution, name: str) -> float | None:
    return found.between(name, "gnd")


def _amps(network: Published, found: Solution, name: str) -> float | None:
    flow = found.flows.get(name)
    return None if flow is None else flow.amps


def _source(network: Published, found: Solution, name: str) -> float | None:
    amps = _amps(network, found, name)
    return None if amps is None else -amps


def _out(network: Published, found: Solution, name: str) -> float | None:
    flow = found.flows.get(name)
    return None if flow is None else flow.amps_out


GROUPS = {
    "node_voltages_V": _node,
    "source_currents_A": _source,
    "branch_currents_A": _amps,
    "load_currents_A": _amps,
    "converter_input_currents_A": _amps,
    "converter_output_currents_A": _out,
}


def summary(found: tuple[Compared, ...], folder: str) -> str:
    """How many values agree, how far the worst is off, and what is not covered, by name."""
    values = [value for one in found for value in one.values]
    agreeing = sum(value.agrees for value in values)
    worst = max((one.worst for one in found), default=0.0)
    lines = [f"solved networks in {folder}: {len(found)}; {agreeing} of {len(values)} values agree; worst {worst:.1e}"]
    for one in found:
        lines += [f"  differs: {one.id}: {text}" for text in one.differing]
        lines += [f"  not covered: {one.id}: {text}" for text in one.uncovered]
    return "\n".join(lines)


__all__ = ["Compared", "Value", "compare", "compare_file", "summary"]
