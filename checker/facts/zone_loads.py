"""What hangs on a zone with no further device before it, and the devices that feed the zone."""

from __future__ import annotations

from checker.circuit.elements import Link
from checker.circuit.least_faults import LeastFaults
from checker.circuit.sources import LOADS
from checker.circuit.zones import Border
from checker.design.model import Equipment
from checker.facts.least_fault import least_faults_of, sides, zones_of
from checker.facts.subject import Facts, Subject

Hanging = list[tuple[Equipment, str]]
DRAWING = LOADS | {"inverter", "inverter-charger"}


def hanging(facts: Facts, zone: str) -> Hanging:
    """Loads and inverters of a zone with the node at which they draw, in the order built."""
    found: dict[str, Hanging] | None = facts.shared.get("hanging")
    if found is None:
        zones = zones_of(facts)
        found = facts.shared["hanging"] = {}
        for node, items in facts.network.sinks.items():
            for item in items:
                if item.kind in LOADS or (item.kind in DRAWING and node.endswith("dc+")):
                    found.setdefault(zones.of(node), []).append((item, node))
    return found.get(zone, [])


def supplying(facts: Facts, zone: str) -> list[Border]:
    """The devices of a zone through which a battery, or a converter that holds its bus up alone, feeds it."""
    kept: dict[str, list[Border]] = facts.shared.setdefault("supplying borders", {})
    if zone not in kept:
        held = least_faults_of(facts)
        kept[zone] = [one for one in zones_of(facts).borders(zone) if _feeds(held, one.link, one.inside)]
    return kept[zone]


def _feeds(held: LeastFaults, link: Link, inside: str) -> bool:
    return held.weakest(link, inside) is not None or held.limited(link, inside) is not None


def fed_zones(s: Subject) -> list[tuple[Link, str]]:
    """(live pole, node on the fed side) of a device, for each direction in which it is fed."""
    held = least_faults_of(s.facts)
    return [(link, node) for link, node in sides(s) if _feeds(held, link, node)]


def loads_behind(s: Subject) -> Hanging:
    """What a device feeds with no further device between, each once."""
    zones = zones_of(s.facts)
    found: dict[str, tuple[Equipment, str]] = {}
    for _, node in fed_zones(s):
        for item, at in hanging(s.facts, zones.of(node)):
            found.setdefault(at, (item, at))
    return list(found.values())
