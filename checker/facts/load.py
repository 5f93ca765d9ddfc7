"""Loads of either system: what they ask for, and which switches take their supply away."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.circuit.elements import LIVE, Link
from checker.circuit.groups import Groups
from checker.circuit.network import Network
from checker.circuit.sources import LOADS
from checker.design.given import Where
from checker.design.vocabulary.words import CLASSES, LABELS, LEAKAGE
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Unknown

SWITCHES = frozenset({"switch", "relay", "combiner", "changeover"})
LASTING = frozenset({"shore inlet", "generator"})
CONVERSIONS = {
    "charger": (("dc+", "acL"),),
    "inverter": (("acL", "dc+"),),
    "inverter-charger": (("ac-outL", "dc+"), ("ac-outL", "ac-inL"), ("dc+", "ac-inL")),
    "solar controller": (("battery+", "pv+"),),
    "transformer": (("secondaryL", "primaryL"),),
}
"""Output and input terminal of what passes power on without joining."""


@subjects("load", "A lamp, appliance, motor, alarm, outlet: anything that uses electricity.")
def loads(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.network.equipment.values():
        if item.kind in LOADS:
            yield item.name, item.where, item


def _given(s: Subject, key: str, otherwise: Any = None) -> Any:
    return s.read(s.item, key) if s.item.allows(key) else otherwise


@fact("load", "type_of_load", words=tuple(sorted(LOADS)), says="What it is.")
def type_of_load(s: Subject) -> str:
    return str(s.item.kind)


@fact("load", "system", words=("dc", "ac"), says="The supply it is connected to.", method="graph")
def system(s: Subject) -> Any:
    near = s.facts.network.near
    ac, dc = f"{s.id}:L" in near, f"{s.id}:+" in near
    return Unknown(f"{s.id} is connected to no circuit") if not ac and not dc else "ac" if ac else "dc"


@fact("load", "power", unit="W", says="Power at nominal voltage.")
def power(s: Subject) -> Any:
    return _given(s, "power", UNKNOWN)


@fact("load", "voltage_window", type="window", unit="V", says="The voltages it works at.")
def voltage_window(s: Subject) -> Any:
    return UNKNOWN if s.item.kind == "outlet" else _given(s, "voltage", UNKNOWN)


@fact("load", "protection_class", words=CLASSES, says="Class of protection against shock; none for an outlet.")
def protection_class(s: Subject) -> Any:
    return _given(s, "class")


@fact("load", "leakage_waveform", words=LEAKAGE, says="Shape of the residual current of a fault in it.")
def leakage_waveform(s: Subject) -> Any:
    return _given(s, "leakage waveform")


@fact("load", "has_own_switch", type="yes/no", says="It has a switch of its own.")
def has_own_switch(s: Subject) -> Any:
    return _given(s, "own switch", False)


@fact("load", "switched_poles", unit="count", says="Poles that its own switch opens; none without one.")
def switched_poles(s: Subject) -> Any:
    own = s.has_own_switch
    return None if own is False else _given(s, "switched poles")


@fact("load", "supply_is_polarised", type="yes/no", says="Live and neutral of the sites cannot be swapped.")
def supply_is_polarised(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.polarised")


@fact("load", "own_cell", unit="h", says="How long it works from a cell of its own; none when it has no cell.")
def own_cell(s: Subject) -> Any:
    return _given(s, "own cell")


@fact(
    "load",
    "is_essential",
    type="yes/no",
    says="People depend on it.",
    method="marked essential, or named in the list of essential loads",
)
def is_essential(s: Subject) -> Any:
    listed = s.use("essential", s.facts.design.essential)
    names = [name for name in listed if isinstance(name, str)] if isinstance(listed, tuple) else []
    if s.id in names:
        return True
    marked = _given(s, "essential", False)
    written = s.item.has("essential")
    complete = listed is None or (isinstance(listed, tuple) and len(names) == len(listed))
    if isinstance(marked, Unknown) and not written and complete:
        return False  # the list was written, or `none`, and does not name it
    return marked


@fact(
    "load",
    "isolated_by",
    of="switch",
    type="list",
    says="Switches, relays and changeovers each of which alone takes away every battery and mains supply it has.",
    method="the graph with each of them taken out in turn, walked from the load through converters to the sources",
)
def isolated_by(s: Subject) -> tuple[Any, ...]:
    node = next((f"{s.id}:{pole}" for pole in ("+", "L") if f"{s.id}:{pole}" in s.facts.network.near), None)
    if node is None:
        return ()
    reach = _reach(s.facts)
    if not reach.sources_from(node, ""):
        return ()
    names = [name for name in reach.switches if not reach.sources_from(node, name)]
    found = (s.facts.subject("switch", name) for name in names)
    return tuple(one for one in found if one is not None)


def _reach(facts: Facts) -> Reach:
    found: Reach | None = facts.store.get("reach")
    if found is None:
        found = facts.store["reach"] = Reach(facts.network)
    return found


class Reach:
    """The live side of the graph with switches and converters as its only edges."""

    __slots__ = ("_edges", "_groups", "_lasting", "switches")

    def __init__(self, network: Network) -> None:
        self._groups = Groups()
        for conductor in network.conductors:
            if conductor.role == LIVE:
                for wire in conductor.wires:
                    self._groups.join(wire.a, wire.b)
        apart: list[Link] = []
        for link in network.links:
            if link.pole != LIVE or link.when in ("transfer", "bond"):
                continue
            if link.equipment.kind in SWITCHES:
                apart.append(link)
            else:
                self._groups.join(link.a, link.b)
        self._edges: dict[str, list[tuple[str, str]]] = {}
        for link in apart:
            self._edge(link.a, link.b, link.equipment.name)
            self._edge(link.b, link.a, link.equipment.name)
        for item in network.equipment.values():
            for out, into in CONVERSIONS.get(item.kind, ()):
                self._edge(f"{item.name}:{out}", f"{item.name}:{into}", "")
        for source in network.sources:
            if source.equipment.kind == "dc converter":
                other = "high" if source.port == "low" else "low"
                self._edge(source.live, f"{source.equipment.name}:{other}+", "")
        self._lasting = {
            self._groups.find(source.live)
            for source in network.sources
            if source.storage or source.equipment.kind in LASTING
        }
        self.switches = tuple(dict.fromkeys(link.equipment.name for link in apart))

    def _edge(self, a: str, b: str, name: str) -> None:
        self._edges.setdefault(self._groups.find(a), []).append((name, b))

    def sources_from(self, node: str, without: str) -> bool:
        """Whether a battery, a shore inlet or a generator is reached from a live node with one switch taken out."""
        start = self._groups.find(node)
        todo, seen = [start], {start}
        while todo:
            here = todo.pop()
            if here in self._lasting:
                return True
            for name, far in self._edges.get(here, ()):
                if name and name == without:
                    continue
                group = self._groups.find(far)
                if group not in seen:
                    seen.add(group)
                    todo.append(group)
        return False


@fact(
    "load",
    "runs_from_both",
    type="yes/no",
    says="A lamp that runs from the mains and from extra-low voltage.",
    method="as written, else by the circuits that reach it",
)
def runs_from_both(s: Subject) -> Any:
    if s.item.allows("dual voltage") and s.item.has("dual voltage"):
        return s.read(s.item, "dual voltage")
    near = s.facts.network.near
    return f"{s.id}:L" in near and f"{s.id}:+" in near


@fact("load", "lampholders", words=("separate", "shared"), says="Lampholders and drivers of a lamp for two supplies.")
def lampholders(s: Subject) -> Any:
    return _given(s, "lampholders")


@fact("load", "keyed_lamps", type="yes/no",
      says="No lamp made for the other voltage fits a lamp for two supplies, or none in it is changed.")  # fmt: skip
def keyed_lamps(s: Subject) -> Any:
    return _given(s, "keyed lamps")


@fact("load", "labels", words=LABELS, type="words", says="What the labels on it or beside it say.")
def labels(s: Subject) -> Any:
    return _given(s, "labels")
