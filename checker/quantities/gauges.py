"""Conductor sizes that are not written as an area: gauges and the Australian trade size. Areas in m2."""

from __future__ import annotations

from math import pi

from checker.quantities.arithmetic import rounded
from checker.quantities.values import Number, Range

# Diameter of a solid conductor of AWG n: 0.127 mm * 92 ** ((36 - n) / 39). Source: ASTM B258,
# formula in general use (memory); its resistances agree within 0.09 % with the copper wire tables
# of NBS Handbook 100 as reprinted in a university physics reference table (seen).
_LARGEST, _SMALLEST = -3, 40
_OUGHTS = {"0": 0, "00": -1, "000": -2, "0000": -3, "1/0": 0, "2/0": -1, "3/0": -2, "4/0": -3}

# A B&S gauge number is the AWG number, but flexible B&S cable is sold with up to 8 % less copper than
# the formula (trade practice, memory: 49.2 mm2 sold as 0 B&S against 53.5 by formula).
B_AND_S_LEAST = 0.92

# Australian automotive trade size in mm (an outside diameter of old) to copper in mm2; the lesser
# where copies differ. Source: three public cable-trade pages (seen); each agrees with its own
# strand count times strand area within 0.5 %, but for 2 mm (0.55; its strands give 0.563).
AUTO_SIZES: dict[str, str] = {"2": "0.55", "2.5": "0.64", "3": "1.13", "4": "1.84", "5": "2.9", "6": "4.59"}


def awg_number(size: str) -> int | None:
    """The gauge number of '8', '0', '00' or '2/0' (which is -1), or None if there is no such gauge."""
    if size in _OUGHTS:
        return _OUGHTS[size]
    if size.isascii() and size.isdigit() and not size.startswith("0") and int(size[:3]) <= _SMALLEST:
        return int(size)
    return None


def awg_area(number: int) -> float:
    """Area in m2 of solid AWG `number`, -3 (4/0) to 40. Raises ValueError outside."""
    if not _LARGEST <= number <= _SMALLEST:
        raise ValueError(f"there is no AWG {number}")
    diameter = 0.127e-3 * 92.0 ** ((36 - number) / 39)
    return rounded(pi / 4 * diameter**2)


def gauge_area(size: str, system: str) -> Number:
    """Area in m2 of `size` in 'AWG', 'B&S' or 'mm auto'; None if the system has no such size.

    AWG is the formula. B&S is a Range from 0.92 of the formula up to it, since less is sold under
    the number. 'mm auto' is the published area of the trade size.
    """
    if system == "mm auto":
        area = AUTO_SIZES.get(size)
        return None if area is None else float(area + "e-6")
    number = awg_number(size)
    if number is None:
        return None
    formula = awg_area(number)
    return formula if system == "AWG" else Range(rounded(B_AND_S_LEAST * formula), formula)
