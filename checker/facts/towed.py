"""What a caravan or trailer draws from the battery of a towing vehicle that stands with its engine stopped."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Edge, Link, Wire
from checker.circuit.sources import LOADS
from checker.circuit.supply import joined
from checker.design.model import Equipment
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.contacts import signal_means
from checker.facts.starter import TOWING_CONTACTS, reserve_over_there, rests_open
from checker.facts.starter_drain import SPARING
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, greater_equal


@fact("equipment", "parted_with_the_engine", type="yes/no",
      says="A plug whose charge and fridge contacts the towing vehicle parts when its engine stops; none for others.",
      method="`switched` of the other end")  # fmt: skip
def parted_with_the_engine(s: Subject) -> Any:
    return s.read(s.item, "source end.switched") if s.item.kind == "vehicle coupling" else None


@fact(
    "equipment",
    "draws_over_there",
    of="equipment",
    type="list",
    says="Loads and inverters that the charge or fridge contact of a plug feeds with the engine stopped.",
    method="graph; relays by a signal of engine, ignition or low battery and combiners that part at 12.2 V are "
    "taken as open; converters have a rule of their own",
)
def draws_over_there(s: Subject) -> Any:
    if s.item.kind != "vehicle coupling":
        return ()
    loose = loose_bank(s.facts)
    if loose is not None:
        return loose
    sure, perhaps = (_fed(s, perhaps=doubt) for doubt in (False, True))
    if not sure and perhaps:
        return Unknown(f"whether {', '.join(perhaps)} draws through {s.id} with the engine stopped is not told")
    return tuple(s.facts.of("equipment", item) for item in sure.values())


def _fed(s: Subject, *, perhaps: bool) -> dict[str, Equipment]:
    found: dict[str, Equipment] = {}
    for end in TOWING_CONTACTS:
        start = f"{s.id}:{end}"

        def kept(edge: Edge, start: str = start) -> bool:
            if isinstance(edge, Wire):
                return edge.gap is None or perhaps  # what was not seen may hold a contact that parts them
            parts = _parts(s, edge, start)
            return parts is False or (perhaps and isinstance(parts, Unknown))

        if start not in s.facts.network.near:
            continue
        for node in joined(s.facts.network, [start], kept):
            for item in s.facts.network.sinks.get(node, ()):
                if item.kind in LOADS or item.kind in ("inverter", "inverter-charger"):
                    found.setdefault(item.name, item)
    return found


def _parts(s: Subject, link: Link, start: str) -> Truth:
    """Whether a relay or combiner opens when the engine stops, or before the reserve over there."""
    item = link.equipment
    if item.kind == "combiner":
        senses = s.read(item, "senses")
        if isinstance(senses, Unknown):
            return senses
        if senses != "voltage":
            return senses is not None
        return greater_equal(s.read(item, "parts at"), reserve_over_there(s, s.item, start))
    if item.kind != "relay":
        return False
    means = signal_means(s.facts, s.read(item, "driven by"))
    if isinstance(means, Unknown):
        return means
    return both(isinstance(means, str) and means in SPARING, rests_open(s, item))
