"""With which voltage and for how long the insulation was tested, on the mains side and on the other."""

from __future__ import annotations

from typing import Any

from checker.design.given import MISSING, Given
from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Number, Truth, Unknown, equal, least

INSULATION, DIELECTRIC = "insulation resistance", "dielectric strength"


def of_test(s: Subject, test: str) -> list[Item]:
    """The readings of a test; one that names no test is none of it."""
    return [one for one in s.item.readings if one.has("test") and equal(s.read(one, "test"), test) is True]


def _lowest(s: Subject, readings: list[Item], key: str, what: str) -> Any:
    if not readings:
        missing = Unknown(f"no reading records the test: {what}")
        s.use(f"readings: {what}", Given(missing, s.where, MISSING))
        return missing
    return least([s.read(one, key) for one in readings])


def on_battery_side(s: Subject, reading: Item) -> Truth:
    """Whether a reading was taken at something that mains does not reach; without a point it is of the mains."""
    at = s.read(reading, "at") if reading.has("at") else None
    if not isinstance(at, str):
        return at if isinstance(at, Unknown) else False
    if at in s.facts.network.systems:
        return s.facts.network.systems[at] == "dc"
    body = s.facts.subject("equipment", at)
    return equal(body.system, "dc") if body is not None else False


def _sides(s: Subject, *, mains: bool) -> list[Item]:
    """Readings of the insulation of one side; one of an unknown side counts on the mains side."""
    found = of_test(s, INSULATION)
    return [one for one in found if (on_battery_side(s, one) is not True) is mains]


@fact("design", "insulation_resistance", unit="Ω",
      says="Least insulation resistance that was measured on the mains side.",
      method="readings of the test insulation resistance, those at the battery side left out")  # fmt: skip
def insulation_resistance(s: Subject) -> Any:
    return _lowest(s, _sides(s, mains=True), "resistance", INSULATION)


@fact("design", "insulation_test_voltage", unit="V", says="Lowest voltage that the mains side was tested with.",
      method="voltage of the readings of the test insulation resistance")  # fmt: skip
def insulation_test_voltage(s: Subject) -> Any:
    return _lowest(s, _sides(s, mains=True), "voltage", INSULATION)


def _battery_side(s: Subject, key: str) -> Number:
    found = _sides(s, mains=False)
    return least([s.read(one, key) for one in found]) if found else None


@fact("design", "battery_side_insulation", unit="Ω",
      says="Least insulation resistance that was measured on the battery side; none when none was.",
      method="readings of the test insulation resistance at equipment or circuits of direct current")  # fmt: skip
def battery_side_insulation(s: Subject) -> Any:
    return _battery_side(s, "resistance")


@fact("design", "battery_side_test_voltage", unit="V",
      says="Lowest voltage that the battery side was tested with; none when it was not.",
      method="voltage of those readings")  # fmt: skip
def battery_side_test_voltage(s: Subject) -> Any:
    return _battery_side(s, "voltage")


@fact("design", "dielectric_voltage", unit="V", says="Lowest voltage of the tests of the dielectric strength.",
      method="voltage of the readings of that test")  # fmt: skip
def dielectric_voltage(s: Subject) -> Any:
    return _lowest(s, of_test(s, DIELECTRIC), "voltage", DIELECTRIC)


@fact("design", "dielectric_time", unit="s", says="Shortest time of the tests of the dielectric strength.",
      method="time of the readings of that test")  # fmt: skip
def dielectric_time(s: Subject) -> Any:
    return _lowest(s, of_test(s, DIELECTRIC), "time", DIELECTRIC)
