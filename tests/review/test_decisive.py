"""Only what decided a requirement is shown, traced and asked for."""

from __future__ import annotations

from typing import Any

import pytest

from checker.quantities import UNKNOWN
from checker.review.decisive import atoms, leaves, limits_in, subjects_in
from checker.rulebook.check import check_expression
from checker.rulebook.limits import LimitSpec
from checker.rulebook.walk import Scene
from tests.rulebook.small import Thing, small_catalogue

CATALOGUE = small_catalogue()
LIMITS = {"reach": LimitSpec("reach", "number", "mm", (), "")}


def decided(text: str, **facts: Any) -> list[str]:
    """The text of each part that decided the condition, with the devices it is at."""
    tree = check_expression(text, "conductor", CATALOGUE, LIMITS)
    scene = Scene((Thing("conductor", "feed", **facts), Thing("design")), {"reach": 0.3})
    return [
        text[slice(*atom.node.span)] + "".join(f" @{subject.id}" for subject in atom.scene.subjects[2:])
        for atom in atoms(tree, scene, text)
    ]


LIVE, LONG, FULL = "conductor.is_live", "conductor.length <= limits.reach", "conductor.current <= '30 A'"


@pytest.mark.parametrize(
    ("text", "facts", "shown"),
    [
        (f"{LIVE} and {FULL}", {"is_live": True, "current": 40.0}, [FULL]),
        (f"{LIVE} and {FULL}", {"is_live": False, "current": 40.0}, [LIVE, FULL]),
        (f"{LIVE} and {FULL}", {"is_live": True, "current": 20.0}, [LIVE, FULL]),
        (f"{LIVE} and {FULL}", {"is_live": True, "current": UNKNOWN}, [FULL]),
        (f"{LIVE} or {FULL}", {"is_live": True, "current": 40.0}, [LIVE]),
        (f"{LIVE} or {FULL}", {"is_live": False, "current": 40.0}, [LIVE, FULL]),
        (f"{LIVE} or {FULL}", {"is_live": UNKNOWN, "current": 40.0}, [LIVE]),
        (f"not ({LIVE} and {FULL})", {"is_live": True, "current": 20.0}, [LIVE, FULL]),
        (f"{LIVE} and ({FULL} or {LONG})", {"is_live": True, "current": 40.0, "length": 1.0}, [FULL, LONG]),
    ],
)
def test_of_and_and_or_the_parts_that_decided(text: str, facts: dict[str, Any], shown: list[str]) -> None:
    assert decided(text, **facts) == shown


def devices(*free: Any) -> tuple[Thing, ...]:
    return tuple(Thing("device", f"F{at}", trip_free=value, rating=10.0 * at) for at, value in enumerate(free, 1))


@pytest.mark.parametrize(
    ("function", "free", "shown"),
    [
        ("every", (True, False, UNKNOWN, False), ["F2", "F4"]),
        ("every", (True, UNKNOWN, True), ["F2"]),
        ("every", (True, True), ["F1", "F2"]),
        ("some", (False, True), ["F2"]),
        ("some", (False, False), ["F1", "F2"]),
        ("some", (False, UNKNOWN), ["F2"]),
        ("none", (False, True), ["F2"]),
        ("none", (False, False), ["F1", "F2"]),
        ("none", (False, UNKNOWN), ["F2"]),
    ],
)
def test_of_a_loop_the_subjects_that_decided(function: str, free: Any, shown: list[str]) -> None:
    text = f"{function}(device.trip_free for device in conductor.protected_by)"
    assert decided(text, protected_by=devices(*free)) == [f"device.trip_free @{name}" for name in shown]


@pytest.mark.parametrize("items", [(), None, UNKNOWN])
def test_of_a_loop_over_nothing_the_list(items: Any) -> None:
    text = "some(device.trip_free for device in conductor.protected_by)"
    assert decided(text, protected_by=items) == ["conductor.protected_by"]


def test_a_subject_whose_place_in_the_loop_is_undecided_is_asked_for_that() -> None:
    text = "every(device.trip_free for device in conductor.protected_by if device.rating > '5 A')"
    fuse = Thing("device", "F1", trip_free=False)
    assert decided(text, protected_by=(fuse,)) == ["device.rating > '5 A' @F1", "device.trip_free @F1"]


def first_leaves(text: str, **facts: Any) -> list[str]:
    tree = check_expression(text, "conductor", CATALOGUE, LIMITS)
    scene = Scene((Thing("conductor", "feed", **facts), Thing("design")), {"reach": 0.3})
    (atom,) = atoms(tree, scene, text)
    return [f"{leaf.subject.id}.{leaf.name}" for leaf in leaves(atom)]


def test_the_facts_of_a_comparison_are_those_of_both_sides() -> None:
    assert first_leaves("conductor.current * 2 <= conductor.capacity") == ["feed.current", "feed.capacity"]


def test_where_a_subject_is_missing_it_is_the_fact_that_should_have_named_it() -> None:
    assert first_leaves("conductor.main_device.rating > '1 A'", main_device=None) == ["feed.main_device"]
    assert first_leaves("conductor.main_device.rating > '1 A'") == ["feed.main_device"]


def test_a_sum_rests_on_the_list_and_on_every_item() -> None:
    text = "sum(device.rating for device in conductor.protected_by if device.trip_free) > '1 A'"
    assert first_leaves(text, protected_by=devices(True, False)) == [
        "feed.protected_by", "F1.trip_free", "F1.rating", "F2.trip_free", "F2.rating",
    ]  # fmt: skip


def test_limits_and_subjects_of_an_explanation_are_known() -> None:
    text = f"{LONG} and some(device.trip_free for device in conductor.protected_by)"
    tree = check_expression(text, "conductor", CATALOGUE, LIMITS)
    feed = Thing("conductor", "feed", length=1.0, protected_by=devices(False))
    scene = Scene((feed, Thing("design", "whole")), {"reach": 0.3})
    found = atoms(tree, scene, text)
    assert [name for atom in found for name in limits_in(atom)] == ["reach"]
    assert subjects_in(found) == {("conductor", "feed"), ("design", "whole"), ("device", "F1")}
