"""The report as Markdown, read by a Markdown reader."""

from __future__ import annotations

import pytest
from lxml import html
from markdown_it import MarkdownIt

from checker.reports import render
from checker.reports.markdown import code, words
from tests.reports.sample import sample

READER = MarkdownIt("commonmark", {"html": True}).enable("table").enable("strikethrough")


@pytest.mark.parametrize(
    "text",
    ["*a* **b** _c_", "`tick` ``two``", "<script>alert(1)</script>", "[x](http://y) ![z](http://q)", "a | b", "# no",
     "~~x~~", "&amp; &lt;", "1. x", "\\", "__init__", "<!-- c -->", "{x}"],
)  # fmt: skip
def test_text_of_a_design_is_never_markup(text: str) -> None:
    page = html.fromstring(READER.render(f"x {words(text)} x"))
    assert page.text_content() == f"x {text} x\n".rstrip("\n")
    assert [each.tag for each in page.iter()] == ["p"]


@pytest.mark.parametrize("text", ["plain", "with `tick`", "``", "a`b``c"])
def test_a_name_as_code_is_shown_as_it_is(text: str) -> None:
    (found,) = html.fromstring(READER.render(code(text))).iter("code")
    assert found.text_content() == text


def test_a_table_stays_a_table_and_no_markup_leaks_in() -> None:
    page = html.fromstring(f"<div>{READER.render(''.join(render(sample(everything=True), 'markdown')))}</div>")
    assert len(page.findall(".//table/tbody/tr")) == 5
    assert not page.findall(".//script") + page.findall(".//a") + page.findall(".//em")


def test_backticks_in_the_working_do_not_end_it() -> None:
    document = sample()
    document["findings"][0]["working"] = ["```", "# heading", "````"]
    page = html.fromstring(f"<div>{READER.render(''.join(render(document, 'markdown')))}</div>")
    assert page.find(".//pre/code").text_content() == "```\n# heading\n````\n"
