"""Writing SVG by hand: nothing of a design file gets out of the place it is put."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lxml import etree

from checker.reports.svg import element, lines, number, path, shortened, text, width


@given(st.text(max_size=60))
def test_any_text_gives_one_well_formed_element_with_nothing_inside_but_text(words: str) -> None:
    found = etree.fromstring(text(1.0, 2.0, words, title=words))
    assert found.tag == "text" and len(found) == 0


def test_text_that_is_markup_stays_text() -> None:
    found = etree.fromstring(element("title", None, of='"><script>'))
    assert found.get("of") == '"><script>'
    assert etree.fromstring(text(0, 0, "a < b & c > d")).text == "a < b & c > d"


@pytest.mark.parametrize(
    ("value", "shown"), [(1.0, "1"), (1.25, "1.25"), (-0.001, "0"), (100.0, "100"), (0.1 + 0.2, "0.3")]
)
def test_numbers_have_at_most_two_decimals_and_one_form(value: float, shown: str) -> None:
    assert number(value) == shown


def test_a_line_goes_through_its_points_in_order() -> None:
    assert path([(0.0, 1.0), (2.5, 3.0)], class_="route") == '<polyline points="0,1 2.5,3" class="route"/>'


@given(st.text(alphabet="ab cdWMil", max_size=80), st.floats(5.0, 60.0))
def test_broken_text_fits_its_room_and_keeps_its_words_in_order(words: str, room: float) -> None:
    found = lines(words, 2.5, room)
    assert all(width(line, 2.5) <= room for line in found)
    kept = "".join(found).replace(" ", "")
    if "…" not in kept:
        assert kept == "".join(words.split())


def test_text_too_long_is_cut_where_one_sees_it() -> None:
    cut = shortened("a very long name indeed", 2.5, 20.0)
    assert cut.endswith("…") and width(cut, 2.5) <= 20.0
    assert shortened("short", 2.5, 20.0) == "short"
    assert shortened("a very long name indeed " * 50_000, 2.5, 20.0) == cut
    assert shortened("a very long name indeed", 2.5, 0.0) == "…"


def test_bold_text_is_taken_wider() -> None:
    assert width("Plan", 3.0, bold=True) > width("Plan", 3.0)
