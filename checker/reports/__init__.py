"""Reports: one review as text, HTML, JSON, SARIF, JUnit or Markdown. Each format is a module, loaded when asked for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from checker.reports.day_section import DaySection
    from checker.reports.document import Document
    from checker.reports.supply_states import SupplyStates

FORMATS = ("text", "html", "json", "sarif", "junit", "markdown")


def render(
    document: Document,
    form: str,
    *,
    colour: bool = False,
    whole: bool = False,
    supply: SupplyStates | None = None,
    day: DaySection | None = None,
) -> Iterator[str]:
    """The report in the format `form`, as pieces of text in order; `colour` is for text alone, `supply` and `day` for
    the page; `whole` has text and Markdown tell every question, however many there are.

    Raises
    ------
    ValueError: there is no such format.
    """
    if form == "text":
        from checker.reports.text import text

        return text(document, colour=colour, whole=whole)
    if form == "html":
        from checker.reports.html import html

        return html(document, supply, day)
    if form == "json":
        from checker.reports.json import json

        return json(document)
    if form == "sarif":
        from checker.reports.sarif import sarif

        return sarif(document)
    if form == "junit":
        from checker.reports.junit import junit

        return junit(document)
    if form == "markdown":
        from checker.reports.markdown import markdown

        return markdown(document, whole=whole)
    raise ValueError(f"no report format {form!r}; there are {', '.join(FORMATS)}")
