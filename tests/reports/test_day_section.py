"""The day of the house on the page: charts with the same numbers as tables, or what is missing for them."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from lxml import html as lxml_html

from checker.commands import run
from checker.commands.loading import load_design
from checker.reading import read_text
from checker.reports import render
from checker.reports.chart import COLOURS
from checker.reports.day_section import DaySection, day_section
from checker.reports.html import TEMPLATES
from tests.reports.sample import sample
from tests.reports.test_html import THEMES, contrast, palette

ROOT = Path(__file__).parents[2]
COACH = ROOT / "examples" / "estuary-coach.fitout.yaml"
SURVEY = ROOT / "examples" / "saltbush-survey.fitout.yaml"


def coach(old: str = "", new: str = "") -> DaySection:
    text = COACH.read_text("utf-8")
    assert old in text
    found = day_section(read_text(text.replace(old, new)))
    assert found is not None
    return found


def page_of(day: DaySection | None) -> Any:
    return lxml_html.document_fromstring("".join(render(sample(), "html", day=day)))


def section_of(day: DaySection | None) -> Any:
    (found,) = page_of(day).xpath("//section[@aria-labelledby='day']")
    return found


def test_each_chart_is_a_picture_with_title_description_and_a_table() -> None:
    section = section_of(coach())
    drawings = section.xpath(".//svg")
    assert len(drawings) == 2
    for drawing in drawings:
        assert drawing.get("role") == "img"
        for name in drawing.get("aria-labelledby").split():
            assert drawing.xpath(f".//*[@id='{name}']/text()")[0].strip()
    assert [table.text for table in section.xpath(".//table/caption")] == [
        "State of charge through the day, charge, %", "Power through the day, power, W",
    ]  # fmt: skip
    assert [len(table.xpath("./tbody/tr")) for table in section.xpath(".//table")] == [96, 96]


def test_the_table_tells_the_time_as_a_clock_does_and_the_charge_of_that_time() -> None:
    rows = section_of(coach()).xpath("(.//table)[1]/tbody/tr")
    told = {row.xpath("./th/text()")[0]: row.xpath("./td/text()") for row in rows}
    assert told["07:15"] == ["45", "20"]  # the lowest, and what shall be kept
    assert told["24:00"] == ["54", "20"]


def test_the_section_says_what_the_command_says(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["day", str(COACH)]) == 0
    command = " ".join(capsys.readouterr().out.split())
    day = coach()
    assert len(day.says) >= 5
    for sentence in (*day.says, *day.assumed):
        assert sentence in command


def test_what_is_not_known_is_named_and_nothing_is_drawn() -> None:
    section = section_of(coach("sun hours: 4.5 h", "sun hours: unknown"))
    assert section.xpath(".//li/text()") == ["what sun brings"]
    assert not section.xpath(".//svg | .//table")


def test_uses_that_are_not_known_are_asked_for() -> None:
    text = re.sub(r"uses: \{.*?\}", "uses: unknown", COACH.read_text("utf-8"))
    day = day_section(read_text(text))
    assert day is not None
    assert day.charts == ()
    assert "what a day uses is not told" in day.lacks[0]


def test_a_design_that_tells_no_day_has_no_section() -> None:
    found = day_section(load_design(str(SURVEY)))
    assert found is None
    assert not page_of(found).xpath("//section[@aria-labelledby='day']")


def test_the_review_as_a_page_holds_the_section_and_the_same_bytes_each_time(tmp_path: Path) -> None:
    for name in ("one", "two"):
        assert run(["review", str(COACH), "--format", "html", "--output", str(tmp_path / name)]) in (0, 1)
    page = (tmp_path / "one").read_text("utf-8")
    assert 'id="day-charge-title"' in page
    assert page == (tmp_path / "two").read_text("utf-8")


@pytest.mark.parametrize("theme", THEMES)
def test_every_line_stands_out_from_the_page(theme: str) -> None:
    colours = palette(theme)
    for n in range(1, len(COLOURS) + 1):
        assert contrast(colours[f"series-{n}"], colours["paper"]) >= 4.5
        assert f".series-{n} {{ color: var(--series-{n}); }}" in (TEMPLATES / "report.css").read_text("utf-8")


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("width", [320, 900])
def test_the_accessibility_checker_finds_nothing_in_the_section(
    browser: Any, tmp_path: Path, theme: str, width: int
) -> None:
    from axe_playwright_python.sync_playwright import Axe

    file = tmp_path / "report.html"
    file.write_text("".join(render(sample(), "html", day=coach())), "utf-8")
    context = browser.new_context(color_scheme=theme, viewport={"width": width, "height": 800})
    page = context.new_page()
    page.goto(file.as_uri())
    page.eval_on_selector_all("details", "all => all.forEach(each => each.open = true)")
    answer = Axe().run(page).response
    over = page.evaluate("() => document.documentElement.scrollWidth - document.documentElement.clientWidth")
    context.close()
    assert answer["violations"] == []
    assert over <= 0


def test_on_paper_the_lines_are_dark_and_the_whole_table_is_printed(browser: Any, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    file.write_text("".join(render(sample(), "html", day=coach())), "utf-8")
    context = browser.new_context(color_scheme="dark")
    page = context.new_page()
    page.goto(file.as_uri())
    colour = "() => getComputedStyle(document.querySelector('.series-1')).color"
    shown = "() => { const e = document.querySelector('.long'); return e.scrollHeight - e.clientHeight }"
    dark = page.evaluate(colour)
    page.emulate_media(media="print", color_scheme="dark")
    paper, hidden = page.evaluate(colour), page.evaluate(shown)
    context.close()
    assert (dark, paper) == ("rgb(142, 196, 255)", "rgb(11, 83, 148)")
    assert hidden <= 0
