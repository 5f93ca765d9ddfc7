"""Whether papers and labels suit the vehicle: editions in force at its build, the language of the country."""

from __future__ import annotations

import re
from typing import Any

from checker.facts.catalogue import fact
from checker.facts.papers import months, paper
from checker.facts.subject import Subject
from checker.physics.tables import table
from checker.quantities import Truth, Unknown

ENFORCED = 2023 * 12 + 11
"""AS/NZS 3001.2:2022 is enforceable from 18 November 2023 (standards body's notice, seen); months since year 0."""
CERTIFICATES = ("electrical safety certificate", "warrant of electrical fitness", "compliance plate", "declaration")
BATTERY_SIDE_EDITION = 2018
"""Year of the edition of EN 1648 that covers 12 V alone."""
SOLAR_RULES = ("AS/NZS 5033", "62548", "60364-7-712", "BS 7671", "NFPA 70")
YEAR = re.compile(r"\b(?:19|20)\d\d\b")
_EURO = (
    "at de,be nl fr de,bg bg,hr hr,cy el tr,cz cs,dk da,ee et,fi fi sv,fr fr,de de,gr el,hu hu,ie en ga,it it,lv lv,"
    "lt lt,lu fr de lb,mt mt en,nl nl,pl pl,pt pt,ro ro,sk sk,si sl,es es,se sv"
)
LANGUAGES = {line[:2]: frozenset(line[3:].split()) for line in (
    *_EURO.split(","), "au en", "nz en", "uk en", "gb en", "us en", "ca en fr", "za en af", "no no nb nn", "is is",
    "ch de fr it", "in en hi", "jp ja",
)}  # fmt: skip
"""Country of first sale to the languages in which warnings may be there."""


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


@fact("design", "superseded_edition", type="text",
      says="Standards of which a later edition than the latest one applied was in force when the vehicle was built.",
      method="years in the names under `editions` against the date of build; standards that the table does not hold "
      "are left out", source="tables/standard_editions.csv, row by row")  # fmt: skip
def superseded_edition(s: Subject) -> Any:
    stated = paper(s, "editions")
    if isinstance(stated, Unknown):
        return stated
    built = months(s.read(s.item.vehicle, "built"))
    found, doubt = [], None
    for standard in dict.fromkeys(row["standard"] for row in table("standard_editions").rows):
        named = [one for one in stated or () if standard in one]
        years = [int(year) for one in named for year in YEAR.findall(one)]
        if named and not years:
            doubt = Unknown(f"which edition of {standard} was applied is not told")
        for row in table("standard_editions").rows if years else ():
            if row["standard"] != standard or int(row["edition"]) <= max(years):
                continue
            year, month = row["in_force"].split("-")
            since = int(year) * 12 + int(month)
            if built is None or built[0] < since <= built[1]:
                doubt = Unknown("when the vehicle was built is not told to the month")
            elif since <= built[0]:
                found.append(f"{standard} of {row['edition']}")
    return ", ".join(found) if found or doubt is None else doubt


@fact("design", "editions_current", type="yes/no", says="No edition applied was superseded when the vehicle was built.",
      method="design.superseded_edition")  # fmt: skip
def editions_current(s: Subject) -> Truth:
    found = s.superseded_edition
    return found if isinstance(found, Unknown) else not found


@fact("design", "solar_rules_applied", type="yes/no",
      says="A standard for fixed solar installations is among those applied.",
      method="AS/NZS 5033, IEC 62548, IEC 60364-7-712, BS 7671 or NFPA 70 among the names under `editions`",
      source="scopes of these standards (from memory)")  # fmt: skip
def solar_rules_applied(s: Subject) -> Truth:
    stated = paper(s, "editions")
    if isinstance(stated, Unknown):
        return stated
    return any(standard in one for one in stated or () for standard in SOLAR_RULES)


@fact("design", "label_language_suits", type="yes/no",
      says="Warnings are in a language of the country it is sold in.",
      method="official languages of the country of first sale, else of the country where it is registered",
      source="official languages of states, common knowledge; no source")  # fmt: skip
def label_language_suits(s: Subject) -> Any:
    language = s.read(s.item.labels, "language")
    if not isinstance(language, str):
        return language if isinstance(language, Unknown) else False
    country = s.read(s.item.labels, "sold in")
    if not isinstance(country, str):
        country = s.country
    if isinstance(country, Unknown) or country is None:
        return Unknown("where it is sold first is not told")
    official = LANGUAGES.get(country.lower())
    if official is None:
        return Unknown(f"the languages of {country} are not on the list")
    return not official.isdisjoint(language.lower().replace(",", " ").split())


@fact("design", "label_sheet", words=("metal", "laminate", "anodised aluminium"), says="What the labels are cut from.")
def label_sheet(s: Subject) -> Any:
    return s.read(s.item.labels, "sheet")


@fact("design", "label_thickness", unit="m", says="Thickness of the sheet of the labels.")
def label_thickness(s: Subject) -> Any:
    return s.read(s.item.labels, "thickness")


@fact("design", "newer_battery_side_edition", type="yes/no",
      says="A later edition of the battery-side standard than that of 2018 is among those applied.",
      method="a name with EN 1648 and a year under `editions`")  # fmt: skip
def newer_battery_side_edition(s: Subject) -> Truth:
    stated = paper(s, "editions")
    if isinstance(stated, Unknown):
        return stated
    years = (int(year) for one in stated or () if "1648" in one for year in YEAR.findall(one))
    return any(year > BATTERY_SIDE_EDITION for year in years)


@fact("design", "diagram_shows", words=("sizes", "lengths", "devices", "sources", "earthing"), type="words",
      says="What the wiring diagram tells.")  # fmt: skip
def diagram_shows(s: Subject) -> Any:
    return paper(s, "diagram shows")


@fact("design", "certificate_kind", words=CERTIFICATES, says="Which paper the electrical certificate is.")
def certificate_kind(s: Subject) -> Any:
    return paper(s, "certificate.kind")
