"""The one error for a value outside the range in which a formula or table holds.

It stands at the very bottom so that formulas can raise it and number handling can
turn it into an unknown, without either knowing the other.
"""

from __future__ import annotations


class OutOfRange(ValueError):
    """A value lies outside the range in which a formula or table is valid.

    ``name`` says what the value is and its unit, ``valid`` the range (a pair of
    bounds, either of which may be infinite) or, for words, the choices in words.
    """

    def __init__(self, name: str, value: float | str, valid: tuple[float, float] | str, source: str) -> None:
        self.name = name
        self.value = value
        self.valid = valid
        self.source = source
        super().__init__(name, value, valid, source)

    def __str__(self) -> str:
        value = self.value if isinstance(self.value, str) else f"{self.value:g}"
        return f"{self.name} {value} is outside {_valid(self.valid)} ({self.source})"


def _valid(valid: tuple[float, float] | str) -> str:
    if isinstance(valid, str):
        return valid
    low, high = valid
    return f"{low:g} to {high:g}"


def require(name: str, value: float, low: float, high: float, source: str) -> float:
    """Give ``value`` back if ``low <= value <= high``; not-a-number is outside every range.

    Raises
    ------
    OutOfRange : the value lies outside.
    """
    if not low <= value <= high:
        raise OutOfRange(name, value, (low, high), source)
    return value


def require_positive(name: str, value: float, source: str) -> float:
    """Give ``value`` back if it is above zero and finite.

    Raises
    ------
    OutOfRange : the value is zero, negative, infinite or not a number.
    """
    if not 0.0 < value < float("inf"):
        raise OutOfRange(name, value, "the finite numbers above 0", source)
    return value
