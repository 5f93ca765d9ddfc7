"""`fitout review`: one design file against the rulebook."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "html", "json", "sarif", "junit", "markdown"]
Signal = Literal["danger", "warning", "caution", "notice"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file, *.fitout.yaml.", show_default=False)],
    form: Annotated[Format, typer.Option("--format", help="How the report is written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
    code: Annotated[
        str | None, typer.Option(help="Code of practice whose limits apply, instead of the file's own.", metavar="CODE")
    ] = None,
    rules: Annotated[
        list[str] | None, typer.Option(help="A folder of further rules; may be repeated.", metavar="FOLDER")
    ] = None,
    at_least: Annotated[
        Signal, typer.Option(case_sensitive=False, help="Exit with 1 when a breach has this signal or a worse one.")
    ] = "warning",
    everything: Annotated[
        bool, typer.Option("--all", help="List what is met or not applicable and every question too, however many.")
    ] = False,
) -> int:
    """Review one design file against the rulebook.

    Prints what breaks a rule, worst first, then the questions that the file leaves open.

    Exit status: 0 no breach at or above --at-least; 1 there is one; 2 the design, the rules, an
    option or the output could not be used. What is unproven does not change the status: read
    the count.
    """
    from checker.commands.loading import input_files, load_design, load_requirements, load_rules, reviewed
    from checker.commands.output import deliver, wants_colour
    from checker.commands.progress import Progress
    from checker.commands.status import exit_status
    from checker.reports import render
    from checker.reports.day_section import day_section
    from checker.reports.document import document
    from checker.reports.not_checked import not_checked
    from checker.reports.rule_list import coverage_of
    from checker.reports.supply_states import supply_states

    folders = [Path(folder) for folder in rules or []]
    with Progress(f"reviewing {file}"):
        design = load_design(file)
        rulebook = load_rules(folders)
        found = reviewed(design, rulebook, code, everything)
        coverage = coverage_of(rulebook.rules, load_requirements())
        report = document(found, everything=everything, not_checked=not_checked(found, coverage))
        supply = supply_states(design) if form == "html" else None
        day = day_section(design) if form == "html" else None
    pieces = render(report, form, colour=output is None and wants_colour(), whole=everything, supply=supply, day=day)
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), input_files(file, folders))
    return exit_status(report, at_least.upper())
