"""Two voltages read in one mode: how far they lie apart tells of what lies between, whatever a source is set to."""

from __future__ import annotations

from typing import NamedTuple

from checker.circuit.dc_solution import Solution
from checker.facts.instruments import Spot, predicted, spot, tolerance
from checker.facts.operating_point import Measure, OperatingPoint, operating_point
from checker.facts.subject import Subject
from checker.quantities import Unknown, equal


class Apart(NamedTuple):
    """A difference from another reading that lies outside (V): what was shown, likely, lowest and highest."""

    other: str
    shown: float
    likely: float
    low: float
    high: float

    @property
    def words(self) -> str:
        """In words."""
        return (
            f"{self.shown:.2f} V above that at {self.other}, where {self.likely:.2f} V was expected, "
            f"from {self.low:.2f} to {self.high:.2f} V"
        )


def apart(s: Subject) -> Apart | None:
    """The first earlier voltage of the same mode from which a reading differs by what cannot be; None without one.

    The other one agrees. What both instruments may be off is allowed, and the worst corners of the difference.
    """
    mode = s.mode
    if not isinstance(mode, Subject) or mode.has_operating_point is not True:
        return None
    point = operating_point(mode, mode.item)
    here = _voltage(s, point)
    if here is None:
        return None
    name = s.item.item.value("mode")
    for other in s.facts.subjects("reading"):
        if other.id == s.id:
            return None
        if equal(other.item.item.value("mode"), name) is not True:
            continue  # of another mode, or of one that is not told
        there = _voltage(other, point)
        found = None if there is None else _outside(point, here, there)
        if found is not None and other.agrees is True:
            return found
    return None


def _voltage(s: Subject, point: OperatingPoint) -> tuple[Spot, float] | None:
    at, shown = s.item.item.value("at"), s.item.item.value(s.item.quantity)
    if s.item.quantity != "voltage" or not isinstance(at, str) or not isinstance(shown, float):
        return None
    one = spot(point, at, "voltage")
    return (one, shown) if isinstance(one, Spot) else None


def _outside(point: OperatingPoint, here: tuple[Spot, float], there: tuple[Spot, float]) -> Apart | None:
    values = [predicted(point, one, usual=True) for one, _ in (here, there)]
    if isinstance(values[0], Unknown) or isinstance(values[1], Unknown):
        return None
    slack = sum(tolerance("voltage", value.likely) for value in values if not isinstance(value, Unknown))
    shown = here[1] - there[1]
    if abs(shown - (values[0].likely - values[1].likely)) <= slack:
        return None
    expected = point.value(_difference(here[0], there[0]))
    if isinstance(expected, Unknown):
        return None
    low, high = expected.low - slack, expected.high + slack
    return None if low <= shown <= high else Apart(there[0].at, shown, expected.likely, low, high)


def _difference(here: Spot, there: Spot) -> Measure:
    def ask(found: Solution) -> float | None:
        one, other = here.ask(found), there.ask(found)
        return None if one is None or other is None else one - other

    return ask
