"""Three-valued answers: the truth tables of strong Kleene logic, and that no decided answer is wrong."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.quantities import (
    UNKNOWN,
    Range,
    Unknown,
    Window,
    both,
    either,
    equal,
    every,
    greater,
    greater_equal,
    less,
    less_equal,
    negate,
    not_equal,
    some,
    within,
)
from tests.quantities.strategies import finite, numbers, point_of, truths

T, F, U = True, False, UNKNOWN
RELATIONS = [less, less_equal, greater, greater_equal, equal, not_equal]


def plain(answer: object) -> str:
    return "cannot tell" if isinstance(answer, Unknown) else str(answer)


@pytest.mark.parametrize(
    ("a", "b", "conjunction", "disjunction"),
    [
        (T, T, T, T),
        (T, F, F, T),
        (T, U, U, T),
        (F, T, F, T),
        (F, F, F, F),
        (F, U, F, U),
        (U, T, U, T),
        (U, F, F, U),
        (U, U, U, U),
    ],
)
def test_and_and_or_follow_the_strong_kleene_tables(a: Any, b: Any, conjunction: Any, disjunction: Any) -> None:
    assert plain(both(a, b)) == plain(conjunction)
    assert plain(either(a, b)) == plain(disjunction)
    assert plain(every([a, b])) == plain(conjunction)
    assert plain(some([a, b])) == plain(disjunction)


def test_not_turns_the_answer_and_leaves_the_unknown() -> None:
    assert negate(True) is False
    assert negate(False) is True
    assert negate(Unknown("why")) == Unknown("why")


def test_every_of_nothing_is_true_and_some_of_nothing_is_false() -> None:
    assert every([]) is True
    assert some([]) is False


def test_every_and_some_stop_at_the_answer_that_decides() -> None:
    answers: Any = iter([True, UNKNOWN, False, "never looked at"])
    assert every(answers) is False
    assert next(answers) == "never looked at"
    answers = iter([False, UNKNOWN, True, "never looked at"])
    assert some(answers) is True
    assert next(answers) == "never looked at"


@given(st.lists(truths))
def test_every_and_some_are_each_other_s_negation(answers: list[Any]) -> None:
    assert plain(every(answers)) == plain(negate(some([negate(answer) for answer in answers])))


@given(truths, truths)
def test_de_morgan_holds(a: Any, b: Any) -> None:
    assert plain(negate(both(a, b))) == plain(either(negate(a), negate(b)))


@given(truths, truths, st.booleans(), st.booleans())
def test_a_decided_and_or_or_stays_when_its_unknowns_are_settled(a: Any, b: Any, p: bool, q: bool) -> None:
    settled_a, settled_b = (p if isinstance(a, Unknown) else a), (q if isinstance(b, Unknown) else b)
    for join, python in ((both, settled_a and settled_b), (either, settled_a or settled_b)):
        answer = join(a, b)
        assert isinstance(answer, Unknown) or answer is python


@given(st.data(), numbers, numbers)
@pytest.mark.parametrize("relation", RELATIONS, ids=lambda f: f.__name__)
def test_a_decided_comparison_of_ranges_stays_for_every_number_within(
    relation: Callable[[Any, Any], Any], data: st.DataObject, a: Any, b: Any
) -> None:
    answer = relation(a, b)
    exact = relation(data.draw(point_of(a)), data.draw(point_of(b)))
    assert isinstance(exact, bool)
    if not isinstance(answer, Unknown):
        assert answer is exact


@given(finite, finite)
def test_exact_numbers_compare_as_python_compares_them(a: float, b: float) -> None:
    found = [less(a, b), less_equal(a, b), greater(a, b), greater_equal(a, b), equal(a, b), not_equal(a, b)]
    assert found == [a < b, a <= b, a > b, a >= b, a == b, a != b]


@pytest.mark.parametrize(
    ("a", "b", "is_less", "is_less_equal", "is_equal"),
    [
        (Range(1, 2), 3.0, T, T, F),
        (Range(1, 2), 2.0, U, T, U),
        (Range(1, 2), 1.0, F, U, U),
        (Range(1, 2), 0.5, F, F, F),
        (Range(1, 2), 1.5, U, U, U),
        (Range(1, 2), Range(2, 3), U, T, U),
        (Range(1, 2), Range(1, 2), U, U, U),
        (Range(1, float("inf")), 0.0, F, F, F),
        (Range(float("-inf"), 1), 2.0, T, T, F),
        (1, Range(2, 3), T, T, F),
    ],
)
def test_a_comparison_is_decided_as_soon_as_the_ends_decide_it(
    a: Any, b: Any, is_less: Any, is_less_equal: Any, is_equal: Any
) -> None:
    assert plain(less(a, b)) == plain(is_less)
    assert plain(less_equal(a, b)) == plain(is_less_equal)
    assert plain(equal(a, b)) == plain(is_equal)


def test_comparing_with_what_is_absent_is_decided() -> None:
    for other in (1.0, None, UNKNOWN, Range(1.0, 2.0)):
        for relation in (less, less_equal, greater, greater_equal):
            assert relation(None, other) is False
            assert relation(other, None) is False
    assert equal(None, None) is True
    assert equal(None, 1.0) is False
    assert equal(Range(1.0, 2.0), None) is False
    assert not_equal(None, 1.0) is True
    # What is unknown may yet turn out to be absent.
    assert equal(UNKNOWN, None) == UNKNOWN


def test_an_undecided_comparison_keeps_the_reason_of_the_unknown() -> None:
    assert less(Unknown("no torque stated"), 1.0) == Unknown("no torque stated")
    assert equal("gel", Unknown("no chemistry stated")) == Unknown("no chemistry stated")


def test_words_and_truth_values_compare_as_they_are() -> None:
    assert equal("gel", "gel") is True
    assert equal("gel", "lithium") is False
    assert equal(True, False) is False
    assert equal("gel", None) is False


def test_an_order_of_what_has_none_is_a_type_error() -> None:
    for bad in ("gel", Window(1.0, 2.0)):
        with pytest.raises(TypeError, match="no place in an order"):
            less(bad, 1.0)
        with pytest.raises(TypeError, match="no place in an order"):
            less_equal(1.0, bad)


@pytest.mark.parametrize(
    ("x", "window", "answer"),
    [
        (12.0, Window(10.0, 15.0), T),
        (15.0, Window(10.0, 15.0), T),
        (9.9, Window(10.0, 15.0), F),
        (Range(11, 14), Window(10.0, 15.0), T),
        (Range(9, 11), Window(10.0, 15.0), U),
        (Range(1, 2), Window(10.0, 15.0), F),
        (UNKNOWN, Window(10.0, 15.0), U),
        (None, Window(10.0, 15.0), F),
        (12.0, UNKNOWN, U),
        (12.0, None, F),
        (12.0, Window(Range(11, 13), 15.0), U),
        (16.0, Window(UNKNOWN, 15.0), F),
        (14.0, Window(UNKNOWN, 15.0), U),
        (1e9, Window(10.0, float("inf")), T),
        (Window(11.0, 14.0), Window(10.0, 15.0), T),
        (Window(9.0, 14.0), Window(10.0, 15.0), F),
        (Window(11.0, Range(14, 16)), Window(10.0, 15.0), U),
    ],
)
def test_within_a_window_both_ends_included(x: Any, window: Any, answer: Any) -> None:
    assert plain(within(x, window)) == plain(answer)


def test_a_range_is_no_window_to_be_within() -> None:
    with pytest.raises(TypeError, match="not a window"):
        within(1.0, Range(0.0, 2.0))


def test_windows_are_equal_end_by_end() -> None:
    assert equal(Window(1.0, 2.0), Window(1.0, 2.0)) is True
    assert equal(Window(1.0, 2.0), Window(1.0, 3.0)) is False
    assert equal(Window(1.0, UNKNOWN), Window(1.0, 3.0)) == UNKNOWN
    assert equal(Window(1.0, UNKNOWN), Window(2.0, 3.0)) is False


@given(st.data(), numbers, numbers, numbers)
def test_a_decided_within_stays_for_every_number_within(data: st.DataObject, x: Any, low: Any, high: Any) -> None:
    try:
        window = Window(low, high)
    except ValueError:
        return
    answer = within(x, window)
    point, low_point, high_point = (data.draw(point_of(value)) for value in (x, low, high))
    if not isinstance(answer, Unknown):
        assert answer is both(greater_equal(point, low_point), less_equal(point, high_point))
