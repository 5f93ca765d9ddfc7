"""What helps a device to break a short, and what a small bank is known to ask of its first device."""

from __future__ import annotations

from typing import Any

from checker.facts.bank import summed
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import Range, Unknown, greater, least, some
from checker.quantities.values import between

LARGE_CAPACITY, LARGE_CRANKING = 500.0 * 3600.0, 2200.0
STEPS = ((650.0, 1500.0), (1100.0, 3000.0), (LARGE_CRANKING, 5000.0))
"""Cranking current up to which -> breaking capacity of a main device at 12 V and 24 V, ABYC E-11 table 3B, memory."""


@fact("device", "backed_capacity", unit="A",
      says="Short-circuit current it stands behind the device upstream that its maker lists; none without one.",
      method="as listed, at most what that device breaks; it must be the one device upstream")  # fmt: skip
def backed_capacity(s: Subject) -> Any:
    if not s.item.allows("backed up.by") or not s.item.has("backed up.by"):
        return None
    name = s.read(s.item, "backed up.by")
    if isinstance(name, Unknown):
        return name
    upstream = s.upstream
    found = next((one for one in upstream if one.id == name), None)
    # What feeds it past the listed device is not limited by it.
    if found is None or len(upstream) != 1:
        return None
    return least(s.read(s.item, "backed up.to"), found.breaking_capacity)


@fact("approach", "small_bank_asks", unit="A",
      says="Breaking capacity that the table for banks of up to 500 Ah and 2200 A cranking asks of the first device; "
      "none for a larger bank.",
      method="row of the cranking current; between the first row and the last where that is not told",
      source="ABYC E-11, table 3B, 2021 (from memory)")  # fmt: skip
def small_bank_asks(s: Subject) -> Any:
    bank = s.facts.subject("bank", s.source)
    if bank is None:
        return None
    cranking = summed(bank, "cranking current")
    known = not isinstance(cranking, Unknown)
    large = some([greater(bank.capacity, LARGE_CAPACITY), known and greater(cranking, LARGE_CRANKING)])
    if large is not False:
        return None if large is True else large
    if not isinstance(cranking, float | Range):
        return Range(STEPS[0][1], STEPS[-1][1])
    ends = (cranking.low, cranking.high) if isinstance(cranking, Range) else (cranking, cranking)
    rows = [next(asked for most, asked in STEPS if amount <= most) for amount in ends]
    return between(rows[0], rows[1])
