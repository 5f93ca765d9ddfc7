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


def test_each_line_has_marks_of_its_own_on_the_line_and_beside_its_name() -> None:
    long = tuple(float(n) for n in range(97))
    lines = [Line(f"line {n}", long) for n in range(6)]
    groups = [one for one in tree(drawn(*lines, places=long)).iter(f"{SVG}g") if "series" in (one.get("class") or "")]
    shapes = []
    for one in groups:
        marks = [mark.get("points") or "" for mark in one.iter(f"{SVG}polygon")]
        assert 8 <= len(marks) - 1 <= 10
        corners = [tuple(float(part) for part in corner.split(",")) for corner in marks[-1].split()]
        shapes.append(tuple((round(x - corners[0][0], 1), round(y - corners[0][1], 1)) for x, y in corners))
    assert len(set(shapes)) == 6


def test_hours_are_told_as_a_clock_does() -> None:
    found = drawn(SUN, places=(0.25, 12.0, 24.0), x=Axis("time", marks=(0.0, 12.0, 24.0), clock=True))
    assert re.findall(r'<th scope="row">([^<]*)</th>', found.table) == ["00:15", "12:00", "24:00"]
    assert ">12:00</text>" in found.svg


def test_names_stay_clear_of_the_numbers_on_the_lower_axis() -> None:
    same = [Line(name, (0.0, 0.0, 0.0)) for name in ("sun", "driving", "shore")]
    heights = [float(one.get("y") or 0) for one in tree(drawn(*same)).iter(f"{SVG}text") if one.get("fill")]
    numbers = [float(one.get("y") or 0) for one in tree(drawn(*same)).iter(f"{SVG}text") if one.text == "2"]
    assert max(heights) + 8.0 <= numbers[0]


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
