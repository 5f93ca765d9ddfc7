"""Regular expressions, good enough for an editor, for texts that the reader then reads strictly."""

from __future__ import annotations

import re

from checker.quantities.units import kind_of

NUMBER = r"[-+−]?[0-9]+(\.[0-9]+)?([eE][-+]?[0-9]{1,3})?"
PLUS_MINUS = r" ?(±|\+-|\+/-) ?"
BARE = ("count", "ratio")
OTHER_LETTERS = {"µ": "[µμ]", "Ω": "[ΩΩ]", "2": "[2²]", "3": "[3³]", " ": "[ ·⋅]?"}

DATE = r"[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?"
DATES = rf"^{DATE}(\.\.{DATE})?$"
ARRANGEMENT = "^[1-9][0-9]*s[1-9][0-9]*p$"
DEGREE = "^IP[0-6X]K?[0-9X][KABCDHMSW9]*$"


def quantity_pattern(unit: str) -> str:
    """Numbers of what `unit` measures: exact, range, tolerance, one-sided, with `each`."""
    single = _single(unit)
    spread = rf"({single}|{NUMBER}|{NUMBER} ?%)"
    forms = (
        rf"(at least |at most )?{single}",
        rf"({single}|{NUMBER}) ?\.\. ?{single}",
        rf"({single}|{NUMBER}){PLUS_MINUS}{spread}",
    )
    return f"^({'|'.join(forms)})( each)?$"


def window_pattern(unit: str) -> str:
    """True intervals: as a quantity, with an unknown end, or with an end in doubt (`from 10..11 V to 15 V`)."""
    single = _single(unit)
    some = quantity_pattern(unit)[1:-1]
    return rf"^({some}|from .+ to {single}|unknown ?\.\. ?{single}|{single} ?\.\. ?unknown)$"


def rated_voltage_pattern() -> str:
    """Voltages with their system: `80 V DC`."""
    return rf"^{quantity_pattern('V')[1:].removesuffix('( each)?$')}( (DC|AC))?( each)?$"


def _single(unit: str) -> str:
    if unit == "count":
        return "[0-9]+"
    if unit == "ratio":
        return rf"{NUMBER}( ?%)?"
    symbols = sorted(kind_of(unit).symbols, key=lambda symbol: (-len(symbol), symbol))
    units = "|".join(_spelt(symbol) for symbol in symbols)
    plain = rf"{NUMBER} ?({units})"
    return rf"({plain}|[0-9./]+ ?(AWG|B&S|mm auto))" if unit == "mm2" else plain


def _spelt(symbol: str) -> str:
    return "".join(OTHER_LETTERS.get(letter) or re.escape(letter) for letter in symbol)
