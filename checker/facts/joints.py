"""High-current joints read under load: what was read, and at what current."""

from __future__ import annotations

from typing import Any

from checker.design.item import Item
from checker.facts.catalogue import fact
from checker.facts.shown import is_test
from checker.facts.subject import Subject
from checker.facts.tried import warm_readings
from checker.quantities import UNKNOWN, Number, Truth, Unknown, every, greater_equal, greatest, multiply

FULL_LOAD = 0.8
"""Share of the greatest lasting current that counts as full load; common practice, no source."""


def _drops(s: Subject) -> list[Item]:
    return [one for one in s.item.readings if is_test(s, one, "voltage drop") is True]


@fact("design", "greatest_joint_drop", unit="V",
      says="Greatest voltage read across a joint under load; none when none was.",
      method="readings of the test voltage drop that tell a voltage")  # fmt: skip
def greatest_joint_drop(s: Subject) -> Any:
    values = [s.read(one, "voltage") for one in _drops(s) if one.has("voltage")]
    return greatest(values) if values else None


@fact("design", "joints_read_loaded", type="yes/no",
      says="Each reading of a joint, warm or in millivolts, was taken near full load.",
      method="it tells a mode, or a current of at least 80 % of the greatest lasting one of the circuit or device "
      "where it was taken; elsewhere a current is taken as told",
      source="common practice, no source")  # fmt: skip
def joints_read_loaded(s: Subject) -> Truth:
    return every([_loaded(s, one) for one in (*warm_readings(s), *_drops(s))])


def _loaded(s: Subject, reading: Item) -> Truth:
    current: Number = s.read(reading, "current")
    if not reading.has("current"):
        mode = s.read(reading, "mode")
        return Unknown("neither the mode nor the current of a reading is told") if isinstance(mode, Unknown) else True
    if isinstance(current, Unknown):
        return current
    full = _full_load(s, s.read(reading, "at"))
    return True if full is None else greater_equal(current, multiply(full, FULL_LOAD))


def _full_load(s: Subject, at: Any) -> Number:
    """Greatest lasting current of the circuit or device at a name (A); None for what is neither."""
    if not isinstance(at, str):
        return UNKNOWN
    found = s.facts.subject("circuit", at) or s.facts.subject("device", at)
    return None if found is None else found.load_current
