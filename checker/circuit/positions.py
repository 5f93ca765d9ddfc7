"""What can be chosen on the mains side, and which combinations interlocks allow."""

from __future__ import annotations

from collections.abc import Iterator

from checker.circuit.elements import LIVE, RETURN
from checker.circuit.feeding import consumers, live_node
from checker.circuit.groups import Groups, Over
from checker.circuit.inside import throws_of
from checker.circuit.mains import Mains, word
from checker.circuit.solver import Free, law_of
from checker.circuit.witness import at_rest
from checker.design.item import Item
from checker.quantities import Unknown

Choice = tuple[str, ...]
ON = ("closed", "present")
"""Positions that an interlock speaks of."""


def free_positions(mains: Mains) -> list[Free]:
    """Shore inlets, generators, inverters, changeovers and interlocked switches worked by hand; in file order within
    each sort."""
    found: list[Free] = []
    for feed in mains.feeds:
        item = feed.equipment
        if item.kind == "shore inlet":
            found.append(Free(item, ("present", "absent"), names="shore"))
        elif item.kind == "generator":
            found.append(Free(item, ("running", "stopped")))
        elif item.kind in ("inverter", "inverter-charger"):
            found.append(Free(item, ("on", "off")))
            if word(item, "transfer.when") == "by hand":
                found.append(Free(item, ("transfer closed", "transfer open")))
    inlets = [free for free in found if free.names == "shore"]
    if len(inlets) > 1:
        for free in inlets:
            free.names = f"shore at {free.item.name}"
    for item in dict.fromkeys(link.equipment for link in mains.switching):
        if item.kind == "changeover" and law_of(mains, item) is None:
            throws = throws_of(item)
            certain = word(item, "operated") not in (None, "coil", "signal")
            found.append(Free(item, throws or ("unknown",), certain=certain and bool(throws)))
        elif item.kind == "switch" and item.name in mains.by_hand:
            found.append(Free(item, ("closed", "open")))
    return found


def parting_switches(mains: Mains) -> frozenset[str]:
    """Hand switches of which, when open, a source loses a link of neutral and earth and still feeds something.

    With such a switch open the neutral of the source floats, so both its positions must be looked at.
    """
    names = {link.equipment.name for link in mains.network.links if link.when == "hand" and link.pole == RETURN}
    standing = {link.equipment.name for link in mains.network.links if link.pole == LIVE and link.a in mains.nodes}
    before = _all_joined(mains)
    loads = [live_node(item) for item in consumers(mains.network)]
    found = set()
    for name in sorted(names & standing - mains.by_hand - mains.opened):
        after = _all_joined(Mains(mains.network, mains.opened | {name}))
        for feed in mains.feeds:
            parted = any(
                before.joined(feed.neutral, bond.neutral) and not after.joined(feed.neutral, bond.neutral)
                for bond in mains.bonds
            )
            if parted and any(after.joined(feed.live, node) for node in loads):
                found.add(name)
    return frozenset(found)


def _all_joined(mains: Mains) -> Groups:
    """Everything joined that can be: each contact closed."""
    return Over(mains.fixed, ((link.a, link.b) for link in mains.switching if link.when != "bond"))


def choices(free: list[Free]) -> Iterator[Choice]:
    """Every combination that no interlock forbids, in the order of the positions."""
    against = [_others(one.item) for one in free]
    chosen: list[str] = []

    def allowed(index: int, position: str) -> bool:
        if position not in ON:
            return True
        name = free[index].item.name
        for before, other in enumerate(chosen):
            if other in ON and (free[before].item.name in against[index] or name in against[before]):
                return False
        return True

    def walk() -> Iterator[Choice]:
        index = len(chosen)
        if index == len(free):
            yield tuple(chosen)
            return
        for position in free[index].positions:
            if allowed(index, position):
                chosen.append(position)
                yield from walk()
                chosen.pop()

    return walk()


def _others(item: Item) -> frozenset[str]:
    """Names of what cannot be closed together with an item, as far as they are known."""
    others = item.value("interlocked with") if item.allows("interlocked with") else None
    return frozenset(one for one in others if isinstance(one, str)) if isinstance(others, tuple) else frozenset()


def is_doubtful(free: list[Free], choice: Choice) -> bool:
    """Whether an interlock that is not known perhaps forbids a combination: two closed, of one of which it is open."""
    on = [one.item for one, position in zip(free, choice, strict=True) if position in ON and one.item.kind == "switch"]
    return len(on) > 1 and any(leaves_open(item) for item in on)


def leaves_open(item: Item) -> bool:
    """Whether the file says that nobody knows what a switch is interlocked with."""
    if not item.allows("interlocked with") or not item.has("interlocked with"):
        return False
    others = item.value("interlocked with")
    listed = others if isinstance(others, tuple) else (others,)
    return any(isinstance(one, Unknown) for one in listed)


def one_at_a_time(mains: Mains, free: list[Free]) -> Iterator[Choice]:
    """Fewer combinations that show the same: changeovers behind which only loads stand are varied one at a time.

    Such a changeover decides what feeds its own loads and nothing else, so no question about a load or a source
    needs two of them away from rest.
    """
    alone = {index for index, one in enumerate(free) if _feeds_only_loads(mains, one.item)}
    rest = at_rest(free)
    base = [one for index, one in enumerate(free) if index not in alone]
    for choice in choices(base):
        parts = iter(choice)
        start = tuple(rest[index] if index in alone else next(parts) for index in range(len(free)))
        yield start
        for index in sorted(alone):
            for position in free[index].positions:
                if position != rest[index]:
                    yield (*start[:index], position, *start[index + 1 :])


def _feeds_only_loads(mains: Mains, item: Item) -> bool:
    if item.kind != "changeover":
        return False
    groups = Groups()
    own: list[str] = []
    speaking: list[str] = []
    for link in mains.switching:
        if link.equipment is item:
            own.append(link.a)
        else:
            groups.join(link.a, link.b)
            speaking.extend((link.a, link.b))
    for node in mains.nodes:
        groups.join(node, mains.fixed.find(node))
    for feed in mains.feeds:
        speaking.extend((feed.live, feed.neutral))
        for port in ("ac-in", "primary"):
            speaking.extend((f"{feed.name}:{port}L", f"{feed.name}:{port}N"))
    speaking.extend(bond.neutral for bond in mains.bonds)
    speaking.extend(mains.coils())
    spoken = {groups.find(node) for node in speaking}
    return not any(groups.find(node) in spoken for node in own)
