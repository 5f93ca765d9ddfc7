"""Batteries and banks as bodies: what they are made of, whether they spill, the temperatures they stand."""

from __future__ import annotations

from typing import Any

from checker.design.model import Equipment
from checker.facts.catalogue import fact
from checker.facts.subject import Subject
from checker.quantities import UNKNOWN, Unknown, either

LEAD = ("flooded lead acid", "AGM lead acid", "gel lead acid", "lead carbon")


def chemistry_of(s: Subject, item: Equipment) -> Any:
    """Chemistry of a battery or of the units of a bank; none for anything else."""
    if item.kind == "bank":
        return chemistry_of(s, item.base) if item.base is not None else UNKNOWN
    return s.read(item, "chemistry") if item.kind == "battery" else None


@fact("equipment", "is_battery", type="yes/no", says="It is a battery or a bank.")
def is_battery(s: Subject) -> bool:
    return s.item.kind in ("battery", "bank")


@fact("equipment", "is_lithium", type="yes/no", says="It is a lithium battery.")
def is_lithium(s: Subject) -> Any:
    found = chemistry_of(s, s.item)
    return found if isinstance(found, Unknown) else isinstance(found, str) and found.startswith("lithium")


@fact("equipment", "is_lead", type="yes/no", says="It is a lead-acid battery of any build; it can give off hydrogen.")
def is_lead(s: Subject) -> Any:
    found = chemistry_of(s, s.item)
    return found if isinstance(found, Unknown) else found in LEAD


@fact("equipment", "is_flooded", type="yes/no", says="It is a lead-acid battery with liquid acid, which gives off gas.")
def is_flooded(s: Subject) -> Any:
    found = chemistry_of(s, s.item)
    return found if isinstance(found, Unknown) else found == "flooded lead acid"


@fact("equipment", "spill_proof", type="yes/no", says="It tolerates the tilt of its use without spilling.",
      method="given; batteries without liquid do")  # fmt: skip
def spill_proof(s: Subject) -> Any:
    flooded = s.is_flooded
    if flooded is False:
        return True
    one = s.item.base if s.item.base is not None else s.item
    return either(s.read(one, "spill proof"), flooded if isinstance(flooded, Unknown) else False)


@fact("equipment", "tilt", words=("30 degrees", "45 degrees", "any"),
      says="Tilt that it endures without spilling; none when none is told to be endured.",
      method="given; none for one said not to be spill proof; batteries without liquid endure any")  # fmt: skip
def tilt(s: Subject) -> Any:
    flooded = s.is_flooded
    if flooded is False:
        return "any"
    one = s.item.base if s.item.base is not None else s.item
    if flooded is True and not one.has("tilt") and s.read(one, "spill proof") is False:
        return None
    return s.read(one, "tilt") if flooded is True else flooded


def _window(s: Subject, key: str) -> Any:
    one = s.item.base if s.item.base is not None else s.item
    return s.read(one, key) if one.allows(key) else None


@fact("equipment", "windows_told", type="yes/no", says="The temperatures at which a battery may be used are told.")
def windows_told(s: Subject) -> bool:
    one = getattr(s.item, "base", None) or s.item
    return bool(one.allows("window.charge") and (one.has("window.charge") or one.has("window.discharge")))


@fact("equipment", "charge_window", unit="°C", type="window", says="Temperatures at which it may be charged.")
def charge_window(s: Subject) -> Any:
    return _window(s, "window.charge")


@fact("equipment", "discharge_window", unit="°C", type="window", says="Temperatures at which it may be discharged.")
def discharge_window(s: Subject) -> Any:
    return _window(s, "window.discharge")
