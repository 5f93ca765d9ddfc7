"""The mains side on a weak source: what an inverter gives into a fault, and the drop of a long shore lead."""

from __future__ import annotations

from collections import deque
from typing import Any

from checker.circuit.elements import LIVE, Conductor, Link
from checker.circuit.sources import LOADS
from checker.facts.catalogue import fact
from checker.facts.clearing import SOURCE, as_number, over
from checker.facts.subject import Facts, Subject
from checker.outofrange import OutOfRange
from checker.physics.clearing import promised
from checker.physics.conductor_resistance import copper_resistance_per_metre, table_resistance_per_metre
from checker.quantities import Number, Unknown, corners, divide, greatest, multiply, show, total

INVERTERS = ("inverter", "inverter-charger")


def _inverter(s: Subject) -> Any:
    item = s.item.feed.equipment
    return item if item.kind in INVERTERS else None


@fact("supply", "source_is_inverter", type="yes/no", says="What feeds it is an inverter.", method="its kind")
def source_is_inverter(s: Subject) -> bool:
    return _inverter(s) is not None


@fact("supply", "inverter_fault_current", unit="A", says="What the inverter gives into a short circuit at most.")
def inverter_fault_current(s: Subject) -> Any:
    item = _inverter(s)
    return None if item is None else s.read(item, "ac.fault current")


@fact("supply", "inverter_fault_time", unit="s", says="How long the inverter keeps that up.")
def inverter_fault_time(s: Subject) -> Any:
    item = _inverter(s)
    return None if item is None else s.read(item, "ac.fault time")


@fact(
    "supply",
    "inverter_clears_by",
    unit="s",
    says="Time by which the device of the circuit is promised to have opened on the fault current of the inverter.",
    method="upper edge of the time-current band at the fault current of the inverter; no limit without a device",
    source=SOURCE,
)
def inverter_clears_by(s: Subject) -> Any:
    if _inverter(s) is None:
        return None
    current = s.inverter_fault_current
    for circuit in circuits_ending_at(s.facts, s.item.load.name):
        device = circuit.own_device
        if device is None:
            return float("inf")
        if isinstance(device, Unknown):
            return device
        found = as_number(over(device, current, promised))
        line = f"{device.id} at {show(current, 'A')}: promised open by {show(found, 's')}"
        s.note(line.__str__)
        return found
    return Unknown(f"no circuit ends at {s.item.load.name}")


def circuits_ending_at(facts: Facts, name: str) -> list[Subject]:
    """The mains circuits that end at a piece of equipment."""
    kept: dict[str, list[Subject]] | None = facts.store.get("mains circuits by end")
    if kept is None:
        kept = facts.store["mains circuits by end"] = {}
        for circuit in facts.subjects("circuit"):
            if circuit.system == "ac":
                for port in circuit.item.ends:
                    kept.setdefault(port.equipment, []).append(circuit)
    return kept.get(name, [])


@fact(
    "circuit",
    "lead_drop",
    unit="V",
    says="Voltage lost in the shore lead, both ways, at the greatest current of the inlet; none without an inlet.",
    method="two lengths times resistance per metre at 70 °C times the current that the inlet or the site allows",
    source="IEC 60228:2004 tables 2 and 3 (seen); Ohm's law",
)
def lead_drop(s: Subject) -> Any:
    equipment = s.facts.network.equipment
    inlets = [item for item in equipment.values() if item.kind == "shore inlet"]
    leads = [item for item in equipment.values() if item.kind == "supply lead"]
    if not inlets:
        return None
    if not leads:
        return Unknown("the shore lead is not described")
    kept: Number = s.facts.store.get("lead drop")
    if kept is None or s.facts.recorder is not None:
        found = [_one_lead(s, lead, inlets[0]) for lead in leads]
        kept = s.facts.store["lead drop"] = greatest(found)
    return kept


LEAD_C = 70.0  # rubber and PVC flexible leads at work; common practice, no source


def _one_lead(s: Subject, lead: Any, inlet: Any) -> Number:
    ohms = lead_resistance(s, lead)
    vehicle = s.facts.design.vehicle
    current = s.read(vehicle, "site outlet") if vehicle.has("site outlet") else s.read(inlet, "rating")
    return multiply(ohms, current)


def lead_resistance(s: Subject, lead: Any) -> Number:
    """Resistance of a shore lead, there and back, at 70 °C."""
    cable = s.facts.design.cables.get(str(lead.value("cable")))
    if cable is None:
        return Unknown(f"the cable of {lead.name} is not known")

    def per_metre(area_m2: float) -> float:
        try:
            return table_resistance_per_metre(area_m2, "class 5", LEAD_C)
        except OutOfRange:
            return copper_resistance_per_metre(area_m2, LEAD_C)

    metre = corners(per_metre, s.read(cable, "size"))
    return multiply(multiply(metre, s.read(lead, "length")), 2.0)


@fact(
    "circuit",
    "fed_from_shore_by",
    of="circuit",
    type="list",
    says="The mains circuits between it and the shore inlet, nearest first; empty when the shore does not reach it.",
    method="walk from its start to an inlet through contacts and inverters that pass the shore on, fewest circuits",
)
def fed_from_shore_by(s: Subject) -> tuple[Any, ...]:
    found = _from_shore(s)
    return () if found is None else tuple(found)


def _from_shore(s: Subject) -> list[Subject] | None:
    if s.system != "ac":
        return None
    before = _shore_tree(s.facts)
    live = s.facts.network.conductor(s.item.name, LIVE)
    if live is None or live.start not in before:
        return None
    names: dict[str, None] = {}
    node: str | None = live.start
    while node is not None:
        back = before[node]
        if back is None:
            break
        edge_conductor, node = back
        if edge_conductor is not None and edge_conductor is not live:
            names.setdefault(edge_conductor.circuit.name)
    circuits = (s.facts.subject("circuit", name) for name in names)
    return [one for one in circuits if one is not None]


Back = tuple[Conductor | None, str] | None


def _shore_tree(facts: Facts) -> dict[str, Back]:
    """Live node -> (conductor passed, node before it) on the way from an inlet with the fewest circuits."""
    found: dict[str, Back] | None = facts.shared.get("shore tree")
    if found is None:
        found = facts.shared["shore tree"] = {}
        todo: deque[str] = deque()
        for source in facts.network.sources:
            if source.equipment.kind == "shore inlet":
                found[source.live] = None
                todo.append(source.live)
        while todo:
            node = todo.popleft()
            for edge, far in facts.network.near.get(node, ()):
                if far in found:
                    continue
                if isinstance(edge, Link):
                    if edge.pole == LIVE and not (edge.one_way and node == edge.b):
                        found[far] = (None, node)
                        todo.appendleft(far)
                elif edge.conductor.role == LIVE:
                    found[far] = (edge.conductor, node)
                    todo.append(far)
    return found


@fact(
    "circuit",
    "drop_from_site",
    unit="V",
    says="Voltage lost from the site outlet to its end, the shore lead counted; none when the shore does not reach it.",
    method="drop of the lead, of each circuit on the way from the inlet and its own, each at its greatest current",
    source="Ohm's law; resistance as conductor.resistance",
)
def drop_from_site(s: Subject) -> Any:
    ways = _from_shore(s)
    if ways is None:
        return None
    parts = [s.lead_drop, s.own_drop, *(one.own_drop for one in ways)]
    if any(isinstance(one, Unknown) for one in parts):
        return next(one for one in parts if isinstance(one, Unknown))
    return total([one for one in parts if one is not None])


@fact(
    "circuit",
    "drop_from_site_percent",
    unit="%",
    says="The same as a share of the mains voltage; none when the shore does not reach it.",
)
def drop_from_site_percent(s: Subject) -> Any:
    lost = s.drop_from_site
    return None if lost is None else divide(lost, s.voltage)


@fact(
    "circuit",
    "drop_from_inlet_percent",
    unit="%",
    says="Voltage lost from the shore inlet to its end, as a share of the mains voltage; none when the shore does not "
    "reach it.",
    method="drop of each circuit on the way from the inlet, through an inverter that passes the shore on, and its own",
    source="Ohm's law; resistance as conductor.resistance",
)
def drop_from_inlet_percent(s: Subject) -> Any:
    ways = _from_shore(s)
    return None if ways is None else divide(total([s.own_drop, *(one.own_drop for one in ways)]), s.voltage)


@fact(
    "circuit",
    "uses_mains",
    type="yes/no",
    says="It ends at what uses mains: loads, outlets, or the input of a charger or of an inverter with one.",
    method="graph, and the kinds at its ends",
)
def uses_mains(s: Subject) -> bool:
    if s.system != "ac":
        return False
    ends = [(s.facts.network.equipment.get(port.equipment), port.port) for port in s.item.ends]
    return bool(ends) and all(item is not None and _uses(item.kind, port) for item, port in ends)


def _uses(kind: str, port: str | None) -> bool:
    return kind in LOADS or (kind in ("charger", "inverter-charger") and port in ("ac", "ac-in"))


@fact("circuit", "reached_by_shore", type="yes/no", says="The shore can reach it.", method="walk from the inlet")
def reached_by_shore(s: Subject) -> bool:
    return _from_shore(s) is not None
