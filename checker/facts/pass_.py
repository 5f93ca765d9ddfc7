"""Holes through which cables go from one place to another."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import Where
from checker.design.item import Item
from checker.design.run import Hole
from checker.design.vocabulary.words import MATERIALS
from checker.facts.battery_body import chemistry_of
from checker.facts.catalogue import fact, subjects
from checker.facts.space import OPEN_AIR, is_kind, is_living, place_of
from checker.facts.subject import Facts, Subject
from checker.quantities import Truth, Unknown, both, either, equal, some

HARD = ("steel", "aluminium", "composite", "plywood", "timber", "plastic", "mineral board")
"""Panels whose edge rubs a cable; foam does not."""


@subjects("hole", "A hole in a wall or floor through which cables go.")
def holes(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order."""
    for item in facts.design.passes.values():
        yield item.name, item.where, item


@fact("hole", "panel", words=MATERIALS, says="What it goes through.")
def panel(s: Subject) -> Any:
    return s.read(s.item, "panel")


@fact("hole", "sharp", type="yes/no", says="The edge of its panel can rub a cable through.", method="by the material",
      source="common practice, no source")  # fmt: skip
def sharp(s: Subject) -> Truth:
    found = s.panel
    return Unknown(f"what {s.id} goes through is not told") if isinstance(found, Unknown) else found in HARD


@fact("hole", "edge_covered", type="yes/no", says="A grommet, bush or gland keeps cables off its edge.")
def edge_covered(s: Subject) -> Truth:
    grommet, gland = s.read(s.item, "grommet"), s.read(s.item, "gland")
    if grommet is True or gland is True:
        return True
    if s.item.has("gland") and s.item.has("grommet"):
        return either(_yes(grommet), _yes(gland))
    return _yes(grommet)


def _yes(value: Any) -> Truth:
    return False if value is None else value


@fact("hole", "sealed", type="yes/no", says="Air and water do not pass it.")
def sealed(s: Subject) -> Truth:
    return _yes(s.read(s.item, "sealed"))


def sides(s: Subject) -> list[Item]:
    """The places on its two sides."""
    names = s.read(s.item, "between")
    found = (s.facts.design.places.get(name) for name in names) if isinstance(names, tuple) else ()
    return [one for one in found if one is not None]


@fact("hole", "to_living_space", type="yes/no", says="One side of it is living space.", method="the places it joins")
def to_living_space(s: Subject) -> Truth:
    return some(is_living(s, one) for one in sides(s))


@fact("hole", "to_outside", type="yes/no", says="One side of it is outside, under the body or at the engine.")
def to_outside(s: Subject) -> Truth:
    return some(is_kind(s, one, *OPEN_AIR, "engine space") for one in sides(s))


@fact("hole", "from_battery_to_living", type="yes/no",
      says="It leads from a place with a house battery into the living space.",
      method="the places it joins and what stands in them")  # fmt: skip
def from_battery_to_living(s: Subject) -> Truth:
    both_sides = sides(s)
    if len(both_sides) != 2:
        return Unknown("the places it joins are not told")
    first, second = both_sides
    return either(
        both(_holds_house_battery(s, first), is_living(s, second)),
        both(_holds_house_battery(s, second), is_living(s, first)),
    )


def _holds_house_battery(s: Subject, place: Item) -> Truth:
    if is_kind(s, place, "engine space") is True:
        return False
    answers: list[Truth] = []
    for item in s.facts.design.equipment.values():
        if item.kind in ("battery", "bank"):
            found = chemistry_of(s, item)
            told = found if isinstance(found, Unknown) else found is not None
            answers.append(both(equal(place_of(s, item), place.name), told))
    return some(answers)


@fact("hole", "to_gas_locker", type="yes/no", says="One side of it is a gas locker.")
def to_gas_locker(s: Subject) -> Truth:
    return some(is_kind(s, one, "gas locker") for one in sides(s))


@fact("hole", "circuits", of="circuit", type="list", says="The circuits that go through it.", method="runs")
def circuits(s: Subject) -> tuple[Any, ...]:
    found = []
    for circuit in s.facts.design.circuits.values():
        if any(isinstance(step, Hole) and step.name == s.item.name for step in (*circuit.run, *circuit.returns.run)):
            twin = s.facts.of("circuit", circuit)
            if twin is not None:
                found.append(twin)
    return tuple(found)
