"""Sentences with places to fill in: only names of facts, limits and subjects, checked when loaded."""

from __future__ import annotations

from typing import Any

import pytest

from checker.rulebook.check import check_expression
from checker.rulebook.limits import LimitSpec
from checker.rulebook.syntax import ExpressionError
from checker.rulebook.template import Slot, loops_in, read_template
from tests.rulebook.small import small_catalogue

CATALOGUE = small_catalogue()
LIMITS = {"drop": LimitSpec("drop", "number", "%", (), "")}
REQUIRE = (
    "every(device.trip_free and some(conductor.is_live for conductor in device.protects) "
    "for device in conductor.protected_by)"
)
LOOPS = loops_in(check_expression(REQUIRE, "conductor", CATALOGUE, LIMITS))


def read(text: str) -> Any:
    return read_template(text, "conductor", CATALOGUE, LIMITS, LOOPS)


def test_text_without_places_is_itself() -> None:
    assert read("Fit a device.") == ("Fit a device.",)


@pytest.mark.parametrize(
    ("name", "depth"),
    [
        ("conductor.capacity", 0),
        ("limits.drop", 0),
        ("design.ambient", 0),
        ("conductor", 0),
        ("device.rating", 1),
        ("device", 1),
    ],
)
def test_a_place_names_a_fact_a_limit_or_a_subject(name: str, depth: int) -> None:
    before, slot, after = read(f"a {{{{ {name} }}}} b")
    assert (before, after) == ("a ", " b")
    assert isinstance(slot, Slot)
    assert len(slot.loop) == depth


def test_a_loop_in_a_loop_is_known_with_the_one_around_it() -> None:
    assert [gather.function for gather in LOOPS["conductor"]] == ["every", "some"]


@pytest.mark.parametrize(
    "text",
    ["{{ conductor.capasity }}", "{{ 1 + 1 }}", "{{ }}", "{{ x", "x }}", "{{ conductor.capacity > '1 A' }}",
     "{{ open('x') }}", "{{ conductor.__class__ }}", "{{ none }}", "{{ count(conductor.protected_by) }}"],
)  # fmt: skip
def test_anything_else_is_refused(text: str) -> None:
    with pytest.raises(ExpressionError):
        read(text)


def test_the_place_of_a_mistake_is_counted_in_the_whole_sentence() -> None:
    with pytest.raises(ExpressionError) as caught:
        read("Fit {{ device.ratin }}.")
    assert caught.value.offset == len("Fit {{ device.")
