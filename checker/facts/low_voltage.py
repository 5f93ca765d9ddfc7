"""Circuits on which a low voltage is what protects from shock: how high it may be, dry and wet, and its source."""

from __future__ import annotations

from typing import Any

from checker.circuit.elements import LIVE
from checker.circuit.groups import Groups
from checker.circuit.mains import Feed
from checker.design.given import RatedVoltage
from checker.design.vocabulary.words import ISOLATION
from checker.facts.catalogue import fact
from checker.facts.conductor_laid import passes
from checker.facts.mains import states_of
from checker.facts.subject import Subject
from checker.quantities import Range, Truth, Unknown, both, equal, every, less_equal, some

WET = ("wet room", "outside", "under body")
DRY_V = {"dc": 60.0, "ac": 25.0}
WET_V = {"dc": 30.0, "ac": 12.0}
MOST_V = {"dc": 120.0, "ac": 50.0}
SOURCE = "IEC 60364-4-41, 414.4.5, 2005; IEC 61140 (from memory)"


@fact("conductor", "in_the_wet", type="yes/no", says="Part of it, or what it feeds, lies in a wet room, outside or "
      "under the body.", method="places of the run, and of the equipment at its ends")  # fmt: skip
def in_the_wet(s: Subject) -> Truth:
    ends = dict.fromkeys(port.equipment for port in (s.item.circuit.start, *s.item.circuit.ends))
    bodies = [body for name in ends if (body := s.facts.subject("equipment", name)) is not None]
    return some(
        [*(passes(s, kind) for kind in WET), *(some((b.is_in_wet_room, b.outdoors, b.under_body)) for b in bodies)]
    )


@fact(
    "conductor",
    "relies_on_low_voltage",
    type="yes/no",
    says="A low voltage is what protects from shock on its circuit.",
    method="battery side up to 120 V; an alternating circuit that declares extra-low voltage, or, where it declares "
    "nothing, circuit.is_low_alternating",
    source=SOURCE,
)
def relies_on_low_voltage(s: Subject) -> Truth:
    if s.system == "dc":
        return less_equal(s.highest_voltage, MOST_V["dc"])
    measure = s.read(s.item.circuit, "shock protection")
    if s.item.circuit.has("shock protection"):
        return equal(measure, "extra-low voltage")
    circuit = s.facts.subject("circuit", s.item.circuit.name)
    return False if circuit is None else circuit.is_low_alternating


@fact(
    "conductor",
    "touch_voltage",
    unit="V",
    says="Voltage up to which its bare parts need no cover where it lies.",
    method="60 V direct, 25 V alternating in the dry; 30 V and 12 V in the wet",
    source=SOURCE,
)
def touch_voltage(s: Subject) -> Any:
    wet = s.in_the_wet
    if isinstance(wet, Unknown):
        return Range(WET_V[s.system], DRY_V[s.system])
    return (WET_V if wet else DRY_V)[s.system]


@fact("conductor", "low_voltage_limit", unit="V", says="Voltage up to which it protects with all parts covered.",
      method="120 V direct, 50 V alternating", source=SOURCE)  # fmt: skip
def low_voltage_limit(s: Subject) -> float:
    return MOST_V[s.system]


@fact(
    "circuit",
    "is_low_alternating",
    type="yes/no",
    says="It is fed by low windings of transformers alone, apart from the mains.",
    method="sources whose live reaches it through wires and closed contacts: each a transformer of separate windings "
    "that gives at most 50 V",
    source=SOURCE,
)
def is_low_alternating(s: Subject) -> Truth:
    live = s.facts.network.conductor(s.id, LIVE)
    if live is None or s.facts.network.systems[s.id] != "ac":
        return False
    joined = _alternating(s)
    feeds = [feed for feed in states_of(s.facts).mains.feeds if joined.joined(feed.live, live.start)]
    return every([_gives_low_voltage(s, feed) for feed in feeds]) if feeds else False


def _alternating(s: Subject) -> Groups:
    """Live nodes of the alternating side joined through wires and contacts, transformers left out; found once."""
    groups: Groups | None = s.facts.store.get("alternating, without transformers")
    if groups is None:
        groups = s.facts.store["alternating, without transformers"] = Groups()
        network = s.facts.network
        for conductor in network.conductors:
            if conductor.role == LIVE and network.systems[conductor.circuit.name] == "ac":
                for wire in conductor.wires:
                    groups.join(wire.a, wire.b)
        for link in network.links:
            if link.pole == LIVE and link.equipment.kind != "transformer":
                groups.join(link.a, link.b)
    return groups


def _gives_low_voltage(s: Subject, feed: Feed) -> Truth:
    source = s.facts.subject("ac_source", feed.name)
    if source is None or feed.equipment.kind != "transformer":
        return False
    return both(source.is_low_voltage, equal(s.read(feed.equipment, "windings"), "separate"))


@fact("ac_source", "is_low_voltage", type="yes/no", says="A transformer whose secondary gives at most 50 V.",
      method="secondary voltage as told")  # fmt: skip
def is_low_voltage(s: Subject) -> Truth:
    item = s.item.equipment
    if item.kind != "transformer":
        return False
    rated = s.read(item, "secondary.voltage")
    if not isinstance(rated, RatedVoltage):
        return Unknown(f"the secondary voltage of {s.id} is not told")
    return less_equal(rated.volts, MOST_V["ac"])


@fact("ac_source", "secondary_voltage", unit="V", says="Voltage of the secondary of a transformer; none for others.")
def secondary_voltage(s: Subject) -> Any:
    item = s.item.equipment
    if item.kind != "transformer":
        return None
    rated = s.read(item, "secondary.voltage")
    return rated.volts if isinstance(rated, RatedVoltage) else Unknown(f"the secondary voltage of {s.id} is not told")


@fact("ac_source", "isolation", words=ISOLATION, says="Isolation between the windings of a transformer; none when "
      "joined, or for other sources.")  # fmt: skip
def isolation(s: Subject) -> Any:
    item = s.item.equipment
    return s.read(item, "isolation") if item.kind == "transformer" else None
