"""The three-valued functions that rules are compiled to, beyond those on numbers.

Whatever is asked of `none` is none, and none is no: `every`, `some` and `none` over a list that does not exist answer
no, its count, sum, least and greatest are none. Whatever is asked of something unknown is unknown.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from checker.quantities import (
    UNKNOWN,
    Number,
    Range,
    Truth,
    Unknown,
    between,
    equal,
    greatest,
    least,
    negate,
    total,
)

Test = Callable[[Any], Any]


def truth(value: Any) -> Truth:
    """A yes/no as an answer: absence is no."""
    return False if value is None else value


def both_of(first: Any, second: Any) -> Truth:
    """`first and second`; the parts may be absent."""
    if first is False or second is False or first is None or second is None:
        return False
    return truth(second) if first is True else first


def either_of(first: Any, second: Any) -> Truth:
    """`first or second`; the parts may be absent."""
    if first is True or second is True:
        return True
    if type(first) is Unknown:
        return first
    return truth(second)


def opposite(value: Any) -> Truth:
    """`not value`; absence is no, so its opposite is yes."""
    return True if value is None else negate(value)


def ask(subject: Any, fact: str) -> Any:
    """A fact of a subject that may be absent or unknown."""
    if subject is None or type(subject) is Unknown:
        return subject
    return getattr(subject, fact)


def minus(value: Number) -> Number:
    """The number as far on the other side of zero, without rounding."""
    if value is None or type(value) is Unknown:
        return value
    if type(value) is Range:
        return Range(-value.high, -value.low)
    return -value + 0.0  # minus zero becomes zero


def member(item: Any, group: Any) -> Truth:
    """Whether a word or subject is among the group, a tuple."""
    if item is None or group is None:
        return False
    if type(item) is Unknown:
        return item
    if type(group) is Unknown:
        return group
    answer: Truth = False
    for other in group:
        answer = either_of(answer, equal(item, other))
        if answer is True:
            break
    return answer


def every_of(items: Any, holds: Test, keep: Test | None = None) -> Truth:
    """Whether `holds` for every item that `keep` keeps."""
    if items is None or type(items) is Unknown:
        return truth(items)
    answer: Truth = True
    for item in items:
        kept = True if keep is None else truth(keep(item))
        if kept is False:
            continue
        answer = both_of(answer, either_of(opposite(kept), holds(item)))
        if answer is False:
            break
    return answer


def some_of(items: Any, holds: Test, keep: Test | None = None) -> Truth:
    """Whether `holds` for at least one item that `keep` keeps."""
    if items is None or type(items) is Unknown:
        return truth(items)
    answer: Truth = False
    for item in items:
        kept = True if keep is None else truth(keep(item))
        if kept is False:
            continue
        answer = either_of(answer, both_of(kept, holds(item)))
        if answer is True:
            break
    return answer


def none_of(items: Any, holds: Test, keep: Test | None = None) -> Truth:
    """Whether `holds` for no item that `keep` keeps; over a list that does not exist it is no, too."""
    if items is None:
        return False
    return opposite(some_of(items, holds, keep))


def count_of(items: Any, holds: Test | None = None, keep: Test | None = None) -> Number:
    """How many items hold; a range when some of them are undecided."""
    if items is None or type(items) is Unknown:
        return items
    if holds is None and keep is None:
        return float(len(items))
    sure = perhaps = 0
    for item in items:
        kept = True if keep is None else truth(keep(item))
        answer = both_of(kept, True if holds is None or kept is False else holds(item))
        sure += answer is True
        perhaps += answer is not False
    return between(float(sure), float(perhaps))


def sum_of(items: Any, value: Test, keep: Test | None = None) -> Number:
    """The sum of the values; where it is undecided whether one counts, it counts from nothing to all of it."""
    return items if items is None or type(items) is Unknown else sum_in(*_sorted(items, value, keep))


def min_of(items: Any, value: Test, keep: Test | None = None) -> Number:
    """The least value; none of nothing."""
    return items if items is None or type(items) is Unknown else min_in(*_sorted(items, value, keep))


def max_of(items: Any, value: Test, keep: Test | None = None) -> Number:
    """The greatest value; none of nothing."""
    return items if items is None or type(items) is Unknown else max_in(*_sorted(items, value, keep))


def _sorted(items: Any, value: Test, keep: Test | None) -> tuple[list[Number], list[Number]]:
    """The values of the items that are kept, and of those that may be."""
    sure: list[Number] = []
    perhaps: list[Number] = []
    for item in items:
        kept = True if keep is None else truth(keep(item))
        if kept is not False:
            (sure if kept is True else perhaps).append(value(item))
    return sure, perhaps


def sum_in(sure: list[Number], perhaps: list[Number]) -> Number:
    """The sum of values that count and of values that may."""
    return total([*sure, *(_hull(0.0, term) for term in perhaps)])


def min_in(sure: list[Number], perhaps: list[Number]) -> Number:
    """The least of values that count and of values that may."""
    return _extreme(sure, perhaps, least)


def max_in(sure: list[Number], perhaps: list[Number]) -> Number:
    """The greatest of values that count and of values that may."""
    return _extreme(sure, perhaps, greatest)


def _extreme(sure: list[Number], perhaps: list[Number], pick: Callable[[Iterable[Number]], Number]) -> Number:
    if not perhaps:
        return pick(sure)
    if not sure:
        return UNKNOWN  # it may even be that nothing is left
    return _hull(pick(sure), pick([*sure, *perhaps]))


def _hull(first: Number, second: Number) -> Number:
    """The narrowest number that may be either of the two."""
    for number in (first, second):
        if number is None:
            return UNKNOWN if first is not second else None
        if type(number) is Unknown:
            return number
    low = min(_low(first), _low(second))
    return between(low, max(_high(first), _high(second)))


def _low(number: Any) -> float:
    return float(number.low if type(number) is Range else number)


def _high(number: Any) -> float:
    return float(number.high if type(number) is Range else number)
