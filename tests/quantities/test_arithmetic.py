"""Arithmetic encloses every result of the numbers in its operands."""

from __future__ import annotations

from collections.abc import Callable
from math import exp, inf, sqrt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.quantities import (
    UNKNOWN,
    OutOfRange,
    Range,
    Unknown,
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
from tests.quantities.strategies import finite, holds, numbers, point_of, ranges

OPERATIONS = [add, subtract, multiply, divide, least, greatest, total]


@given(st.data(), numbers, numbers)
@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda f: f.__name__)
def test_the_result_holds_the_result_of_any_numbers_within(
    operation: Callable[..., Any], data: st.DataObject, a: Any, b: Any
) -> None:
    assert holds(operation(a, b), operation(data.draw(point_of(a)), data.draw(point_of(b))))


@given(finite, finite)
def test_exact_numbers_give_the_rounded_exact_result(a: float, b: float) -> None:
    assert add(a, b) == rounded(a + b)
    assert subtract(a, b) == rounded(a - b)
    assert multiply(a, b) == rounded(a * b)
    assert least(a, b) == min(a, b)
    assert greatest(a, b) == max(a, b)
    assert total(a, b) == rounded(a + b)
    if abs(b) > 1e-200:
        assert divide(a, b) == rounded(a / b)


def test_sums_are_free_of_the_last_bit() -> None:
    assert add(0.1, 0.2) == 0.3
    assert subtract(0.3, 0.1) == 0.2
    assert multiply(3, 0.1) == 0.3
    assert total([0.1] * 10) == 1.0
    assert rounded(1.23456789012345) == 1.23456789012
    assert str(rounded(-0.0)) == "0.0"
    assert str(multiply(-1.0, 0.0)) == "0.0"


@given(st.lists(st.one_of(finite, ranges()), max_size=6), st.randoms())
def test_a_total_does_not_depend_on_the_order(terms: list[Any], random: Any) -> None:
    shuffled = list(terms)
    random.shuffle(shuffled)
    assert repr(total(terms)) == repr(total(shuffled))


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda f: f.__name__)
def test_absence_comes_before_unknown_and_unknown_before_range(operation: Callable[..., Any]) -> None:
    why = Unknown("why")
    assert operation(None, why) is None
    assert operation(Range(1.0, 2.0), None) is None
    assert operation(why, Range(1.0, 2.0)) == why
    assert operation(1.0, why) == why


@pytest.mark.parametrize(
    ("found", "right"),
    [
        (add(Range(1, 2), Range(10, 20)), Range(11, 22)),
        (add(Range(1, inf), 1.0), Range(2, inf)),
        (add(Range(1, inf), Range(-inf, 1)), UNKNOWN),
        (subtract(Range(1, 2), Range(10, 20)), Range(-19, -8)),
        (subtract(Range(1, inf), Range(1, inf)), UNKNOWN),
        (multiply(Range(-1, 2), Range(3, 4)), Range(-4, 8)),
        (multiply(Range(1, inf), 0.0), 0.0),
        (multiply(Range(-inf, 2), 0.0), 0.0),
        (multiply(Range(0, 1), Range(0, inf)), Range(0, inf)),
        (divide(Range(1, 2), Range(4, 8)), Range(0.125, 0.5)),
        (divide(Range(1, 2), Range(4, inf)), Range(0, 0.5)),
        (divide(Range(1, inf), Range(4, inf)), Range(0, inf)),
        (divide(Range(5, inf), Range(-inf, -2)), Range(-inf, 0)),
        (divide(1.0, 0.0), Unknown("division by zero")),
        (divide(1.0, Range(-1, 1)), Unknown("division by what may be zero")),
        (least(Range(1, 5), Range(2, 3)), Range(1, 3)),
        (greatest(Range(1, 5), 2.0), Range(2, 5)),
        (least(Range(2, 3), 2.0), 2.0),
        (total([Range(1, 2), 3.0, Range(-inf, 0)]), Range(-inf, 5)),
        (total([]), 0.0),
    ],
)
def test_worked_cases(found: Any, right: Any) -> None:
    assert found == right


def test_the_least_or_greatest_of_nothing_is_absent() -> None:
    assert least([]) is None
    assert greatest() is None


def test_numbers_are_given_one_by_one_or_as_one_list() -> None:
    assert least(3.0, 1.0, 2.0) == least([3.0, 1.0, 2.0]) == least(x for x in (3.0, 1.0, 2.0)) == 1.0
    assert greatest(3.0) == greatest([3.0]) == 3.0
    assert total(1.0, 2.0) == total((1.0, 2.0)) == 3.0
    assert total(UNKNOWN) == UNKNOWN
    assert total(None) is None


def test_a_result_beyond_the_largest_float_is_unknown_and_a_range_stays_sound() -> None:
    too_large = Unknown("the result is too large to compute")
    assert multiply(1e300, 1e300) == too_large
    assert add(1.7e308, 1.7e308) == too_large
    assert total([1.7e308, 1.7e308]) == too_large
    assert multiply(Range(1.0, 1e300), 1e300) == Range(1e300, inf)
    found = multiply(Range(1e200, 1e300), 1e300)
    assert isinstance(found, Range)
    assert found.high == inf
    assert found.low < inf


# Monotone in each argument: rising, falling, or one of them only on a part of the line.
MONOTONE: list[Callable[[float, float], float]] = [
    lambda x, y: x + 2 * y,
    lambda x, y: x - y,
    lambda x, y: x * y,
    lambda x, y: max(x, y),
    lambda x, y: -x - y**3,
]


@given(st.data(), ranges(), ranges())
@pytest.mark.parametrize("f", MONOTONE, ids=["sum", "difference", "product", "greater", "cubic"])
def test_corners_enclose_a_monotone_function(
    f: Callable[[float, float], float], data: st.DataObject, a: Any, b: Any
) -> None:
    point = corners(f, data.draw(point_of(a)), data.draw(point_of(b)))
    assert holds(corners(f, a, b), point)


def test_corners_of_exact_numbers_are_the_rounded_value() -> None:
    assert corners(lambda x, y: x / y, 1.0, 3.0) == rounded(1 / 3)
    assert corners(sqrt, 4.0) == 2.0
    assert corners(lambda: 5.0) == 5.0


def test_corners_try_every_combination_of_ends_and_no_more() -> None:
    seen = []

    def f(x: float, y: float, z: float) -> float:
        seen.append((x, y, z))
        return x * y - z

    assert corners(f, Range(1, 2), 10.0, Range(0, 5)) == Range(5, 20)
    assert sorted(seen) == [(1, 10, 0), (1, 10, 5), (2, 10, 0), (2, 10, 5)]


def test_corners_collapse_when_the_range_does_not_matter() -> None:
    assert corners(lambda x: 7.0, Range(1, 2)) == 7.0


def test_corners_outside_the_validity_of_the_formula_are_unknown_in_its_words() -> None:
    def f(x: float) -> float:
        if x > 90:
            raise OutOfRange("temperature in °C", x, (20.0, 90.0), "an invented formula")
        return x

    assert corners(f, 80.0) == 80.0
    for value in (100.0, Range(80, 100)):
        found = corners(f, value)
        assert isinstance(found, Unknown)
        assert "temperature in °C 100 is outside 20 to 90" in found.reason


def test_corners_of_a_range_without_an_end_that_the_formula_cannot_take_are_unknown() -> None:
    assert corners(lambda x: exp(x) - 1, Range(0, inf)) == Range(0, inf)
    assert isinstance(corners(lambda x: sqrt(x), Range(-inf, 4)), Unknown)
    assert isinstance(corners(lambda x, y: x * y, Range(0, inf), Range(0, inf)), Unknown)


def test_other_errors_of_the_formula_come_through() -> None:
    with pytest.raises(ZeroDivisionError):
        corners(lambda x: 1 / x, 0.0)
    with pytest.raises(ZeroDivisionError):
        corners(lambda x: 1 / x, Range(0, 1))
    with pytest.raises(ValueError, match="math domain"):
        corners(sqrt, Range(-1, 4))


def test_corners_put_absence_before_unknown() -> None:
    assert corners(lambda x, y: x + y, None, UNKNOWN) is None
    assert corners(lambda x, y: x + y, Range(1, 2), Unknown("why")) == Unknown("why")
