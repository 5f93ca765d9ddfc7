"""What a quantity can be, and that plain Python operators never decide what is not exact."""

from __future__ import annotations

import copy
import math
import operator
import pickle
from collections.abc import Callable
from math import inf
from typing import Any

import pytest

from checker.quantities import UNKNOWN, Number, Range, Undecided, Unknown, Window, between, exact, perhaps, same
from checker.quantities.values import or_more

INEXACT = [Range(1.0, 2.0), Range(-inf, 5.0), UNKNOWN, Unknown("not measured")]
COMPARISONS = [operator.lt, operator.le, operator.gt, operator.ge]
SUMS = [operator.add, operator.sub, operator.mul, operator.truediv, operator.floordiv, operator.mod, operator.pow]
ONE_SIDED: list[Callable[[Any], object]] = [
    bool,
    float,
    int,
    abs,
    round,
    operator.neg,
    math.floor,
    math.ceil,
    math.sqrt,
    math.trunc,
]


@pytest.mark.parametrize("value", INEXACT, ids=repr)
@pytest.mark.parametrize("operation", COMPARISONS + SUMS, ids=lambda f: f.__name__)
def test_an_operator_on_an_inexact_value_is_undecided_from_either_side(value: Any, operation: Any) -> None:
    for left, right in ((value, 1.5), (1.5, value), (value, value), (3, value)):
        with pytest.raises(Undecided):
            operation(left, right)


@pytest.mark.parametrize("value", INEXACT, ids=repr)
@pytest.mark.parametrize("operation", ONE_SIDED, ids=lambda f: f.__name__)
def test_a_truth_test_or_conversion_of_an_inexact_value_is_undecided(value: Any, operation: Any) -> None:
    with pytest.raises(Undecided):
        operation(value)


def test_ranges_and_unknowns_compare_by_structure_with_their_like_alone() -> None:
    assert Range(1.0, 2.0) == Range(1.0, 2.0)
    assert Range(1.0, 2.0) != Range(1.0, 3.0)
    assert Unknown("a") == Unknown("a")
    assert Unknown("a") != Unknown("b")
    other: Any
    for other in (1.0, None, "x", Unknown("")):
        with pytest.raises(Undecided):
            bool(Range(1.0, 2.0) == other)
        with pytest.raises(Undecided):
            bool(other != Range(1.0, 2.0))
    with pytest.raises(Undecided):
        bool(UNKNOWN == 1.0)


def test_a_range_must_rise() -> None:
    for low, high in ((2.0, 1.0), (1.0, 1.0), (float("nan"), 1.0)):
        with pytest.raises(ValueError, match="from a lower to a higher"):
            Range(low, high)
    with pytest.raises(ValueError, match="from a lower to a higher"):
        Window(2.0, 1.0)
    assert Window(2.0, 2.0).low == 2.0


@pytest.mark.parametrize("value", [Range(1.0, 2.0), Unknown("x"), Window(10.0, Range(14.0, 15.0))], ids=repr)
def test_values_are_immutable_hashable_and_survive_copying(value: Any) -> None:
    name = "reason" if isinstance(value, Unknown) else "low"
    with pytest.raises(AttributeError, match="cannot be changed"):
        setattr(value, name, 0.0)
    with pytest.raises(AttributeError):
        delattr(value, name)
    with pytest.raises(AttributeError):
        value.other = 1
    for twin in (copy.deepcopy(value), pickle.loads(pickle.dumps(value))):
        assert twin == value
        assert hash(twin) == hash(value)
        assert repr(twin) == repr(value)


def test_same_compares_any_two_values_without_being_undecided() -> None:
    assert same(Range(1.0, 2.0), Range(1.0, 2.0))
    assert not same(Range(1.0, 2.0), 1.0)
    assert not same(None, UNKNOWN)
    assert not same(UNKNOWN, Range(1.0, 2.0))
    assert same(None, None)
    assert Window(Range(1.0, 2.0), 3.0) == Window(Range(1.0, 2.0), 3.0)
    assert Window(Range(1.0, 2.0), 3.0) != Window(1.0, 3.0)
    assert Window(1.0, UNKNOWN) != Window(1.0, None)
    assert Window(1.0, 2.0) != (1.0, 2.0)


def test_between_gives_the_narrowest_value() -> None:
    assert between(2.0, 2.0) == 2.0
    assert between(1.0, 2.0) == Range(1.0, 2.0)
    assert between(1.0, inf) == Range(1.0, inf)
    assert between(-inf, inf) == UNKNOWN
    for low, high in ((2.0, 1.0), (inf, inf), (float("nan"), 1.0), (1.0, float("nan"))):
        with pytest.raises(ValueError, match="range"):
            between(low, high)


def test_only_one_finite_number_is_exact() -> None:
    assert exact(1.0)
    assert exact(3)
    for value in (True, inf, float("nan"), Range(1.0, 2.0), UNKNOWN, None, "1", Window(1.0, 1.0)):
        assert not exact(value)


@pytest.mark.parametrize(
    ("number", "found"),
    [(5.0, Range(0.0, 5.0)), (Range(2.0, 5.0), Range(0.0, 5.0)), (0.0, 0.0), (None, None), (UNKNOWN, UNKNOWN)],
)
def test_what_perhaps_counts_lies_between_nothing_and_all_of_it(number: Number, found: Number) -> None:
    assert same(perhaps(number), found)


@pytest.mark.parametrize(
    ("number", "found"),
    [(3.0, Range(3.0, math.inf)), (Range(2.0, 5.0), Range(2.0, math.inf)), (math.inf, math.inf), (None, None)],
)
def test_what_is_known_or_more_has_no_upper_end(number: Number, found: Number) -> None:
    assert same(or_more(number), found)


def test_of_nothing_known_there_is_no_more_to_say() -> None:
    assert isinstance(or_more(Unknown("not told")), Unknown)
