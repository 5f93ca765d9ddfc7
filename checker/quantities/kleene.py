"""Comparisons and logic with three answers: True, False, Unknown (strong Kleene logic).

A comparison is decided only if every number the operands may be gives the same answer. Absence
(None) is decided: ordered comparison with it is False, and it equals only itself. An unknown
operand may turn out to be any number or absent.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from checker.quantities.values import UNKNOWN, Range, Unknown, Window

Truth = bool | Unknown


def _ends(value: Any) -> tuple[float, float]:
    if type(value) is Range:
        return value.low, value.high
    if isinstance(value, (int, float)):
        return value, value
    raise TypeError(f"{value!r} has no place in an order of numbers")


def less(a: Any, b: Any) -> Truth:
    """a < b for two Numbers of one unit. Raises TypeError for anything but Numbers."""
    if type(a) is float and type(b) is float:
        return a < b
    if a is None or b is None:
        return False
    if type(a) is Unknown:
        return a
    if type(b) is Unknown:
        return b
    (a_low, a_high), (b_low, b_high) = _ends(a), _ends(b)
    if a_high < b_low:
        return True
    return False if a_low >= b_high else UNKNOWN


def less_equal(a: Any, b: Any) -> Truth:
    """a <= b for two Numbers of one unit. Raises TypeError for anything but Numbers."""
    if type(a) is float and type(b) is float:
        return a <= b
    if a is None or b is None:
        return False
    if type(a) is Unknown:
        return a
    if type(b) is Unknown:
        return b
    (a_low, a_high), (b_low, b_high) = _ends(a), _ends(b)
    if a_high <= b_low:
        return True
    return False if a_low > b_high else UNKNOWN


def greater(a: Any, b: Any) -> Truth:
    """a > b; see `less`."""
    return less(b, a)


def greater_equal(a: Any, b: Any) -> Truth:
    """a >= b; see `less_equal`."""
    return less_equal(b, a)


def equal(a: Any, b: Any) -> Truth:
    """a == b for Numbers, words, truth values, windows and other plain values.

    Two ranges that overlap are undecided even if written alike: they may be different numbers.
    """
    if type(a) is Unknown:
        return a
    if type(b) is Unknown:
        return b
    if a is None or b is None:
        return a is b
    if type(a) is Window and type(b) is Window:
        return both(equal(a.low, b.low), equal(a.high, b.high))
    if type(a) is Range or type(b) is Range:
        (a_low, a_high), (b_low, b_high) = _ends(a), _ends(b)
        return False if a_high < b_low or b_high < a_low else UNKNOWN
    return bool(a == b)


def not_equal(a: Any, b: Any) -> Truth:
    """The negation of `equal`."""
    return negate(equal(a, b))


def negate(a: Truth) -> Truth:
    """not a."""
    return a if type(a) is Unknown else not a


def both(a: Truth, b: Truth) -> Truth:
    """a and b: one False decides."""
    if a is False or b is False:
        return False
    return b if a is True else a


def either(a: Truth, b: Truth) -> Truth:
    """a or b: one True decides."""
    if a is True or b is True:
        return True
    return b if a is False else a


def every(answers: Iterable[Truth]) -> Truth:
    """Whether all are True; True for none at all; stops at the first False."""
    result: Truth = True
    for answer in answers:
        if answer is False:
            return False
        if result is True:
            result = answer
    return result


def some(answers: Iterable[Truth]) -> Truth:
    """Whether any is True; False for none at all; stops at the first True."""
    result: Truth = False
    for answer in answers:
        if answer is True:
            return True
        if result is False:
            result = answer
    return result


def within(x: Any, window: Any) -> Truth:
    """Whether a Number, or a whole Window, lies in `window`, both ends included.

    False if either is None. Raises TypeError if `window` is no Window: a Range is doubt about one
    number, not a place to be in.
    """
    if x is None or window is None:
        return False
    if type(window) is Unknown:
        return window
    if type(window) is not Window:
        raise TypeError(f"{window!r} is not a window")
    if type(x) is Window:
        return both(greater_equal(x.low, window.low), less_equal(x.high, window.high))
    return both(greater_equal(x, window.low), less_equal(x, window.high))
