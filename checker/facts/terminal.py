"""Terminals: studs, the lugs on them, covers, torque."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from checker.circuit.elements import LIVE, Conductor, Wire
from checker.design.given import Where
from checker.design.item import Item
from checker.design.model import Equipment
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.quantities import (
    Number,
    QuantityError,
    Truth,
    Unknown,
    add,
    every,
    greatest,
    least,
    less_equal,
    multiply,
    parse,
    total,
)
from checker.quantities.values import between

LUG = re.compile(r"\s*([0-9/.]+)\s*(mm2|AWG|B&S)?\s*-\s*M?([0-9]+)\s*")
STUD = re.compile(r"\s*M\s*([0-9]+)\s*", re.IGNORECASE)
SIZE_SLACK = 0.02
"""A barrel fits when its size is that of the conductor within 2 %, so that gauge sizes written in mm2 still match."""
HIGH_ENERGY = (
    "battery", "bank", "bar", "inverter", "inverter-charger", "dc converter", "fuse", "switch", "shunt", "motor",
)  # fmt: skip


ONE_STUD = (*(kind for kind in HIGH_ENERGY if kind != "bar"), "alternator", "charger", "solar controller", "load")
"""Kinds whose terminal is a single stud or screw, unlike that of a bar or a board."""


class Terminal(NamedTuple):
    """One terminal of a piece of equipment, its node in the graph, and what the file tells of it (None: nothing)."""

    equipment: Equipment
    name: str
    node: str
    told: Item | None


@subjects("terminal", "A stud or screw of a piece of equipment that the file describes, or whose lug it describes.")
def terminals(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """Described terminals by equipment, then ends of circuits that are described."""
    seen = set()
    for item in facts.network.equipment.values():
        if item.name in facts.network.units:
            continue
        for name, told in item.terminals.items():
            seen.add(f"{item.name}:{name}")
            yield f"{item.name}.{name}", told.where, Terminal(item, name, f"{item.name}:{name}", told)
    for conductor in facts.network.conductors:
        if conductor.role != LIVE:
            continue
        for end, node in (("from", conductor.start), ("to", conductor.end)):
            owner, _, name = node.partition(":")
            owned = facts.network.equipment.get(owner)
            if end in conductor.circuit.terminations and owned is not None and node not in seen:
                seen.add(node)
                where = conductor.circuit.terminations[end].where
                yield f"{owner}.{name}", where, Terminal(owned, name, node, None)
    for item in facts.network.equipment.values():
        # A stud of which nothing is told still holds what ends on it, and a code bounds how many that may be.
        for node in sorted(facts.network.nodes_of(item.name)) if item.kind in ONE_STUD else ():
            if node not in seen and len(wires_at(facts, node)) > 1 and item.name not in facts.network.units:
                yield (
                    f"{item.name}.{node.partition(':')[2]}",
                    item.where,
                    Terminal(item, node.partition(":")[2], node, None),
                )


def told(s: Subject, key: str) -> Any:
    """What the file says of the terminal itself."""
    item: Item | None = s.item.told
    return s.read(item, key) if item is not None else Unknown(f"the terminal {s.id} is not described")


def ends_at(s: Subject) -> list[tuple[Conductor, str]]:
    """The conductors that end on it, each with the end: from or to."""
    found: dict[str, tuple[Conductor, str]] = {}
    for wire in wires_at(s.facts, s.item.node):
        conductor = wire.conductor
        end = "from" if conductor.start == s.item.node else "to" if conductor.end == s.item.node else ""
        found.setdefault(conductor.id, (conductor, end))
    return list(found.values())


def wires_at(facts: Facts, node: str) -> list[Wire]:
    """The wires that end on a node: each is one lug for every cable in parallel."""
    return [edge for edge, _ in facts.network.near.get(node, ()) if isinstance(edge, Wire)]


@fact("terminal", "equipment", of="equipment", type="subject", says="What it is a terminal of.")
def equipment(s: Subject) -> Any:
    owner = s.item.equipment.name
    found = s.facts.subject("equipment", owner)
    return found if found is not None else s.facts.subject("equipment", owner.rsplit(".", 1)[0])


@fact("terminal", "stud", unit="mm", says="Thread of its stud.", method="the number behind the M")
def stud(s: Subject) -> Any:
    text = told(s, "stud")
    match = STUD.fullmatch(text) if isinstance(text, str) else None
    return float(match[1]) / 1000.0 if match else Unknown(f"the stud of {s.id} is not told")


@fact(
    "terminal",
    "lugs",
    unit="count",
    says="Lugs on it.",
    method="wires that end on it, each as often as its cables lie in parallel",
)
def lugs(s: Subject) -> Any:
    found: Number = 0.0
    for wire in wires_at(s.facts, s.item.node):
        found = add(found, s.read(wire.conductor.circuit, "in parallel"))
    return found


@fact("terminal", "lugs_allowed", unit="count", says="Lugs it may hold.")
def lugs_allowed(s: Subject) -> Any:
    return told(s, "holds")


@fact(
    "terminal",
    "current",
    unit="A",
    says="Greatest lasting current through it.",
    method="one conductor: its design current; several: between the greatest and their sum",
)
def current(s: Subject) -> Any:
    currents = []
    for conductor, _ in ends_at(s):
        twin = s.facts.of("conductor", conductor)
        if twin is not None:
            currents.append(twin.design_current)
    if not currents:
        return 0.0
    top, sum_of_all = greatest(currents), total(currents)
    if isinstance(top, Unknown) or isinstance(sum_of_all, Unknown) or len(currents) == 1:
        return top
    return between(low(top), high(sum_of_all))


def low(value: Number) -> float:
    """The least a number may be."""
    return value if isinstance(value, float) else value.low  # type: ignore[union-attr]


def high(value: Number) -> float:
    """The most a number may be."""
    return value if isinstance(value, float) else value.high  # type: ignore[union-attr]


@fact("terminal", "stud_rating", unit="A", says="Current it may carry.")
def stud_rating(s: Subject) -> Any:
    return told(s, "rated")


@fact("terminal", "covered", type="yes/no", says="It is covered against touch and dropped tools.",
      method="given with the terminal, else with its equipment")  # fmt: skip
def covered(s: Subject) -> Truth:
    stated = told(s, "cover")
    if isinstance(stated, Unknown) and s.item.equipment.allows("cover") and s.item.equipment.has("cover"):
        stated = s.read(s.item.equipment, "cover")
    return False if stated is None else stated


@fact("terminal", "high_energy", type="yes/no", says="It is a stud behind which a battery stands.",
      method="by the kind of its equipment")  # fmt: skip
def high_energy(s: Subject) -> bool:
    return s.item.equipment.kind in HIGH_ENERGY


@fact("terminal", "torque_spec", unit="N m", says="Torque it asks for.")
def torque_spec(s: Subject) -> Any:
    return told(s, "torque")


def terminations(s: Subject) -> list[tuple[Conductor, Item]]:
    """What is told of the ends that are made on it."""
    found = []
    for conductor, end in ends_at(s):
        record = conductor.circuit.terminations.get(end)
        if record is not None:
            found.append((conductor, record))
    return found


@fact("terminal", "torque_told", type="yes/no", says="The torque some lug on it was tightened to is recorded.",
      method="recorded with the terminal or with an end of a circuit on it")  # fmt: skip
def torque_told(s: Subject) -> bool:
    return bool(torque_records(s))


def torque_records(s: Subject) -> list[Item]:
    """The records that tell a torque: those of the ends on it, and its own, which the leads of a bank and the
    terminals in the middle of a run need."""
    records = [record for _, record in terminations(s)]
    return [one for one in (s.item.told, *records) if one is not None and one.has("torqued")]


@fact("terminal", "torqued", unit="N m", says="Torque its lugs were tightened to; none where one is said to be loose.",
      method="what is recorded with it or its ends; the range")  # fmt: skip
def torqued(s: Subject) -> Any:
    values = [s.read(record, "torqued") for record in torque_records(s)]
    if not values:
        return Unknown(f"the torque of {s.id} is not recorded")
    if any(value is None for value in values):
        return None
    bottom, top = least(values), greatest(values)
    if isinstance(bottom, Unknown) or isinstance(top, Unknown):
        return bottom if isinstance(bottom, Unknown) else top
    return between(low(bottom), high(top))


@fact("terminal", "lug_told", type="yes/no", says="The lug of some cable on it is told.")
def lug_told(s: Subject) -> bool:
    return any(record.has("lug") for _, record in terminations(s)) or _unit_lug(s) is not None


def _unit_lug(s: Subject) -> Any:
    """The lug of the leads of a bank, which are written with the bank; None where nothing is."""
    base = s.item.equipment.base
    bank = s.facts.design.equipment.get(s.item.equipment.name.rsplit(".", 1)[0])
    if base is None or bank is None or bank.kind != "bank" or not bank.has("unit leads.lugs"):
        return None
    return s.read(bank, "unit leads.lugs")


def lug_parts(s: Subject) -> list[tuple[Conductor, Any]]:
    """Each conductor on it with its lug as (area m2, stud m), or unknown."""
    found: list[tuple[Conductor, Any]] = []
    shared = _unit_lug(s)
    for conductor, end in ends_at(s):
        record = conductor.circuit.terminations.get(end)
        text = s.read(record, "lug") if record is not None and record.has("lug") else shared
        match = LUG.fullmatch(text) if isinstance(text, str) else None
        if record is not None or shared is not None:
            unread = Unknown(f"the lug of {conductor.id} on {s.id} is not told")
            found.append((conductor, _lug(match) if match else unread))
    return found


def _lug(match: re.Match[str]) -> tuple[Number, float] | Unknown:
    """The barrel (m2) and the hole (m) that a lug is made for; the barrel is in mm2 unless a gauge is written."""
    try:
        return parse(f"{match[1]} {match[2] or 'mm2'}", "mm2"), float(match[3]) * 1e-3
    except QuantityError:
        return Unknown(f"{match[0].strip()} is no lug")


@fact("terminal", "lugs_fit_cable", type="yes/no", says="The barrel of every lug told is of the size of its cable.",
      method="lug size against the cross-section")  # fmt: skip
def lugs_fit_cable(s: Subject) -> Truth:
    def fits(conductor: Conductor, lug: Any) -> Truth:
        if isinstance(lug, Unknown):
            return lug
        twin = s.facts.of("conductor", conductor)
        if twin is None:
            return Unknown(f"{conductor.id} is not known")
        area = twin.area
        return every((less_equal(multiply(area, 1.0 - SIZE_SLACK), lug[0]),
                      less_equal(lug[0], multiply(area, 1.0 + SIZE_SLACK))))  # fmt: skip

    return every(fits(conductor, lug) for conductor, lug in lug_parts(s))


@fact("terminal", "lugs_fit_stud", type="yes/no", says="The hole of every lug told is that of the stud.",
      method="stud of the lug against that of the terminal")  # fmt: skip
def lugs_fit_stud(s: Subject) -> Truth:
    if s.item.told is None:
        return Unknown(f"the stud of {s.id} is not told")
    size = s.stud

    def fits(lug: Any) -> Truth:
        if isinstance(lug, Unknown) or isinstance(size, Unknown):
            return lug if isinstance(lug, Unknown) else size
        return bool(abs(lug[1] - size) < 1e-6)

    return every(fits(lug) for _, lug in lug_parts(s))


@fact("terminal", "described", type="yes/no", says="The file describes the terminal itself, not only a lug on it.")
def described(s: Subject) -> bool:
    return s.item.told is not None


@fact("terminal", "is_one_stud", type="yes/no", says="It is described, or a single stud by what it belongs to.",
      method="bars, boards and blocks have a place for each conductor")  # fmt: skip
def is_one_stud(s: Subject) -> bool:
    return s.item.told is not None or s.item.equipment.kind in ONE_STUD


@fact(
    "terminal",
    "crimped",
    type="yes/no",
    says="Every end told on it is crimped by a tool or held by a clamp made for it, not soldered or hammered.",
    method="recorded ends",
)
def crimped(s: Subject) -> Truth:
    def well(record: Item) -> Truth:
        how = s.read(record, "crimp")
        return how if isinstance(how, Unknown) else how not in ("soldered", "hammer", None)

    return every(well(record) for _, record in terminations(s))
