"""Devices in series of which the one before also feeds other loads: whether the branch is rated to open first."""

from __future__ import annotations

from typing import Any, NamedTuple

from checker.circuit.limits import live_forest
from checker.circuit.sources import LOADS
from checker.circuit.supply import storage_nodes, supplied
from checker.circuit.sweep import Arrivals, Rules
from checker.circuit.zones import Border
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.least_fault import live_links, zones_of
from checker.facts.selectivity import pairs
from checker.facts.subject import Facts, Subject
from checker.facts.unseen import where_it_stands
from checker.quantities import UNKNOWN, Truth, equal, every, less, show, total

PASSING = ("inverter", "inverter-charger", "dc converter")


class Before(NamedTuple):
    """A device before another that also feeds other loads, and those with which it shares a fault."""

    border: Border
    together: list[Border]


def _counts(facts: Facts, what: str, at: dict[str, int]) -> Arrivals[int]:
    """How much of something lies on each side of every live edge; counted once."""
    found: Arrivals[int] | None = facts.shared.get(what)
    if found is None:
        rules = Rules(0, lambda node: at.get(node, 0), lambda a, b: a + b, lambda edge, node, flow: flow)
        found = facts.shared[what] = live_forest(facts.network, None).sweep(rules)
    return found


def _draws(item: Equipment, node: str) -> bool:
    """Whether it is a load, or passes power of a battery on to some; a charger that rests darkens nothing."""
    return item.kind in LOADS or (item.kind in PASSING and node.endswith("+"))


def _loads(facts: Facts) -> Arrivals[int]:
    sinks = facts.network.sinks.items()
    at = {node: sum(1 for item in items if _draws(item, node)) for node, items in sinks}
    return _counts(facts, "loads by edge", at)


def _mains(facts: Facts) -> Arrivals[int]:
    at: dict[str, int] = {}
    for source in facts.network.sources:
        if source.system == "ac":
            at[source.live] = at.get(source.live, 0) + 1
    return _counts(facts, "sources of mains by edge", at)


def _before(s: Subject) -> list[Before]:
    """The devices before a device that also feed other loads."""
    return _before_mains(s) if equal(s.system, "ac") is True else _before_battery(s)


def _before_battery(s: Subject) -> list[Before]:
    counted = _loads(s.facts)
    found = []
    for pair in pairs(s):
        mine = counted.get((id(pair.link), pair.link.other(pair.inside)), 0)
        if _left_dark(s.facts, frozenset((s.id, *(one.link.equipment.name for one in pair.borders)))) <= mine:
            continue
        for border in pair.borders:
            if counted.get((id(border.link), border.outside), 0) > mine:
                found.append(Before(border, pair.borders))
    return found


def _left_dark(facts: Facts, cut: frozenset[str]) -> int:
    """How many loads no battery reaches once these devices have opened, converters passed through."""
    kept: dict[frozenset[str], int] = facts.shared.setdefault("left dark by devices", {})
    if cut not in kept:
        fed = supplied(facts.network, storage_nodes(facts.network), None, cut)
        kept[cut] = sum(
            1
            for node, items in facts.network.sinks.items()
            for item in items
            if _draws(item, node) and node not in fed and node in facts.network.near
        )
    return kept[cut]


def _before_mains(s: Subject) -> list[Before]:
    counted, behind, zones = _loads(s.facts), _mains(s.facts), zones_of(s.facts)
    found: list[Before] = []
    for link in live_links(s):
        for inside in (link.a, link.b):
            outside = link.other(inside)
            if not behind.get((id(link), inside), 0) or behind.get((id(link), outside), 0):
                continue
            mine = counted.get((id(link), outside), 0)
            for border in zones.borders(zones.of(outside)):
                feeds = border.link is not link and behind.get((id(border.link), border.inside), 0)
                if feeds and counted.get((id(border.link), border.outside), 0) > mine:
                    found.append(Before(border, [border]))
    return found


@fact(
    "device",
    "shares_a_feeder",
    type="yes/no",
    says="A device before it also feeds other loads, which go dark when that one opens.",
    method="graph: loads behind the device upstream and not behind this one; of the battery side those that no battery "
    "reaches otherwise, converters passed through",
)
@where_it_stands
def shares_a_feeder(s: Subject) -> Truth:
    return bool(_before(s))


@fact(
    "device",
    "below_its_feeders",
    type="yes/no",
    says="It is rated lower than what stands before it and also feeds other loads.",
    method="ratings, added up where several share the fault: up to some current it then opens first",
)
@where_it_stands
def below_its_feeders(s: Subject) -> Truth:
    answers: list[Truth] = []
    for one in _before(s):
        ratings = [_rating(s.facts, border) for border in one.together]
        line = f"before it {one.border.link.equipment.name}, together {show(total(ratings), 'A')}"
        s.note(line.__str__)
        answers.append(less(s.rating, total(ratings)))
    return every(answers)


def _rating(facts: Facts, border: Border) -> Any:
    device = facts.subject("device", border.link.equipment.name)
    return UNKNOWN if device is None else device.rating
