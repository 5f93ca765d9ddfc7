"""Which single device cuts everything from a source of mains, with every live conductor."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE, Link
from checker.circuit.feeding import consumers, live_node
from checker.circuit.groups import Groups
from checker.circuit.mains import Feed
from checker.circuit.states import Truth
from checker.design.model import Equipment
from checker.design.vocabulary.words import ACCESS
from checker.facts.catalogue import fact
from checker.facts.live_poles import live_poles
from checker.facts.mains import answer, states_of, tell
from checker.facts.subject import Facts, Subject
from checker.quantities import Number, Unknown, both, greater_equal, subtract
from checker.quantities import Truth as Answer

OPENERS = frozenset({"switch", "breaker", "rcbo", "rcd", "changeover"})


class Cuts:
    """The live mains side with devices that open as its only edges; what can close counts as closed.

    A stretch that was not seen is such an edge as well, named in `unseen`, since a switch may stand in it.
    """

    def __init__(self, facts: Facts) -> None:
        mains = states_of(facts).mains
        network = facts.network
        self.groups = Groups()
        self.openers: dict[str, Equipment] = {}
        apart: list[Link] = []
        unseen: list[tuple[str, str, str]] = []
        for conductor in network.conductors:
            if conductor.role == LIVE and network.systems[conductor.circuit.name] == "ac":
                for wire in conductor.wires:
                    if wire.gap is None:
                        self.groups.join(wire.a, wire.b)
                    else:
                        unseen.append((f"unseen part of {conductor.circuit.name}", wire.a, wire.b))
        for link in network.links:
            if link.pole != LIVE or link.a not in mains.nodes or link.when == "transfer":
                continue
            if link.equipment.kind in OPENERS:
                apart.append(link)
                self.openers.setdefault(link.equipment.name, link.equipment)
            else:
                self.groups.join(link.a, link.b)
        self.edges: dict[str, list[tuple[str, str]]] = {}
        self.unseen = tuple(dict.fromkeys(name for name, _, _ in unseen))
        for name, start, end in [*((link.equipment.name, link.a, link.b) for link in apart), *unseen]:
            a, b = self.groups.find(start), self.groups.find(end)
            self.edges.setdefault(a, []).append((name, b))
            self.edges.setdefault(b, []).append((name, a))
        self.ends: dict[str, set[str]] = {}
        for item in consumers(network):
            self.ends.setdefault(self.groups.find(live_node(item)), set()).add(item.name)
        for feed in mains.feeds:
            entry = {"inverter-charger": "ac-inL", "transformer": "primaryL"}.get(feed.equipment.kind)
            if entry is not None:
                self.ends.setdefault(self.groups.find(f"{feed.name}:{entry}"), set()).add(feed.name)

    def reaches(self, feed: Feed, without: str) -> bool:
        """Whether supply from a feed reaches anything that draws but itself, with one device open."""
        todo = [self.groups.find(feed.live)]
        seen = set(todo)
        while todo:
            here = todo.pop()
            if self.ends.get(here, set()) - {feed.name}:
                return True
            for name, far in self.edges.get(here, ()):
                if name != without and far not in seen:
                    seen.add(far)
                    todo.append(far)
        return False


def _cuts(facts: Facts) -> Cuts:
    found: Cuts | None = facts.store.get("mains cuts")
    if found is None:
        found = facts.store["mains cuts"] = Cuts(facts)
    return found


@fact(
    "ac_source",
    "feeds_fixed_wiring",
    type="yes/no",
    says="Outlets, appliances or chargers hang on it through the wiring of the vehicle.",
    method="graph with everything closed that can close",
)
def feeds_fixed_wiring(s: Subject) -> bool:
    return _cuts(s.facts).reaches(s.item, "")


def _cut_all(s: Subject) -> list[Equipment]:
    """The devices each of which, opened alone, leaves nothing fed."""
    cuts = _cuts(s.facts)
    return [item for name, item in cuts.openers.items() if not cuts.reaches(s.item, name)]


@fact("ac_source", "main_switch_access", words=ACCESS,
      says="How a hand gets to the switch that cuts all of it; the easiest counts. None where there is no such switch.",
      method="devices that cut all of it and isolate in every pole, by their access")  # fmt: skip
def main_switch_access(s: Subject) -> Any:
    needed = live_poles(s, s.item.equipment)
    good = [item for item in _cut_all(s) if _isolates(s, item, needed) is not False]
    ways = [s.read(item, "access") for item in good]
    unread = next((one for one in ways if isinstance(one, Unknown)), None)
    told = [way for way in ACCESS if any(isinstance(one, str) and one == way for one in ways)]
    if told and (unread is None or told[0] == ACCESS[0]):
        return told[0]
    return unread


@fact(
    "ac_source",
    "has_main_switch",
    type="yes/no",
    says="One switch or breaker that isolates, opened alone, cuts every live conductor from it to all that draws.",
    method="each device taken out in turn; it must open every line and the neutral and isolate when open",
)
def has_main_switch(s: Subject) -> Any:
    return _cut_by_one(s, live_poles(s, s.item.equipment))


@fact(
    "ac_source",
    "has_line_switch",
    type="yes/no",
    says="One switch or breaker that isolates, opened alone, cuts its lines from all that draws; the neutral may stay.",
    method="each device taken out in turn; it must open every line and isolate when open",
)
def has_line_switch(s: Subject) -> Any:
    return _cut_by_one(s, subtract(live_poles(s, s.item.equipment), 1.0))


@fact("ac_source", "supply_is_polarised", type="yes/no", says="Live and neutral of the sites cannot be swapped.")
def supply_is_polarised(s: Subject) -> Any:
    return s.read(s.facts.design.vehicle, "supply.polarised")


def _cut_by_one(s: Subject, poles: Number) -> Any:
    cuts = _cuts(s.facts)
    found: Truth = False
    for item in _cut_all(s):
        good = _isolates(s, item, poles)
        if good is True:
            told = f"{item.name} opens all of it"
            tell(s, told)
            return True
        found = None if isinstance(good, Unknown) else found
    if found is False and any(not cuts.reaches(s.item, name) for name in cuts.unseen):
        return Unknown("a main switch may stand in a stretch that was not seen")
    return answer(found, "whether a device on the way isolates with every pole is not known")


def _isolates(s: Subject, item: Equipment, needed: Number) -> Answer:
    isolates = s.read(item, "isolates") if item.allows("isolates") else False
    return both(greater_equal(s.read(item, "poles"), needed), isolates)
