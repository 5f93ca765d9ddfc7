"""Values put into a text: the tree is what edits of the tree would give, and all else stays as it stood."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from checker.source.rewrite import MORE, Put, rewrite

TEXT = """\
# head
fitout: 1
list:   # of two
  - one   # first
  - two
equipment:
  # the fuse
  F1: {kind: fuse, rating: unknown}   # to be read
  bar:
    kind: bar   # long
    rating: 300 A

  last: {}
# foot
"""


def put(text: str, path: str, value: str) -> str:
    return rewrite(text, [Put(tuple(path.split(".")), value)])


@pytest.mark.parametrize(
    ("path", "value", "old", "new"),
    [
        ("equipment.F1.rating", "40 A", "rating: unknown}", "rating: 40 A}"),
        ("equipment.F1.family", "blade", "rating: unknown}   #", "rating: unknown, family: blade}   #"),
        ("equipment.F1.rating.is", "40 A", "rating: unknown}", "rating: {is: 40 A}}"),
        ("equipment.last.kind", "bar", "last: {}", "last: {kind: bar}"),
        ("equipment.bar.rating", "400 A", "300 A", "400 A"),
        ("equipment.bar.place", "cabin", "    rating: 300 A\n", "    rating: 300 A\n    place: cabin\n"),
        ("equipment.bar", "{kind: board}", "bar:\n    kind: bar   # long\n    rating: 300 A\n", "bar: {kind: board}\n"),
        ("list", "[]", "list:   # of two\n  - one   # first\n  - two\n", "list: []   # of two\n"),
        ("list.1", "three", "- two\n", "- three\n"),
        ("papers.done.by", "me", "  last: {}\n", "  last: {}\npapers: {done: {by: me}}\n"),
        ("equipment.F1.+", "up", "unknown}", 'unknown, "+": up}'),
    ],
)
def test_only_the_place_of_the_value_changes(path: str, value: str, old: str, new: str) -> None:
    assert TEXT.count(old) == 1
    assert put(TEXT, path, value) == TEXT.replace(old, new)


def test_line_ends_and_the_mark_of_the_file_stay() -> None:
    text = "\ufeff" + TEXT.replace("\n", "\r\n")
    puts = [Put(("list", MORE), "three")]
    assert rewrite(text, puts) == text.replace("- two\r\n", "- two\r\n  - three\r\n")


@pytest.mark.parametrize(
    ("text", "new"),
    [
        ("a: [1] # one\n", "a: [1, x, y] # one\n"),
        ("a: []\n", "a: [x, y]\n"),
        ("a: word # one\n", "a: [word, x, y] # one\n"),
        ("a: unknown\n", "a: [x, y]\n"),
        ("a:\n- 1\nb: 2\n", "a:\n- 1\n- x\n- y\nb: 2\n"),
        ("b: 2\n", "b: 2\na: [x, y]\n"),
    ],
)
def test_a_list_takes_more_items_and_one_text_becomes_a_list(text: str, new: str) -> None:
    assert rewrite(text, [Put(("a", MORE), "x"), Put(("a", MORE), "y")]) == new


def test_a_file_without_a_last_line_end_takes_a_key() -> None:
    assert put("a: 1", "b", "2") == "a: 1\nb: 2"


def test_a_text_of_several_lines_ends_where_its_words_end() -> None:
    text = "a:\n  says: |\n    one\n    two\n\nb: 1\n"
    assert put(text, "a.more", "x") == "a:\n  says: |\n    one\n    two\n  more: x\n\nb: 1\n"


def test_a_key_with_dots_is_found() -> None:
    assert put("a: {b.c: 1}", "a.b.c", "2") == "a: {b.c: 2}"


@pytest.mark.parametrize(
    ("puts", "words"),
    [
        ([("equipment.bar.kind.of", "1")], "has no keys below it"),
        ([("list.4", "1")], "is a list of 2"),
        ([("list.x", "1")], "is a list of 2"),
        ([("equipment.F1.rating", "1"), ("equipment.F1.rating", "2")], "is put twice"),
        ([("equipment.F1.rating", "1"), ("equipment.F1.rating.is", "2")], "is put twice"),
    ],
)
def test_what_cannot_be_put_says_why(puts: list[tuple[str, str]], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        rewrite(TEXT, [Put(tuple(path.split(".")), value) for path, value in puts])


NAMES = st.sampled_from(["a", "b", "c", "d"])
TREES = st.recursive(
    st.sampled_from(["1", "unknown", "two words"]),
    lambda inner: st.one_of(
        st.dictionaries(NAMES, inner, min_size=1, max_size=3), st.lists(inner, min_size=1, max_size=3)
    ),
    max_leaves=12,
)
PUTS = st.lists(st.lists(st.one_of(NAMES, st.sampled_from(["0", "1"])), min_size=1, max_size=4), max_size=4)


def expected(tree: object, steps: list[str], value: str) -> object:
    """The tree with the value in its place. Raises `ValueError` where there is none."""
    if not steps:
        return value
    if tree == "unknown" or tree is None:
        tree = {}
    if isinstance(tree, dict):
        return {**tree, steps[0]: expected(tree.get(steps[0]), steps[1:], value)}
    if isinstance(tree, list) and steps[0].isdigit() and int(steps[0]) < len(tree):
        at = int(steps[0])
        return [*tree[:at], expected(tree[at], steps[1:], value), *tree[at + 1 :]]
    raise ValueError(steps)


@given(st.dictionaries(NAMES, TREES, min_size=1), st.sampled_from([None, False, True]), PUTS)
def test_the_tree_is_that_of_the_values_put_one_by_one(
    tree: dict[str, object], style: bool | None, paths: list[list[str]]
) -> None:
    text = yaml.safe_dump(tree, default_flow_style=style, sort_keys=False)
    for at, path in enumerate(paths):
        value = f"new {at}"
        try:
            tree = expected(tree, path, value)  # type: ignore[assignment]
        except ValueError:
            with pytest.raises(ValueError, match=r"."):
                rewrite(text, [Put(tuple(path), value)])
            continue
        text = rewrite(text, [Put(tuple(path), value)])
        assert yaml.load(text, Loader=yaml.BaseLoader) == tree
