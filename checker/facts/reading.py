"""Readings of instruments: each beside what was to be expected."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.design.given import Where
from checker.design.item import Item
from checker.facts.catalogue import fact, subjects
from checker.facts.subject import Facts, Subject
from checker.quantities import Range, Unknown

if TYPE_CHECKING:
    from checker.facts.operating_point import Value

QUANTITIES = ("voltage", "current", "power")
METHOD = "operating point of the mode it was taken in; see the facts of modes"


class Taken(NamedTuple):
    """One quantity of one reading."""

    item: Item
    quantity: str


@subjects("reading", "One voltage, current or power that an instrument showed in a mode.")
def readings(facts: Facts) -> Iterator[tuple[str, Where, Any]]:
    """In file order; tests and other quantities are no readings of the network."""
    count: dict[str, int] = {}
    for item in facts.design.readings:
        if item.has("test") or not item.has("mode") or not item.has("at"):
            continue
        for quantity in QUANTITIES:
            if item.has(quantity):
                id = f"{quantity} at {item.value('at')} in {item.value('mode')}"
                count[id] = count.get(id, 0) + 1
                yield (id if count[id] == 1 else f"{id} ({count[id]})"), item.where, Taken(item, quantity)


@fact("reading", "quantity", words=QUANTITIES, says="What was read.")
def quantity(s: Subject) -> str:
    return str(s.item.quantity)


@fact("reading", "mode", of="mode", type="subject", says="The mode it was taken in.")
def mode(s: Subject) -> Any:
    name = s.read(s.item.item, "mode")
    return s.facts.subject("mode", name) if isinstance(name, str) else name


@fact("reading", "value", type="text", says="What the instrument showed.")
def value(s: Subject) -> Any:
    s.read(s.item.item, s.item.quantity)
    return s.item.item.get(s.item.quantity).text


@fact("reading", "agrees", type="yes/no",
      says="It lies between the lowest and the highest that is predicted, and so does its difference from every "
           "voltage read before it in that mode; the tolerance of instruments allowed.",
      method=METHOD)  # fmt: skip
def agrees(s: Subject) -> Any:
    from checker.facts.instruments import tolerance

    read = s.read(s.item.item, s.item.quantity)
    if not isinstance(read, float | Range):
        return Unknown("what the instrument showed is not told")
    low, high = (read.low, read.high) if isinstance(read, Range) else (read, read)
    if s.item.quantity != "voltage":
        low, high = (0.0 if low < 0.0 < high else min(abs(low), abs(high))), max(abs(low), abs(high))
    for usual in (True, False):  # what lies within the usual cases lies within the worst corners, which take longer
        expected = expected_value(s, usual=usual)
        if isinstance(expected, Unknown):
            return expected
        middle = expected.likely
        slack = tolerance(s.item.quantity, middle)
        bottom, top = expected.low - slack, expected.high + slack
        if bottom <= low and high <= top:
            break
    least = "at least " if usual else ""
    s.note(lambda: f"expected {middle:.4g}, {least}from {bottom:.4g} to {top:.4g}")
    if bottom <= low and high <= top:
        from checker.facts.reading_pairs import apart

        found = apart(s)
        if found is not None:
            s.note(lambda: found.words)
        return found is None
    if high < bottom or low > top:
        return False
    return Unknown("the range of the reading lies partly within")


def expected_value(s: Subject, *, usual: bool = False) -> Value:
    """What was to be expected, or why nothing can be; `usual` asks the usual cases alone."""
    from checker.facts.instruments import predicted, spot
    from checker.facts.operating_point import operating_point

    found = s.mode
    if not isinstance(found, Subject):
        return Unknown("the mode it was taken in is not told")
    at = s.read(s.item.item, "at")
    if not isinstance(at, str):
        return Unknown("where it was taken is not told")
    if found.has_operating_point is not True:
        return Unknown(f"{found.id} has no operating point")
    point = operating_point(found, found.item)
    one = spot(point, at, s.item.quantity)
    return one if isinstance(one, Unknown) else predicted(point, one, usual=usual)


@fact("reading", "deviation", unit="%", says="How far it lies from what was expected, over the latter.", method=METHOD)
def deviation(s: Subject) -> Any:
    read = s.read(s.item.item, s.item.quantity)
    expected = expected_value(s)
    if isinstance(expected, Unknown):
        return expected
    if not isinstance(read, float) or expected.likely == 0.0:
        return Unknown("there is no one value to compare")
    shown = read if s.item.quantity == "voltage" else abs(read)
    return (shown - expected.likely) / abs(expected.likely)
