"""Batteries joined by a contact, and the bond of a battery negative to the chassis."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import CHASSIS, LIVE, Wire
from checker.circuit.groups import Groups
from checker.circuit.supply import is_live, joined
from checker.facts.bank import home, loose_bank, some_gap
from checker.facts.catalogue import fact
from checker.facts.mains import tell
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Range, Truth, Unknown, between, equal, every, greatest, total


def _apart(facts: Facts, name: str) -> Groups:
    """The live battery side joined through wires and closed contacts, without converters and one piece of equipment."""
    groups = Groups()
    network = facts.network
    for conductor in network.conductors:
        if conductor.role == LIVE and network.systems[conductor.circuit.name] == "dc":
            for wire in conductor.wires:
                groups.join(wire.a, wire.b)
    for link in network.links:
        if link.pole == LIVE and link.when not in ("transfer", "bond") and link.equipment.name != name:
            groups.join(link.a, link.b)
    return groups


def joined_sides(s: Subject) -> tuple[list[Subject], list[Subject]]:
    """The batteries on either side of a switch that nothing else joins."""
    kept: dict[str, tuple[list[Subject], list[Subject]]] = s.facts.store.setdefault("batteries joined", {})
    if s.id in kept:
        return kept[s.id]
    links = [link for link in s.facts.network.links if link.equipment is s.item and link.pole == LIVE]
    groups = _apart(s.facts, s.id) if links else Groups()
    found: tuple[list[Subject], list[Subject]] = ([], [])
    for link in links:
        a, b = groups.find(link.a), groups.find(link.b)
        if a == b:
            continue
        for bank in s.facts.subjects("bank"):
            side = groups.find(home(s.facts, bank.item))
            for own, banks in ((a, found[0]), (b, found[1])):
                if side == own and bank not in banks:
                    banks.append(bank)
    kept[s.id] = found
    return found


@fact(
    "switch",
    "joins_batteries",
    type="yes/no",
    says="Closed, it joins batteries that nothing else joins without a converter.",
    method="graph of the battery side without it, every other contact closed",
)
def joins_batteries(s: Subject) -> Truth:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    one, other = joined_sides(s)
    return bool(one) and bool(other)


@fact(
    "switch",
    "batteries_alike",
    type="yes/no",
    says="The batteries that it joins have one nominal voltage and one chemistry.",
    method="nominal voltage and chemistry of each battery on either side",
)
def batteries_alike(s: Subject) -> Truth:
    one, other = joined_sides(s)
    pairs = [(a, b) for a in one for b in other]
    tell(s, f"on one side {', '.join(a.id for a in one)}; on the other {', '.join(b.id for b in other)}")
    return every([answer for a, b in pairs for answer in (_same_voltage(a, b), equal(a.chemistry, b.chemistry))])


@fact(
    "switch",
    "batteries_of_one_voltage",
    type="yes/no",
    says="The batteries that it joins have one nominal voltage.",
    method="nominal voltage of each battery on either side",
)
def batteries_of_one_voltage(s: Subject) -> Truth:
    one, other = joined_sides(s)
    return every([_same_voltage(a, b) for a in one for b in other])


def _same_voltage(a: Subject, b: Subject) -> Truth:
    return equal(a.nominal_voltage, b.nominal_voltage)


@fact(
    "circuit",
    "bonds_negative",
    type="yes/no",
    says="It joins the negative of a battery, or of a bar, to the chassis.",
    method="a bonding circuit between the chassis and a negative terminal of the battery side",
)
def bonds_negative(s: Subject) -> bool:
    return bonded_negative(s) is not None


def bonded_negative(s: Subject) -> str | None:
    """The equipment whose negative a bonding circuit joins to the chassis."""
    bond = s.facts.network.conductor(s.item.name, "bonding")
    if bond is None or CHASSIS not in (bond.start, bond.end):
        return None
    name, _, terminal = (bond.end if bond.start == CHASSIS else bond.start).partition(":")
    return name if terminal.endswith("-") else None


@fact(
    "bank",
    "chassis_bonds",
    unit="count",
    says="Conductors that join its negative to the chassis.",
    method="graph: bonding conductors to the chassis met from its negative along returns, bars and links, the chassis "
    "itself and converters left out",
)
def chassis_bonds(s: Subject) -> Any:
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    start = home(s.facts, s.item).removesuffix("+") + "-"
    seen, todo, bonds = {start}, [start], set()
    while todo:
        for edge, far in s.facts.network.near.get(todo.pop(), ()):
            if is_live(edge):
                continue
            if far == CHASSIS:
                if isinstance(edge, Wire) and edge.conductor.role == "bonding":
                    bonds.add(edge.conductor.id)
            elif far not in seen:
                seen.add(far)
                todo.append(far)
    unseen = any(circuit.returns.how == "unknown" for circuit in s.facts.network.circuits)
    if not unseen and not some_gap(s.facts):
        return float(len(bonds))
    if len(bonds) < 2:
        return Unknown("part of some run, or how some circuit returns, was not seen and may hide a bond")
    return Range(float(len(bonds)), float("inf"))


@fact(
    "circuit",
    "ungrounded_lead_area",
    unit="mm2",
    says="Largest cross-section of a live conductor at the equipment whose negative it bonds; none for others.",
    method="conductor.area of every live conductor that ends on its positive terminal; for a bar of negatives alone, "
    "on those of the batteries whose negatives it joins",
)
def ungrounded_lead_area(s: Subject) -> Any:
    name = bonded_negative(s)
    if name is None:
        return None
    areas: list[Number] = []
    near = s.facts.network.near
    for node in [f"{name}:+"] if f"{name}:+" in near else batteries_behind(s, f"{name}:-"):
        for edge, _ in near.get(node, ()):
            if isinstance(edge, Wire) and edge.conductor.role == LIVE:
                subject = s.facts.of("conductor", edge.conductor)
                if subject is not None:
                    areas.append(subject.area)
    return greatest(areas) if areas else Unknown(f"nothing is seen on the positive of {name}")


def batteries_behind(s: Subject, start: str) -> list[str]:
    """The positive terminals of the batteries whose negatives are joined to a node, the chassis left out."""
    seen, todo = {start, CHASSIS}, [start]
    for node in todo:
        for edge, far in s.facts.network.near.get(node, ()):
            if far not in seen and not is_live(edge):
                seen.add(far)
                todo.append(far)
    return [one.live for one in s.facts.network.sources if one.storage and one.returns in seen]


@fact(
    "circuit",
    "chassis_return_current",
    unit="A",
    says="Current that may come back through it from circuits that return by the chassis; none for other circuits.",
    method="circuits with a chassis return: at least the greatest that starts or ends at the equipment whose negative "
    "it bonds, at most all that its live side reaches without a converter between, added up, with those "
    "whose return is not told",
)
def chassis_return_current(s: Subject) -> Any:
    name = bonded_negative(s)
    if name is None:
        return None
    network = s.facts.network
    fed = joined(network, [f"{name}:+"])
    own: list[Number] = [0.0]
    found: list[Number] = [0.0]
    for circuit in network.circuits:
        live = network.conductor(circuit.name, LIVE)
        how = circuit.returns.how
        if how not in ("chassis", "unknown") or live is None:
            continue
        if live.start in fed or live.end in fed:
            subject = s.facts.of("conductor", live)
            current = Unknown(f"the current of {circuit.name}") if subject is None else subject.design_current
            found.append(current)
            if how == "chassis" and name in (circuit.start.equipment, *(port.equipment for port in circuit.ends)):
                own.append(current)
    return _span(greatest(own), total(found))


def _span(least: Number, most: Number) -> Number:
    """From the least to the most; unknown when an end is."""
    if isinstance(least, Unknown) or isinstance(most, Unknown):
        return most if isinstance(most, Unknown) else least
    low = least.low if isinstance(least, Range) else least
    high = most.high if isinstance(most, Range) else most
    return between(low or 0.0, high or 0.0)


@fact("circuit", "chassis_carries", unit="A", says="Current that the joints and straps of the chassis carry back.",
      method="`chassis.carries` of the vehicle")  # fmt: skip
def chassis_carries(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "chassis.carries")


@fact(
    "circuit",
    "bond_capacity",
    unit="A",
    says="Continuous current of a bonding conductor; none for other circuits.",
    method="conductor.carrying_capacity",
)
def bond_capacity(s: Subject) -> Any:
    bond = s.facts.network.conductor(s.item.name, "bonding")
    subject = None if bond is None else s.facts.of("conductor", bond)
    return None if subject is None else subject.carrying_capacity
