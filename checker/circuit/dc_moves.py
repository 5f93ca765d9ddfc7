"""How a reading moves when numbers of elements change a little, at a solved point of a direct-current network.

A reading is any question to a solution. What it looks at is found by asking it under watch; how it depends on that, by
moving each of these values a little. One solution of the transposed equations then tells how the reading moves with
*every* number of the network (the adjoint method; textbook matter).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from checker.circuit.dc_elements import Branch, Converter, Element, Emf, Inductor
from checker.circuit.dc_frame import Frame
from checker.circuit.dc_solution import Flow, Solution

Reading = Callable[[Solution], float | None]
NUDGE = 1e-6  # share by which a value is moved to see how a reading depends on it


class Total:
    """The reading that is the sum of others: each is looked at by itself, which keeps many of them cheap.

    A part that cannot be taken adds nothing.
    """

    __slots__ = ("parts",)

    def __init__(self, parts: Sequence[Reading]) -> None:
        self.parts = parts

    def __call__(self, found: Solution) -> float:
        """The sum in a solution."""
        return sum(value for part in self.parts if (value := part(found)) is not None)


class Change(NamedTuple):
    """More current through one element (A) at the voltages it stands at: into it, and out of it where it converts."""

    name: str
    amps_in: float
    amps_out: float = 0.0

    def times(self, factor: float) -> Change:
        """The same times a number."""
        return Change(self.name, self.amps_in * factor, self.amps_out * factor)


class Pull(NamedTuple):
    """How a reading moves: `held` with each ampere that leaves an unknown, `ins` and `outs` with currents it reads."""

    held: Sequence[float]
    ins: Mapping[str, float]
    outs: Mapping[str, float]


class _Watched(dict[str, Any]):
    """A mapping that remembers what was looked up."""

    def __init__(self, told: Mapping[str, Any]) -> None:
        super().__init__(told)
        self.seen: dict[str, None] = {}

    def get(self, key: str, default: Any = None) -> Any:
        self.seen.setdefault(key)
        return super().get(key, default)

    def __getitem__(self, key: str) -> Any:
        self.seen.setdefault(key)
        return super().__getitem__(key)


class Moves:
    """One solved point: asked reading by reading how it moves."""

    __slots__ = ("_adjoint", "_alive", "_by_name", "_near", "_pin", "_size", "found")

    def __init__(self, frame: Frame, found: Solution) -> None:
        """`frame` holds the elements of which `found` is the solution; it may take others afterwards."""
        self.found = found
        self._alive = tuple(frame.alive)
        self._by_name = {element.name: element for element in frame.alive}
        self._pin = frame.equations.pin
        self._size = frame.equations.size
        self._adjoint = frame.equations.adjoint(frame.equations.unknowns(found.volts))
        self._near: dict[str, list[tuple[Element, float, bool]]] | None = None

    def pull(self, reading: Reading) -> Pull | None:
        """How a reading moves with the current of each element; None where that cannot be told."""
        if self._adjoint is None:
            return None
        nodes, ins, outs = _looked_at(reading, self.found, self._by_name)
        for name in [name for name in ins if _is_join(self._by_name[name])]:
            self._spread(self._by_name[name], ins.pop(name), ins, outs)
        weights = [0.0] * self._size
        for node, weight in nodes.items():
            self._weigh(weights, node, weight)
        self._weigh_flows(weights, ins, outs)
        return Pull([*self._adjoint(weights), 0.0], ins, outs)  # unknown -1, a reference, moves nothing

    def terminals(self, name: str) -> tuple[int, int, int, int]:
        """The unknowns at the terminals of an element: plus and minus of its input, and of its output where it has one.

        Where it has none these are the same.
        """
        element = self._by_name[name]
        ends = (*element.into, *element.out) if isinstance(element, Converter) else _ends(element) * 2
        i, j, k, m = (self._pin[end][0] for end in ends)
        return i, j, k, m

    def _weigh(self, weights: list[float], node: str, weight: float) -> None:
        at = self._pin[node][0]
        if at >= 0:
            weights[at] += weight

    def _weigh_flows(self, weights: list[float], ins: Mapping[str, float], outs: Mapping[str, float]) -> None:
        """What the currents looked at owe to the voltages."""
        for name in dict.fromkeys((*ins, *outs)):
            element = self._by_name[name]
            flow = self.found.flows[name]
            if isinstance(element, Converter):
                moved = element.transfer(flow.volts, flow.volts_out or 0.0, 1.0)
                by_in = ins.get(name, 0.0) * moved.in_by_in + outs.get(name, 0.0) * moved.out_by_in
                by_out = ins.get(name, 0.0) * moved.in_by_out + outs.get(name, 0.0) * moved.out_by_out
                self._weigh_across(weights, *element.into, by_in)
                self._weigh_across(weights, *element.out, by_out)
            else:
                self._weigh_across(weights, *_ends(element), ins.get(name, 0.0) * _slope(element, flow))

    def _weigh_across(self, weights: list[float], plus: str, minus: str, weight: float) -> None:
        self._weigh(weights, plus, weight)
        self._weigh(weights, minus, -weight)

    def _spread(self, join: Element, weight: float, ins: dict[str, float], outs: dict[str, float]) -> None:
        """The current of a join without resistance, as what the elements on its one side carry away."""
        near = self._near if self._near is not None else self._meetings()
        start = _ends(join)[0]
        side = {start}
        todo = [start]
        for node in todo:
            for element, sign, out in near.get(node, ()):
                if element is join:
                    continue
                if _is_join(element):
                    ends = _ends(element)
                    other = ends[1] if ends[0] == node else ends[0]
                    if other not in side:
                        side.add(other)
                        todo.append(other)
                    continue
                into = outs if out else ins
                into[element.name] = into.get(element.name, 0.0) - weight * sign

    def _meetings(self) -> dict[str, list[tuple[Element, float, bool]]]:
        """Node -> the elements there, whether their current leaves it (1) or comes (-1), and whether at an output."""
        near: dict[str, list[tuple[Element, float, bool]]] = {}
        for element in self._alive:
            if isinstance(element, Converter):
                near.setdefault(element.into.plus, []).append((element, 1.0, False))
                near.setdefault(element.into.minus, []).append((element, -1.0, False))
                near.setdefault(element.out.plus, []).append((element, -1.0, True))
                near.setdefault(element.out.minus, []).append((element, 1.0, True))
            else:
                plus, minus = _ends(element)
                near.setdefault(plus, []).append((element, 1.0, False))
                near.setdefault(minus, []).append((element, -1.0, False))
        self._near = near
        return near


def change_between(element: Element, other: Element, flow: Flow) -> Change:
    """What the current of an element changes by when it becomes `other`, at the voltages where it stands."""
    if isinstance(element, Converter) and isinstance(other, Converter):
        here = element.transfer(flow.volts, flow.volts_out or 0.0, 1.0)
        there = other.transfer(flow.volts, flow.volts_out or 0.0, 1.0)
        return Change(element.name, there.amps_in - here.amps_in, there.amps_out - here.amps_out)
    return Change(element.name, _amps(other, flow) - _amps(element, flow))


def _amps(element: Element, flow: Flow) -> float:
    if isinstance(element, Branch):
        return flow.volts / element.ohm if element.ohm > 0.0 else 0.0
    if isinstance(element, Converter) or _is_join(element):
        return 0.0
    return element.flow(flow.volts, 1.0)[0]


def _slope(element: Element, flow: Flow) -> float:
    if isinstance(element, Branch):
        return 1.0 / element.ohm
    assert not isinstance(element, Converter)
    return element.flow(flow.volts, 1.0)[1]


def _ends(element: Element) -> tuple[str, str]:
    if isinstance(element, Branch):
        return element.a, element.b
    assert not isinstance(element, Converter)
    return element.plus, element.minus


def _is_join(element: Element) -> bool:
    return isinstance(element, Inductor) or (isinstance(element, Branch | Emf) and element.ohm == 0.0)


def _looked_at(
    reading: Reading, found: Solution, by_name: Mapping[str, Element]
) -> tuple[dict[str, float], dict[str, float], dict[str, float]]:
    """How a reading moves with what it looks at: voltages of nodes, currents into and out of elements."""
    looked = _Looked(found, by_name)
    for part in reading.parts if isinstance(reading, Total) else (reading,):
        looked.add(part)
    return looked.nodes, looked.ins, looked.outs


class _Looked:
    """What readings look at in one solution, and how they move with it."""

    def __init__(self, found: Solution, by_name: Mapping[str, Element]) -> None:
        self.nodes: dict[str, float] = {}
        self.ins: dict[str, float] = {}
        self.outs: dict[str, float] = {}
        self._found = found
        self._by_name = by_name
        self._volts, self._flows = _Watched(found.volts), _Watched(found.flows)
        self._watched = Solution(self._volts, self._flows, found.dead, found.off, found.steps)

    def add(self, reading: Reading) -> None:
        """One reading more."""
        volts, flows, found = self._volts, self._flows, self._found
        volts.seen.clear()
        flows.seen.clear()
        usual = reading(self._watched)
        if usual is None:
            return

        def moved(held: dict[str, Any], key: str, value: Any, by: float) -> float:
            """How the reading answers to another value in one place."""
            before = held[key]
            dict.__setitem__(held, key, value)
            after = reading(self._watched)
            dict.__setitem__(held, key, before)
            return 0.0 if after is None else (after - usual) / by

        for node in list(volts.seen):
            if node in found.volts:
                by = _step(found.volts[node])
                _weigh(self.nodes, node, moved(volts, node, found.volts[node] + by, by))
        for name in list(flows.seen):
            element, flow = self._by_name.get(name), found.flows.get(name)
            if element is None or flow is None:
                continue
            by = _step(flow.volts)
            across = moved(flows, name, flow._replace(volts=flow.volts + by), by)
            plus, minus = element.into if isinstance(element, Converter) else _ends(element)
            _weigh(self.nodes, plus, across)
            _weigh(self.nodes, minus, -across)
            if flow.amps is not None:
                by = _step(flow.amps)
                _weigh(self.ins, name, moved(flows, name, flow._replace(amps=flow.amps + by), by))
            if isinstance(element, Converter) and flow.volts_out is not None and flow.amps_out is not None:
                by = _step(flow.volts_out)
                across = moved(flows, name, flow._replace(volts_out=flow.volts_out + by), by)
                _weigh(self.nodes, element.out.plus, across)
                _weigh(self.nodes, element.out.minus, -across)
                by = _step(flow.amps_out)
                _weigh(self.outs, name, moved(flows, name, flow._replace(amps_out=flow.amps_out + by), by))


def _step(value: float) -> float:
    return NUDGE * max(1.0, abs(value))


def _weigh(held: dict[str, float], key: str, weight: float) -> None:
    if weight:
        held[key] = held.get(key, 0.0) + weight
