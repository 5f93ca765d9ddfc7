"""What a quantity can be: an exact number, a range, unknown, decided absence, or a true window.

Every number is an SI float, except temperatures (degrees Celsius) and per cent (a ratio: 50 % is 0.5).
"""

from __future__ import annotations

from math import inf, isnan
from typing import Any, NoReturn


class Undecided(Exception):
    """A plain Python comparison, truth test or sum met a range or an unknown.

    Fast code runs on floats and falls back to the three-valued functions when this is raised.
    """


def _undecided(self: object, *others: object) -> NoReturn:
    raise Undecided(f"{self!r} is not an exact number")


def _frozen(self: object, *others: object) -> NoReturn:
    raise AttributeError(f"{type(self).__name__} cannot be changed")


class _Inexact:
    """Refuses every operator whose answer a range or an unknown cannot give."""

    __slots__ = ()

    __bool__ = __float__ = __int__ = __index__ = __round__ = __trunc__ = __floor__ = __ceil__ = _undecided
    __lt__ = __le__ = __gt__ = __ge__ = _undecided
    __neg__ = __pos__ = __abs__ = _undecided
    __add__ = __radd__ = __sub__ = __rsub__ = __mul__ = __rmul__ = _undecided
    __truediv__ = __rtruediv__ = __floordiv__ = __rfloordiv__ = _undecided
    __mod__ = __rmod__ = __divmod__ = __rdivmod__ = __pow__ = __rpow__ = _undecided
    __setattr__ = __delattr__ = _frozen


class Range(_Inexact):
    """One number, not exactly known: it lies from `low` to `high`, both included.

    Either end may be infinite (one-sided). Raises ValueError unless low < high.
    """

    __slots__ = ("high", "low")
    low: float
    high: float

    def __init__(self, low: float, high: float) -> None:
        if not low < high:
            raise ValueError(f"a range goes from a lower to a higher number, not from {low!r} to {high!r}")
        object.__setattr__(self, "low", float(low))
        object.__setattr__(self, "high", float(high))

    def __eq__(self, other: object) -> bool:
        if type(other) is Range:
            return self.low == other.low and self.high == other.high
        _undecided(self)

    def __ne__(self, other: object) -> bool:
        return not self == other

    def __hash__(self) -> int:
        return hash((Range, self.low, self.high))

    def __repr__(self) -> str:
        return f"Range({self.low!r}, {self.high!r})"

    def __reduce__(self) -> tuple[Any, ...]:
        return (Range, (self.low, self.high))


class Unknown(_Inexact):
    """Nothing is known of the value; `reason` says why, in words for the reader (may be empty)."""

    __slots__ = ("reason",)
    reason: str

    def __init__(self, reason: str = "") -> None:
        object.__setattr__(self, "reason", reason)

    def __eq__(self, other: object) -> bool:
        if type(other) is Unknown:
            return self.reason == other.reason
        _undecided(self)

    def __ne__(self, other: object) -> bool:
        return not self == other

    def __hash__(self) -> int:
        return hash((Unknown, self.reason))

    def __repr__(self) -> str:
        return f"Unknown({self.reason!r})"

    def __reduce__(self) -> tuple[Any, ...]:
        return (Unknown, (self.reason,))


UNKNOWN = Unknown()

Number = float | Range | Unknown | None
"""An SI number, a range, unknown, or None for decided absence (written `none`)."""


class Window:
    """A true interval with two ends, such as the voltages 10 V to 15 V at which a load works.

    Unlike a Range it is not doubt about one number. Each end is a Number; an end that does not
    limit is infinite. Raises ValueError if both ends are exact and reversed.
    """

    __slots__ = ("high", "low")
    low: Number
    high: Number

    def __init__(self, low: Number, high: Number) -> None:
        if isinstance(low, (int, float)) and isinstance(high, (int, float)) and not low <= high:
            raise ValueError(f"a window goes from a lower to a higher number, not from {low!r} to {high!r}")
        object.__setattr__(self, "low", low)
        object.__setattr__(self, "high", high)

    __setattr__ = __delattr__ = _frozen

    def __eq__(self, other: object) -> bool:
        if type(other) is not Window:
            return NotImplemented
        return same(self.low, other.low) and same(self.high, other.high)

    def __hash__(self) -> int:
        return hash((Window, self.low, self.high))

    def __repr__(self) -> str:
        return f"Window({self.low!r}, {self.high!r})"

    def __reduce__(self) -> tuple[Any, ...]:
        return (Window, (self.low, self.high))


def same(a: object, b: object) -> bool:
    """Whether two values are written alike; never raises Undecided. Not a comparison of quantities:
    two equal ranges are the same value here, though the numbers behind them may differ."""
    for kind in (Range, Unknown):
        if type(a) is kind or type(b) is kind:
            return type(a) is type(b) and a == b
    return a == b


def exact(value: object) -> bool:
    """Whether `value` is one finite number."""
    return isinstance(value, (int, float)) and not isinstance(value, bool) and -inf < value < inf


def between(low: float, high: float) -> Number:
    """The narrowest Number that says "from low to high": a float if the ends meet, Unknown if neither
    end limits, else a Range. Raises ValueError if reversed or not a number."""
    if isnan(low) or isnan(high):
        raise ValueError("a range needs two numbers")
    if low == high and -inf < low < inf:
        return float(low)
    if low == -inf and high == inf:
        return UNKNOWN
    return Range(low, high)


def perhaps(number: Number) -> Number:
    """What counts or does not, nobody knows which: anything from nothing up to `number`, which is not below nothing."""
    top = number.high if isinstance(number, Range) else number
    return between(0.0, top) if isinstance(top, float) and top > 0.0 else number


def or_more(number: Number) -> Number:
    """What is known, with perhaps more besides: anything from the least of `number` up; unknown and none stay."""
    low = number.low if isinstance(number, Range) else number
    return Range(low, inf) if isinstance(low, float) and low < inf else number
