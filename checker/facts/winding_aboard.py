"""A transformer that parts the vehicle from the shore: what the shore reaches, and where its earth ends."""

from __future__ import annotations

from checker.circuit.elements import CHASSIS, LIVE, Link
from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.mains import feed_named, states_of, tell
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, equal, every, negate, some

USES = {"charger": "acL", "inverter-charger": "ac-inL"}
"""What takes mains in beside the loads, with its terminal."""


def windings_behind(s: Subject) -> list[Equipment] | Unknown:
    """The transformers of separate windings behind an inlet; none where anything else can be reached from it.

    Open contacts count as closed, so that no state of the switches is forgotten.
    """
    feed = feed_named(s.facts, s.id)
    if feed is None:
        return []
    network = s.facts.network
    primaries = {f"{one.name}:primaryL": one for one in network.equipment.values() if one.kind == "transformer"}
    uses = {f"{one.name}:{USES[one.kind]}" for one in network.equipment.values() if one.kind in USES}
    found: list[Equipment] = []
    hidden = False
    todo, seen = [feed.live], {feed.live}
    for node in todo:
        if node in primaries:
            found.append(primaries[node])
            continue
        if node in uses or node in network.sinks:
            return []
        for edge, far in network.near.get(node, ()):
            pole = edge.pole if isinstance(edge, Link) else edge.conductor.role
            if pole == LIVE and far not in seen:
                hidden = hidden or (not isinstance(edge, Link) and edge.gap is not None)
                seen.add(far)
                todo.append(far)
    separate = [equal(s.read(one, "windings"), "separate") for one in found]
    if any(one is False for one in separate):
        return []
    if hidden or any(isinstance(one, Unknown) for one in separate):
        return Unknown(f"whether {s.id} reaches windings of transformers alone is not known")
    return found


def joined(s: Subject, one: str, other: str) -> Truth:
    """Whether earth and bonding conductors join two nodes."""
    mains = states_of(s.facts).mains
    if mains.earths.joined(one, other):
        return True
    if mains.earths_perhaps.joined(one, other):
        return Unknown("whether a circuit on the way has an earth conductor is not known")
    return False


def chassis_on_the_windings(s: Subject) -> Truth:
    """Whether an inlet feeds windings alone, and the metal of the vehicle is joined to the earth of each secondary."""
    found = windings_behind(s)
    if isinstance(found, Unknown):
        return both(found, some(joined(s, f"{one}:secondaryPE", CHASSIS) for one in _transformers(s)))
    return every(joined(s, f"{one.name}:secondaryPE", CHASSIS) for one in found) if found else False


def _transformers(s: Subject) -> list[str]:
    return [one.name for one in s.facts.network.equipment.values() if one.kind == "transformer"]


@fact(
    "inlet",
    "earth_stays_ashore",
    type="yes/no",
    says="The earth of the shore ends at a transformer: nothing else is fed from the inlet, and neither metal of the "
    "vehicle nor the earth of a secondary is joined to its earth pin.",
    method="walk along live conductors from the inlet, contacts taken as closed; graph of earth and bonding conductors",
)
def earth_stays_ashore(s: Subject) -> Truth:
    found = windings_behind(s)
    if isinstance(found, list) and not found:
        return False
    pin = f"{s.id}:PE"
    parts = (f"{one.name}:PE" for one in s.facts.network.equipment.values() if one.kind == "metal part")
    metal = [CHASSIS, *parts, *(f"{one}:secondaryPE" for one in _transformers(s))]
    apart = every(negate(joined(s, pin, node)) for node in metal)
    if apart is True:
        tell(s, "nothing but windings is fed from it, and no metal is joined to its earth pin")
    return both(found, apart) if isinstance(found, Unknown) else apart
