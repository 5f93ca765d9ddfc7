"""Operating points of networks of two voltages with a converter between, by number of nodes; plain against scipy."""

from __future__ import annotations

from random import Random

from checker.circuit import sparse_large
from checker.circuit.dc_elements import Branch, Converter, Element, Emf, PowerLoad, Side, Supply
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve
from tests.benchmarks.timing import Row, interleaved, table

SIZES = (10, 30, 100, 300, 1000, 3000)


def network(nodes: int) -> list[Element]:
    """Half of the nodes at 12 V, half at 48 V, each side a tree with some links across it."""
    random = Random(3)
    elements: list[Element] = [
        Emf("start", "l0", "gnd", 12.6, 0.005),
        Emf("house", "h0", "gnd", 52.5, 0.003),
        Supply("alternator", "l0", "gnd", 14.2, 150.0, droop_ohm=0.003),
        Converter(
            "converter", Side("l1", "gnd"), Side("h1", "gnd"), 0.94, set_v=56.0, limit_out_a=40.0, limit_in_a=200.0,
            hold_v=13.0,
        ),
    ]  # fmt: skip
    for side, watts, ohm in (("l", 60.0, 1.0), ("h", 250.0, 2.0)):
        for i in range(1, nodes // 2):
            feed = random.uniform(1, 10) * ohm * 1e-3
            elements.append(Branch(f"{side}{i} feed", f"{side}{(i - 1) // 3}", f"{side}{i}", feed))
            if i % 3 == 0:
                drawn = watts * 10 / nodes * random.uniform(0.5, 1.5)
                elements.append(PowerLoad(f"{side}{i} load", f"{side}{i}", "gnd", drawn))
            if i % 11 == 0:
                elements.append(Branch(f"{side}{i} link", f"{side}{i}", f"{side}{i // 2}", 0.02))
    return elements


def solved(elements: list[Element], large: int) -> Solution:
    """One operating point; scipy from `large` unknowns on."""
    sparse_large.LARGE = large
    found = solve(elements)
    assert isinstance(found, Solution)
    return found


def rows(rounds: int = 7) -> list[Row]:
    """One row a size: plain over scipy, with the times."""
    usual = sparse_large.LARGE
    found = []
    for nodes in SIZES:
        elements = network(nodes)
        times = interleaved(
            {
                "plain": lambda elements=elements: solved(elements, 10**9),  # type: ignore[misc]
                "scipy": lambda elements=elements: solved(elements, 0),  # type: ignore[misc]
            },
            rounds,
        )
        told = ", ".join(f"{one} {at * 1000:.1f} ms" for one, at in times.items())
        found.append(Row(f"network of {nodes} nodes, plain / scipy", times["plain"] / times["scipy"], "x", None, told))
    sparse_large.LARGE = usual
    return found


if __name__ == "__main__":
    print(table(rows()))
