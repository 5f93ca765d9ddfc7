"""Operating points: growth with the number of nodes, and against a general circuit simulator where one is installed.

The simulator is timed as a process of its own, as somebody would call it, and inside one process, where the same point
is asked many times over and only what each further one takes counts.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path
from random import Random
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

from checker.circuit.dc_elements import Branch, Converter, Element, Emf, PowerLoad, Side, Supply
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import solve
from tests.benchmarks.bench_size import EXPONENT, exponent
from tests.benchmarks.timing import Row, interleaved, table
from tests.reference.network_form.read import Published, read_network

SIZES = (30, 100, 300, 1000, 3000)
SIMULATOR = "ngspice"
REFERENCE = Path(__file__).parents[1] / "reference"
AGAIN = 200
PROCESS = 1.0 / 60.0
INSIDE = 0.8


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


def solved(elements: list[Element] | tuple[Element, ...]) -> Solution:
    """One operating point, from the elements to every current."""
    found = solve(elements)
    assert isinstance(found, Solution)
    return found


def growth(rounds: int = 5) -> list[Row]:
    """The exponent of time over nodes."""
    networks = {nodes: network(nodes) for nodes in SIZES}
    times = interleaved({str(n): lambda e=e: solved(e) for n, e in networks.items()}, rounds)  # type: ignore[misc]
    by_size = {int(name): seconds for name, seconds in times.items()}
    told = ", ".join(f"{nodes}: {seconds * 1000:.1f} ms" for nodes, seconds in by_size.items())
    what = f"growth of an operating point, {SIZES[0]} to {SIZES[-1]} nodes"
    return [Row(what, exponent(by_size), "", EXPONENT, told)]


def references() -> list[Published]:
    """The steady reference networks, each with its netlist."""
    folders = ("networks", "simulated")
    return [read_network(file) for folder in folders for file in sorted((REFERENCE / folder).glob("steady-*.yaml"))]


def deck(found: Published, times: int) -> str:
    """Its netlist, asking for the operating point some times over and printing nothing."""
    bare = re.sub(r"(?ms)^\.control.*?^\.endc\n", "", str(found.data["netlist"]))
    bare = re.sub(r"(?m)^\.(op|end)$\n?", "", bare)
    loop = f".control\nrepeat {times}\nop\ndestroy all\nend\nquit\n.endc\n.end\n"
    return f"{bare.rstrip()}\n{loop}"


def simulated(text: str, folder: Path, rounds: int) -> float:
    """Median seconds of a process of the simulator on a netlist."""
    file = folder / "deck.cir"
    file.write_text(text, "utf-8")
    taken = []
    for _ in range(rounds):
        start = perf_counter()
        done = subprocess.run([SIMULATOR, "-b", str(file)], capture_output=True, text=True, check=True)
        taken.append(perf_counter() - start)
        if "No. of Data Rows" not in done.stdout:
            raise RuntimeError(f"{SIMULATOR} found no operating point: {done.stdout[-500:]}{done.stderr[-500:]}")
    return median(taken)


def against_the_simulator(rounds: int = 9) -> list[Row]:
    """Time of our stamping and solving over that of the simulator, case by case and all together."""
    if shutil.which(SIMULATOR) is None:
        return [Row(f"against {SIMULATOR}", float("nan"), "x", None, "not there")]
    ours, process, inside = {}, {}, {}
    with TemporaryDirectory() as name:
        for found in references():
            solved(found.elements)
            start = perf_counter()
            for _ in range(rounds):
                solved(found.elements)
            ours[found.id] = (perf_counter() - start) / rounds
            process[found.id] = simulated(deck(found, 1), Path(name), rounds)
            many = simulated(deck(found, 1 + AGAIN), Path(name), 3)
            inside[found.id] = (many - process[found.id]) / AGAIN
    rows = []
    for what, theirs, target in (("process", process, PROCESS), ("operating point inside", inside, INSIDE)):
        told = ", ".join(
            f"{one.split('-')[1]}: {ours[one] * 1e3:.2f} / {theirs[one] * 1e3:.2f} ms" for one in ours
        )
        ratio = sum(ours.values()) / sum(theirs.values())
        rows.append(Row(f"{len(ours)} reference networks / {SIMULATOR} {what}", ratio, "x", target, told))
    return rows


def rows() -> list[Row]:
    """All of them."""
    return [*growth(), *against_the_simulator()]


if __name__ == "__main__":
    print(table(rows()))
