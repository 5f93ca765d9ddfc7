"""Text to SI number and back; ranges, unknowns, windows; arithmetic and three-valued logic on them."""

from __future__ import annotations

from checker.outofrange import OutOfRange
from checker.quantities.arithmetic import (
    add,
    corners,
    divide,
    greatest,
    least,
    multiply,
    rounded,
    subtract,
    total,
)
from checker.quantities.kleene import (
    Truth,
    both,
    either,
    equal,
    every,
    greater,
    greater_equal,
    less,
    less_equal,
    negate,
    not_equal,
    some,
    within,
)
from checker.quantities.literals import parse_any
from checker.quantities.parse import parse, parse_voltage, parse_window, says_each
from checker.quantities.refusals import QuantityError
from checker.quantities.show import show
from checker.quantities.units import (
    Dimension,
    UnitError,
    add_dimensions,
    dimension_of,
    divide_dimensions,
    multiply_dimensions,
    power_dimension,
    say_dimension,
    subtract_dimensions,
    unit_for,
)
from checker.quantities.values import UNKNOWN, Number, Range, Undecided, Unknown, Window, between, exact, same

__all__ = [
    "Number", "Range", "Unknown", "UNKNOWN", "Window", "Undecided", "OutOfRange", "between", "exact", "same",
    "add", "subtract", "multiply", "divide", "least", "greatest", "total", "corners", "rounded",
    "Truth", "less", "less_equal", "greater", "greater_equal", "equal", "not_equal",
    "both", "either", "negate", "every", "some", "within",
    "parse", "parse_any", "parse_voltage", "parse_window", "says_each", "QuantityError", "show",
    "Dimension", "UnitError", "dimension_of", "multiply_dimensions", "divide_dimensions", "power_dimension",
    "add_dimensions", "subtract_dimensions", "unit_for", "say_dimension",
]
