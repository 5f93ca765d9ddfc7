"""Whether the charging of a battery follows its temperature, and where that is measured."""

from __future__ import annotations

from checker.facts.bank import series_parallel
from checker.facts.catalogue import fact
from checker.facts.converter import given
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, both, either, equal, every, greater_equal, less_equal, multiply

AT_BATTERY = "at the battery"


@fact("converter", "temperature_compensated", type="yes/no", says="Its charging voltage follows the temperature.")
def temperature_compensated(s: Subject) -> Truth:
    value = given(s, "settings.temperature compensation")
    if isinstance(value, float):
        return value != 0.0
    return value if isinstance(value, Unknown) else value is not None


LEAD_COEFFICIENT_V = (-0.006, -0.002)
"""Change of the charging voltage of a lead-acid cell with its temperature, V/K: common practice, no source."""


@fact(
    "converter",
    "compensates_as_lead_wants",
    type="yes/no",
    says="The voltage falls as a lead-acid house battery gets warm, by 2 to 6 mV/K for each cell.",
    method="temperature compensation over the cells in series of each that it charges",
    source="usual data of battery makers; common practice, no source",
)
def compensates_as_lead_wants(s: Subject) -> Truth:
    value, banks = given(s, "settings.temperature compensation"), s.charges
    if value is None or isinstance(banks, Unknown):
        return False if value is None else banks
    most, least = LEAD_COEFFICIENT_V
    answers: list[Truth] = []
    for bank in banks:
        cells = multiply(bank.cells, series_parallel(bank, bank.item)[0])
        within = both(greater_equal(value, multiply(cells, most)), less_equal(value, multiply(cells, least)))
        answers.append(either(either(bank.is_lithium, equal(bank.purpose, "starting")), within))
    return every(answers)


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
