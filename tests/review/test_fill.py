"""Sentences of findings: templates with values, and sentences made of a comparison."""

from __future__ import annotations

from math import inf
from typing import Any

import pytest

from checker.quantities import UNKNOWN, Range, Window
from checker.review.decisive import atoms
from checker.review.fill import advise, fill, sentence
from checker.rulebook.check import check_expression
from checker.rulebook.limits import LimitSpec
from checker.rulebook.template import loops_in, read_template
from checker.rulebook.walk import Scene
from tests.rulebook.small import Thing, small_catalogue

CATALOGUE = small_catalogue()
LIMITS = {"reach": LimitSpec("reach", "number", "mm", (), "")}


def scene(**facts: Any) -> Scene:
    return Scene((Thing("conductor", "feed", **facts), Thing("design", "design")), {"reach": 0.3})


def made(text: str, **facts: Any) -> str:
    tree = check_expression(text, "conductor", CATALOGUE, LIMITS)
    return sentence(atoms(tree, scene(**facts), text))


def filled(template: str, require: str, **facts: Any) -> str:
    loops = loops_in(check_expression(require, "conductor", CATALOGUE, LIMITS))
    return fill(read_template(template, "conductor", CATALOGUE, LIMITS, loops), scene(**facts))


@pytest.mark.parametrize(
    ("text", "facts", "says"),
    [
        ("conductor.current <= conductor.capacity", {"current": 40.0, "capacity": 30.0},
         "current of feed is 40 A, more than the capacity of feed, 30 A"),
        ("conductor.length < limits.reach", {"length": 0.3},
         "length of feed is 0.3 m, not less than the limit for reach, 300 mm"),
        ("conductor.current >= '30 A'", {"current": 20.0}, "current of feed is 20 A, less than 30 A"),
        ("conductor.current > '30 A'", {"current": 30.0}, "current of feed is 30 A, not more than 30 A"),
        ("conductor.covering == 'conduit'", {"covering": "split tube"}, "covering of feed is split tube, not conduit"),
        ("conductor.covering != 'conduit'", {"covering": "conduit"},
         "covering of feed is conduit, the same as conduit"),
        ("conductor.covering in ('conduit', 'split tube')", {"covering": "none"},
         "covering of feed is none, not in conduit, split tube"),
        ("conductor.voltage in conductor.window", {"voltage": 9.0, "window": Window(10.0, 15.0)},
         "voltage of feed is 9 V, not in 10..15 V"),
        ("'conduit' in conductor.coverings", {"coverings": ("split tube",)},
         "coverings of feed is split tube, without conduit"),
        ("'conduit' in conductor.coverings", {}, "coverings of feed is unknown"),
        ("not ('conduit' in conductor.coverings)", {"coverings": ("conduit",)},
         "coverings of feed is conduit, with conduit"),
        ("conductor.is_live", {"is_live": False}, "is live of feed: no"),
        ("conductor.is_live", {}, "is live of feed: unknown"),
        ("conductor.main_device != none", {"main_device": None}, "main device of feed is none"),
        ("conductor.main_device == none", {}, "main device of feed is unknown"),
        ("conductor.current <= conductor.capacity * 2", {"current": 70.0, "capacity": 30.0},
         "current of feed is 70 A, more than 60 A (conductor.capacity * 2)"),
        ("conductor.main_device.trip_free", {"main_device": None}, "main device of feed is none"),
        ("conductor.main_device.rating > '1 A'", {}, "main device of feed is unknown, compared with 1 A"),
        ("count(conductor.protected_by) >= 1", {"protected_by": ()},
         "count(conductor.protected_by) is 0, less than 1"),
        ("some(device.trip_free for device in conductor.protected_by)", {"protected_by": ()},
         "protected by of feed is nothing"),
        ("conductor.current <= '30 A'", {"current": Range(20.0, 40.0)},
         "current of feed is 20..40 A, compared with 30 A"),
    ],
)  # fmt: skip
def test_a_comparison_becomes_a_sentence(text: str, facts: dict[str, Any], says: str) -> None:
    assert made(text, **facts) == says


def fuses(*ratings: float) -> tuple[Thing, ...]:
    return tuple(Thing("device", f"F{at}", rating=rating) for at, rating in enumerate(ratings, 1))


SOME = "some(device.rating <= conductor.capacity for device in conductor.protected_by)"
EVERY = SOME.replace("some", "every")


def test_several_subjects_that_fail_alike_are_told_together() -> None:
    said = made(SOME, capacity=30.0, protected_by=fuses(40.0, 50.0))
    assert said == "rating of F1 is 40 A, rating of F2 is 50 A: more than the capacity of feed, 30 A"


def test_a_long_list_is_cut() -> None:
    said = made(SOME, capacity=30.0, protected_by=fuses(*(40.0 + at for at in range(9))))
    assert "F4 is 43 A and 5 more: more than" in said


@pytest.mark.parametrize(
    ("require", "says"),
    [(SOME, "Swap 40 A and 20 A for 15 A."), (EVERY, "Swap 40 A and 20 A for 15 A.")],
)
def test_a_placeholder_of_a_loop_speaks_of_the_subjects_that_fail(require: str, says: str) -> None:
    template = "Swap {{ device.rating }} for {{ conductor.capacity }}."
    assert filled(template, require, capacity=15.0, protected_by=fuses(40.0, 20.0)) == says


def test_a_placeholder_of_every_leaves_out_the_subjects_that_hold() -> None:
    assert filled("{{ device }}", EVERY, capacity=30.0, protected_by=fuses(40.0, 20.0)) == "F1"


def test_a_placeholder_of_an_empty_loop_says_none() -> None:
    assert filled("{{ device.rating }}", SOME, capacity=30.0, protected_by=()) == "none"


def test_values_that_are_not_known_are_said_to_be_so() -> None:
    assert filled("{{ conductor.capacity }}, {{ conductor.main_device }}", SOME, main_device=None) == "unknown, none"
    assert filled("{{ limits.reach }}", SOME, capacity=UNKNOWN) == "300 mm"


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("Fit a device of at most {{ conductor.capacity }}.", "Fit a device of at most 14 A."),
        ("Keep it within {{ conductor.capacity }}.", "Keep it within 14 A."),
        ("Fit one of at least {{ conductor.capacity }}.", "Fit one of at least 16 A."),
        ("It carries {{ conductor.capacity }}.", "It carries 14..16 A."),
    ],
)
def test_a_mend_tells_the_end_of_a_range_that_surely_suffices(words: str, told: str) -> None:
    template = read_template(words, "conductor", CATALOGUE, LIMITS, {})
    assert advise(template, scene(capacity=Range(14.0, 16.0))) == told


def test_an_open_end_suffices_for_nothing_so_the_whole_range_is_told() -> None:
    template = read_template("Fit one of at least {{ conductor.capacity }}.", "conductor", CATALOGUE, LIMITS, {})
    assert advise(template, scene(capacity=Range(16.0, inf))) == fill(template, scene(capacity=Range(16.0, inf)))
