"""Figures of recorded tests, those among them of which little is known."""

from __future__ import annotations

from math import inf

from checker.facts.shown import greatest_shown, is_test, least_shown, taken_at
from checker.facts.subject import Subject
from checker.quantities import Number, Range, Unknown, both
from tests.facts.van import van

LEAST = Range(0.015, 0.02)


def design(*readings: str) -> Subject:
    found = van(("readings", f"[{', '.join(readings)}]")).subject("design", "design")
    assert found is not None
    return found


def greatest(*readings: str) -> Number:
    s = design(*readings)
    return greatest_shown(s, "resistance", lambda one: is_test(s, one, "earth continuity"))


def test_the_greatest_of_the_test_counts_and_other_tests_do_not() -> None:
    assert greatest("{test: earth continuity, resistance: 0.2 Ω}", "{test: rcd trip, resistance: 3 Ω}") == 0.2
    assert greatest("{test: rcd trip, time: 20 ms}") is None


def test_one_of_an_unknown_test_may_be_the_greatest() -> None:
    assert greatest("{test: earth continuity, resistance: 0.2 Ω}", "{test: unknown, resistance: 3 Ω}") == Range(0.2, 3)
    assert isinstance(greatest("{test: unknown, resistance: 3 Ω}"), Unknown)


def test_one_that_shows_nobody_knows_what_may_be_any_but_hides_no_greater() -> None:
    hidden = "{test: earth continuity, resistance: unknown}"
    assert greatest("{test: earth continuity, resistance: 0.2 Ω}", hidden) == Range(0.2, inf)
    assert isinstance(greatest(hidden), Unknown)


def test_the_least_is_the_least_of_all_that_may_count() -> None:
    s = design("{test: rcd trip, at: main, time: 20 ms}", "{test: rcd trip, at: unknown, time: 15 ms}")
    assert least_shown(s, "time", lambda one: both(is_test(s, one, "rcd trip"), taken_at(s, one, "main"))) == LEAST
    assert least_shown(s, "time", lambda one: is_test(s, one, "polarity")) is None
