"""The page: complete in itself, readable by everybody, on a screen and on paper."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import jinja2
import pytest
from lxml import html as lxml_html

from checker.reports import render
from checker.reports.html import CLASS_OF, TEMPLATES, environment
from checker.reports.words import SIGNALS
from tests.reports.sample import nothing_found, sample

THEMES = ("light", "dark")
CSS = (TEMPLATES / "report.css").read_text("utf-8")


def page_of(document: Any) -> Any:
    return lxml_html.document_fromstring("".join(render(document, "html")))


def palette(theme: str) -> dict[str, str]:
    """The colours of a theme; the dark one is written inside the media query for it."""
    blocks = re.findall(r":root \{(.*?)\}", CSS, flags=re.DOTALL)
    return dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6})", blocks[THEMES.index(theme)]))


def luminance(colour: str) -> float:
    """Relative luminance of WCAG 2.2."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    low, high = sorted([luminance(one), luminance(other)])
    return (high + 0.05) / (low + 0.05)


def test_contrast_is_computed_rightly() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize(
    ("text", "ground"),
    [("ink", "paper"), ("quiet", "paper"), ("link", "paper"), ("ink", "panel"), ("quiet", "panel"),
     ("on-danger", "danger"), ("on-warning", "warning"), ("on-caution", "caution"), ("on-notice", "notice")],
)  # fmt: skip
def test_text_stands_out_from_its_ground(theme: str, text: str, ground: str) -> None:
    colours = palette(theme)
    assert contrast(colours[text], colours[ground]) >= 4.5


@pytest.mark.parametrize("theme", THEMES)
def test_the_frame_of_a_signal_word_stands_out_from_the_page(theme: str) -> None:
    colours = palette(theme)
    assert contrast(colours["ink"], colours["paper"]) >= 3


def test_colour_is_written_nowhere_but_in_the_palette() -> None:
    rules = re.sub(r":root \{.*?\}", "", CSS, flags=re.DOTALL)
    assert not re.search(r"#[0-9a-fA-F]{3,8}\b|rgb|hsl", rules)


def test_every_signal_has_its_word_beside_its_colour() -> None:
    page = page_of(sample(everything=True))
    shown = page.xpath("//span[contains(@class,'signal')]")
    assert len(shown) == 8
    for each in shown:
        assert each.text in SIGNALS
        assert CLASS_OF[each.text] in each.get("class").split()


def test_it_loads_nothing_and_runs_nothing() -> None:
    page = page_of(sample(everything=True))
    assert not page.xpath("//script | //link | //img | //iframe | //object | //@onclick | //@onload | //@style")
    assert not page.xpath("//@src")
    assert {each[:1] for each in page.xpath("//@href")} <= {"#"}
    assert "url(" not in CSS
    assert "@import" not in CSS


def test_every_link_inside_the_page_leads_somewhere_and_ids_are_unique() -> None:
    page = page_of(sample(everything=True))
    ids = page.xpath("//@id")
    assert len(ids) == len(set(ids))
    assert {each[1:] for each in page.xpath("//@href")} <= set(ids)
    assert set(page.xpath("//@aria-labelledby")) <= set(ids)


def test_headings_descend_one_step_at_a_time_from_a_single_first() -> None:
    levels = [int(each.tag[1]) for each in page_of(sample(everything=True)).xpath("//h1|//h2|//h3|//h4|//h5|//h6")]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_the_caution_comes_before_the_title() -> None:
    report = "".join(render(sample(), "html"))
    body = report[report.index("<body>") :]
    assert body.index("does not certify") < body.index("<h1>")


def test_a_name_that_the_template_does_not_get_is_an_error() -> None:
    with pytest.raises(jinja2.UndefinedError):
        environment().from_string("{{ forgotten }}").render()


def test_text_of_a_design_is_never_markup() -> None:
    page = page_of(sample(everything=True))
    assert "<script>alert(1)</script>" in page.text_content()
    assert not page.xpath("//body//script")


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("document", [sample(everything=True), nothing_found()], ids=["findings", "nothing found"])
def test_the_accessibility_checker_finds_nothing(browser: Any, tmp_path: Path, theme: str, document: Any) -> None:
    from axe_playwright_python.sync_playwright import Axe

    file = tmp_path / "report.html"
    file.write_text("".join(render(document, "html")), "utf-8")
    context = browser.new_context(color_scheme=theme)
    page = context.new_page()
    page.goto(file.as_uri())
    page.eval_on_selector_all("details", "all => all.forEach(each => each.open = true)")
    answer = Axe().run(page).response
    context.close()
    assert answer["violations"] == []
    assert len(answer["passes"]) > 10


def test_dark_and_light_differ_and_paper_is_light(browser: Any, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    file.write_text("".join(render(sample(), "html")), "utf-8")
    context = browser.new_context(color_scheme="dark")
    page = context.new_page()
    page.goto(file.as_uri())
    ground = "() => getComputedStyle(document.body).backgroundColor"
    dark = page.evaluate(ground)
    page.emulate_media(media="print", color_scheme="dark")
    paper = page.evaluate(ground)
    context.close()
    assert dark == "rgb(25, 26, 27)"
    assert paper == "rgb(255, 255, 255)"


def test_the_keyboard_reaches_the_skip_link_first_and_opens_the_working(browser: Any, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    file.write_text("".join(render(sample(), "html")), "utf-8")
    page = browser.new_page()
    page.goto(file.as_uri())
    page.keyboard.press("Tab")
    first = page.evaluate("() => document.activeElement.textContent")
    visible = page.evaluate("() => document.activeElement.getBoundingClientRect().left >= 0")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    opened = page.evaluate("() => document.querySelector('details').open")
    page.close()
    assert (first, visible, opened) == ("Skip to the findings", True, True)


def test_on_paper_the_working_is_printed_though_it_is_folded(browser: Any, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    file.write_text("".join(render(sample(), "html")), "utf-8")
    page = browser.new_page()
    page.goto(file.as_uri())
    height = "() => document.querySelector('details').getBoundingClientRect().height"
    on_screen = page.evaluate(height)
    page.emulate_media(media="print")
    on_paper = page.evaluate(height)
    page.close()
    assert on_screen < 30  # its summary alone
    assert on_paper > 70  # with the three lines of the working


@pytest.mark.parametrize("width", [320, 900])
def test_nothing_runs_over_the_side(browser: Any, tmp_path: Path, width: int) -> None:
    document = sample(everything=True)
    document["findings"][0]["about"]["id"] = "x" * 200
    file = tmp_path / "report.html"
    file.write_text("".join(render(document, "html")), "utf-8")
    page = browser.new_page(viewport={"width": width, "height": 800})
    page.goto(file.as_uri())
    over = page.evaluate("() => document.documentElement.scrollWidth - document.documentElement.clientWidth")
    page.close()
    assert over <= 0
