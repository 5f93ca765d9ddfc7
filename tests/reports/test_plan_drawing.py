"""The drawing of a fit-out: to scale, complete, the same every time, and readable without colour."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from checker.design.model import Design
from checker.reading import read_design, read_text
from checker.reports.document import Document
from checker.reports.plan_drawing import STYLE, VIEWS, plan_drawing
from checker.reports.plan_scene import scene, travels
from checker.reports.plan_sheet import TALL, WIDE, Frame, flags, settle, sheet
from tests.reports.sample import finding, nothing_found

ROOT = Path(__file__).resolve().parents[2]
SVG = "{http://www.w3.org/2000/svg}"
COACH = ROOT / "examples" / "estuary-coach.fitout.yaml"


@cache
def coach() -> Design:
    return read_design(str(COACH))


def report(*findings: Any) -> Document:
    return {**nothing_found(), "findings": list(findings)}


def breach(kind: str, name: str, signal: str = "WARNING") -> Any:
    return finding("a-rule", "breach", signal, kind, name, 7)


def drawn(design: Design, document: Document, view: str = "plan") -> Any:
    return etree.fromstring("".join(plan_drawing(design, document, view)).encode())


def classed(picture: Any, name: str) -> list[Any]:
    return [one for one in picture.iter() if name in (one.get("class") or "").split()]


def words(picture: Any) -> str:
    return "\n".join(one.text or "" for one in picture.iter(f"{SVG}text"))


def test_a_view_that_does_not_exist_is_refused_with_those_that_do() -> None:
    with pytest.raises(ValueError, match="there are plan, side"):
        next(plan_drawing(coach(), report(), "front"))


@pytest.mark.parametrize("view", VIEWS)
def test_the_same_design_gives_the_same_bytes(view: str) -> None:
    document = report(breach("equipment", "inverter"), breach("conductor", "link-12"))
    again = read_design(str(COACH))
    assert "".join(plan_drawing(coach(), document, view)) == "".join(plan_drawing(again, document, view))


@pytest.mark.parametrize("view", VIEWS)
def test_everything_stands_on_a4_sheets(view: str) -> None:
    picture = drawn(coach(), report(*(breach("equipment", name) for name in coach().equipment)), view)
    _, _, wide, tall = map(float, picture.get("viewBox").split())
    assert wide == WIDE == 297.0 and tall % TALL == 0 and picture.get("width") == "297mm"
    for one in picture.iter(f"{SVG}text", f"{SVG}rect"):
        assert -0.1 <= float(one.get("x", 0)) <= WIDE and -0.1 <= float(one.get("y", 0)) <= TALL


def test_title_description_and_caution_are_there_for_whoever_cannot_see_the_picture() -> None:
    picture = drawn(coach(), report())
    assert picture.get("aria-labelledby") == "title desc"
    assert picture.find(f"{SVG}title").text == f"Plan, seen from above: {nothing_found()['design']['title']}"
    assert nothing_found()["caution"] in picture.find(f"{SVG}desc").text
    assert "Mains and high-current" in words(picture)


def test_boxes_are_to_scale() -> None:
    picture = drawn(coach(), report())
    scale = int(re.findall(r"Scale 1:(\d+)", words(picture))[0])
    inverter = next(one for one in classed(picture, "body") if (one[0].text or "").startswith("inverter:"))
    assert float(inverter.get("width")) == pytest.approx(0.36 * 1000 / scale, abs=0.01)
    assert float(inverter.get("height")) == pytest.approx(0.26 * 1000 / scale, abs=0.01)


def test_the_side_view_shows_heights() -> None:
    picture = drawn(coach(), report(), "side")
    scale = int(re.findall(r"Scale 1:(\d+)", words(picture))[0])
    inverter = next(one for one in classed(picture, "body") if (one[0].text or "").startswith("inverter:"))
    assert float(inverter.get("height")) == pytest.approx(0.45 * 1000 / scale, abs=0.01)


def test_bands_of_voltage_differ_by_the_kind_of_line() -> None:
    style = STYLE.read_text("utf-8")
    picture = drawn(coach(), report())
    bands = [band for band in ("low", "high", "mains", "earth") if classed(picture, band)]
    assert bands == ["low", "high", "mains", "earth"]
    how = {
        band: re.sub(r"stroke: [^;]+;", "", re.findall(rf"\.{band} \{{(.*?)\}}", style)[0]).strip() for band in bands
    }
    assert len(set(how.values())) == len(bands)  # with the colours taken away they still differ
    assert "mains: long dash and dot" in words(picture)


def test_a_moving_part_is_hatched_with_its_travel() -> None:
    picture = drawn(coach(), report())
    way = next(one for one in classed(picture, "way") if one.find(f"{SVG}title") is not None)
    assert way.get("fill") == "url(#sweep)"
    assert "slide travels 900 mm to the right" in words(picture) or "slide travels 0.9 m to the right" in words(picture)


def test_a_breach_is_flagged_with_signal_word_and_a_number_that_the_list_explains() -> None:
    picture = drawn(coach(), report(breach("equipment", "inverter", "DANGER"), breach("conductor", "link-12")))
    shown = words(picture)
    assert "1 DANGER" in shown and "2 WARNING" in shown
    assert "1 DANGER: inverter" in shown and "2 WARNING: circuit link-12" in shown
    assert "DANGER, inverter: Title of a-rule (line 7)" in shown


def test_a_breach_without_a_place_on_the_drawing_is_listed_as_such() -> None:
    picture = drawn(coach(), report(breach("design", "design"), breach("place", "floor-duct")))
    assert "not on the drawing, WARNING: the whole design" in words(picture)
    assert "not on the drawing, WARNING: place floor-duct" in words(picture)
    assert not classed(picture, "flag")


def test_what_is_unproven_carries_no_flag_and_is_counted() -> None:
    document = report(finding("a-rule", "unproven", "DANGER", "equipment", "inverter", 7))
    document["counts"]["unproven"] = 1
    picture = drawn(coach(), document)
    assert not classed(picture, "flag")
    assert "1 unproven: the file does not say enough" in words(picture)


def test_equipment_without_a_box_is_not_drawn_but_listed() -> None:
    picture = drawn(coach(), report())
    assert not [one for one in classed(picture, "body") if (one[0].text or "").startswith("F6:")]
    assert "F6, fuse: no box of its own: somewhere in the place" in words(picture)


def test_many_flags_do_not_cover_each_other() -> None:
    found = scene(coach(), report(*(breach("circuit", name) for name in coach().circuits)))
    area = Frame(20.0, 60.0, 260.0, 90.0)
    placed = sheet(found, "plan", area)
    assert placed is not None
    marks = [mark for mark in found.marks if mark.point is not None]
    flown = flags(marks, [placed.flat(mark.point) for mark in marks if mark.point is not None], area)
    assert len(flown) == len(marks) > 15
    for index, one in enumerate(flown):
        assert one.number == index + 1
        assert all(one.frame.shares(other.frame) == 0 for other in flown[index + 1 :])
        assert one.frame.shares(area) == 0


def test_a_name_goes_where_it_covers_least() -> None:
    area = Frame(0, 0, 100, 100)
    first, second = (Frame(10, 10, 20, 3), 0.0), (Frame(10, 30, 20, 3), 0.5)
    assert settle([first, second], [], [], area) == first[0]
    assert settle([first, second], [Frame(15, 9, 5, 5)], [], area) == second[0]


SMALL = """
fitout: 1
title: {title}
code: intl
vehicle: {{kind: motorhome{axes}}}
places:
  bay: {{kind: locker{box}}}
equipment: {{lamp: {{kind: lamp, power: 5 W}}, cell: {{kind: battery}}}}
circuits: {{light: {{from: cell, to: lamp, run: [1 m], return: same}}}}
modes: {{parked: {{engine: stopped}}}}
"""


def small(title: str = "Bare", axes: str = "", box: str = "") -> Design:
    return read_text(SMALL.format(title=title, axes=axes, box=box))


def test_a_design_without_any_box_says_so_and_keeps_its_lists() -> None:
    picture = drawn(small(), report())
    assert "Nothing to draw" in words(picture)
    assert "Places with a box" in words(picture)


def test_a_title_that_is_markup_stays_text() -> None:
    picture = drawn(small(title='"<script>alert(1)</script>"'), {**report(), "design": {
        "file": "x", "title": "<script>alert(1)</script>", "sha256": "0" * 64}})  # fmt: skip
    assert not list(picture.iter(f"{SVG}script"))


def test_axes_that_are_not_told_are_named_as_taken() -> None:
    box = ", box: {at: [0 m, 0 m, 0 m], size: [1 m, 1 m, 1 m]}"
    assert "x is taken rearward" in words(drawn(small(box=box), report()))
    told = ", axes: {x: forward, y: to the left}"
    assert "x is taken rearward" not in words(drawn(small(axes=told, box=box), report()))


@pytest.mark.parametrize(
    ("axes", "left_of"), [("x: rearward, y: to the right", True), ("x: forward, y: to the right", False)]
)
def test_the_nose_is_at_the_left_whichever_way_x_points(axes: str, left_of: bool) -> None:
    design = small(axes=f", axes: {{{axes}}}", box=", box: {at: [1 m, 0 m, 0 m], size: [1 m, 1 m, 1 m]}")
    placed = sheet(scene(design, report()), "plan", Frame(0, 0, 200, 100))
    assert placed is not None
    assert (placed.flat((0.0, 0.0, 0.0))[0] < placed.flat((1.0, 0.0, 0.0))[0]) is left_of


def test_a_box_of_uncertain_size_is_drawn_at_its_outermost_and_broken() -> None:
    box = ", box: {at: [0 m, 0 m, 0 m], size: [1..2 m, 1 m, 1 m]}"
    found = scene(small(box=box), report())
    assert found.places[0].doubtful and found.places[0].high == (2.0, 1.0, 1.0)
    assert classed(drawn(small(box=box), report()), "doubt")


def test_travel_is_told_by_the_sides_of_the_vehicle() -> None:
    found = scene(coach(), report())
    assert travels(found.moving[0], found).endswith("to the right")
    assert travels(found.moving[0], found._replace(rightward=-1.0)).endswith("to the left")


def test_a_part_that_turns_is_drawn_by_the_box_around_its_way() -> None:
    text = COACH.read_text("utf-8")
    hinge = (("moving.slide.hinge", "{at: [3.2 m, 0.2 m, 0.9 m], along: z}"), ("moving.slide.travel", "unknown"))
    found = scene(read_text(text, "coach", hinge), report())
    assert travels(found.moving[0], found) == "turns; the box around its way"
    assert classed(drawn(read_text(text, "coach", hinge), report()), "way")


def test_without_an_envelope_it_is_said_why_there_is_no_outline() -> None:
    text = COACH.read_text("utf-8")
    bare = read_text(text, "coach.fitout.yaml", (("vehicle.envelope", "unknown"),))
    assert "no envelope" in words(drawn(bare, report())) and classed(drawn(bare, report()), "envelope") == []
    assert "no envelope" not in words(drawn(coach(), report()))
