"""The plug to a towing vehicle, parted: contacts that a battery aboard keeps live."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link, Wire
from checker.circuit.ports import SUPPLY_CONTACTS
from checker.circuit.supply import leading_to
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.contacts import OF_THE_ENGINE, signal_means
from checker.facts.starter import rests_open
from checker.facts.subject import Facts, Subject
from checker.quantities import Unknown


@fact(
    "equipment",
    "plug_stays_live",
    type="yes/no",
    says="A contact of the plug to a towing vehicle is live from a source aboard when it is parted; none for what is "
    "no such plug.",
    method="graph without the plug; relays that the engine or the plug itself drives are open then, of others nobody "
    "knows; what converts passes nothing back",
)
def plug_stays_live(s: Subject) -> Any:
    if s.item.kind != "vehicle coupling":
        return None
    if _reached(s, _surely(s)):
        return True
    return Unknown(f"whether a contact opens when {s.id} is parted is not told") if _reached(s, _perhaps(s)) else False


def _reached(s: Subject, passes: Any) -> bool:
    network = s.facts.network
    pins = [f"{s.id}:{contact}+" for contact in SUPPLY_CONTACTS]
    lives = {one.live for one in network.sources if one.equipment is not s.item and one.system == "dc"}
    return not lives.isdisjoint(leading_to(network, [pin for pin in pins if pin in network.near], passes))


def _surely(s: Subject) -> Any:
    def passes(edge: Edge) -> bool:
        if isinstance(edge, Wire):
            return edge.gap is None
        return edge.equipment is not s.item and edge.when != "coil"

    return passes


def _perhaps(s: Subject) -> Any:
    def passes(edge: Edge) -> bool:
        return not isinstance(edge, Link) or (edge.equipment is not s.item and _may_be_closed(s, edge))

    return passes


def _may_be_closed(s: Subject, link: Link) -> bool:
    if link.when != "coil" or link.equipment.kind == "combiner":
        return True
    return not (rests_open(s, link.equipment) is True and _dead_when_parted(s.facts, link.equipment, s.id))


def _dead_when_parted(facts: Facts, relay: Equipment, plug: str) -> bool:
    """Whether what drives a relay is gone with the plug: the engine of the towing vehicle, or a contact of the plug."""
    name = relay.value("driven by")
    signal = facts.design.equipment.get(name) if isinstance(name, str) else None
    source: Any = signal.value("from") if signal is not None else name
    comes = isinstance(source, str) and source.partition(".")[0] == plug
    means = signal_means(facts, name)
    return comes or (isinstance(means, str) and means in OF_THE_ENGINE)
