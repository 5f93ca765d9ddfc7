"""Whether the charging of a battery follows its temperature, and where that is measured."""

from __future__ import annotations

from checker.facts.catalogue import fact
from checker.facts.converter import given
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, either, equal, every

AT_BATTERY = "at the battery"


@fact("converter", "temperature_compensated", type="yes/no", says="Its charging voltage follows the temperature.")
def temperature_compensated(s: Subject) -> Truth:
    value = given(s, "settings.temperature compensation")
    if isinstance(value, float):
        return value != 0.0
    return value if isinstance(value, Unknown) else value is not None


@fact(
    "converter",
    "senses_the_battery",
    type="yes/no",
    says="The temperature it follows is that of every lead-acid house battery it charges.",
    method="measured at the battery, or at itself in the place where the battery stands",
)
def senses_the_battery(s: Subject) -> Truth:
    where = given(s, "settings.temperature sensed")
    if isinstance(where, Unknown):
        return where
    if where is None or where == AT_BATTERY:
        return where is not None
    banks = s.charges
    if isinstance(banks, Unknown):
        return banks
    own = s.read(s.item, "place")
    return every(
        either(either(bank.is_lithium, equal(bank.purpose, "starting")), equal(own, s.read(bank.item, "place")))
        for bank in banks
    )
