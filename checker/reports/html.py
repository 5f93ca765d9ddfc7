"""The report as one page that needs no network and no script: for the screen, light or dark, and for paper."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from checker.reports import supply_words
from checker.reports.caution import MET_MEANS
from checker.reports.overview import asked, overview
from checker.reports.plain import plain
from checker.reports.sections import sections
from checker.reports.supply_drawing import supply_drawing
from checker.reports.wording import few, need, place, record, subject, tally
from checker.reports.words import (
    DANGERS_MEAN,
    FIRST_MEANS,
    NO_NEED,
    QUESTIONS_MEAN,
    SHORT_MEANS,
    VERDICT_MEANS,
    counted,
)

if TYPE_CHECKING:
    from jinja2 import Environment

    from checker.reports.day_section import DaySection
    from checker.reports.document import Document
    from checker.reports.supply_states import SupplyStates

TEMPLATES = Path(__file__).parent / "templates"

CLASS_OF: Final = {"DANGER": "danger", "WARNING": "warning", "CAUTION": "caution-word", "NOTICE": "notice"}


def html(document: Document, supply: SupplyStates | None = None, day: DaySection | None = None) -> Iterator[str]:
    """The page in pieces; with the supply states of the mains side and the day of the house where there are some."""
    from markupsafe import Markup

    template = environment().get_template("report.html.j2")
    parts = sections(document)
    yield from template.generate(
        report=document,
        parts=parts,
        short=overview(parts.questions),
        asked=asked(parts.questions, document["counts"]["unproven"]),
        tally=tally(document["counts"]),
        supply=supply,
        drawing=Markup(supply_drawing(supply)) if supply is not None else "",
        day=day,
        charts=[each._replace(svg=Markup(each.svg), table=Markup(each.table)) for each in day.charts] if day else [],
        style=Markup((TEMPLATES / "report.css").read_text(encoding="utf-8")),
    )


def environment() -> Environment:
    """Templates of ours alone: every value is escaped, and a name that is missing is an error, not a blank."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_visible,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.globals.update(
        class_of=CLASS_OF,
        counted=counted,
        dangers_mean=DANGERS_MEAN,
        first_means=FIRST_MEANS,
        met_means=MET_MEANS,
        few=few,
        no_need=NO_NEED,
        place=place,
        questions_mean=QUESTIONS_MEAN,
        record=record,
        short_means=SHORT_MEANS,
        states=supply_words,
        subject=subject,
        verdict_means=VERDICT_MEANS,
    )
    made.filters["need"] = need
    return made


def _visible(value: Any) -> Any:
    """Control characters are shown as escapes; markup of our own is left as it is."""
    return plain(value) if type(value) is str else value
