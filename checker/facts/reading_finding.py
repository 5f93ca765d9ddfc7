"""What a review says of a reading: whether it surely agrees, what was expected, what may explain the difference."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from checker.design.given import MISSING, Given
from checker.design.model import Design
from checker.design.run import Length
from checker.facts.catalogue import fact
from checker.facts.reading import METHOD, expected_value
from checker.facts.subject import Facts, Subject, trace
from checker.quantities import Range, Truth, Unknown, equal


@fact(
    "reading",
    "surely_agrees",
    type="yes/no",
    says="It agrees, and so it would for every value that the file leaves open; it does not when it lies outside.",
    method=f"{METHOD}; open where the mode rests on what the file calls unknown, or agrees and rests on its ranges",
)
def surely_agrees(s: Subject) -> Truth:
    agrees: Truth = s.agrees
    bare = [one.name for one in s.facts.whole.equipment.values() if one.kind == "bank" and one.base is None]
    if bare:
        return Unknown(f"of which batteries {', '.join(bare)} is made is not told")
    if isinstance(agrees, Unknown) or not _has_open(s.facts):
        return agrees
    left = _open_of(s, ranges=agrees)
    return Unknown(f"these may still change what is expected: {', '.join(left[:3])}") if left else agrees


def _open(value: Any, basis: str, *, ranges: bool = True) -> bool:
    return (ranges and isinstance(value, Range)) or (isinstance(value, Unknown) and basis != MISSING)


def _has_open(facts: Facts) -> bool:
    """Whether the file writes a range or `unknown` anywhere: where it does not, nothing has to be traced."""
    if "open values" not in facts.shared:
        facts.shared["open values"] = any(_open(one.value, one.basis) for one in _given(facts.whole))
    return bool(facts.shared["open values"])


def _given(design: Design) -> Iterator[Given]:
    groups = (design.equipment, design.circuits, design.cables, design.parts, design.places, design.modes)
    for item in (design.vehicle, *(one for group in groups for one in group.values())):
        yield from (given for _, given in item.written())
    for circuit in design.circuits.values():
        yield from (step.length for step in circuit.run if isinstance(step, Length))


def _open_of(s: Subject, *, ranges: bool) -> list[str]:
    """Paths of what is open among all that the operating point of its mode rests on.

    What lies outside of all cases of a range stays outside; what is called unknown had something else put in its place.
    """
    mode = s.mode
    if not isinstance(mode, Subject):
        return []
    leaves = trace(mode, "has_operating_point").leaves()
    return [one.path for one in leaves if _open(one.value, one.basis, ranges=ranges)]


@fact("reading", "expected", type="text", says="What was to be expected, likely, from the lowest to the highest.",
      method=METHOD)  # fmt: skip
def expected(s: Subject) -> str:
    from checker.facts.instruments import UNITS, tolerance
    from checker.facts.reading_pairs import apart

    found = expected_value(s)
    if isinstance(found, Unknown):
        return "nothing that can be compared"
    slack, unit = tolerance(s.item.quantity, found.likely), UNITS[s.item.quantity]
    low = found.low - slack
    if s.item.quantity != "voltage":
        low = max(0.0, low)
    text = f"{found.likely:.4g} {unit}, from {low:.4g} to {found.high + slack:.4g} {unit}"
    differs = apart(s)
    return text if differs is None else f"{text}; but it lies {differs.words}"


@fact(
    "reading",
    "likely_cause",
    type="text",
    says="The fault that explains the readings of its mode best; `fitout prove` lists more. Empty when it agrees.",
    method="each likely fault put into the network in turn; what leaves the least of the deviation",
    source="common practice, no source",
)
def likely_cause(s: Subject) -> str:
    from checker.facts.causes import causes, reads_of
    from checker.facts.operating_point import operating_point

    mode = s.mode
    if s.agrees is not False or not isinstance(mode, Subject):
        return ""
    point = operating_point(mode, mode.item)
    name = s.item.item.value("mode")
    taken = [one for one in s.facts.subjects("reading") if equal(one.item.item.value("mode"), name) is True]
    found = causes(point, reads_of(taken, point))
    return found[0].fault.what if found else "the instrument, or something that this file does not tell"
