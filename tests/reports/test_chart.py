"""Charts that are also read without sight, without colour and on paper."""

from __future__ import annotations

import itertools
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checker.reports.chart import HIGH, WIDE, Axis, Chart, Line, chart

SVG = "{http://www.w3.org/2000/svg}"
HOURS, POWER = Axis("hour"), Axis("power, W", 1)


def drawn(*lines: Line, places: tuple[float, ...] = (0.0, 1.0, 2.0), x: Axis = HOURS) -> Chart:
    return chart("day", "Power <through> the day", 'It rises to "5" & falls.', x, POWER, places, lines)


def tree(found: Chart) -> ElementTree.Element:
    return ElementTree.fromstring(found.svg)


SUN = Line("sun", (0.0, 5.0, 2.0))
USE = Line("use", (1.0, 1.0, 1.0))


def test_title_and_description_are_there_and_named_by_the_picture() -> None:
    root = tree(drawn(SUN))
    title, desc = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None and desc is not None
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == f"{title.get('id')} {desc.get('id')}" == "day-title day-desc"
    assert (title.text, desc.text) == ("Power <through> the day", 'It rises to "5" & falls.')


def test_the_table_holds_every_number_of_the_chart() -> None:
    table = drawn(SUN, USE).table
    assert re.findall(r"<td>([^<]*)</td>", table) == ["0.0", "1.0", "5.0", "1.0", "2.0", "1.0"]
    assert '<th scope="col">sun</th>' in table
    assert "<caption>Power &lt;through&gt; the day, power, W</caption>" in table


def test_lines_differ_without_colour() -> None:
    lines = list(tree(drawn(SUN, USE)).iter(f"{SVG}polyline"))
    assert len(lines) == 2
    assert len({one.get("stroke-dasharray") for one in lines}) == 2


def test_each_line_carries_its_name_and_the_names_do_not_cover_each_other() -> None:
    same = [Line(name, (1.0, 1.0, 1.0)) for name in ("sun", "driving", "shore", "use")]
    texts = [one for one in tree(drawn(*same)).iter(f"{SVG}text") if one.text in ("sun", "driving", "shore", "use")]
    heights = sorted(float(one.get("y") or 0) for one in texts)
    assert len(heights) == 4
    assert all(b - a >= 12 for a, b in itertools.pairwise(heights))
    assert heights[-1] <= HIGH


def test_marks_stand_where_they_are_asked_for() -> None:
    root = tree(drawn(SUN, places=(0.25, 12.0, 24.0), x=Axis("hour", 2, (0.0, 12.0, 24.0))))
    told = {one.text: float(one.get("x") or 0) for one in root.iter(f"{SVG}text") if one.get("text-anchor") == "middle"}
    assert told["12"] - told["0"] == pytest.approx(told["24"] - told["12"])


@pytest.mark.parametrize(
    ("places", "values"),
    [((0.0,), (1.0,)), ((1.0, 0.0), (1.0, 2.0)), ((0.0, 1.0), (1.0,)), ((0.0, 1.0), (1.0, float("inf")))],
)
def test_what_cannot_be_drawn_is_refused(places: tuple[float, ...], values: tuple[float, ...]) -> None:
    with pytest.raises(ValueError):
        chart("x", "t", "d", HOURS, POWER, places, [Line("a", values)])


def test_a_chart_without_a_line_is_refused() -> None:
    with pytest.raises(ValueError):
        chart("x", "t", "d", HOURS, POWER, (0.0, 1.0), [])


@given(st.lists(st.floats(-1e6, 1e6, allow_nan=False), min_size=3, max_size=3).map(tuple))
def test_every_point_lies_on_the_paper(values: tuple[float, ...]) -> None:
    for one in tree(drawn(Line("a", values))).iter(f"{SVG}polyline"):
        for point in (one.get("points") or "").split():
            x, y = (float(part) for part in point.split(","))
            assert 0 <= x <= WIDE
            assert 0 <= y <= HIGH


def test_the_same_numbers_give_the_same_bytes() -> None:
    assert drawn(SUN, USE) == drawn(SUN, USE)
