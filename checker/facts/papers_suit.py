"""Whether papers and labels suit the vehicle: editions in force at its build, the language of the country."""

from __future__ import annotations

from typing import Any

from checker.facts.catalogue import fact
from checker.facts.papers import months, paper
from checker.facts.subject import Subject
from checker.quantities import Truth, Unknown

ENFORCED = 2023 * 12 + 11
"""AS/NZS 3001.2:2022 is enforceable from 18 November 2023 (standards body's notice, seen); months since year 0."""
ENGLISH = ("au", "nz", "uk", "us", "ca", "za")


@fact("design", "edition_in_force", type="yes/no",
      says="A vehicle built after AS/NZS 3001.2 of 2022 came into force was done by that edition.",
      method="date of build against 18 November 2023; the names under `editions`",
      source="AS/NZS 3001.2:2022, effective date (seen)")  # fmt: skip
def edition_in_force(s: Subject) -> Truth:
    stated = paper(s, "editions")
    if isinstance(stated, Unknown):
        return stated
    new = any("3001.2" in one and "2022" in one for one in stated or ())
    if new:
        return True
    built = months(s.read(s.item.vehicle, "built"))
    if built is None:
        return Unknown("when the vehicle was built is not told")
    if built[1] < ENFORCED:
        return bool(stated)
    return False if built[0] > ENFORCED else Unknown("whether it was built before 18 November 2023 is not told")


@fact("design", "label_language_suits", type="yes/no",
      says="Warnings are in the language of the country it is sold in.",
      method="English where it is registered in an English-speaking country, else any that is told")  # fmt: skip
def label_language_suits(s: Subject) -> Any:
    language = s.read(s.item.labels, "language")
    if not isinstance(language, str):
        return language if isinstance(language, Unknown) else False
    country = s.country
    if isinstance(country, Unknown):
        return country
    return country not in ENGLISH or "en" in language.lower().replace(",", " ").split()
