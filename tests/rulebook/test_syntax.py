"""What may stand in an expression at all: hostile and oversized texts are refused before anything else is done."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.rulebook.syntax import DEEPEST, LONGEST, MOST_BRACKETS, ExpressionError, Source, parse_expression

HOSTILE = [
    "().__class__.__bases__[0].__subclasses__()",
    "lambda: 1",
    "(lambda x: x)(1)",
    "[x for x in conductor.list]",
    "{x for x in conductor.list}",
    "{x: 1 for x in conductor.list}",
    "f'{conductor.a}'",
    "(a := 1) > 0",
    "10**9 > 1",
    "9**9**9**9 > 1",
    "2 << 99999 > 1",
    "'%s' % conductor.a",
    "conductor.a[0]",
    "conductor.a if true else false",
    "*conductor.a",
    "await conductor.a",
    "(yield)",
    "conductor.a is none",
    "conductor.a & 1",
    "~conductor.a",
    "...",
    "1j > 0",
    "b'x' == conductor.a",
    "u'x' == conductor.a",
    "None",
    "True",
    "import os",
    "a = 1",
    "conductor.a; conductor.b",
    "conductor.a\\\n",
    "conductor.a\x00",
    "conductor.a == '\\x41'",
    "'" * 3 + "x" + "'" * 3 + "\x0c",
    "",
    "   ",
    "every(x async for x in conductor.list)",
    "1" * 400 + " > 1",
    "1e999 > 1",
]


@pytest.mark.parametrize("text", HOSTILE)
def test_a_text_that_is_no_expression_of_the_language_is_refused(text: str) -> None:
    with pytest.raises(ExpressionError) as caught:
        parse_expression(text)
    assert caught.value.what
    assert caught.value.right
    assert 0 <= caught.value.offset <= len(text)


@pytest.mark.parametrize(
    "text",
    [
        "(" * 5000 + "conductor.a" + ")" * 5000,
        "(" * (MOST_BRACKETS + 1) + "conductor.a" + ")" * (MOST_BRACKETS + 1),
        "-" * (LONGEST - 20) + "conductor.a",
        "not " * 100 + "conductor.a",
        "conductor" + ".a" * (DEEPEST + 1),
        "conductor.a == '" + "x" * LONGEST + "'",
        " or ".join(["a.b"] * 150),
    ],
    ids=["brackets", "brackets just over", "minus signs", "nots", "dots", "huge string", "many parts"],
)
def test_an_oversized_text_is_refused_without_effort(text: str) -> None:
    with pytest.raises(ExpressionError):
        parse_expression(text)


def test_a_text_of_ordinary_size_is_parsed() -> None:
    tree, source = parse_expression(" every(device.rating <= conductor.capacity for device in conductor.protected_by) ")
    assert source.text[slice(*source.span(tree))].startswith("every(")


def test_places_count_characters_where_the_parser_counts_bytes() -> None:
    tree, source = parse_expression("design.ambient > '30 °C' and x.y")
    last = tree.values[1]  # type: ignore[attr-defined]
    assert source.text[slice(*source.span(last))] == "x.y"


def test_leading_blanks_do_not_move_a_place() -> None:
    with pytest.raises(ExpressionError) as caught:
        parse_expression("    a.b ** 2 > 1")
    assert caught.value.offset == 4


def test_a_source_of_several_lines_is_one_line() -> None:
    assert Source("a.b\nand c.d").text == "a.b and c.d"


@settings(max_examples=300, deadline=None)
@given(st.text(max_size=60))
def test_any_text_is_parsed_or_refused_in_words(text: str) -> None:
    try:
        parse_expression(text)
    except ExpressionError as error:
        assert error.what
