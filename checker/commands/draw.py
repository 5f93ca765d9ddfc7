"""`fitout draw`: the vehicle from above or from the side, with its findings."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from checker.commands.refusal import Refused

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.reports.document import Document

View = Literal["plan", "side"]
Format = Literal["svg", "png"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file, *.fitout.yaml.", show_default=False)],
    view: Annotated[View, typer.Option(help="From above, or from the left side.")] = "plan",
    form: Annotated[
        Format,
        typer.Option("--format", help="Lines for a browser or a printer, or dots; dots need the extra `picture`."),
    ] = "svg",
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
    """Draw the vehicle from above or from the side: places, equipment, routes, what moves, breaches.

    The first sheet is the drawing, to scale on A4 across; the sheets after it say the same in
    words. What has no box in the file is listed and not drawn. A picture in dots holds the
    same sheets below each other.

    Exit status: 0 drawn; 2 the design, the rules, an option or the output could not be used.
    Breaches do not change it: that is for `fitout review`.
    """
    from checker.commands.loading import input_files, load_design, load_rules, reviewed
    from checker.commands.output import deliver
    from checker.commands.progress import Progress
    from checker.reports.document import document
    from checker.reports.plan_drawing import plan_drawing

    folders = [Path(folder) for folder in rules or []]
    if form == "png" and output is None and sys.stdout is not None and sys.stdout.isatty():
        raise Refused("fitout: a picture in dots is no text for a terminal; give --output FILE")
    with Progress(f"drawing {file}"):
        design = load_design(file)
        rulebook = load_rules(folders)
        report = document(reviewed(design, rulebook, code, False))
        pieces = [_picture(design, report, view)] if form == "png" else list(plan_drawing(design, report, view))
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), input_files(file, folders))
    return 0


def _picture(design: Design, report: Document, view: str) -> bytes:
    """The drawing in dots."""
    from checker.reports.picture import CannotPicture, png, still
    from checker.reports.plan_drawing import plan_drawing, plan_style
    from checker.reports.plan_sheet import TALL

    try:
        return png(plan_drawing(design, report, view, still(plan_style())), TALL)
    except CannotPicture as error:
        raise Refused(f"fitout: {error}") from error
