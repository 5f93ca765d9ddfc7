"""Electronic loads added to a vehicle: a battery connected the wrong way round, and approval for the road."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import Source
from checker.circuit.supply import leading_to
from checker.facts.bank import loose_bank
from checker.facts.catalogue import fact
from checker.facts.converter_guard import marked_for_vehicles
from checker.facts.darkness import live_node
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown, both, either, equal, every, negate

ALWAYS = ("alarm", "detector", "air conditioner")
NEVER = ("brake", "motor", "valve", "outlet", "joined unit")
ROAD = ("motorhome", "campervan", "caravan", "trailer")


@fact(
    "load",
    "is_electronic",
    type="yes/no",
    says="It holds electronics: an alarm, a detector, an air conditioner, or what names a transient that it endures.",
    method="its kind; a transient level told; brakes, plain motors and valves hold none",
    source="common practice, no source",
)
def is_electronic(s: Subject) -> Truth:
    if s.item.kind in ALWAYS:
        return True
    if s.item.kind in NEVER and not s.item.has("transient level"):
        return False
    told = s.read(s.item, "transient level") if s.item.allows("transient level") else None
    if isinstance(told, Unknown):
        return Unknown(f"whether {s.id} holds electronics is not told")
    return told is not None


@fact(
    "load",
    "survives_reversal",
    type="yes/no",
    says="Its connection, or that of every battery it hangs on, cannot be reversed, or it survives that.",
    method="keyed connection or reverse protection as told; batteries joined to it: graph, every contact closed",
)
def survives_reversal(s: Subject) -> Any:
    own = [s.read(s.item, key) if s.item.allows(key) else False for key in ("keyed", "reverse protection")]
    return either(either(*own), batteries_keyed(s))


def batteries_keyed(s: Subject) -> Truth:
    """Whether no battery on the bus of a load or converter can be connected the wrong way round."""
    node = live_node(s.facts, s.item)
    if node is None:
        return False
    found = [one for one, near in _near_batteries(s.facts) if node in near]
    told = [s.read(one.equipment, "keyed") if one.equipment.allows("keyed") else False for one in found]
    loose = loose_bank(s.facts)  # how the units of some bank are joined is not told: it may hang here too
    known = every(False if one is None else one for one in told) if told else False
    return known if loose is None else both(known, loose)


def _near_batteries(facts: Facts) -> list[tuple[Source, set[str]]]:
    """Each battery with the nodes that are joined to it, every contact closed; walked once for all that ask."""
    found: list[tuple[Source, set[str]]] | None = facts.shared.get("nodes near batteries")
    if found is None:
        stores = [one for one in facts.network.sources if one.storage]
        found = facts.shared["nodes near batteries"] = [(one, leading_to(facts.network, [one.live])) for one in stores]
    return found


@fact("load", "goes_on_the_road", type="yes/no", says="It is fixed to a road vehicle and did not come with it.",
      method="kind of vehicle, whose work it is")  # fmt: skip
def goes_on_the_road(s: Subject) -> Truth:
    kind = s.read(s.facts.design.vehicle, "kind")
    road = kind if isinstance(kind, Unknown) else kind in ROAD
    return both(road, negate(equal(s.own, "factory")))


@fact("load", "approved_for_vehicles", type="yes/no", says="An approval mark for electronics in vehicles is stated.",
      method="UN Regulation 10, its exemption, or an e-mark, among its approvals")  # fmt: skip
def approved_for_vehicles(s: Subject) -> Truth:
    return marked_for_vehicles(s)
