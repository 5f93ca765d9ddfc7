"""The way of the protective earth: what stands in it, and the bonding conductors that carry it to the chassis."""

from __future__ import annotations

from itertools import pairwise

from checker.circuit.elements import BONDING, CHASSIS, EARTH, Conductor
from checker.circuit.groups import Groups
from checker.circuit.ports import IN_LINE, port_nodes
from checker.facts.catalogue import fact
from checker.facts.mains import states_of
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import astray
from checker.quantities import Truth, Unknown, some

EARTH_POINTS = frozenset({"earth bar", "board", "terminal block", "joint", "shore inlet"})


@fact(
    "equipment",
    "in_earth",
    type="yes/no",
    says="A protective conductor, or a bond between earths, runs through it.",
    method="the runs of earths and of bonding circuits that end on an earth or a case",
)
def in_earth(s: Subject) -> Truth:
    if s.item.kind not in IN_LINE:
        return False
    owners = [s.facts.network.by_link.get(id(link)) for link in s.facts.network.links if link.equipment is s.item]
    if any(owner is not None and _is_protective(owner) for owner in owners):
        return True
    hidden = astray(s.facts, s.item.name)
    return False if hidden is None else hidden


def _is_protective(conductor: Conductor) -> bool:
    """Whether a conductor carries earth-fault current: an earth, or a bond with an earth or a case at an end."""
    if conductor.role != BONDING:
        return conductor.role == EARTH
    return any(end.endswith(("PE", ":case")) for end in (conductor.start, conductor.end))


@fact(
    "circuit",
    "bonds_chassis",
    type="yes/no",
    says="It joins the earth of the mains side to the chassis, or is a piece of the only way there.",
    method="a bonding circuit between the chassis and an earth bar, a board, a mains block or an inlet; or one without "
    "which no way is left from a source of mains to the chassis along earths and bonds",
)
def bonds_chassis(s: Subject) -> Truth:
    bond = s.facts.network.conductor(s.item.name, BONDING)
    return False if bond is None else _joins_earth_point(s.facts, bond) or _pieces(s.facts).get(bond.id, False)


def _joins_earth_point(facts: Facts, bond: Conductor) -> bool:
    if CHASSIS not in (bond.start, bond.end):
        return False
    name, _, terminal = (bond.end if bond.start == CHASSIS else bond.start).partition(":")
    item = facts.network.equipment.get(name)
    return item is not None and item.kind in EARTH_POINTS and terminal.endswith("PE")


def _pieces(facts: Facts) -> dict[str, Truth]:
    """Bonding conductors without which the chassis loses the earth of a source of mains; found once."""
    found: dict[str, Truth] | None = facts.store.get("pieces of the way to the chassis")
    if found is None:
        found = facts.store["pieces of the way to the chassis"] = {}
        whole = _earths(facts, None, perhaps=False)
        starts = [feed.earth for feed in states_of(facts).mains.feeds if whole.joined(feed.earth, CHASSIS)]
        for bond in facts.network.conductors:
            if bond.role == BONDING and _is_protective(bond):
                found[bond.id] = _is_piece(facts, bond, starts)
    return found


def _is_piece(facts: Facts, bond: Conductor, starts: list[str]) -> Truth:
    left = _earths(facts, bond, perhaps=False)
    if all(left.joined(start, CHASSIS) for start in starts):
        return False
    left = _earths(facts, bond, perhaps=True)
    if not all(left.joined(start, CHASSIS) for start in starts):
        return True
    return Unknown("whether a circuit on another way to the chassis has an earth conductor is not known")


def _earths(facts: Facts, without: Conductor | None, *, perhaps: bool) -> Groups:
    """What earths and bonds join, one conductor left out; `perhaps` with the earths of which nobody knows."""
    groups, network = Groups(), facts.network
    for conductor in network.conductors:
        if conductor is not without and conductor.role in (EARTH, BONDING) and not _straps_neutral(conductor):
            groups.join(conductor.start, conductor.end)
            for wire in conductor.wires:
                groups.join(wire.a, wire.b)
    for link in network.links:
        if link.pole == EARTH and network.by_link.get(id(link)) is None:
            groups.join(link.a, link.b)
    for circuit in network.circuits if perhaps else ():
        if circuit.earth.how == "unknown" and network.systems[circuit.name] == "ac":
            ends = [port_nodes(network.equipment, port, "ac") for port in (circuit.start, *circuit.ends)]
            for near, far in pairwise([nodes[EARTH] for nodes in ends if EARTH in nodes]):
                groups.join(near, far)
    return groups


def _straps_neutral(conductor: Conductor) -> bool:
    return any(end.endswith("N") for end in (conductor.start, conductor.end))


@fact(
    "converter",
    "case_bond_meets_chassis",
    type="yes/no",
    says="A bond of its case reaches the chassis, and no battery negative lies on the way.",
    method="graph of bonding conductors, those that end on a negative and the earths of cords left out",
)
def case_bond_meets_chassis(s: Subject) -> Truth:
    case = f"{s.item.name}:case"
    bonds = [one for one in s.facts.network.conductors if one.role == BONDING and not _ends_on_negative(one)]
    groups = Groups()
    for bond in bonds:
        if case not in (bond.start, bond.end):
            groups.join(bond.start, bond.end)
    fars = [bond.end if bond.start == case else bond.start for bond in bonds if case in (bond.start, bond.end)]
    return some(groups.joined(far, CHASSIS) for far in fars)


def _ends_on_negative(conductor: Conductor) -> bool:
    return any(end.endswith("-") for end in (conductor.start, conductor.end))
