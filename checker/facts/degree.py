"""Degree of protection by enclosures, read from its code (IEC 60529; ISO 20653 sets a K behind the first digit)."""

from __future__ import annotations

from typing import Any

from checker.facts.subject import Subject
from checker.quantities import Unknown


def against_water(code: Any) -> Any:
    """The second digit of a code such as IP44; unknown for X or an unknown code, None where there is no code."""
    return _digit(code, 3, "water")


def water_in(s: Subject, state: str) -> Any:
    """The second digit of the degree of an inlet or outlet that is `open` or `mated`; its one degree serves both."""
    value = s.read(s.item, f"degree.{state}")
    whole = isinstance(value, Unknown) and s.item.has("degree")
    return against_water(s.read(s.item, "degree") if whole else value)


def objects_in(s: Subject, state: str) -> Any:
    """The first digit of the degree of an inlet or outlet that is `open` or `mated`; its one degree serves both."""
    value = s.read(s.item, f"degree.{state}")
    whole = isinstance(value, Unknown) and s.item.has("degree")
    return against_objects(s.read(s.item, "degree") if whole else value)


def against_objects(code: Any) -> Any:
    """The first digit of a code such as IP44; unknown for X or where the code is not known."""
    return _digit(code, 2, "objects")


def _digit(code: Any, at: int, what: str) -> Any:
    if not isinstance(code, str):
        return code
    plain = code[:3] + code[3:].removeprefix("K")
    digit = plain[at : at + 1]
    return float(digit) if digit.isdigit() else Unknown(f"{code} does not say how it keeps out {what}")
