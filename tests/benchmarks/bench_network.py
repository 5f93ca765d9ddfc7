"""Operating points: growth with the number of nodes, and against a general circuit simulator where one is installed.

The simulator is timed as a process of its own, as somebody would call it, and inside one process, where the same point
is asked many times over and only what each further one takes counts. Processor time, the least of interleaved rounds:
other programs on the machine spoil the rest.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from math import inf
from pathlib import Path
from random import Random
from resource import RUSAGE_CHILDREN, getrusage
from tempfile import TemporaryDirectory
from time import process_time

from checker.circuit.dc_elements import Branch, Converter, Element, Emf, PowerLoad, Side, Supply
from checker.circuit.dc_islands import Islands
from checker.circuit.dc_newton import Equations
from checker.circuit.dc_nodes import Nodes
from checker.circuit.dc_solution import Solution
from checker.circuit.dc_solve import begin_at, settle, solve
from tests.benchmarks.bench_size import EXPONENT, exponent
from tests.benchmarks.timing import Row, table
from tests.reference.network_form.read import Published, read_network

SIZES = (30, 100, 300, 1000, 3000)
SIMULATOR = "ngspice"
REFERENCE = Path(__file__).parents[1] / "reference"
AGAIN = 1000
OURS = 50
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


def growth(rounds: int = 7) -> list[Row]:
    """The exponent of time over nodes."""
    networks = {nodes: network(nodes) for nodes in SIZES}
    taken: dict[int, float] = dict.fromkeys(SIZES, inf)
    for _ in range(rounds):
        for nodes, elements in networks.items():
            start = process_time()
            solved(elements)
            taken[nodes] = min(taken[nodes], process_time() - start)
    told = ", ".join(f"{nodes}: {seconds * 1000:.1f} ms" for nodes, seconds in taken.items())
    return [Row(f"growth of an operating point, {SIZES[0]} to {SIZES[-1]} nodes", exponent(taken), "", EXPONENT, told)]


def references(folder: str) -> list[Published]:
    """The steady networks of a folder, each with its netlist."""
    return [read_network(file) for file in sorted((REFERENCE / folder).glob("steady-*.yaml"))]


def deck(found: Published, times: int) -> str:
    """Its netlist, asking for the operating point some times over and printing nothing."""
    bare = re.sub(r"(?ms)^\.control.*?^\.endc\n", "", str(found.data["netlist"]))
    bare = re.sub(r"(?m)^\.(op|end)$\n?", "", bare)
    loop = f".control\nrepeat {times}\nop\ndestroy all\nend\nquit\n.endc\n.end\n"
    return f"{bare.rstrip()}\n{loop}"


def simulated(text: str, file: Path) -> float:
    """Processor seconds of a process of the simulator on a netlist."""
    file.write_text(text, "utf-8")
    start = getrusage(RUSAGE_CHILDREN)
    done = subprocess.run([SIMULATOR, "-b", str(file)], capture_output=True, text=True, check=True)
    end = getrusage(RUSAGE_CHILDREN)
    taken = end.ru_utime + end.ru_stime - start.ru_utime - start.ru_stime
    if "No. of Data Rows" not in done.stdout:
        raise RuntimeError(f"{SIMULATOR} found no operating point: {done.stdout[-500:]}{done.stderr[-500:]}")
    return taken


def ours(found: Published) -> tuple[float, float]:
    """Processor seconds of one of our solutions: from the elements to every current, and stamp and solve alone."""
    islands = Islands(found.elements)
    equations = Equations(islands.alive, Nodes(islands.alive), dict.fromkeys(islands.references, 0.0))
    begin = begin_at(equations, islands.alive, islands.references, None)
    start = process_time()
    for _ in range(OURS):
        solved(found.elements)
    middle = process_time()
    for _ in range(OURS):
        settle(equations, begin)
    return (middle - start) / OURS, (process_time() - middle) / OURS


def against_the_simulator(folder: str, rounds: int = 9) -> list[Row]:
    """Time of our stamping and solving over that of the simulator, case by case."""
    if shutil.which(SIMULATOR) is None:
        return [Row(f"{folder} / {SIMULATOR}", float("nan"), "x", None, "not there")]
    whole: dict[str, float] = {}
    alone: dict[str, float] = {}
    process: dict[str, float] = {}
    inside: dict[str, float] = {}
    with TemporaryDirectory() as name:
        file = Path(name) / "deck.cir"
        for found in references(folder):
            once, many = deck(found, 1), deck(found, 1 + AGAIN)
            runs = [(*ours(found), simulated(once, file), simulated(many, file)) for _ in range(rounds)]
            one = found.id.split("-")[1]
            whole[one], alone[one], process[one], most = (min(run[at] for run in runs) for at in range(4))
            inside[one] = (most - process[one]) / AGAIN
    rows = []
    for what, here, theirs, target in (
        (f"all of a solution / {SIMULATOR} process", whole, process, None),
        (f"solve and stamp / {SIMULATOR} process", alone, process, PROCESS),
        (f"solve and stamp / {SIMULATOR} operating point inside", alone, inside, INSIDE),
    ):
        told = ", ".join(f"{one}: {here[one] * 1e3:.3f} / {theirs[one] * 1e3:.3f} ms" for one in here)
        ratio = sum(here.values()) / sum(theirs.values())
        rows.append(Row(f"reference {folder}, {what}", ratio, "x", target if folder == "networks" else None, told))
    return rows


def rows() -> list[Row]:
    """All of them."""
    return [*growth(), *against_the_simulator("networks"), *against_the_simulator("simulated")]


if __name__ == "__main__":
    print(table(rows()))
