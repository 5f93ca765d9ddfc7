"""The isolator of an array: how it is reached, what is said beside it, and when it is opened."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.design.vocabulary.words import ACCESS
from checker.facts.array import arrays_of, controller_of, isolators_of, perhaps_isolated
from checker.facts.bank import KINDS, home
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown

BY_HAND = ("switch", "breaker", "rcbo")


@fact("array", "isolator_access", words=ACCESS, says="How a hand gets to its isolator.")
def isolator_access(s: Subject) -> Any:
    found = [s.read(item, "access") for item in isolators_of(s)]
    return found[0] if found else perhaps_isolated(s)


@fact(
    "array",
    "daylight_told",
    type="yes/no",
    says="A label says that its cables stay live in daylight.",
    method="`live in daylight` among the labels of its isolator, its controller or itself",
)
def daylight_told(s: Subject) -> Truth:
    controller = controller_of(s.facts, s.item)
    bearers = [*isolators_of(s), s.item, *([] if controller is None else [controller])]
    told = [s.read(item, "labels") for item in bearers]
    if any(isinstance(one, tuple) and "live in daylight" in one for one in told):
        return True
    return next((one for one in told if isinstance(one, Unknown)), False)


@fact(
    "converter",
    "array_opened_first",
    type="yes/no",
    says="Shut down in the order of the papers, its array is opened before any switch that parts it from its battery.",
    method="switches without which its output reaches no battery: graph; the order under `papers.shut down`",
)
def array_opened_first(s: Subject) -> Truth:
    parting = _parting(s)
    if not parting:
        return True
    order = s.read(s.facts.design.papers, "shut down")
    if isinstance(order, Unknown):
        return order
    names = [name for name in order if isinstance(name, str)] if isinstance(order, tuple) else []
    arrays = arrays_of(s)
    unseen = next((why for array in arrays if (why := perhaps_isolated(array)) is not None), None)
    if unseen is not None:
        return unseen
    s.note(lambda: f"parted from its battery by {', '.join(parting)}; the order is {', '.join(names) or 'not told'}")
    first = [min((names.index(one.name) for one in isolators_of(a) if one.name in names), default=None) for a in arrays]
    switched = [names.index(name) for name in parting if name in names]
    if any(at is None for at in first):
        return False
    return all(at is not None and at < after for at in first for after in switched)


def _parting(s: Subject) -> list[str]:
    """Names of the switches that, open, leave its output without any battery."""
    network = s.facts.network
    start = f"{s.id}:battery+"
    homes = {home(s.facts, item) for item in s.facts.design.equipment.values() if item.kind in KINDS}
    near = joined(network, [start])
    if not homes.intersection(near):
        return []
    switches = [item for item in network.equipment.values() if _by_hand(item)]
    return [one.name for one in switches if not homes.intersection(joined(network, [start], _without(one)))]


def _by_hand(item: Equipment) -> bool:
    return item.kind == "switch" or (item.kind in BY_HAND and item.value("isolates") is True)


def _without(item: Equipment) -> Any:
    def passes(edge: Edge) -> bool:
        return not (isinstance(edge, Link) and edge.equipment is item)

    return passes
