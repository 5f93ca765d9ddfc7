"""Three-valued answers over lists, absence and doubt."""

from __future__ import annotations

from itertools import product
from typing import Any

import pytest

from checker.quantities import UNKNOWN, Range
from checker.rulebook import logic

ANSWERS = (True, False, UNKNOWN, None)


def plain(value: Any) -> str:
    return {True: "yes", False: "no"}.get(value, "?") if isinstance(value, bool) else "?"


@pytest.mark.parametrize(("first", "second"), list(product(ANSWERS, ANSWERS)))
def test_and_and_or_follow_kleene_with_absence_as_no(first: Any, second: Any) -> None:
    order = {"no": 0, "?": 1, "yes": 2}
    a, b = (order[plain(False if value is None else value)] for value in (first, second))
    assert order[plain(logic.both_of(first, second))] == min(a, b)
    assert order[plain(logic.either_of(first, second))] == max(a, b)


def test_the_opposite_of_absence_is_yes() -> None:
    assert logic.opposite(None) is True
    assert logic.opposite(UNKNOWN) is UNKNOWN


def hold(value: Any) -> Any:
    return value


@pytest.mark.parametrize(
    ("items", "every", "some", "none"),
    [
        ((), True, False, True),
        ((True, True), True, True, False),
        ((True, False), False, True, False),
        ((UNKNOWN, False), False, UNKNOWN, UNKNOWN),
        ((UNKNOWN, True), UNKNOWN, True, False),
        ((None,), False, False, True),
        (UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN),
        (None, False, False, False),
    ],
)
def test_every_some_and_none_over_a_list(items: Any, every: Any, some: Any, none: Any) -> None:
    assert logic.every_of(items, hold) is every
    assert logic.some_of(items, hold) is some
    assert logic.none_of(items, hold) is none


def test_what_is_undecided_to_be_kept_is_neither_counted_nor_left_out() -> None:
    items = ((True, True), (UNKNOWN, True), (UNKNOWN, False), (False, True))

    def holds(item: Any) -> Any:
        return item[1]

    def keep(item: Any) -> Any:
        return item[0]

    assert logic.count_of(items, holds, keep) == Range(1.0, 2.0)
    assert logic.count_of(items, None, keep) == Range(1.0, 3.0)
    assert logic.every_of(items, holds, keep) is UNKNOWN
    assert logic.some_of(items[1:], holds, keep) is UNKNOWN


NUMBERS = ((True, 2.0), (UNKNOWN, 5.0), (UNKNOWN, -1.0))


def test_sum_least_and_greatest_reach_over_what_may_be_kept() -> None:
    value, keep = (lambda item: item[1]), (lambda item: item[0])
    assert logic.sum_of(NUMBERS, value, keep) == Range(1.0, 7.0)
    assert logic.min_of(NUMBERS, value, keep) == Range(-1.0, 2.0)
    assert logic.max_of(NUMBERS, value, keep) == Range(2.0, 5.0)
    assert logic.max_of(NUMBERS[1:], value, keep) is UNKNOWN


def test_over_a_list_that_does_not_exist_every_number_is_absent() -> None:
    for function in (logic.sum_of, logic.min_of, logic.max_of):
        assert function(None, hold) is None
        assert function(UNKNOWN, hold) is UNKNOWN
    assert logic.count_of(None) is None
    assert logic.min_of((), hold) is None
    assert logic.sum_of((), hold) == 0.0


def test_a_number_below_zero_mirrors_a_range() -> None:
    assert logic.minus(Range(1.0, 2.0)) == Range(-2.0, -1.0)
    assert logic.minus(0.1) == -0.1
    assert logic.minus(None) is None


def test_a_word_in_a_list_with_an_unknown_word_is_undecided_unless_found() -> None:
    assert logic.member("a", ("b", UNKNOWN)) is UNKNOWN
    assert logic.member("a", (UNKNOWN, "a")) is True
    assert logic.member("a", ()) is False
    assert logic.member(None, ("a",)) is False
    assert logic.member(UNKNOWN, ("a",)) is UNKNOWN


def test_what_is_asked_of_nothing_is_nothing_and_of_the_unknown_unknown() -> None:
    assert logic.ask(None, "rating") is None
    assert logic.ask(UNKNOWN, "reason") is UNKNOWN
