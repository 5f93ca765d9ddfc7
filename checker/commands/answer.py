"""`fitout answer`: the answers to a survey, written into the design they were asked of."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file, *.fitout.yaml.", show_default=False)],
    answers: Annotated[
        str,
        typer.Argument(
            metavar="ANSWERS", help="The answered file that `survey --format answers` made.", show_default=False
        ),
    ],
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """Write the answers to a survey into the design.

    Prints the design with each answer in its place; comments, order and everything else stay as
    they are, and the file itself is not touched. What is still unknown changes nothing.

    Exit status: 0 the design was written; 2 the design, an answer or the output could not be used,
    and nothing was written.
    """
    import checker.facts  # noqa: F401 - fills the catalogue
    from checker.commands.loading import load_design
    from checker.commands.output import deliver
    from checker.commands.refusal import Refused, why
    from checker.reading.source import decode, load_bytes
    from checker.reports.words import counted
    from checker.review.answers import answered
    from checker.source.problems import SourceErrors

    design = load_design(file)
    try:
        text = Path(file).read_bytes().decode("utf-8")
        found = answered(text, design, decode(load_bytes(answers), answers), answers)
    except SourceErrors as errors:
        raise Refused(*str(errors).splitlines()) from errors
    except OSError as error:
        raise Refused(f"{file}: {why(error)}") from error
    if output is None:
        deliver([found.text])
    else:
        deliver([found.text.encode("utf-8")], Path(output), [Path(file), Path(answers)])
    typer.echo(f"{counted(found.written, 'answer')} written, {found.left} still unknown", err=True)
    return 0
