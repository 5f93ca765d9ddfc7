"""`fitout prove`: recorded readings beside what was to be expected."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "json"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file, *.fitout.yaml.", show_default=False)],
    form: Annotated[Format, typer.Option("--format", help="How it is written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """Compare the recorded readings with the prediction.

    For readings outside, faults are put into the network one at a time and ranked by how well
    each explains all readings of that mode; with what tells them apart.

    Exit status: 0 no reading lies outside; 1 one does; 2 the design, an option or the output
    could not be used. An undecided reading does not change the status: read the count.
    """
    from checker.commands import FOUND
    from checker.commands.loading import load_design
    from checker.commands.output import deliver, wants_colour
    from checker.commands.prediction import solved_facts
    from checker.reports.proof import OUTSIDE, proof, proof_text

    design = load_design(file)
    found = proof(design, solved_facts(design))
    if form == "json":
        from json import dumps

        pieces = iter([dumps(found, ensure_ascii=False, indent=2, allow_nan=False), "\n"])
    else:
        pieces = proof_text(found, colour=output is None and wants_colour())
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), [Path(file)])
    return FOUND if found["counts"][OUTSIDE] else 0
