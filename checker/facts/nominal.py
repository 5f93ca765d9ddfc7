"""Which standard direct voltage a nominal voltage stands for, and whether standards of single voltages list it."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.converter_mains import DIRECT_SIDES
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Truth, every, some
from checker.quantities import equal as same_number

STANDARD_V = (6.0, 12.0, 24.0, 36.0, 48.0)
REVISION_V = (12.0, 24.0, 48.0)
"""Voltages of the revision of EN 1648-2 under way (scope seen in a project list)."""
LOW, HIGH = 0.95, 1.1
"""How far a chemistry shifts the nominal voltage of a system, 51.2 V for 48 V: common practice, no source."""


def system_voltage_of(volts: Number) -> Number:
    """The standard voltage that a nominal voltage stands for, V; itself where it lies near none."""
    if not isinstance(volts, float | Range):
        return volts
    low, high = (volts.low, volts.high) if isinstance(volts, Range) else (volts, volts)
    return next((one for one in STANDARD_V if LOW * one <= low and high <= HIGH * one), volts)


def _listed(volts: Number) -> Truth:
    return some(same_number(volts, one) for one in REVISION_V)


@fact(
    "bank",
    "system_voltage",
    unit="V",
    says="The standard voltage that its nominal voltage stands for: 48 V for one of 51.2 V.",
    method="nominal voltage from 5 % below to 10 % above 6, 12, 24, 36 or 48 V, else itself",
    source="common practice, no source",
)
def system_voltage(s: Subject) -> Any:
    return system_voltage_of(s.nominal_voltage)


@fact("bank", "voltage_in_revision", type="yes/no", says="Its system voltage is 12, 24 or 48 V.",
      method="bank.system_voltage", source="EN 1648-2 revision, scope (seen)")  # fmt: skip
def voltage_in_revision(s: Subject) -> Truth:
    return _listed(s.system_voltage)


def _sides(s: Subject) -> list[Number]:
    found = [s.read(s.item, key) for key in DIRECT_SIDES[s.item.kind]]
    return [system_voltage_of(one) for one in found if one is not None]


@fact("converter", "sides_in_edition", type="yes/no", says="Each of its direct-current sides is of 12 V.",
      method="nominal voltages as told, that of an array left out; see bank.system_voltage",
      source="EN 1648-2, scope, 2018 (seen)")  # fmt: skip
def sides_in_edition(s: Subject) -> Truth:
    return every(same_number(one, 12.0) for one in _sides(s))


@fact("converter", "sides_in_revision", type="yes/no", says="Each of its direct-current sides is of 12, 24 or 48 V.",
      method="nominal voltages as told, that of an array left out; see bank.system_voltage",
      source="EN 1648-2 revision, scope (seen)")  # fmt: skip
def sides_in_revision(s: Subject) -> Truth:
    return every(_listed(one) for one in _sides(s))
