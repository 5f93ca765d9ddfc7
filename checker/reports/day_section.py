"""The day of the house as a section of the page: charts, what they come to, or what is missing for them."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.reports.chart import Chart


class DaySection(NamedTuple):
    """What a day comes to with its charts; or what is not known, and then no chart and no number."""

    lacks: tuple[str, ...]
    says: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    charts: tuple[Chart, ...] = ()


def day_section(design: Design) -> DaySection | None:
    """The section for a design; None when it tells no day.

    A day of which something is not known is not drawn: a line that counts the unknown as nothing would look like the
    answer. `fitout day` goes through it all the same and says so.
    """
    import checker.facts  # noqa: F401 - fills the catalogue
    from checker.facts.day import day_inputs, day_run
    from checker.facts.subject import Facts
    from checker.quantities import Unknown
    from checker.reports.day_chart import charge_chart, power_chart
    from checker.reports.day_report import day_document
    from checker.reports.day_text import day_sentences

    facts = Facts(design)
    whole = facts.subjects("design")[0]
    if whole.day_is_told is False:
        return None
    inputs = day_inputs(whole)
    if isinstance(inputs, Unknown):
        return DaySection((str(inputs.reason),))
    if inputs.left_out:
        return DaySection(inputs.left_out)
    run = day_run(inputs)
    document = day_document(design, facts, run, start=None, cold=False)
    charts = (charge_chart(run), power_chart(run))
    return DaySection((), tuple(day_sentences(document, run)), tuple(document["assumed"]), charts)
