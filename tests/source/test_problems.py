"""Problems: their order, their form, their number."""

from __future__ import annotations

import pytest

from checker.source.problems import Problem, Problems, SourceErrors, article, listed, shown
from checker.source.tree import Node


def test_a_problem_reads_as_place_what_and_right() -> None:
    assert str(Problem("van.yaml", 3, 7, "this is wrong", "write that")) == "van.yaml:3:7: this is wrong; write that"


def test_problems_come_in_the_order_of_the_file_and_once() -> None:
    last, first = Problem("f", 9, 1, "b", "c"), Problem("f", 2, 5, "b", "c")
    assert SourceErrors([last, first, last]).problems == (first, last)


def test_a_hundred_problems_are_shown_and_the_rest_counted() -> None:
    errors = SourceErrors(Problem("f", line, 1, "a", "b") for line in range(1, 131))
    lines = str(errors).split("\n")
    assert len(lines) == 101 and lines[99].startswith("f:100:1:") and "30 more problems" in lines[100]
    assert len(errors.problems) == 130


def test_nothing_is_raised_when_nothing_was_found() -> None:
    problems = Problems("f")
    problems.raise_any()
    problems.add(Node(1, 2), "a", "b")
    with pytest.raises(SourceErrors):
        problems.raise_any()


def test_reading_stops_at_a_thousand_problems() -> None:
    problems = Problems("f")
    with pytest.raises(SourceErrors) as caught:
        for line in range(1, 2000):
            problems.add(Node(line, 1), "a", "b")
    assert len(caught.value.problems) == 1000 and "900 more problems" in str(caught.value)


def test_the_search_for_nearest_names_ends() -> None:
    problems = Problems("f")
    assert problems.meant("ratng", ["rating"], "none") == "did you mean `rating`?"
    problems.meant("x", ["y"] * 50_000, "")
    assert problems.meant("ratng", ["rating"], "look below") == "look below"


@pytest.mark.parametrize(
    ("text", "said"), [("F1", "`F1`"), ("a\nb\x1b[2J", "`a\\nb\\x1b[2J`"), ("x" * 70, f"`{'x' * 60}…`"), ("", "``")]
)
def test_what_is_quoted_stays_on_one_line(text: str, said: str) -> None:
    assert shown(text) == said


def test_problems_stay_on_one_line_and_short() -> None:
    problems = Problems("f")
    problems.add(Node(1, 1), "a\nb\x07", "x" * 5000)
    (found,) = problems.found
    assert found.what == "a\\nb\\x07" and len(found.right) == 2001


def test_lists_read_as_a_sentence() -> None:
    assert listed([]) == ""
    assert listed(["a"]) == "`a`"
    assert listed(["a", "b", "c"]) == "`a`, `b` or `c`"
    assert listed("abcdef", 2) == "`a`, `b` and 4 more"


def test_articles_follow_the_sound() -> None:
    assert [article(kind) for kind in ("fuse", "inverter", "rcd", "outlet")] == [
        "a fuse", "an inverter", "an rcd", "an outlet",
    ]  # fmt: skip
