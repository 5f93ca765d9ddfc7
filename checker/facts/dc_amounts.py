"""Numbers that go into an operating point: likely, lowest, highest; what is assumed and what is not known.

Three cases stand for all: `likely`, and all uncertain numbers at the end that lowers the voltage (`low`) or raises it
(`high`); a `Choice` names any other combination. Where a number is not known at all, two more cases set it to little
and to much; whatever differs between those hangs on it and gets no number, so that these two ends need not be the
farthest possible.
"""

from __future__ import annotations

from math import inf, isinf
from typing import NamedTuple

from checker.quantities import Number, Range, Unknown

CASES = ("likely", "low", "high")
EXTREMES = ("least", "most")
SETTING_SHARE = 0.005
SETTINGS_SAY = "a voltage that is set holds within 0.5 %; common practice, no source"


class Choice:
    """A combination of uncertain numbers of its own: which value each takes."""

    __slots__ = ()

    def of(self, amount: Amount, *, raises: bool) -> float:
        """The value of one number; `raises` says whether more of it raises the voltage."""
        raise NotImplementedError


Case = str | Choice
"""A named case, or a combination."""


class Amount(NamedTuple):
    """One number with its ends. `known` is False where they only stand in to find out what hangs on it."""

    likely: float
    low: float
    high: float
    known: bool = True

    def of(self, case: Case, *, raises: bool) -> float:
        """The number in a case; `raises` says whether more of it raises the voltage."""
        if not isinstance(case, str):
            return case.of(self, raises=raises)
        if case in EXTREMES and not self.known:
            return self.low if case == "least" else self.high
        if case in EXTREMES or case == "likely" or not self.known:
            return self.likely
        return self.high if (case == "high") == raises else self.low

    def times(self, factor: float) -> Amount:
        """The same times a positive number."""
        return Amount(self.likely * factor, self.low * factor, self.high * factor, self.known)


def smaller(a: Amount, b: Amount) -> Amount:
    """The smaller of two, end by end."""
    return Amount(min(a.likely, b.likely), min(a.low, b.low), min(a.high, b.high), a.known and b.known)


def about(told: Amount, share: float) -> Amount:
    """A stated number with what its maker's tolerance may add and take."""
    return Amount(told.likely, told.low * (1.0 - share), told.high * (1.0 + share), told.known)


def exactly(value: float) -> Amount:
    """A number without doubt."""
    return Amount(value, value, value)


class Book:
    """What was assumed and what is not known, each once, in the order met."""

    __slots__ = ("assumed", "missing")

    def __init__(self) -> None:
        self.assumed: dict[str, None] = {}
        self.missing: dict[str, None] = {}

    def assume(self, text: str) -> None:
        """Note an assumption."""
        self.assumed.setdefault(text)

    def lack(self, text: str) -> None:
        """Note something that is not known."""
        self.missing.setdefault(text)

    def amount(self, value: Number, what: str, least: float, most: float) -> Amount:
        """A value of the design; when it is unknown, `least` to `most` stand in and `what` is noted as missing."""
        found = stated(value)
        if found is not None:
            return found
        self.lack(what)
        return Amount(0.5 * (least + most), least, most, False)

    def amount_or(self, value: Number, what: str, low: float, likely: float, high: float) -> Amount:
        """A value of the design, else an assumption, which is noted."""
        found = stated(value)
        if found is not None:
            return found
        self.assume(f"{what}; common practice, no source")
        return Amount(likely, low, high)


def stated(value: Number) -> Amount | None:
    """A number or a range of the design; None when it is unknown, open on one side, or no number at all."""
    if isinstance(value, float):
        return None if isinf(value) else exactly(value)
    if isinstance(value, Range) and not (isinf(value.low) or isinf(value.high)):
        return Amount(0.5 * (value.low + value.high), value.low, value.high)
    return None


def possible(value: Number, least: float, most: float = inf) -> Amount | None:
    """A number or a range of the design above `least` and up to `most`; None where it is not told or cannot be so."""
    found = stated(value)
    return found if found is not None and least < found.low and found.high <= most else None


def number(value: object) -> Number:
    """A value of the design as a number; a word or none where a number was asked for is not one."""
    return value if isinstance(value, float | Range | Unknown) else Unknown("not a number")
