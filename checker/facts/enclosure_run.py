"""A battery in its box: whether its first device stands directly outside."""

from __future__ import annotations

from checker.facts.catalogue import fact
from checker.facts.space import is_kind, place_of
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, add, both, either, less_equal, some

BESIDE_M = 0.1
"""Length outside the box up to which a device counts as directly outside it: common practice, no source."""


@fact(
    "approach",
    "device_beside_enclosure",
    type="yes/no",
    says="The battery stands in a box or locker of its own, and the first device directly outside it.",
    method="stretches up to the first device: all of it in that place but for 0.1 m at most",
    source="common practice, no source",
)
def device_beside_enclosure(s: Subject) -> Truth:
    name = place_of(s, s.item.sources[0].equipment)
    if isinstance(name, Unknown):
        return name
    place = s.facts.design.places.get(name) if isinstance(name, str) else None
    if place is None:
        return False
    enclosed = either(is_kind(s, place, "battery box"), is_kind(s, place, "battery locker"))
    outside: Number = 0.0
    for owner, stretch in s.item.reach.stretches:
        if stretch.place is None:
            return both(enclosed, Unknown("where the run to the first device lies is not told"))
        if stretch.place != name:
            told = s.use(f"{owner.circuit.path}.run via {stretch.place}", stretch.length, "m")
            outside = add(outside, told)
    places = [place_of(s, device) for device in s.item.reach.devices]
    leaves = some([one if isinstance(one, Unknown) else one != name for one in places])
    return both(both(enclosed, leaves), less_equal(outside, BESIDE_M))
