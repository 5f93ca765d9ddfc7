"""The tree of a rule file keeps places, and refuses what a rule file has no use for."""

from __future__ import annotations

import pytest

from checker.rulebook.problems import Problems
from checker.rulebook.source import LARGEST, RULE, Map, Text, load_tree, place_in


def read(text: str | bytes) -> tuple[Map | None, list[str]]:
    problems = Problems("x.yaml")
    tree = load_tree(text.encode() if isinstance(text, str) else text, problems)
    return tree, [str(problem) for problem in problems.found]


def test_every_scalar_is_the_text_that_was_written() -> None:
    tree, found = read("a: yes\nb: 12:30\nc: 0x10\nd: 1e3\n")
    assert tree is not None and not found
    texts = [node.text for _, node in tree.entries.values() if isinstance(node, Text)]
    assert texts == ["yes", "12:30", "0x10", "1e3"]


@pytest.mark.parametrize(
    ("text", "offset", "place"),
    [
        ("require: a.b > c.d\n", 6, (1, 16)),
        ("require: 'a.b > c.d'\n", 6, (1, 17)),
        ("require: 'it''s > c.d'\n", 7, (1, 19)),
        ("require: a.b\n  > c.d\n", 6, (2, 5)),
        ("require: >\n  a.b\n  > c.d\n", 6, (3, 5)),
        ("require: >\n\n    a.b >\n    c.d\n", 7, (4, 5)),
        ('require: "a.b > c.d"\n', 6, (1, 17)),
        ("x: °C\nrequire: '°C °C' == c.d\n", 0, (2, 11)),
    ],
)
def test_a_place_inside_a_text_is_a_place_in_the_file(text: str, offset: int, place: tuple[int, int]) -> None:
    if text.startswith("x:"):
        text = text.replace("'°C °C' == c.d", '"°C °C == c.d"')
    tree, _ = read(text)
    assert tree is not None
    node = tree.get("require")
    assert isinstance(node, Text)
    at = place_in(node, offset)
    assert (at.line, at.column) == place


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("a: 1\na: 2\n", "x.yaml:2:1: the key `a` stands twice, first at 1:1"),
        ("a: &x 1\nb: *x\n", "x.yaml:1:4: `&x` is an anchor, which is not read; write the value out"),
        ("a: *x\n", "x.yaml:1:4: `*x` is an alias, which is not read"),
        ("a: !!python/object:os.system x\n", "is a tag, which is not read"),
        ("? [a]\n: 1\n", "where a key belongs"),
        ("- a\n", "the file is a list; it should hold keys and values: start with a key such as"),
        ("", "the file is empty; start with a key such as `id: name-of-the-duty`"),
        ("a: [1\n", "x.yaml:1:4: the bracket `[` is never closed; close it"),
        ("a: b: c\n", "x.yaml:1:5: "),
        ("a: 1\n---\nb: 2\n", "second document"),
        ("a: " + "[" * (RULE.deepest + 1) + "]" * (RULE.deepest + 1), "nested more than 12 deep"),
        ("a: [" + "1," * (RULE.most_nodes + 1) + "]", "more than 10,000 values; one file is one rule"),
        ("a: " + "x" * LARGEST, "bytes, more than"),
        (b"a: \xff\n", "x.yaml:1:1: the byte 0xFF is not UTF-8"),
        ("a: \x07\n", "x.yaml:1:4: the character U+0007 does not belong"),
    ],
    ids=lambda value: str(value)[:25],
)
def test_what_a_rule_file_has_no_use_for_is_refused_with_its_place(text: str | bytes, said: str) -> None:
    tree, found = read(text)
    assert tree is None
    assert found
    assert said in found[0]


def test_an_alias_bomb_is_refused_at_its_first_anchor() -> None:
    bomb = "a: &a [x, x]\n" + "".join(f"{b}: &{b} [*{a}, *{a}]\n" for a, b in zip("abcdefgh", "bcdefghi", strict=True))
    tree, found = read(bomb)
    assert tree is None
    assert found[0].startswith("x.yaml:1:4:")


def test_line_ends_of_windows_and_a_byte_order_mark_do_not_matter() -> None:
    tree, found = read(b"\xef\xbb\xbfa: 1\r\nb: 2\r\n")
    assert tree is not None and not found
    assert [(key.line, key.column) for key, _ in tree.entries.values()] == [(1, 1), (2, 1)]
