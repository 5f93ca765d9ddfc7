"""What stays live when something is opened: a switch of the mains side, the lead to the shore, the isolator of a bank.

A hand switch that stands in a run counts as closed elsewhere, because an open one only takes supply away. Here it is
opened, all supply states are worked out again without it, and what is still fed in one of them is told.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple

from checker.circuit.feeding import consumers, live_node
from checker.circuit.sources import LOADS
from checker.circuit.states import States
from checker.circuit.supply import storage_nodes, supplied
from checker.design.model import Equipment
from checker.facts.bank_isolation import ways
from checker.facts.catalogue import fact
from checker.facts.mains import TOO_MANY, states_of
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import Unknown

ROOTS = ("battery", "alternator", "solar array", "shore inlet", "generator", "vehicle coupling")
"""Kinds at which supply begins; everything else passes it on."""


class Left(NamedTuple):
    """What one source still feeds: for sure in some supply state, and what it perhaps feeds as well."""

    source: str
    sure: tuple[str, ...]
    perhaps: tuple[str, ...]


def mains_left(states: States, *, shore: bool = True, dead: Iterable[str] = ()) -> tuple[Left, ...]:
    """The mains consumers that each source feeds in some state; `shore` False looks at states without a lead alone.

    `dead` names sources that have lost their own supply.
    """
    gone = set(dead)
    loads = consumers(states.mains.network)
    sure: dict[str, dict[str, None]] = {}
    may: dict[str, dict[str, None]] = {}
    for state in states.states:
        if not shore and any(state.present.values()):
            continue
        for load in loads:
            surely, perhaps = state.feeds_of(live_node(load))
            for feed in (*surely, *perhaps):
                if feed.name not in gone and load.name != feed.name:
                    known = feed in surely and state.certain
                    (sure if known else may).setdefault(feed.name, {})[load.name] = None
    found = []
    for feed in states.mains.feeds:
        certain = tuple(load.name for load in loads if load.name in sure.get(feed.name, {}))
        doubtful = (load.name for load in loads if load.name in may.get(feed.name, {}) and load.name not in certain)
        left = Left(feed.name, certain, tuple(doubtful))
        if left.sure or left.perhaps:
            found.append(left)
    return tuple(found)


def battery_left(facts: Facts, name: str) -> tuple[Left, ...]:
    """The loads of the battery side that each source may still feed with one piece of equipment open.

    All other contacts count as closed, so that what is told here may be live and need not be.
    """
    network = facts.network
    loads = [item for item in network.equipment.values() if item.kind in LOADS and f"{item.name}:+" in network.near]
    bank_of = {unit: bank for bank, units in network.units.items() for unit in units}
    found: dict[str, dict[str, None]] = {}
    for source in network.sources:
        if source.equipment.kind in ROOTS:
            reached = supplied(network, [source.live], None, {name})
            left = (item.name for item in loads if f"{item.name}:+" in reached)
            found.setdefault(bank_of.get(source.equipment.name, source.equipment.name), {}).update(dict.fromkeys(left))
    return tuple(Left(source, (), tuple(left)) for source, left in found.items() if left)


def starved(facts: Facts, name: str) -> tuple[str, ...]:
    """Inverters that no battery feeds with one piece of equipment open."""
    network = facts.network
    reached = supplied(network, storage_nodes(network), None, {name})
    inverters = (item for item in network.equipment.values() if item.kind in ("inverter", "inverter-charger"))
    return tuple(item.name for item in inverters if f"{item.name}:dc+" not in reached)


def mains_switches(facts: Facts) -> tuple[Equipment, ...]:
    """Switches worked by hand, and the mains of boards, in the live side of the mains; in file order."""
    mains = states_of(facts).mains
    standing = {link.equipment.name for link in facts.network.links if link.a in mains.nodes}
    heads = {item.value("main") for item in facts.network.equipment.values() if item.kind == "board"}
    names = {head for head in heads if isinstance(head, str)}
    return tuple(
        item
        for item in facts.network.equipment.values()
        if item.name in standing and (item.kind == "switch" or item.name in names)
    )


def bank_isolators(facts: Facts) -> tuple[Equipment, ...]:
    """The first switches on each way out of a bank, each once."""
    found: dict[str, Equipment] = {}
    for bank in facts.subjects("bank"):
        for way in ways(facts, bank.item):
            found.update({first.item.name: first.item for first in way.first})
    return tuple(found.values())


def left_with_open(facts: Facts, item: Equipment) -> tuple[Left, ...] | Unknown:
    """What is still live with one switch open: on the mains, and for a switch of the battery side there as well."""
    if not states_of(facts).complete:
        return TOO_MANY
    states = States(facts.network, frozenset({item.name}))
    if not states.complete:
        return TOO_MANY
    left = mains_left(states, dead=starved(facts, item.name))
    return left if item in mains_switches(facts) else (*left, *battery_left(facts, item.name))


@fact(
    "switch",
    "leaves_mains_live",
    of="load",
    type="list",
    says="Mains outlets and appliances that some source still feeds in some supply state while it is open.",
    method="every supply state worked out again without it; inverters without a battery taken out",
)
@where_it_stands
def leaves_mains_live(s: Subject) -> Any:
    states = States(s.facts.network, frozenset({s.id}))
    if not states.complete:
        return TOO_MANY
    left = mains_left(states, dead=starved(s.facts, s.id))
    sure = dict.fromkeys(name for one in left for name in one.sure)
    if any(name not in sure for one in left for name in one.perhaps):
        return Unknown("whether a source reaches some loads is not known")
    subjects = (s.facts.subject("load", name) for name in sure)
    return tuple(one for one in subjects if one is not None)
