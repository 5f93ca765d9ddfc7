"""What stretches that nobody saw leave open: a device that no run names, a conductor that nothing seems to feed."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any

from checker.circuit.elements import LIVE, Link
from checker.circuit.limits import islands, live_graph
from checker.circuit.ports import IN_LINE
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown


def hiding_places(facts: Facts) -> tuple[str, ...]:
    """Names of the circuits of which part of the run was not seen."""
    if "hiding places" not in facts.shared:
        gaps = (wire.conductor.circuit.name for wire in facts.network.wires() if wire.gap is not None)
        facts.shared["hiding places"] = tuple(dict.fromkeys(gaps))
    found: tuple[str, ...] = facts.shared["hiding places"]
    return found


def may_be_hidden(facts: Facts, name: str) -> Unknown | None:
    """Why a device that no run names may stand in a circuit all the same; None when every run was seen."""
    hiding = hiding_places(facts)
    return Unknown(f"{name} may stand in a stretch that was not seen: {', '.join(hiding)}") if hiding else None


def may_be_fed(facts: Facts, name: str, node: str) -> Unknown | None:
    """Why a conductor that no source seems to reach may carry current all the same; None when one does."""
    hiding = hiding_places(facts)
    if not hiding or node in _fed(facts):
        return None
    return Unknown(f"what feeds {name} is not told; parts were not seen: {', '.join(hiding)}")


def unjoined_bank(facts: Facts) -> Unknown | None:
    """Why the current of some bank goes nobody knows where: neither its joint is told nor is it wired itself."""
    if "unjoined bank" not in facts.shared:
        names = (
            item.name
            for item in facts.design.equipment.values()
            if item.kind == "bank"
            and isinstance(item.value("joined by"), Unknown)
            and not facts.network.nodes_of(item.name)
        )
        name = next(names, None)
        told = None if name is None else Unknown(f"how the batteries of {name} are joined is not known")
        facts.shared["unjoined bank"] = told
    found: Unknown | None = facts.shared["unjoined bank"]
    return found


def _fed(facts: Facts) -> set[str]:
    """Live nodes that hang together with some source."""
    if "fed" not in facts.shared:
        network = facts.network
        fed: set[str] = set()
        for part in islands(live_graph(network, None)):
            if any(network.sources_at.get(node) for node in part):
                fed.update(part)
        facts.shared["fed"] = fed
    found: set[str] = facts.shared["fed"]
    return found


def standing(facts: Facts) -> frozenset[str]:
    """Names of the devices of which both sides are joined to something, and of the ways of boards."""
    if "standing" not in facts.shared:
        facts.shared["standing"] = frozenset(
            link.equipment.name
            for link in facts.network.links
            if link.equipment.kind not in IN_LINE
            or link.equipment.name not in facts.network.equipment
            or all(_joined_ends(facts, link))
        )
    found: frozenset[str] = facts.shared["standing"]
    return found


def _joined_ends(facts: Facts, link: Link) -> tuple[bool, bool]:
    near = facts.network.near
    return len(near[link.a]) > 1, len(near[link.b]) > 1


def half_standing(facts: Facts) -> tuple[str, ...]:
    """Names of devices to one side of which a circuit is joined, and that no run names: where they stand is open."""
    if "half standing" not in facts.shared:
        links = (link for link in facts.network.links if link.pole == LIVE and any(_joined_ends(facts, link)))
        names = dict.fromkeys(link.equipment.name for link in links)
        facts.shared["half standing"] = tuple(name for name in names if name not in standing(facts))
    found: tuple[str, ...] = facts.shared["half standing"]
    return found


def astray(facts: Facts, name: str) -> Unknown | None:
    """Why nobody knows where a device stands: no run names it, and part of one was not seen; None when it is known."""
    return may_be_hidden(facts, name) if hiding_places(facts) and name not in standing(facts) else None


def where_it_stands(function: Callable[[Any], Any]) -> Callable[[Any], Any]:
    """A fact of a device or switch that rests on the circuit it stands in: unknown while nobody knows that circuit."""

    @wraps(function)
    def found(s: Subject) -> Any:
        hidden = astray(s.facts, s.item.name)
        return function(s) if hidden is None else hidden

    return found
