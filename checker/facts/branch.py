"""Branches thinner than what feeds them, and circuits whose negative is not on the chassis."""

from __future__ import annotations

from math import inf
from typing import Any

from checker.circuit.elements import CHASSIS, LIVE, RETURN, Edge, Link, Wire
from checker.circuit.groups import Groups
from checker.circuit.ports import port_nodes
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.clearing import clearing_borders
from checker.facts.conductor_given import wire_length
from checker.facts.least_fault import zones_of
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Number, Range, Truth, Unknown, add, both, either, equal, every, greater, greatest, some


def outer_stretches(s: Subject) -> list[tuple[Wire, list[Any]]]:
    """The stretches of a conductor that devices outside it feed, with those devices; its own ones left out."""
    own = {part.equipment.name for part in s.item.links}
    found = []
    for wire, borders in clearing_borders(s):
        names = dict.fromkeys(one.link.equipment.name for one in borders if one.link.equipment.name not in own)
        devices = [device for name in names if (device := s.facts.subject("device", name)) is not None]
        if devices:
            found.append((wire, devices))
    return found


def _own_at(s: Subject, wire: Wire) -> bool:
    """Whether a device of the conductor stands at one end of a stretch."""
    return any(part.is_protective and {part.a, part.b} & {wire.a, wire.b} for part in s.item.links)


@fact(
    "conductor",
    "is_branch",
    type="yes/no",
    says="It branches off something larger: a device that feeds it lets through more than it carries.",
    method="rating of the devices at the edge of its zone, outside it, against its carrying capacity",
)
def is_branch(s: Subject) -> Truth:
    if s.item.role != LIVE:
        return False
    answer = some([greater(one.rating, s.carrying_capacity) for _, devices in outer_stretches(s) for one in devices])
    loose = unseen_feeder(s)
    return answer if answer is not False or loose is None else loose


def unseen_feeder(s: Subject) -> Unknown | None:
    """Why devices that nobody knows of may feed a conductor: how the units of some bank are joined is not told, or part
    of what lies around it was not seen."""
    if s.facts.network.systems[s.item.circuit.name] != "dc":
        return None
    zones = zones_of(s.facts)
    around = dict.fromkeys(zones.of_wire(wire) for wire in s.item.wires)
    if any(zones.hides(zone) and zones.batteries(zone) for zone in around):
        return Unknown(f"part of what lies around {s.id} was not seen and may hide what feeds it")
    return loose_bank(s.facts)


@fact(
    "conductor",
    "branch_length",
    unit="m",
    says="Length of a branch before its own device: the way from where it branches off, all of it without a device.",
    method="length of the stretch between the branch point and its own device, and of branches that lead up to it",
)
def branch_length(s: Subject) -> Any:
    found: list[Number] = [0.0]
    for wire, _ in outer_stretches(s):
        found.append(wire_length(s, wire) if _own_at(s, wire) or len(s.item.wires) == 1 else s.length)
    longest = greatest(found)
    if unseen_feeder(s) is not None:
        return add(longest, Range(0.0, inf))
    return longest if equal(longest, 0.0) is True else add(longest, _lead_up(s))


def _lead_up(s: Subject) -> Number:
    """Length of thinner conductors between what feeds a branch and its own branch point, m: they are excused once."""
    longest: Number = 0.0
    for wires in ways_up(s).values():
        length: Number = 0.0
        for wire in wires:
            before = s.facts.of("conductor", wire.conductor)
            thin = before.is_branch if before is not None else False
            if isinstance(thin, Unknown):
                return thin
            length = add(length, wire_length(s, wire)) if thin else 0.0
        longest = greatest(longest, length)
    return longest


def ways_up(s: Subject) -> dict[str, list[Wire]]:
    """Each node of a conductor at which what feeds it arrives, with the wires on the way there from the device that
    feeds it; its own wires left out."""
    found: dict[str, list[Wire]] = {}
    mine = {node for wire in s.item.wires for node in (wire.a, wire.b)}
    for border in dict.fromkeys(border for _, borders in clearing_borders(s) for border in borders):
        todo: list[tuple[str, list[Wire]]] = [(border.inside, [])]
        seen = {border.inside}
        for node, wires in todo:
            if node in mine:
                found.setdefault(node, wires)
            for edge, far in s.facts.network.near.get(node, ()):
                if far not in seen and _undivided(edge, s.item.id):
                    seen.add(far)
                    todo.append((far, [*wires, edge] if isinstance(edge, Wire) else wires))
    return found


def _undivided(edge: Edge, mine: str) -> bool:
    """A live edge that is neither a protective device nor a wire of the branch itself."""
    if isinstance(edge, Wire):
        return edge.conductor.role == LIVE and edge.conductor.id != mine
    return edge.pole == LIVE and not edge.is_protective


@fact(
    "device",
    "negative_on_chassis",
    type="yes/no",
    says="The negative of its circuit is joined to the chassis.",
    method="graph of return and bonding conductors, joined sides of converters counted",
)
@where_it_stands
def negative_on_chassis(s: Subject) -> Truth:
    if isinstance(s.protects, Unknown):
        return s.protects
    sure, perhaps = _grounded(s.facts)
    answers: list[Truth] = []
    for conductor in s.protects:
        circuit = conductor.item.circuit
        if circuit.returns.how == "chassis":
            answers.append(True)
            continue
        back = s.facts.network.conductor(circuit.name, RETURN)
        if back is None:
            lost = circuit.returns.how == "unknown"
            answers.append(Unknown(f"how {circuit.name} returns is not known") if lost else False)
        elif sure.joined(back.start, CHASSIS):
            answers.append(True)
        else:
            known = not perhaps.joined(back.start, CHASSIS)
            answers.append(False if known else Unknown("whether a converter or an untold return joins it is not known"))
    return some(answers) if answers else Unknown(f"{s.id} stands in no circuit")


def _grounded(facts: Facts) -> tuple[Groups, Groups]:
    """Nodes joined by return and bonding conductors: surely, and perhaps."""
    found: tuple[Groups, Groups] | None = facts.shared.get("grounded")
    if found is None:
        sure, perhaps = Groups(), Groups()
        for conductor in facts.network.conductors:
            if conductor.role != LIVE and conductor.role != "earth":
                for part in conductor.parts:
                    _join(sure, perhaps, part.a, part.b, True)
        for link in facts.network.links:
            if link.pole == RETURN:
                _join(sure, perhaps, link.a, link.b, True)
        for circuit in facts.network.circuits:
            if circuit.returns.how == "unknown" and facts.network.systems[circuit.name] == "dc":
                for port in (circuit.start, *circuit.ends):
                    back = port_nodes(facts.network.equipment, port, "dc").get(RETURN)
                    if back is not None:
                        perhaps.join(back, CHASSIS)
        for item in facts.network.equipment.values():
            if item.kind == "dc converter":
                _join(sure, perhaps, f"{item.name}:low-", f"{item.name}:high-", _together(item.value("isolated")))
            elif item.kind == "solar controller":
                _join(sure, perhaps, f"{item.name}:pv-", f"{item.name}:battery-", None)
        found = facts.shared["grounded"] = sure, perhaps
    return found


def _together(isolated: Any) -> bool | None:
    return None if isinstance(isolated, Unknown) else isolated is not True


def _join(sure: Groups, perhaps: Groups, a: str, b: str, joined: bool | None) -> None:
    if joined is True:
        sure.join(a, b)
    if joined is not False:
        perhaps.join(a, b)


@fact(
    "device",
    "both_poles_protected",
    type="yes/no",
    says="It opens both poles together, or a device stands in the return as well.",
    method="poles of the device; graph of the return",
)
def both_poles_protected(s: Subject) -> Truth:
    poles = s.poles
    two: Truth = poles if isinstance(poles, Unknown) else poles is not None and _at_least_two(poles)
    if isinstance(s.protects, Unknown):
        return either(two, s.protects)
    answers: list[Truth] = []
    for conductor in s.protects:
        back = s.facts.network.conductor(conductor.item.circuit.name, RETURN)
        answers.append(back is not None and any(isinstance(one, Link) and one.is_protective for one in back.parts))
    return either(two, both(bool(answers), every(answers)))


def _at_least_two(poles: Number) -> Truth:
    if isinstance(poles, Range):
        return greater(poles, 1.5)
    return isinstance(poles, float) and poles >= 2.0
