"""Degree of protection by enclosures, read from its code (IEC 60529)."""

from __future__ import annotations

from typing import Any

from checker.quantities import Unknown


def against_water(code: Any) -> Any:
    """The second digit of a code such as IP44; unknown for X or an unknown code, None where there is no code."""
    return _digit(code, 3, "water")


def against_objects(code: Any) -> Any:
    """The first digit of a code such as IP44; unknown for X or where the code is not known."""
    return _digit(code, 2, "objects")


def _digit(code: Any, at: int, what: str) -> Any:
    if not isinstance(code, str):
        return code
    digit = code[at : at + 1]
    return float(digit) if digit.isdigit() else Unknown(f"{code} does not say how it keeps out {what}")
