"""What a charger does when the battery is full."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.charging import Output, outputs_of
from checker.facts.converter import given
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown, every, greater_equal, less, less_equal, multiply

HOLDING_V = {"lead": 2.3, "lithium iron phosphate": 3.4}
"""Highest voltage of a cell that it may stay at for good, V: common practice, no source."""


@fact(
    "converter",
    "stages_fit",
    type="yes/no",
    says="When a battery is full it falls back to a voltage that holds it, or stops where the cells want no holding.",
    method="float within what a cell may stay at for good, 2.3 V lead-acid and 3.4 V lithium iron phosphate, else "
    "below the charging voltage; lead-acid wants a float, no lower than its rested voltage when full; "
    "an alternator and a side that feeds loads at a fixed voltage are left out",
    source="usual data of battery makers; common practice, no source",
)
def stages_fit(s: Subject) -> Any:
    if isinstance(s.charges, Unknown):
        return s.charges
    if s.item.kind == "alternator":
        return None
    answers = [_falls_back(s, output) for output in outputs_of(s.facts, s.item) if not _feeds(s, output)]
    return every(answers)


def _feeds(s: Subject, output: Output) -> bool:
    """The low side of a converter both ways holds a voltage for its loads and has no stages."""
    return s.item.kind == "dc converter" and output.source.port == "low" and s.both_ways is not False


def _falls_back(s: Subject, output: Output) -> Truth:
    rest = given(s, "settings.float")
    answers: list[Truth] = []
    for item in output.banks:
        bank = s.facts.of("bank", item)
        if bank is None:
            continue
        if rest is None:
            answers.append(bank.is_lithium)  # lithium cells need no float; lead-acid sulphates without one
        else:
            answers.append(_holds(rest, given(s, "settings.charge voltage"), bank))
            if bank.is_lithium is not True:
                answers.append(greater_equal(rest, bank.full_voltage))
    return every(answers)


def _holds(rest: Any, charge: Any, bank: Subject) -> Truth:
    """Whether a battery may stay at the float voltage for good: by chemistry, else below its charging voltage."""
    word = bank.chemistry
    if isinstance(word, Unknown):
        return word
    holding = next((volts for name, volts in HOLDING_V.items() if name in word), None)
    return less(rest, charge) if holding is None else less_equal(rest, multiply(bank.cells, holding))
