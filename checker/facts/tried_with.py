"""With which voltage and for how long the insulation was tested, on the mains side and on the other."""

from __future__ import annotations

from typing import Any

from checker.design.given import MISSING, Given
from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.shown import Counts, is_test, least_shown
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, equal, negate

INSULATION, DIELECTRIC = "insulation resistance", "dielectric strength"


def _lowest(s: Subject, counts: Counts, key: str, what: str) -> Any:
    shown = least_shown(s, key, counts)
    if shown is None:
        missing = Unknown(f"no reading records the test: {what}")
        s.use(f"readings: {what}", Given(missing, s.where, MISSING))
        return missing
    return shown


def on_battery_side(s: Subject, reading: Item) -> Truth:
    """Whether a reading was taken at something that mains does not reach; without a point it is of the mains."""
    at = s.read(reading, "at") if reading.has("at") else None
    if not isinstance(at, str):
        return at if isinstance(at, Unknown) else False
    if at in s.facts.network.systems:
        return s.facts.network.systems[at] == "dc"
    body = s.facts.subject("equipment", at)
    return equal(body.system, "dc") if body is not None else False


def _of_side(s: Subject, *, mains: bool) -> Counts:
    """Readings of the insulation of one side."""

    def counts(reading: Item) -> Truth:
        there = on_battery_side(s, reading)
        return both(is_test(s, reading, INSULATION), negate(there) if mains else there)

    return counts


@fact("design", "insulation_resistance", unit="Ω",
      says="Least insulation resistance that was measured on the mains side.",
      method="readings of the test insulation resistance, those at the battery side left out")  # fmt: skip
def insulation_resistance(s: Subject) -> Any:
    return _lowest(s, _of_side(s, mains=True), "resistance", INSULATION)


@fact("design", "insulation_test_voltage", unit="V", says="Lowest voltage that the mains side was tested with.",
      method="voltage of the readings of the test insulation resistance")  # fmt: skip
def insulation_test_voltage(s: Subject) -> Any:
    return _lowest(s, _of_side(s, mains=True), "voltage", INSULATION)


@fact("design", "battery_side_insulation", unit="Ω",
      says="Least insulation resistance that was measured on the battery side; none when none was.",
      method="readings of the test insulation resistance at equipment or circuits of direct current")  # fmt: skip
def battery_side_insulation(s: Subject) -> Any:
    return least_shown(s, "resistance", _of_side(s, mains=False))


@fact("design", "battery_side_test_voltage", unit="V",
      says="Lowest voltage that the battery side was tested with; none when it was not.",
      method="voltage of those readings")  # fmt: skip
def battery_side_test_voltage(s: Subject) -> Any:
    return least_shown(s, "voltage", _of_side(s, mains=False))


@fact("design", "dielectric_voltage", unit="V", says="Lowest voltage of the tests of the dielectric strength.",
      method="voltage of the readings of that test")  # fmt: skip
def dielectric_voltage(s: Subject) -> Any:
    return _lowest(s, lambda one: is_test(s, one, DIELECTRIC), "voltage", DIELECTRIC)


@fact("design", "dielectric_time", unit="s", says="Shortest time of the tests of the dielectric strength.",
      method="time of the readings of that test")  # fmt: skip
def dielectric_time(s: Subject) -> Any:
    return _lowest(s, lambda one: is_test(s, one, DIELECTRIC), "time", DIELECTRIC)
