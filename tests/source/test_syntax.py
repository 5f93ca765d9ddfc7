"""Broken YAML in words a fitter can use, at the place that needs mending."""

from __future__ import annotations

import pytest

from checker.source.problems import Problems
from checker.source.tree import parse_tree


@pytest.mark.parametrize(
    ("text", "line", "column", "what"),
    [
        ("a:\n\tb: 1", 2, 1, "a tab stands in the indent"),
        ("a:\n  b: 1\n  \tc: 2", 3, 3, "a tab stands in the indent"),
        ("a: [1, 2", 1, 4, "the bracket `[` is never closed"),
        ("a: [1, 2\n\n# end\n", 1, 4, "never closed"),
        ("a:\n  b: {c: 1,", 2, 6, "the bracket `{` is never closed"),
        ("a: [1, 2\nb: 3\n", 2, 2, "missing (opened at 1:4)"),
        ("a: {b: 1\nc: 2}", 2, 2, "missing (opened at 1:4)"),
        ("a: [1, 2}", 1, 9, "missing (opened at 1:4)"),
        ('a: "x', 1, 4, "quote is never closed"),
        ("a: 'x\nb: c", 1, 4, "quote is never closed"),
        ('a: "\\q"', 1, 5, "a backslash"),
        ("a: b: c", 1, 5, "a second `: `"),
        ("a: x\n b: y", 2, 3, "a second `: `"),
        ("a: @x", 1, 4, "cannot start with `@`"),
        ("a: `x`", 1, 4, "cannot start with ```"),
        ("a: >300 A", 1, 4, "starts a block of text"),
        ("- a\nb: c", 2, 1, "does not fit the lines above"),
        ("a:\n  x: 1\n y: 2", 3, 2, "does not fit the lines above"),
        ("%FOO\n---\na: 1", 1, 5, "directive"),
        ("a: *", 1, 5, "not YAML"),
    ],
)
def test_a_broken_line_is_explained_where_it_breaks(text: str, line: int, column: int, what: str) -> None:
    problems = Problems("f")
    assert parse_tree(text, problems) is None
    (found,) = problems.found
    assert (found.line, found.column) == (line, column)
    assert what in found.what and found.right
