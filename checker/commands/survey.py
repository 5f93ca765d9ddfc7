"""`fitout survey`: what somebody has to look at, ask or measure before the open rules can be decided."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "sheet", "answers", "json", "markdown"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file, *.fitout.yaml.", show_default=False)],
    form: Annotated[Format, typer.Option("--format", help="How the questions are written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
    code: Annotated[
        str | None, typer.Option(help="Code of practice whose limits apply, instead of the file's own.", metavar="CODE")
    ] = None,
    rules: Annotated[
        list[str] | None, typer.Option(help="A folder of further rules; may be repeated.", metavar="FOLDER")
    ] = None,
) -> int:
    """List the questions that the design leaves open, place by place, worst first.

    Each says what to look at, with which instrument, what to make dead first, what hangs on the
    answer, and which key of the file takes it. The sheet is the short form to print and take along,
    answers a file to write the answers in, which `fitout answer` takes.

    Exit status: 0 the list was made, whatever is on it; 2 the design, the rules, an option or the
    output could not be used.
    """
    import checker.facts  # noqa: F401 - fills the catalogue
    from checker.commands.loading import input_files, limits_under, load_design, load_rules
    from checker.commands.output import deliver, wants_colour
    from checker.commands.progress import Progress
    from checker.facts.subject import Facts
    from checker.reports.survey_report import survey_document
    from checker.review import review
    from checker.review.survey import survey

    folders = [Path(folder) for folder in rules or []]
    with Progress(f"reviewing {file}"):
        design = load_design(file)
        rulebook = load_rules(folders)
        if code is not None:
            limits_under(rulebook, code)
        facts = Facts(design.under(code))
        found = review(design, rulebook, code, facts=facts)
        document = survey_document(found, survey(found, rulebook, facts))
    if form == "json":
        import json

        pieces = iter([json.dumps(document, indent=2, ensure_ascii=False) + "\n"])
    elif form == "markdown":
        from checker.reports.survey_markdown import survey_markdown

        pieces = survey_markdown(document)
    elif form == "sheet":
        from checker.reports.survey_sheet import survey_sheet

        pieces = survey_sheet(document, colour=output is None and wants_colour())
    elif form == "answers":
        from checker.reports.survey_answers import survey_answers

        pieces = survey_answers(document)
    else:
        from checker.reports.survey_text import survey_text

        pieces = survey_text(document, colour=output is None and wants_colour())
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), input_files(file, folders))
    return 0
