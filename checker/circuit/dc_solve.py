"""The operating point of a direct-current network: one solution, or the reason why there is none.

Started at nominal voltages. Where Newton's method does not settle, or settles at a point that a breath would upset, the
nodes are given capacitance and let settle in time; where that does not help, the loads are brought up by steps. All of
it is bounded, and a point is only called a solution when currents balance at every node.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from checker.circuit.dc_elements import Converter, Element, PowerLoad, TwoPole
from checker.circuit.dc_frame import Frame
from checker.circuit.dc_islands import GROUND
from checker.circuit.dc_newton import Equations, newton
from checker.circuit.dc_nodes import Contradiction
from checker.circuit.dc_solution import NoSolution, Solution, flows_of

SMALLEST_SHARE = 1.0 / 128.0
MOST_SETTLING = 60
SETTLING_V = 1.0  # by how much the first step in time may move a node
NO_VOLTAGE_V = 1e-3


def solve(
    elements: Sequence[Element], *, ground: str = GROUND, start: Mapping[str, float] | None = None
) -> Solution | NoSolution:
    """The operating point of a network; `start` gives voltages to begin at (V).

    Names of elements must differ (ValueError). A load or converter beyond its voltage limits is switched off, the
    worst first, and the rest solved again.
    """
    names = [element.name for element in elements]
    if len(set(names)) != len(names):
        raise ValueError("two elements of a network have one name")
    off: list[str] = []
    steps = 0
    while True:
        working = [element for element in elements if element.name not in off]
        found = _solve_once(working, ground, start)
        if isinstance(found, NoSolution):
            return found
        steps += found.steps
        worst = _beyond(working, found)
        if worst is None:
            short = starved(working, found)
            if short is not None:
                return short
            return Solution(found.volts, found.flows, found.dead, tuple(off), steps)
        off.append(worst)


def _solve_once(elements: Sequence[Element], ground: str, start: Mapping[str, float] | None) -> Solution | NoSolution:
    try:
        frame = Frame(elements, ground)
    except Contradiction as found:
        return contradicted(found)
    return solve_frame(frame, start)


def contradicted(found: Contradiction) -> NoSolution:
    """Why ideal sources that disagree have no operating point."""
    reason = (
        f"{found.name} closes a loop without any resistance in which {abs(found.volts):.4g} V are left over; "
        "its current has no bound"
    )
    return NoSolution(reason, (found.name,))


def solve_frame(frame: Frame, start: Mapping[str, float] | None = None) -> Solution | NoSolution:
    """The operating point of the elements in a frame; nothing switches itself off."""
    equations = frame.equations
    begin = begin_at(equations, frame.alive, frame.references, start)
    x, good, steps = settle(equations, begin)
    if not good:
        loads = tuple(e.name for e in frame.alive if isinstance(e, PowerLoad | Converter))
        reason = "no steady voltages exist or can be found: what is asked of the sources is more than they can give"
        return NoSolution(reason, loads)
    volts = {node: (x[i] if i >= 0 else 0.0) + offset for node, (i, offset) in equations.pin.items()}
    return Solution(volts, flows_of(frame.alive, frame.nodes, volts), frame.dead, (), steps)


def settle(equations: Equations, begin: list[float]) -> tuple[list[float], bool, int]:
    """Newton from the start; else settling in time; else with the loads brought up by steps."""
    x, good, steps = newton(equations, begin, 1.0)
    if good and equations.holds(x):
        return x, True, steps
    for way in (settle_in_time, settle_by_steps):
        x, good, more = way(equations, begin)
        steps += more
        if good and equations.holds(x):
            return x, True, steps
    return x, False, steps


def settle_by_steps(equations: Equations, begin: list[float]) -> tuple[list[float], bool, int]:
    """Bring constant powers and currents from nothing to their full value, in steps that halve when one fails."""
    x, good, steps = newton(equations, begin, 0.0)
    if not good:
        return x, False, steps
    share, by = 0.0, 0.25
    while share < 1.0 and by >= SMALLEST_SHARE:
        there, good, more = newton(equations, x, min(1.0, share + by), 25)
        steps += more
        if good and equations.holds(there):
            x, share, by = there, min(1.0, share + by), by * 1.5
        else:
            by *= 0.5
    return x, share >= 1.0, steps


def settle_in_time(equations: Equations, begin: list[float]) -> tuple[list[float], bool, int]:
    """Let the nodes settle as if each had a capacitor: implicit steps in time, longer and longer as they succeed."""
    x, steps = begin, 0
    wrong, _ = equations.residual(x, 1.0)
    held = max(1.0, max((abs(one) for one in wrong), default=0.0) / SETTLING_V)
    for _ in range(MOST_SETTLING):
        there, good, more = newton(equations, x, 1.0, 12, held)
        steps += more
        if good:
            x, held = there, held * 0.4
        else:
            held *= 3.0
        if held < 1e-4:
            break
    there, good, more = newton(equations, x, 1.0)
    return there, good, steps + more


def begin_at(
    equations: Equations, elements: Sequence[Element], references: Sequence[str], start: Mapping[str, float] | None
) -> list[float]:
    """Nominal voltages to begin at: those given, else carried from references and sources along the conductors."""
    if start is not None and all(node in start for node in equations.pin):
        return equations.unknowns(start)
    near: dict[str, list[str]] = {}
    sources: list[tuple[str, str, float]] = []
    for element in elements:
        if element.conducts:
            a, b = element.ends[:2]
            near.setdefault(a, []).append(b)
            near.setdefault(b, []).append(a)
        elif element.gives and element.nominal_v:
            plus, minus = element.ends[-2:]  # of a converter: its output
            sources.append((plus, minus, element.nominal_v))
    known: dict[str, float] = dict.fromkeys(references, 0.0)
    todo = list(known)
    waiting = sorted(sources, key=lambda one: -one[2])
    while todo:
        for node in todo:
            for far in near.get(node, ()):
                if far not in known:
                    known[far] = known[node]
                    todo.append(far)
        todo = []
        rest = []
        for plus, minus, volts in waiting:
            if minus in known and plus not in known:
                known[plus] = known[minus] + volts
                todo.append(plus)
            elif plus in known and minus not in known:
                known[minus] = known[plus] - volts
                todo.append(minus)
            elif plus not in known:
                rest.append((plus, minus, volts))
            if todo:
                break
        if todo:
            done = set(todo)
            waiting = [one for one in waiting if not (one[0] in done or one[1] in done)]
    known.update(start or {})
    x = [0.0] * equations.size
    for node, (i, offset) in equations.pin.items():
        if i >= 0 and node in known:
            x[i] = known[node] - offset
    return x


def _beyond(elements: Sequence[Element], found: Solution) -> str | None:
    """The element farthest beyond the voltages at which it switches itself off; None when all are within."""
    worst, name = 0.0, None
    for element in elements:
        if not isinstance(element, PowerLoad | Converter):
            continue
        flow = found.flows.get(element.name)
        if flow is None:
            continue
        far = 0.0
        if element.lowest_v is not None and flow.volts < element.lowest_v:
            far = 1.0 - flow.volts / element.lowest_v
        elif element.highest_v is not None and flow.volts > element.highest_v:
            far = flow.volts / element.highest_v - 1.0
        if far > worst:
            worst, name = far, element.name
    return name


def starved(elements: Sequence[Element], found: Solution) -> NoSolution | None:
    """Loads of constant power that sit where they are no longer such: their voltage has collapsed."""
    names = []
    for element in elements:
        flow = found.flows.get(element.name)
        if flow is None or not isinstance(element, PowerLoad):
            continue
        if element.watts > 0.0 and flow.volts <= element.floor_v:
            names.append((element.name, flow.volts))
    if not names:
        return None
    told = ", ".join(f"{name} at {volts:.3g} V" for name, volts in names)
    if all(abs(volts) < NO_VOLTAGE_V for _, volts in names):
        return NoSolution(f"there is no closed path of current: {told}", tuple(name for name, _ in names))
    reason = f"the power asked for is beyond what its source can bring there; the voltage collapses: {told}"
    return NoSolution(reason, tuple(name for name, _ in names))


__all__ = ["NoSolution", "Solution", "TwoPole", "solve"]
