"""What a report says it did not look at."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from checker.reports.not_checked import not_checked
from checker.reports.rule_list import Coverage
from checker.rulebook import Broken

COVERAGE: Coverage = {"covered": 33, "total": 50, "decidable_covered": 30, "decidable_partly": 4, "decidable": 40}


def sentences(unproven: int = 0, broken: tuple[Broken, ...] = ()) -> list[str]:
    review: Any = SimpleNamespace(counts={"unproven": unproven}, broken=broken)
    return list(not_checked(review, COVERAGE))


def test_it_always_says_what_only_the_vehicle_shows_and_what_no_rule_covers() -> None:
    vehicle, uncovered = sentences()
    assert "only the vehicle can show" in vehicle
    assert "10 of 40 published requirements that a design file can decide" in uncovered
    assert "a part of 4 more" in uncovered
    assert "10 that need somebody who looks or measures" in uncovered


def test_it_says_that_unproven_is_not_met() -> None:
    assert "Not decided: 1 verdict, because" in sentences(1)[2]
    assert "Not decided: 2 verdicts, because" in sentences(2)[2]
    assert "Unproven is not met." in sentences(2)[2]


def test_what_broke_is_named_and_many_are_counted() -> None:
    one = Broken("a-rule", "device", "F1", "ZeroDivisionError: division by zero")
    assert "a-rule on device F1 (ZeroDivisionError: division by zero)" in sentences(0, (one,))[2]
    assert " and 3 more" in sentences(0, (one,) * 8)[2]
