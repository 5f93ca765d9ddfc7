"""A coach of 300 circuits: every mode solved, short circuits at every end, coordination; what one factorisation saves.

All in a process of its own, as it would be asked for; processor time, since other programs spoil the rest.
"""

from __future__ import annotations

import resource
import sys
from math import inf
from time import process_time

from checker.circuit.dc_elements import Branch, Element, Emf
from checker.circuit.dc_solve import solve
from checker.circuit.prospective import Battery, Resistances
from checker.facts.operating_point import points
from checker.facts.subject import Facts
from checker.reading import read_text
from tests.benchmarks.bench_size import exponent
from tests.benchmarks.generator import coach
from tests.benchmarks.timing import Row, python, table

SIZES = (30, 100, 300, 1000)
ASKED = 40
STAGES = ("reading", "operating points", "faults", "devices", "coordination")


def computed(circuits: int) -> dict[str, float]:
    """Processor seconds of each stage on a coach of that many circuits."""
    taken: dict[str, float] = {}
    last = process_time()

    def done(stage: str) -> None:
        nonlocal last
        taken[stage] = process_time() - last
        last = process_time()

    facts = Facts(read_text(coach(circuits)))
    assert facts.network.circuits
    done("reading")
    assert all(point.likely is not None and len(point.cases) >= 3 for point in points(facts).values())
    done("operating points")
    assert all(s.greatest is not None and s.least is not None for s in facts.subjects("fault"))
    done("faults")
    devices = facts.subjects("device")
    assert all(s.prospective_max is not None for s in devices)
    assert not all(s.prospective_min is None for s in devices)
    done("devices")
    assert not all(s.opens_before_upstream is None and not s.selective_with for s in devices)
    done("coordination")
    return taken


def whole() -> list[Row]:
    """Seconds and megabytes of a process that does all of it, and growth of each stage."""
    run = python("-c", "from tests.benchmarks.bench_faults import computed; computed(300)")
    times: dict[str, dict[int, float]] = {stage: {} for stage in (*STAGES, "all")}
    for size in SIZES:
        rounds = [computed(size) for _ in range(3)]
        for stage in STAGES:
            times[stage][size] = min(one[stage] for one in rounds)
        times["all"][size] = min(sum(one.values()) for one in rounds)
    rows = [
        Row("300 circuits, all modes, faults, coordination", times["all"][300], "s", 2.0, ""),
        Row("the same as a process, on the clock", run.seconds, "s", None, ""),
        Row("the same, peak memory", run.peak_mb, "MB", 300, ""),
    ]
    for stage, found in times.items():
        told = ", ".join(f"{size}: {seconds * 1000:.0f} ms" for size, seconds in found.items())
        goal = 1.2 if stage == "all" else None
        rows.append(Row(f"growth of {stage}, {SIZES[0]} to {SIZES[-1]}", exponent(found), "", goal, told))
    return rows


def stretches(nodes: int) -> tuple[list[tuple[str, str, float]], list[Battery]]:
    """A tree with some links across, and three batteries."""
    tree = [(f"n{(i - 1) // 3}", f"n{i}", 0.001 * (1 + i % 9)) for i in range(1, nodes)]
    links = [(f"n{i}", f"n{i // 2}", 0.02) for i in range(11, nodes, 11)]
    return [*tree, *links], [Battery(f"n{i}", 51.2, 0.01) for i in range(3)]


def reuse() -> list[Row]:
    """Faults at every node from one factorisation, over a whole solution for each."""
    rows = []
    for nodes in SIZES:
        ways, batteries = stretches(nodes)
        once = inf
        for _ in range(3):
            start = process_time()
            net = Resistances(ways, ())
            found = net.greatest(batteries, ())
            once = min(once, process_time() - start)
        elements: list[Element] = [Branch(f"s{i}", *way) for i, way in enumerate(ways)]
        elements += [Emf(f"e{i}", one.node, "gnd", one.emf_v, one.ohm) for i, one in enumerate(batteries)]
        asked = net.nodes[:: max(1, nodes // ASKED)]
        start = process_time()
        for node in asked:
            solve([*elements, Emf("short", node, "gnd", 0.0, 0.0)])
        each = (process_time() - start) / len(asked)
        told = f"{once * 1000:.1f} ms for {len(found)} nodes, {each * 1000:.2f} ms for a solution"
        rows.append(Row(f"faults at {nodes} nodes / a whole solution for each", once / (each * nodes), "x", None, told))
    return rows


def rows() -> list[Row]:
    """All of them."""
    return [*whole(), *reuse()]


if __name__ == "__main__":
    print(table(rows()))
    print(f"peak of this process: {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB", file=sys.stderr)
