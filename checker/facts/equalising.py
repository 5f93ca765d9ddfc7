"""Equalising of lead-acid batteries: an overcharge on purpose, which not every build endures."""

from __future__ import annotations

from typing import Any

from checker.facts.bank import series_parallel
from checker.facts.catalogue import fact
from checker.facts.charging import charge_voltages
from checker.facts.converter import charging_outputs
from checker.facts.converter_guard import is_lead
from checker.facts.subject import Subject
from checker.quantities import Number, Unknown, least, multiply

FLOODED_V = 2.7
"""Highest voltage of a cell with liquid acid while it is equalised, V: common practice, no source."""


@fact(
    "converter",
    "equalise_limit",
    unit="V",
    says="Highest voltage at which it may equalise the lead-acid batteries it charges; none where it charges none.",
    method="2.7 V for each cell with liquid acid, what they may see while charging for every other build; the least",
    source="usual data of battery makers; common practice, no source",
)
def equalise_limit(s: Subject) -> Any:
    if isinstance(s.charges, Unknown):
        return s.charges
    found: list[Number] = []
    for output in charging_outputs(s):
        if charge_voltages(s, output)[0][0] != "settings.charge voltage":
            continue  # an alternator, or the side of a converter that feeds loads: neither equalises
        for bank in (s.facts.of("bank", item) for item in output.banks):
            if bank is not None and is_lead(bank) is not False:
                found.append(_limit(bank))
    return least(found) if found else None


def _limit(bank: Subject) -> Number:
    """What one battery may see while it is equalised."""
    if isinstance(bank.chemistry, Unknown):
        return bank.chemistry
    if bank.chemistry == "flooded lead acid":
        return multiply(multiply(bank.cells, series_parallel(bank, bank.item)[0]), FLOODED_V)
    return bank.charge_voltage_limit  # type: ignore[no-any-return]
