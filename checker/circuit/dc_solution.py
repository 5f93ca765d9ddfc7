"""What a solved direct-current network tells: voltages, currents, powers, losses and their balance."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from checker.circuit.dc_elements import Branch, Converter, Element, Emf, Inductor, TwoPole
from checker.circuit.dc_nodes import Nodes


class NoSolution(NamedTuple):
    """There are no steady voltages, or none that can be told. `names` are the elements it hangs on."""

    reason: str
    names: tuple[str, ...] = ()


class Flow(NamedTuple):
    """One element at the operating point.

    `volts` across it (plus to minus, or from `a` to `b`); `amps` into its plus terminal (a branch: from `a` to `b`);
    None where a loop without resistance leaves the current open. `state` says how it works. Of a converter these are
    the input; `volts_out` and `amps_out` (out of the plus terminal) are its output.
    """

    volts: float
    amps: float | None
    state: str = ""
    volts_out: float | None = None
    amps_out: float | None = None

    @property
    def watts(self) -> float | None:
        """Power it takes in (W); negative for what gives. Of a converter: its loss."""
        if self.amps is None:
            return None
        taken = self.volts * self.amps
        if self.volts_out is not None and self.amps_out is not None:
            taken -= self.volts_out * self.amps_out
        return taken


class Solution:
    """An operating point.

    `volts` of every living node against the reference of its part; `flows` by name of element; `dead` elements reach no
    source, `off` ones switched themselves off; `steps` is the work it took.
    """

    __slots__ = ("dead", "flows", "off", "steps", "volts")

    def __init__(
        self,
        volts: Mapping[str, float],
        flows: Mapping[str, Flow],
        dead: tuple[str, ...],
        off: tuple[str, ...],
        steps: int,
    ) -> None:
        self.volts = volts
        self.flows = flows
        self.dead = dead
        self.off = off
        self.steps = steps

    def between(self, plus: str, minus: str) -> float | None:
        """Voltage between two nodes (V); None when one of them is dead."""
        high, low = self.volts.get(plus), self.volts.get(minus)
        return None if high is None or low is None else high - low

    def given(self) -> float:
        """Power that all sources together give (W)."""
        return sum(-watts for flow in self.flows.values() if (watts := flow.watts) is not None and watts < 0.0)

    def imbalance(self) -> float:
        """Power given less power taken, over the power given; 0 but for rounding."""
        left = sum(flow.watts for flow in self.flows.values() if flow.watts is not None)
        given = self.given()
        return abs(left) / given if given > 0.0 else abs(left)


def flows_of(elements: Sequence[Element], nodes: Nodes, volts: Mapping[str, float]) -> dict[str, Flow]:
    """Each element at the voltages found."""
    found: dict[str, Flow] = {}
    leaving = dict.fromkeys(volts, 0.0)
    for element in elements:
        flow = _flow(element, volts)
        found[element.name] = flow
        if isinstance(element, Converter):
            _leave(leaving, element.into, flow.amps or 0.0)
            _leave(leaving, element.out, -(flow.amps_out or 0.0))
        elif isinstance(element, Branch):
            _leave(leaving, (element.a, element.b), flow.amps or 0.0)
        else:
            _leave(leaving, (element.plus, element.minus), flow.amps or 0.0)
    _stiff(nodes, leaving, found)
    return found


def _flow(element: Element, volts: Mapping[str, float]) -> Flow:
    if isinstance(element, Branch):
        across = volts[element.a] - volts[element.b]
        return Flow(across, across / element.ohm if element.ohm > 0.0 else None)
    if isinstance(element, Converter):
        into = volts[element.into.plus] - volts[element.into.minus]
        out = volts[element.out.plus] - volts[element.out.minus]
        moved = element.transfer(into, out, 1.0)
        return Flow(into, moved.amps_in, moved.state, out, moved.amps_out)
    across = volts[element.plus] - volts[element.minus]
    if not _has_law(element):
        return Flow(across, None)
    return Flow(across, element.flow(across, 1.0)[0], element.state(across))


def _has_law(element: TwoPole) -> bool:
    return not isinstance(element, Inductor) and not (isinstance(element, Emf) and element.ohm == 0.0)


def _leave(leaving: dict[str, float], ends: tuple[str, str], amps: float) -> None:
    leaving[ends[0]] += amps
    leaving[ends[1]] -= amps


def _stiff(nodes: Nodes, leaving: dict[str, float], found: dict[str, Flow]) -> None:
    """Currents of joins without resistance, from what the other elements leave over at each node."""
    tree = [one for one in nodes.stiff if not one.in_loop and one.name in found]
    open_ends: dict[str, int] = {}
    for one in tree:
        open_ends[one.a] = open_ends.get(one.a, 0) + 1
        open_ends[one.b] = open_ends.get(one.b, 0) + 1
    near: dict[str, list[int]] = {}
    for at, one in enumerate(tree):
        near.setdefault(one.a, []).append(at)
        near.setdefault(one.b, []).append(at)
    loops = nodes.loops()
    done = [False] * len(tree)
    todo = [node for node, count in open_ends.items() if count == 1]
    while todo:
        node = todo.pop()
        waiting = [one for one in near[node] if not done[one]]
        if not waiting:
            continue
        at = waiting[0]
        done[at] = True
        join = tree[at]
        amps = -leaving[node] if node == join.a else leaving[node]  # from a to b
        _leave(leaving, (join.a, join.b), amps)
        flow = found[join.name]
        found[join.name] = flow._replace(amps=None if join.name in loops else amps, state=_state(flow, amps))
        far = join.b if node == join.a else join.a
        open_ends[far] -= 1
        open_ends[node] -= 1
        if open_ends[far] == 1:
            todo.append(far)


def _state(flow: Flow, amps: float) -> str:
    if flow.volts == 0.0:
        return flow.state
    return "charging" if amps > 0.0 else "discharging" if amps < 0.0 else "resting"
