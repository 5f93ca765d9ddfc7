"""`fitout day`: the house battery through one day."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "json"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file.", show_default=False)],
    form: Annotated[Format, typer.Option("--format", help="How the day is written.")] = "text",
    start: Annotated[
        str | None,
        typer.Option(
            help="State of charge at midnight, 0 to 100 %; left out: after a like day that began full.",
            metavar="PERCENT",
        ),
    ] = None,
    cold: Annotated[bool, typer.Option("--cold", help="A coldest day: no charging in frost.")] = False,
    days: Annotated[
        str | None,
        typer.Option(
            help="A trip of so many like days, 1 to 366, told day by day; from full, or from --start.", metavar="NUMBER"
        ),
    ] = None,
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """Go through the day that the design tells, in steps of a quarter of an hour.

    State of charge, what each source brings, what is missing, how long it takes to be full again,
    how hard the alternator works. What the file does not say is named and counted as nothing.
    """
    import checker.facts  # noqa: F401 - fills the catalogue
    from checker.commands.loading import input_files, load_design
    from checker.commands.output import deliver, wants_colour
    from checker.commands.refusal import Refused
    from checker.facts.day import day_inputs, day_run, trip_runs
    from checker.facts.subject import Facts
    from checker.quantities import Unknown
    from checker.reports.day_report import day_document
    from checker.reports.day_text import day_text

    design = load_design(file)
    facts = Facts(design)
    inputs = day_inputs(facts.subjects("design")[0])
    if isinstance(inputs, Unknown):
        raise Refused(f"{file}: a day cannot be told: {inputs.reason}")
    if cold and not inputs.cold:
        raise Refused(f"{file}: --cold needs the charging window of the house battery and the coldest air")
    charge = None if start is None else _charge(start)
    run = day_run(inputs, charge, cold=cold)
    trip = () if days is None else trip_runs(inputs, _days(days), charge, cold=cold)
    document = day_document(design, facts, run, start=charge, cold=cold, trip=trip)
    if form == "json":
        import json

        pieces = iter([json.dumps(document, indent=2, ensure_ascii=False) + "\n"])
    else:
        pieces = day_text(document, run, colour=output is None and wants_colour())
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), input_files(file, ()))
    return 0


def _charge(text: str) -> float:
    """A state of charge from `80` or `80 %`. Raises Refused."""
    from checker.commands.refusal import Refused

    try:
        percent = float(text.strip().removesuffix("%"))
    except ValueError:
        percent = -1.0
    if not 0.0 <= percent <= 100.0:
        raise Refused(f"--start: {text!r} is no state of charge; write a number from 0 to 100, such as 80")
    return percent / 100.0


def _days(text: str) -> int:
    """Days of a trip. Raises Refused."""
    from checker.commands.refusal import Refused

    if not (text.isascii() and text.isdigit() and len(text) <= 3 and 1 <= int(text) <= 366):
        raise Refused(f"--days: {text!r} is no number of days; write a whole number from 1 to 366, such as 5")
    return int(text)
