"""A short circuit at the far end of one circuit in one mode: the greatest and the least current it can draw.

The live conductors of a mode are one network of resistances, factorised once for all ends of all circuits. Greatest:
all sources of the mode together, conductors cold, the live conductor alone. Least: the weakest battery alone, low, all
leads hot, there and back; where no battery stands, what limits itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import inf
from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, Conductor, Source, Wire
from checker.circuit.prospective import Battery, Resistances, Stretch
from checker.design.given import Where
from checker.design.item import Item
from checker.facts.catalogue import fact, subjects
from checker.facts.conductor import cold_wire_resistance
from checker.facts.contacts import contacts
from checker.facts.currents import gives_in
from checker.facts.device import norton
from checker.facts.least_fault import ASSUMED, hot_loop_resistance, limited_current, weak_source
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Range, Unknown, between, same, show

METHOD = "open voltage over the resistance seen, every end of a mode from one factorisation of its network"


class Fault(NamedTuple):
    """The far end of a live conductor in a mode."""

    conductor: Conductor
    mode: Item


class Currents(NamedTuple):
    """Both ends of the greatest and of the least current at a node (A), who is joined, and who is the weakest."""

    greatest: tuple[float, float]
    least: tuple[float, float]
    weakest: str
    unknown: str


@subjects("fault", "A short circuit at the far end of one battery-side circuit in one mode.")
def faults(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Circuit by circuit in file order, and for each the modes."""
    for conductor in facts.network.conductors:
        if conductor.role == LIVE and facts.network.systems.get(conductor.circuit.name) == "dc":
            for mode in facts.design.modes.values():
                yield f"{conductor.circuit.name} in {mode.name}", conductor.where, Fault(conductor, mode)


@fact("fault", "circuit", of="circuit", type="subject", says="The circuit at whose far end it lies.", method="graph")
def circuit(s: Subject) -> Any:
    return s.facts.of("circuit", s.item.conductor.circuit)


@fact("fault", "mode", of="mode", type="subject", says="The mode in which it happens.", method="graph")
def mode_of(s: Subject) -> Any:
    return s.facts.of("mode", s.item.mode)


@fact(
    "fault",
    "greatest",
    unit="A",
    says="Greatest current into a dead short there: all sources that give in the mode, motors that turn included.",
    method=METHOD,
    source="Thévenin (circuit theory); a source that limits itself adds its limit, a motor its stall current",
)
def greatest_there(s: Subject) -> Any:
    return _told(s, lambda found: found.greatest)


@fact(
    "fault",
    "least",
    unit="A",
    says="Least current into a dead short there: the weakest battery alone, or what limits itself where there is none.",
    method=METHOD + "; conductors hot, there and back",
    source="Thévenin (circuit theory); battery 10 % charged with 1.5 times its stated resistance: common practice, "
    "no source",
)
def least_there(s: Subject) -> Any:
    found = _told(s, lambda found: found.least)
    s.note(ASSUMED.__str__)
    return found


@fact(
    "fault",
    "weakest_source",
    type="text",
    says="The battery that brings the least, or what limits itself; none where nothing is joined.",
    method=METHOD,
)
def weakest_source(s: Subject) -> Any:
    found = _currents(s).get(s.item.conductor.end)
    return None if found is None or not found.weakest else found.weakest


def _told(s: Subject, ask: Callable[[Currents], tuple[float, float]]) -> Number:
    found = _currents(s).get(s.item.conductor.end)
    if found is None:
        return Unknown(f"{s.item.conductor.circuit.name} ends at nothing that is joined")
    if found.unknown:
        return Unknown(found.unknown)
    low, high = ask(found)
    value = between(low, high) if low < high else high
    s.note(f"{found.weakest or 'no source'} brings the least; here {show(value, 'A')}".__str__)
    return value


def _currents(s: Subject) -> dict[str, Currents]:
    """Every live node of the mode, worked out once."""
    facts, mode = s.facts, s.item.mode
    kept: dict[str, dict[str, Currents]] = facts.store.setdefault("prospective currents", {})
    if mode.name not in kept:
        kept[mode.name] = currents_in(facts, mode)
    return kept[mode.name]


def currents_in(facts: Facts, mode: Item) -> dict[str, Currents]:
    """Greatest and least prospective current at every live node of the battery side in a mode."""
    recorder = facts.recorder
    if recorder is not None:
        recorder.frames.append(([], [], []))
    try:
        return _Mode(facts, mode).currents()
    finally:
        if recorder is not None:
            recorder.frames.pop()


class _Mode:
    """The sources and stretches of a mode, with both ends of every number."""

    def __init__(self, facts: Facts, mode: Item) -> None:
        network, state = facts.network, contacts(facts, mode)
        gives = gives_in(facts, mode)
        self.facts = facts
        self.sources = [
            source for source in network.sources if source.system == "dc" and not same(gives.get(source.live, 0.0), 0.0)
        ]
        live = [wire for one in network.conductors if one.role == LIVE for wire in one.wires]
        self.wires = [wire for wire in live if network.systems.get(wire.conductor.circuit.name) == "dc"]
        joins = [link for link in network.links if link.pole == LIVE and state.perhaps(link)]
        self.joins: list[Stretch] = [(link.a, link.b, 0.0) for link in joins]
        self.motors = [(node, amps) for node, amps in _motors(facts, mode) if node in network.near]
        fed = [*(source.live for source in self.sources), *(node for node, _ in self.motors)]
        self.nodes = tuple(dict.fromkeys([*fed, *_ends(self.wires, self.joins)]))

    def currents(self) -> dict[str, Currents]:
        cold = [(wire, _bounds(cold_wire_resistance(self.facts, wire))) for wire in self.wires]
        hot = [(wire, _bounds(hot_loop_resistance(self.facts, wire))) for wire in self.wires]
        near, far = self._network(cold, 0), self._network(cold, 1)
        self.ranging = any(low < high for _, (low, high) in cold) or self._batteries_range()
        doubt = self._doubts(near)
        most, fewest = self._greatest(near, 1), self._greatest(far, 0)
        best, worst = self._least(self._network(hot, 0), 1), self._least(self._network(hot, 1), 0)
        found = {}
        for node in self.nodes:
            low, who = worst.get(node, (0.0, ""))
            high, _ = best.get(node, (0.0, ""))
            unknown = doubt.get(near.part(node), "")
            greatest = (fewest.get(node, 0.0), most.get(node, 0.0))
            found[node] = Currents(greatest, (min(low, high), high), who, unknown)
        return found

    def _network(self, wires: list[tuple[Wire, tuple[float, float]]], end: int) -> Resistances:
        """The network with every stretch at one end of its range; a stretch of endless resistance is left out."""
        stretches = [(wire.a, wire.b, ohms[end]) for wire, ohms in wires if ohms[end] < inf]
        return Resistances([*stretches, *self.joins], self.nodes)

    def _doubts(self, network: Resistances) -> dict[str, str]:
        """Part of the network -> the source in it of which nothing is known."""
        found: dict[str, str] = {}
        for source in self.sources:
            current = norton(self.facts, source).current
            if isinstance(current, Unknown):
                found.setdefault(network.part(source.live), current.reason or f"what {source.name} gives is not known")
        return found

    def _batteries_range(self) -> bool:
        """Whether a battery of the mode is told by a range."""
        found = [norton(self.facts, source) for source in self.sources]
        return any(isinstance(one.current, Range) and not same(one.conductance, 0.0) for one in found)

    def _greatest(self, network: Resistances, end: int) -> dict[str, float]:
        batteries = []
        limited = [(node, amps[end]) for node, amps in self.motors]
        for source in self.sources:
            one = norton(self.facts, source)
            amps, siemens = _bounds(one.current)[end], _bounds(one.conductance)[end]
            if amps == inf or amps == 0.0:
                continue
            if _bounds(one.conductance)[1] == inf:  # its current may fall with the way not at all, or to nothing
                limited += [(source.live, amps)] if end else []
            elif siemens > 0.0:
                batteries.append(Battery(source.live, amps / siemens, 1.0 / siemens))
            else:
                limited.append((source.live, amps))
        if self.ranging:
            batteries = network.level(batteries, max if end else min)
        return network.greatest(batteries, limited)

    def _least(self, network: Resistances, end: int) -> dict[str, tuple[float, str]]:
        batteries: list[Battery] = []
        names: list[str] = []
        found: dict[str, tuple[float, str]] = {}
        held: list[Source] = []
        for source in self.sources:
            pair = weak_source(self.facts, source)
            if pair is None:
                held.append(source)
                continue
            volts, ohms = _bounds(pair[0])[end], _bounds(pair[1])[1 - end]
            if ohms == inf or volts == inf:
                volts, ohms = 0.0, 1.0  # of which nothing is known may bring nothing
            batteries.append(Battery(source.live, volts, max(ohms, 1e-9)))
            names.append(source.name)
        for node, one in network.weakest(batteries).items():
            found[node] = (one.amps, names[one.battery])
        alone: dict[str, tuple[float, str]] = {}
        for source in held:
            stated = limited_current(self.facts, source)
            # What does not say that it keeps giving may give nothing, and at most what it gives to the greatest.
            amps = (0.0, _bounds(norton(self.facts, source).current)[1]) if stated is None else _bounds(stated)
            part = network.part(source.live)
            if amps[end] < inf and (part not in alone or amps[end] < alone[part][0]):
                alone[part] = (amps[end], source.name)
        for node in self.nodes:
            if node not in found and network.part(node) in alone:
                found[node] = alone[network.part(node)]
        return found


def _motors(facts: Facts, mode: Item) -> Iterator[tuple[str, tuple[float, float]]]:
    """What a motor that runs gives back into a short until it stands: up to its stall current, set by its winding."""
    running = mode.value("running")
    for name in dict(running) if isinstance(running, tuple) else ():
        item = facts.network.equipment.get(name)
        stall = item.value("stall") if item is not None and item.allows("stall") else None
        if isinstance(stall, float | Range):
            yield f"{name}:+", (0.0, _bounds(stall)[1])


def _ends(wires: list[Wire], joins: list[Stretch]) -> Iterator[str]:
    for wire in wires:
        yield wire.a
        yield wire.b
    for a, b, _ in joins:
        yield a
        yield b


def _bounds(value: Number) -> tuple[float, float]:
    """The least and the most a number can be; from nothing to anything when nothing is known."""
    if isinstance(value, Range):
        return value.low, value.high
    return (value, value) if isinstance(value, float) else (0.0, inf)


__all__ = ["Currents", "Fault", "currents_in"]
