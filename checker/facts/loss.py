"""Loss of supply: each piece of equipment failed in turn, and which loads go dark without it, away from the shore.

Only what stands on one way to a load can, missing, leave it dark; so no more pieces are taken out than that way is
long, and each walk is linear in the graph.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from checker.circuit.elements import Edge
from checker.circuit.supply import is_live, passed
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.darkness import goes_dark, live_node, reaches, standings
from checker.facts.essential import own_cell_lasts
from checker.facts.lamps import FAILING
from checker.facts.mains import tell
from checker.facts.subject import Facts, Subject
from checker.quantities import UNKNOWN, Truth, Unknown, both, equal, negate, some

METHOD = "each piece on its way from a battery taken out in turn; walk from every battery, contacts as in each mode"


class Loss(NamedTuple):
    """What failed, and the loads that go dark for certain in some mode, and perhaps."""

    failed: str
    dark: tuple[str, ...]
    perhaps: tuple[str, ...]


def on_the_way(facts: Facts, node: str) -> list[str]:
    """Names of all that stands on a way from a battery to a node in some mode, in file order."""
    found: set[str] = set()
    for number in range(len(standings(facts))):
        for most in (False, True):
            reached = reaches(facts, number, most)
            if node in reached:
                found |= passed(reached, node)
    own = node.split(":", 1)[0]
    banks = {bank for bank, units in facts.network.units.items() if found.intersection(units)}
    order = _order(facts)
    return sorted((name for name in found | banks if name in order and name != own), key=order.__getitem__)


def _order(facts: Facts) -> dict[str, int]:
    """Equipment, then the ways of boards, in file order; found once."""
    held: dict[str, int] | None = facts.shared.get("equipment in order")
    if held is None:
        ways = (way.name for item in facts.network.equipment.values() for way in item.ways)
        names = dict.fromkeys((*facts.network.equipment, *ways))
        held = facts.shared["equipment in order"] = {name: number for number, name in enumerate(names)}
    return held


def fails(facts: Facts, node: str, name: str) -> Truth:
    """Whether a node goes dark when a piece fails; the whole of a bank fails together."""
    return goes_dark(facts, node, (name, *facts.network.units.get(name, ())))


def losses(facts: Facts, loads: Iterable[Equipment]) -> tuple[Loss, ...]:
    """Each single failure that leaves some of the loads dark, in file order."""
    dark: dict[str, list[str]] = {}
    perhaps: dict[str, list[str]] = {}
    order: dict[str, None] = {}
    for load in loads:
        node = live_node(facts, load)
        for name in on_the_way(facts, node) if node is not None else ():
            found = fails(facts, node, name) if node is not None else False
            if found is not False:
                order[name] = None
                (dark if found is True else perhaps).setdefault(name, []).append(load.name)
    names = sorted(order, key=_order(facts).__getitem__)
    return tuple(Loss(name, tuple(dark.get(name, ())), tuple(perhaps.get(name, ()))) for name in names)


@fact(
    "load",
    "dark_when",
    type="text",
    says="What leaves it without supply when it fails alone, away from the shore; empty for nothing.",
    method=METHOD,
)
def dark_when(s: Subject) -> Any:
    found = _single(s)
    return found if isinstance(found, Unknown) else ", ".join(found)


@fact(
    "load",
    "single_failures",
    unit="count",
    says="How many pieces of equipment leave it without supply when one of them fails, away from the shore.",
    method=METHOD,
)
def single_failures(s: Subject) -> Any:
    found = _single(s)
    return found if isinstance(found, Unknown) else float(len(found))


def _single(s: Subject) -> list[str] | Unknown:
    held: dict[str, list[str] | Unknown] = s.facts.shared.setdefault("single failures", {})
    if s.id not in held:
        held[s.id] = _single_failures(s)
    return held[s.id]


def _single_failures(s: Subject) -> list[str] | Unknown:
    node = live_node(s.facts, s.item)
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    if node is None:
        return Unknown(f"{s.id} is not connected")
    names = on_the_way(s.facts, node)
    if not names:
        return Unknown(f"no battery is found to supply {s.id}")
    sure = _chain(s.facts, node)
    found = {name: True if name in sure else fails(s.facts, node, name) for name in names}
    if any(isinstance(one, Unknown) for one in found.values()):
        return Unknown("part of its supply was not seen, or a contact on it is not known")
    return [name for name, dark in found.items() if dark is True]


def _chain(facts: Facts, node: str) -> set[str]:
    """What stands on the stretch before a node from which nothing branches off: without it the node is dark.

    Empty where no mode supplies the node for certain. Spares a walk for each device of each final circuit.
    """
    if not any(node in reaches(facts, number, False) for number in range(len(standings(facts)))):
        return set()
    found: set[str] = set()
    came: Edge | None = None
    while True:
        onward = [(edge, far) for edge, far in facts.network.near.get(node, ()) if is_live(edge) and edge is not came]
        if len(onward) != 1 or _feeds(facts, node):
            return found
        came, node = onward[0]
        found.add(node.split(":", 1)[0])


def _feeds(facts: Facts, node: str) -> bool:
    """Whether supply may begin at a node, or come to it through what converts it."""
    return node in facts.network.sources_at


@fact(
    "design",
    "alarm_and_fan_lost_by_one_fault",
    type="yes/no",
    says="One fuse, relay, switch, connector or converter takes an alarm and a fan that ventilates at once.",
    method=METHOD + "; alarms with a cell of their own left out, a bank and what joins its batteries too",
)
def alarm_and_fan_lost_by_one_fault(s: Subject) -> Truth:
    facts = s.facts
    alarms = [load for load in facts.subjects("load") if load.item.kind in ("alarm", "detector")]
    fans = [(load, airs) for load in facts.subjects("load") if (airs := _ventilates(load)) is not False]
    if not alarms or not fans:
        return False
    loose = loose_bank(facts)
    answers: list[Truth] = []
    for alarm in alarms:
        cell = alarm.own_cell
        bare: Truth = cell if isinstance(cell, Unknown) else True if cell is None else negate(own_cell_lasts(alarm))
        lost = _lost_with(s, alarm.item, fans)
        answers.append(both(bare, lost if loose is None else loose))
    return some(answers)


def _ventilates(load: Subject) -> Truth:
    """Whether a load moves air: a fan, or what is told to be for ventilation; silence on a purpose is none."""
    if load.item.kind == "fan":
        return True
    if not load.item.allows("purpose") or not load.item.has("purpose"):
        return False
    return equal(load.read(load.item, "purpose"), "ventilation")


def _lost_with(s: Subject, alarm: Equipment, fans: Sequence[tuple[Subject, Truth]]) -> Truth:
    node = live_node(s.facts, alarm)
    if node is None:
        return UNKNOWN
    answers: list[Truth] = []
    for name in on_the_way(s.facts, node):
        if _kind(s.facts, name) not in SHARED:
            continue
        lost = fails(s.facts, node, name)
        for fan, airs in fans:
            other = live_node(s.facts, fan.item)
            together = both(both(lost, airs), UNKNOWN if other is None else fails(s.facts, other, name))
            if together is True:
                tell(s, f"without {name} neither {alarm.name} nor {fan.id} is supplied")
                return True
            answers.append(together)
    return some(answers)


SHARED = frozenset(FAILING)
"""What fails or is opened alone; a battery and its bars supply everything and are not counted."""


def _kind(facts: Facts, name: str) -> str:
    item = facts.network.equipment.get(name)
    if item is None:
        board = facts.network.equipment.get(name.split(".", 1)[0])
        item = next((way for way in board.ways if way.name == name), None) if board is not None else None
    return "" if item is None else item.kind
