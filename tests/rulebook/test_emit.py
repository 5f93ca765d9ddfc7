"""The quick form, the careful form and the walk over the tree decide alike, and a decision survives knowing more."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from checker.quantities import UNKNOWN, Range
from checker.rulebook.check import check_expression
from checker.rulebook.emit import NAMES, careful_batch, quick_batch
from checker.rulebook.limits import LimitSpec
from checker.rulebook.walk import Scene, decide
from tests.rulebook.random_rules import conditions, doubtful_scenes, exact_scenes, inside, scenes_with_absence
from tests.rulebook.small import Thing, small_catalogue

CATALOGUE = small_catalogue()
LIMITS = {
    "drop": LimitSpec("drop", "number", "%", (), ""),
    "reach": LimitSpec("reach", "number", "mm", (), ""),
    "bare_allowed": LimitSpec("bare_allowed", "yes/no", "", (), ""),
}


def tree(text: str) -> Any:
    return check_expression(text, "conductor", CATALOGUE, LIMITS)


def quick(given_text: str, require_text: str, scene: Any, slow: Any = None) -> str:
    conductor, design, limits = scene
    refuse = slow or (lambda subjects: ["asked the careful form" for _ in subjects])
    return quick_batch(tree(given_text), tree(require_text), "test")([conductor], design, limits, refuse)[0]


def careful(given_text: str, require_text: str, scene: Any) -> str:
    conductor, design, limits = scene
    batch = careful_batch(tree(given_text), tree(require_text), "test")
    return batch([conductor], design, limits, lambda subject, error: f"crashed: {error!r}")[0]


def walked(given_text: str, require_text: str, scene: Any) -> str:
    conductor, design, limits = scene
    return decide(tree(given_text), tree(require_text), Scene((conductor, design), limits))


@settings(max_examples=150, deadline=None)
@given(conditions, conditions, exact_scenes)
def test_on_exact_values_all_three_forms_decide_alike(given_text: str, require_text: str, scene: Any) -> None:
    expected = walked(given_text, require_text, scene)
    assert careful(given_text, require_text, scene) == expected
    answer = quick(given_text, require_text, scene)
    # Division by zero and missing devices make unknowns and absences even of exact values.
    assert answer in (expected, "asked the careful form")


@settings(max_examples=200, deadline=None)
@given(conditions, exact_scenes)
def test_on_exact_values_that_are_all_there_the_quick_form_needs_no_help(text: str, scene: Any) -> None:
    doubtful = ("main_device", "/ design.drop", "min(", "max(")
    if not any(part in text for part in doubtful):
        assert quick("true", text, scene) in ("met", "breach")


@settings(max_examples=300, deadline=None)
@given(conditions, conditions, scenes_with_absence)
def test_absence_is_decided_alike_by_all_three_forms(given_text: str, require_text: str, scene: Any) -> None:
    expected = walked(given_text, require_text, scene)
    assert careful(given_text, require_text, scene) == expected
    assert quick(given_text, require_text, scene) in (expected, "asked the careful form")


@settings(max_examples=150, deadline=None)
@given(conditions, conditions, doubtful_scenes)
def test_the_quick_form_never_decides_what_the_careful_form_does_not(
    given_text: str, require_text: str, scene: Any
) -> None:
    expected = walked(given_text, require_text, scene)
    assert careful(given_text, require_text, scene) == expected
    assert quick(given_text, require_text, scene) in (expected, "asked the careful form")


@settings(max_examples=300, deadline=None)
@given(conditions, conditions, doubtful_scenes, st.data())
def test_a_decided_verdict_holds_for_every_value_inside_the_ranges(
    given_text: str, require_text: str, scene: Any, data: Any
) -> None:
    before = careful(given_text, require_text, scene)
    after = careful(given_text, require_text, data.draw(inside(scene)))
    if before == "met":
        # Undecided whether it applied: knowing more may show that it does not.
        assert after in ("met", "not applicable") if "unproven" in undecided(given_text, scene) else after == "met"
    elif before in ("breach", "not applicable"):
        assert after == before


def undecided(given_text: str, scene: Any) -> str:
    return careful("true", given_text, scene)


def one(**facts: Any) -> Any:
    return Thing("conductor", **facts), Thing("design"), {"drop": 0.05, "reach": 0.3, "bare_allowed": UNKNOWN}


def test_an_undecided_given_leaves_a_requirement_met_for_sure() -> None:
    scene = one(is_live=UNKNOWN, capacity=30.0, current=20.0)
    assert careful("conductor.is_live", "conductor.current <= conductor.capacity", scene) == "met"


def test_an_undecided_given_makes_a_broken_requirement_unproven() -> None:
    scene = one(is_live=UNKNOWN, capacity=30.0, current=40.0)
    assert careful("conductor.is_live", "conductor.current <= conductor.capacity", scene) == "unproven"


def test_two_ranges_written_alike_are_not_taken_for_equal() -> None:
    scene = one(capacity=Range(1.0, 2.0), current=Range(1.0, 2.0))
    assert quick("true", "conductor.current == conductor.capacity", scene) == "asked the careful form"
    assert careful("true", "conductor.current == conductor.capacity", scene) == "unproven"


def test_what_is_asked_of_a_missing_device_is_no() -> None:
    scene = one(main_device=None)
    assert careful("true", "conductor.main_device.rating <= '30 A'", scene) == "breach"
    assert careful("true", "conductor.main_device.trip_free", scene) == "breach"
    assert careful("true", "conductor.main_device == none", scene) == "met"


def test_nothing_is_said_of_a_list_that_does_not_exist() -> None:
    scene = one(main_device=None)
    for function in ("every", "some", "none"):
        text = f"{function}(conductor.is_live for conductor in conductor.main_device.protects)"
        assert careful("true", text, scene) == "breach"
    assert careful("true", "count(conductor.main_device.protects) == 0", scene) == "breach"


def test_an_unknown_list_is_undecided_whatever_is_asked_of_it() -> None:
    scene = one(protected_by=UNKNOWN)
    for text in (
        "every(device.trip_free for device in conductor.protected_by)",
        "some(device.trip_free for device in conductor.protected_by)",
        "none(device.trip_free for device in conductor.protected_by)",
        "count(conductor.protected_by) >= 1",
    ):
        assert quick("true", text, scene) == "asked the careful form"
        assert careful("true", text, scene) == "unproven"


def test_an_unknown_subject_does_not_answer_with_attributes_of_its_own() -> None:
    scene = one(main_device=UNKNOWN)
    assert quick("true", "conductor.main_device.reason == 'heat'", scene) == "asked the careful form"


def test_a_device_of_which_it_is_undecided_whether_it_counts_makes_the_count_a_range() -> None:
    devices = (Thing("device", trip_free=True), Thing("device", trip_free=UNKNOWN))
    scene = one(protected_by=devices)
    for text, verdict in ((">= 1", "met"), (">= 2", "unproven"), ("> 2", "breach")):
        condition = f"count(device for device in conductor.protected_by if device.trip_free) {text}"
        assert careful("true", condition, scene) == verdict


def test_only_the_subject_that_is_not_exact_is_put_to_the_careful_form() -> None:
    things = [Thing("conductor", str(at), capacity=value) for at, value in enumerate((5.0, UNKNOWN, 1.0))]
    asked: list[str] = []

    def slow(subjects: Any) -> list[str]:
        asked.extend(subject.id for subject in subjects)
        return ["unproven"]

    batch = quick_batch(tree("true"), tree("conductor.capacity > '2 A'"), "test")
    assert batch(things, Thing("design"), {}, slow) == ["met", "unproven", "breach"]
    assert asked == ["1"]


def test_where_many_are_not_exact_the_rest_goes_to_the_careful_form_at_once() -> None:
    things = [Thing("conductor", str(at), capacity=UNKNOWN if at < 3 else 5.0) for at in range(10)]
    asked: list[list[str]] = []

    def slow(subjects: Any) -> list[str]:
        asked.append([subject.id for subject in subjects])
        return ["unproven" for _ in asked[-1]]

    batch = quick_batch(tree("true"), tree("conductor.capacity > '2 A'"), "test")
    assert len(batch(things, Thing("design"), {}, slow)) == 10
    assert asked == [["0"], ["1"], ["2"], [str(at) for at in range(3, 10)]]


def test_compiled_code_sees_no_builtins() -> None:
    assert NAMES["__builtins__"] == {}
    assert not {"open", "eval", "exec", "__import__", "getattr"} & set(NAMES)
