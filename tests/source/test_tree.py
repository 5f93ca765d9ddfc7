"""The tree of a file: texts with places, and all forms that are refused."""

from __future__ import annotations

import pytest
import yaml

from checker.reading.reader import DESIGN
from checker.source import tree as module
from checker.source.problems import Problem, Problems, SourceErrors
from checker.source.tree import Manner, Mapping, Node, Scalar, Sequence, parse_fragment, parse_tree


@pytest.fixture(params=["CSafeLoader", "SafeLoader"])
def loader(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """Both parsers: the fast one, and the one that stands in where it is missing."""
    monkeypatch.setattr(module, "_LOADER", getattr(yaml, request.param))
    return str(request.param)


def tree_of(text: str) -> Mapping:
    problems = Problems("f")
    tree = parse_tree(text, problems, DESIGN)
    assert tree is not None and not problems.found, problems.found
    return tree


def found_in(text: str) -> list[Problem]:
    problems = Problems("f")
    parse_tree(text, problems, DESIGN)
    return problems.found


def only(text: str) -> Problem:
    found = found_in(text)
    assert len(found) == 1, found
    return found[0]


def place(node: Node | None) -> tuple[int, int]:
    assert node is not None
    return node.line, node.column


def scalar(node: Node | None) -> str:
    assert type(node) is Scalar
    return node.text


def test_every_scalar_stays_the_text_that_was_written(loader: str) -> None:
    tree = tree_of("a: on\nb: 1:30\nc: 010\nd: 2026-10-30\ne: 1e3\nf: 'yes'\ng: 0.10\n")
    texts = [scalar(value) for _, value in tree.entries.values()]
    assert texts == ["on", "1:30", "010", "2026-10-30", "1e3", "yes", "0.10"]


def test_places_count_characters_from_one(loader: str) -> None:
    tree = tree_of("über: {ß: [Ω, 🚐, x]}\nb:\n  - c\n")
    inner = tree.get("über")
    assert type(inner) is Mapping and place(inner) == (1, 7)
    assert place(inner.entries["ß"][0]) == (1, 8)
    items = inner.get("ß")
    assert type(items) is Sequence and [place(item) for item in items.items] == [(1, 12), (1, 15), (1, 18)]
    block = tree.get("b")
    assert type(block) is Sequence and place(block.items[0]) == (3, 5)


def test_quotes_are_remembered(loader: str) -> None:
    tree = tree_of("a: '?'\nb: x\n")
    quoted, plain = tree.get("a"), tree.get("b")
    assert type(quoted) is Scalar and not quoted.plain
    assert type(plain) is Scalar and plain.plain


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ("a: ?", 1, 4), ("a: {b: ?}", 1, 8), ("a: {b: ?, c: 1}", 1, 8), ("a: [?, 3 m]", 1, 5), ("a: [3 m, ?]", 1, 10),
        ("a:\n  - ?\n  - b", 2, 5), ("a:\n  b: ? # unread\n", 2, 6), ("a: {? : b}", 1, 5),
    ],
)  # fmt: skip
def test_a_bare_question_mark_is_told_to_be_unknown(loader: str, text: str, line: int, column: int) -> None:
    problem = only(text)
    assert problem[:3] == ("f", line, column)
    assert "bare `?`" in problem.what and "`unknown`" in problem.right


def test_a_key_twice_shows_both_places(loader: str) -> None:
    problem = only("a: 1\nb: 2\n  \na: 3\n")
    assert problem[1:3] == (4, 1) and "`a` stands twice, first at 1:1" in problem.what


def test_a_key_twice_does_not_hide_what_follows(loader: str) -> None:
    assert [found.line for found in found_in("a: 1\na: 2\nb: ~\nb: 1\n")] == [2, 3, 4]


@pytest.mark.parametrize(
    ("text", "line", "column", "what"),
    [
        ("a: !!str 1", 1, 4, "tag"), ("a: !!python/object:os.system x", 1, 4, "tag"), ("a: {b: !x {}}", 1, 8, "tag"),
        ("a: &b 1", 1, 4, "`&b` is an anchor"), ("a: &b [1]", 1, 4, "`&b` is an anchor"),
    ],
)  # fmt: skip
def test_tags_and_anchors_are_refused(loader: str, text: str, line: int, column: int, what: str) -> None:
    problem = only(text)
    assert problem[1:3] == (line, column) and what in problem.what


def test_an_alias_bomb_ends_at_its_first_alias(loader: str) -> None:
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{i}: &a{i} [{', '.join([f'*a{i - 1}'] * 9)}]" for i in range(1, 10)]
    found = found_in("\n".join(lines))
    assert (found[-1].line, found[-1].column) == (2, 10) and "`*a0` is an alias" in found[-1].what


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "a: [", "[{a: "])
def test_20_000_brackets_are_refused_early(loader: str, opening: str) -> None:
    problem = only(opening * 20_000)
    assert "nested more than 30 deep" in problem.what and problem.line == 1


def test_thirty_levels_are_read_and_one_more_is_not(loader: str) -> None:
    assert not found_in("a: " + "[" * 29 + "]" * 29)
    assert "30 deep" in only("a: " + "[" * 30 + "]" * 30).what


def test_too_many_values_are_refused(loader: str) -> None:
    few = Problems("f")
    parse_tree(f"a: [{', '.join(['x'] * 998)}]", few, Manner(most_nodes=1000))
    assert not few.found
    parse_tree(f"a: [{', '.join(['x'] * 999)}]", few, Manner(most_nodes=1000))
    assert "more than 1,000 values" in few.found[0].what


@pytest.mark.parametrize(("text", "line"), [("a: 1\n---\nb: 2\n", 2), ("---\na: 1\n...\n---\nb: 1", 4)])
def test_a_second_document_is_refused(loader: str, text: str, line: int) -> None:
    problem = only(text)
    assert problem.line == line and "second document" in problem.what


@pytest.mark.parametrize("text", ["", "\n\n", "# only a remark\n", "---\n"])
def test_an_empty_file_is_told_how_a_design_starts(loader: str, text: str) -> None:
    problem = only(text)
    assert problem[1:3] == (1, 1) and "empty" in problem.what and "`fitout: 1`" in problem.right


@pytest.mark.parametrize(("text", "what"), [("- a\n- b", "a list"), ("hello", "one text"), ("[a]", "a list")])
def test_the_top_must_be_keys_and_values(loader: str, text: str, what: str) -> None:
    assert what in only(text).what


@pytest.mark.parametrize("text", ["a: ~", "a: null", "a: {b: Null}", "a: [NULL]"])
def test_words_that_other_readers_take_for_nothing_are_refused(loader: str, text: str) -> None:
    assert "`none`" in only(text).right


def test_merge_keys_are_refused(loader: str) -> None:
    assert "`<<`" in only("a:\n  <<: {b: 1}\n").what


@pytest.mark.parametrize("text", ["? [a, b]\n: c", "{[a]: b}"])
def test_a_list_cannot_be_a_key(loader: str, text: str) -> None:
    assert "where a key belongs" in only(text).what


def test_a_missing_key_is_named_so(loader: str) -> None:
    assert "a key is missing" in found_in("a: {&x : b}")[-1].what


@pytest.mark.parametrize(
    ("text", "line", "column", "code"),
    [("a: \x07", 1, 4, "U+0007"), ("a: b\nc: \u2028", 2, 4, "U+2028"), ("a: \ud800", 1, 4, "U+D800")],
)
def test_characters_that_belong_in_no_text_are_refused(
    loader: str, text: str, line: int, column: int, code: str
) -> None:
    problem = only(text)
    assert problem[1:3] == (line, column) and code in problem.what


def test_a_fragment_may_be_anything_but_nothing() -> None:
    assert scalar(parse_fragment("3 A", "edit")) == "3 A"
    assert type(parse_fragment("[a, b]", "edit")) is Sequence
    for text in ("", "[a", "*x"):
        with pytest.raises(SourceErrors):
            parse_fragment(text, "edit")
