"""Arithmetic on Numbers: floats, ranges, unknowns and absence.

A range result encloses every result of the numbers in the operands. Results are rounded to 12
significant digits, so that 0.1 + 0.2 is 0.3 and answers do not hang on the last bit. Absence
(None) in, absence out; otherwise unknown in, unknown out. A float result beyond the largest
float is Unknown.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import product
from math import fsum, inf, isinf, isnan
from sys import float_info
from typing import cast

from checker.outofrange import OutOfRange
from checker.quantities.values import Number, Range, Unknown, between


def rounded(value: float) -> float:
    """`value` to 12 significant digits; minus zero becomes zero."""
    return float(f"{value:.12g}") + 0.0


def _result(low: float, high: float, is_exact: bool) -> Number:
    """The Number from low to high, rounded; an exact operation that overflowed is Unknown."""
    if isnan(low) or isnan(high):
        return Unknown("the result is not a number")
    if is_exact:
        return Unknown("the result is too large to compute") if isinf(low) else rounded(low)
    # An end that overflowed on its inner side still lies beyond the largest float.
    return between(rounded(min(low, float_info.max)), rounded(max(high, -float_info.max)))


def _blank(numbers: Iterable[Number]) -> tuple[bool, Unknown | None]:
    """(one is absent, the first unknown if any)."""
    unknown: Unknown | None = None
    for number in numbers:
        if number is None:
            return True, None
        if unknown is None and type(number) is Unknown:
            unknown = number
    return False, unknown


def _ends(number: Number) -> tuple[float, float]:
    if type(number) is Range:
        return number.low, number.high
    return cast(float, number), cast(float, number)


def _combine(a: Number, b: Number, ends: Callable[[float, float, float, float], tuple[float, float]]) -> Number:
    absent, unknown = _blank((a, b))
    if absent:
        return None
    if unknown is not None:
        return unknown
    low, high = ends(*_ends(a), *_ends(b))
    return _result(low, high, type(a) is not Range and type(b) is not Range)


def add(a: Number, b: Number) -> Number:
    """a + b, two Numbers of one unit."""
    if type(a) is float and type(b) is float:
        return _result(a + b, a + b, True)
    return _combine(a, b, lambda a_low, a_high, b_low, b_high: (a_low + b_low, a_high + b_high))


def subtract(a: Number, b: Number) -> Number:
    """a - b, two Numbers of one unit."""
    if type(a) is float and type(b) is float:
        return _result(a - b, a - b, True)
    return _combine(a, b, lambda a_low, a_high, b_low, b_high: (a_low - b_high, a_high - b_low))


def _times(a: float, b: float) -> float:
    # An endless end is a limit of finite numbers: nothing times any of them is nothing.
    return 0.0 if a == 0 or b == 0 else a * b


def multiply(a: Number, b: Number) -> Number:
    """a * b."""
    if type(a) is float and type(b) is float:
        return _result(a * b, a * b, True)

    def ends(a_low: float, a_high: float, b_low: float, b_high: float) -> tuple[float, float]:
        found = (_times(a_low, b_low), _times(a_low, b_high), _times(a_high, b_low), _times(a_high, b_high))
        return min(found), max(found)

    return _combine(a, b, ends)


def divide(a: Number, b: Number) -> Number:
    """a / b; Unknown if b is, or may be, zero."""
    if type(a) is float and type(b) is float and b != 0:
        return _result(a / b, a / b, True)
    absent, unknown = _blank((a, b))
    if absent:
        return None
    if unknown is not None:
        return unknown
    b_low, b_high = _ends(b)
    if b_low <= 0 <= b_high:
        return Unknown("division by zero" if b_low == b_high else "division by what may be zero")
    found = [0.0 if isinf(d) else n / d for n in _ends(a) for d in (b_low, b_high)]
    return _result(min(found), max(found), type(a) is not Range and type(b) is not Range)


def _several(numbers: tuple[Number | Iterable[Number], ...]) -> list[Number]:
    """The numbers given one by one or as a single list."""
    if len(numbers) == 1 and not isinstance(numbers[0], (int, float, Range, Unknown, type(None))):
        return list(numbers[0])
    return cast("list[Number]", list(numbers))


def _extreme(numbers: list[Number], pick: Callable[[Iterable[float]], float]) -> Number:
    absent, unknown = _blank(numbers)
    if absent or not numbers:
        return None
    if unknown is not None:
        return unknown
    ends = [_ends(number) for number in numbers]
    return between(pick(low for low, _ in ends), pick(high for _, high in ends))


def least(*numbers: Number | Iterable[Number]) -> Number:
    """The least of the numbers, given one by one or as one list; None of none at all."""
    if len(numbers) == 2 and type(numbers[0]) is float and type(numbers[1]) is float:
        return min(numbers[0], numbers[1])
    return _extreme(_several(numbers), min)


def greatest(*numbers: Number | Iterable[Number]) -> Number:
    """The greatest of the numbers, given one by one or as one list; None of none at all."""
    if len(numbers) == 2 and type(numbers[0]) is float and type(numbers[1]) is float:
        return max(numbers[0], numbers[1])
    return _extreme(_several(numbers), max)


def total(*numbers: Number | Iterable[Number]) -> Number:
    """The sum of the numbers, given one by one or as one list, in any order alike; 0.0 of none at all."""
    terms = _several(numbers)
    absent, unknown = _blank(terms)
    if absent:
        return None
    if unknown is not None:
        return unknown
    ends = [_ends(term) for term in terms]
    try:
        low, high = fsum(low for low, _ in ends), fsum(high for _, high in ends)
    except OverflowError:
        return Unknown("the result is too large to compute")
    return _result(low, high, not any(type(term) is Range for term in terms))


def corners(f: Callable[..., float], *numbers: Number) -> Number:
    """f(*numbers) for a pure f that is monotone in each argument separately.

    A range argument is tried at both ends, so the result encloses f over the whole ranges. None if
    an argument is None, else Unknown if one is Unknown. Where f raises OutOfRange at a corner the
    result is Unknown with f's words; likewise where an endless end gives f no limit. Any other
    error of f comes through.
    """
    absent, unknown = _blank(numbers)
    if absent:
        return None
    if unknown is not None:
        return unknown
    if not any(type(number) is Range for number in numbers):
        try:
            value = f(*numbers)
        except OutOfRange as error:
            return Unknown(str(error))
        return _result(value, value, True)
    choices = [_ends(number) if type(number) is Range else (number,) for number in numbers]
    low, high = inf, -inf
    for corner in product(*choices):
        try:
            value = f(*corner)
        except OutOfRange as error:
            return Unknown(str(error))
        except (ArithmeticError, ValueError):
            if any(type(x) is float and isinf(x) for x in corner):
                return Unknown("no limit is known for a range without an end")
            raise
        if isnan(value):
            return Unknown("the result is not a number")
        low, high = min(low, value), max(high, value)
    return _result(low, high, False)
