"""Unit texts of the worked examples, turned into SI factors and dimensions.

A text may carry a remark after the unit ("ft one way", "1/degC at 0"): the longest leading
part that reads as a unit counts, the rest is the remark.
"""

from __future__ import annotations

import math
import re
from typing import NamedTuple

Dimension = tuple[tuple[str, float], ...]

# SI factor and powers of the base units; a degree Celsius counts as a kelvin, its zero is left alone.
_BASE: dict[str, tuple[float, dict[str, float]]] = {
    "-": (1.0, {}),
    "1": (1.0, {}),
    "%": (0.01, {}),
    "cell": (1.0, {}),
    "lamps": (1.0, {}),
    "heaters": (1.0, {}),
    "currency": (1.0, {"currency": 1}),
    "cmHg": (1.0, {"cmHg": 1}),
    "cal": (1.0, {"cal": 1}),
    "m": (1.0, {"m": 1}),
    "km": (1e3, {"m": 1}),
    "cm": (1e-2, {"m": 1}),
    "mm": (1e-3, {"m": 1}),
    "ft": (0.3048, {"m": 1}),
    "kft": (304.8, {"m": 1}),
    "in": (0.0254, {"m": 1}),
    "l": (1e-3, {"m": 3}),
    "kg": (1.0, {"kg": 1}),
    "g": (1e-3, {"kg": 1}),
    "lb": (0.45359237, {"kg": 1}),
    "s": (1.0, {"s": 1}),
    "ms": (1e-3, {"s": 1}),
    "us": (1e-6, {"s": 1}),
    "min": (60.0, {"s": 1}),
    "h": (3600.0, {"s": 1}),
    "day": (86400.0, {"s": 1}),
    "rpm": (1.0 / 60.0, {"s": -1}),
    "Hz": (1.0, {"s": -1}),
    "K": (1.0, {"K": 1}),
    "degC": (1.0, {"K": 1}),
    "mol": (1.0, {"mol": 1}),
}
_ELECTRIC: dict[str, dict[str, float]] = {
    "A": {"A": 1},
    "V": {"kg": 1, "m": 2, "s": -3, "A": -1},
    "VA": {"kg": 1, "m": 2, "s": -3},
    "W": {"kg": 1, "m": 2, "s": -3},
    "J": {"kg": 1, "m": 2, "s": -2},
    "N": {"kg": 1, "m": 1, "s": -2},
    "Pa": {"kg": 1, "m": -1, "s": -2},
    "C": {"A": 1, "s": 1},
    "ohm": {"kg": 1, "m": 2, "s": -3, "A": -2},
    "F": {"kg": -1, "m": -2, "s": 4, "A": 2},
    "H": {"kg": 1, "m": 2, "s": -2, "A": -2},
    "Ah": {"A": 1, "s": 1},
    "Wh": {"kg": 1, "m": 2, "s": -2},
}
_PREFIXES = {"": 1.0, "k": 1e3, "M": 1e6, "m": 1e-3, "u": 1e-6, "n": 1e-9}
for _name, _powers in _ELECTRIC.items():
    for _prefix, _size in _PREFIXES.items():
        _BASE.setdefault(_prefix + _name, (_size * (3600.0 if _name in ("Ah", "Wh") else 1.0), _powers))
_NAMES = sorted(_BASE, key=lambda name: (-len(name), name))
_TERM = re.compile(rf"({'|'.join(re.escape(name) for name in _NAMES)})(?:\^?(\d+(?:\.\d+)?))?")


class Unit(NamedTuple):
    """A unit: SI value is number times ``factor``; ``remark`` is what stood after it."""

    factor: float
    dimension: Dimension
    remark: str


def unit(text: str) -> Unit:
    """Read a unit text; raises ValueError for one that is not known."""
    if text == "A^k h":  # one-ampere Peukert capacity: its power of the current is the exponent itself
        return Unit(1.0, (("A^k", 1.0), ("s", 1.0)), "")
    if text.startswith("mm water"):
        return Unit(9.80665, unit("Pa").dimension, "")
    words = text.split(" ")
    for count in range(len(words), 0, -1):
        read = _read(" ".join(words[:count]).rstrip(","))
        if read is not None:
            return Unit(*read, " ".join(words[count:]))
    raise ValueError(f"unknown unit {text!r}")


def dimension(text: str) -> Dimension:
    """Dimension of a unit text."""
    return unit(text).dimension


def _read(text: str) -> tuple[float, Dimension] | None:
    if text == "A2s":
        text = "A2 s"
    factor, powers = 1.0, dict[str, float]()
    for index, part in enumerate(text.split("/")):
        sign = -1.0 if index else 1.0
        rest = part
        if not rest:
            return None
        while rest:
            match = _TERM.match(rest)
            if not match:
                return None
            size, base = _BASE[match[1]]
            power = sign * float(match[2] or 1)
            factor *= math.pow(size, power)
            for name, exponent in base.items():
                powers[name] = powers.get(name, 0.0) + exponent * power
            rest = rest[match.end() :].lstrip(" ")
    return factor, tuple(sorted((name, power) for name, power in powers.items() if power))
