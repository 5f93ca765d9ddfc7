from __future__ import annotations

import math

import pytest

from checker.facts.dc_amounts import CASES, EXTREMES, Amount, Book, about, exactly, number, smaller, stated
from checker.quantities import UNKNOWN, Range, Unknown


def test_low_and_high_are_the_ends_that_lower_and_raise_the_voltage() -> None:
    ohm = Amount(2.0, 1.0, 3.0)
    assert [ohm.of(case, raises=False) for case in CASES] == [2.0, 3.0, 1.0]
    assert [ohm.of(case, raises=True) for case in CASES] == [2.0, 1.0, 3.0]


def test_only_what_is_not_known_moves_between_least_and_most() -> None:
    assert [Amount(2.0, 1.0, 3.0).of(case, raises=True) for case in EXTREMES] == [2.0, 2.0]
    unknown = Amount(2.0, 1.0, 3.0, False)
    assert [unknown.of(case, raises=True) for case in EXTREMES] == [1.0, 3.0]
    assert [unknown.of(case, raises=True) for case in CASES] == [2.0, 2.0, 2.0]


def test_a_number_and_a_range_of_the_design_are_told_and_nothing_else_is() -> None:
    assert stated(5.0) == exactly(5.0)
    assert stated(Range(4.0, 6.0)) == Amount(5.0, 4.0, 6.0)
    for value in (UNKNOWN, None, math.inf, Range(4.0, math.inf)):
        assert stated(value) is None


def test_a_word_is_no_number() -> None:
    assert isinstance(number("stopped"), Unknown)
    assert number(3.0) == 3.0


def test_what_is_missing_and_what_is_assumed_is_noted_once() -> None:
    book = Book()
    assert not book.amount(UNKNOWN, "the length", 1.0, 3.0).known
    book.amount(UNKNOWN, "the length", 1.0, 3.0)
    assert book.amount_or(UNKNOWN, "a fuse drops 80 mV", 1.0, 2.0, 3.0) == Amount(2.0, 1.0, 3.0)
    assert list(book.missing) == ["the length"]
    assert list(book.assumed) == ["a fuse drops 80 mV; common practice, no source"]


def test_what_the_design_tells_is_neither() -> None:
    book = Book()
    assert book.amount(7.0, "x", 0.0, 9.0) == exactly(7.0)
    assert book.amount_or(7.0, "x", 0.0, 1.0, 9.0) == exactly(7.0)
    assert not book.missing
    assert not book.assumed


def test_the_smaller_of_two_is_taken_end_by_end() -> None:
    assert smaller(Amount(5.0, 1.0, 9.0), exactly(4.0)) == Amount(4.0, 1.0, 4.0)
    assert not smaller(exactly(1.0), Amount(2.0, 1.0, 3.0, False)).known


def test_about_and_times_widen_and_scale() -> None:
    assert about(exactly(100.0), 0.01) == Amount(100.0, 99.0, 101.0)
    assert Amount(2.0, 1.0, 3.0).times(2.0) == pytest.approx(Amount(4.0, 2.0, 6.0))
