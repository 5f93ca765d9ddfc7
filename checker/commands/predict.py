"""`fitout predict`: what the instruments should read, mode by mode."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "json", "csv"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file, *.fitout.yaml.", show_default=False)],
    mode: Annotated[list[str] | None, typer.Option(help="Only this mode; may be repeated.", metavar="MODE")] = None,
    at: Annotated[
        list[str] | None,
        typer.Option(help="Only here: equipment, a side such as converter.low, a circuit.", metavar="EQUIPMENT"),
    ] = None,
    faults: Annotated[
        bool, typer.Option("--faults", help="Also the short-circuit currents at the end of each circuit.")
    ] = False,
    form: Annotated[Format, typer.Option("--format", help="How it is written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """Say what the instruments should read where, in each mode, with tolerance.

    The whole direct-current side is solved; what is assumed and what is not known stands with it.
    Without --at it lists buses, sources, converters, what runs, and conductors that carry 1 A and
    more, a line each; with --at all that can be read there and where to touch.

    Exit status: 0 it was predicted; 1 a mode has no operating point; 2 the design, an option or
    the output could not be used.
    """
    from checker.commands import FOUND
    from checker.commands.loading import load_design
    from checker.commands.output import deliver, wants_colour
    from checker.commands.prediction import known_modes, known_places, solved_facts
    from checker.reports.prediction import prediction, prediction_csv
    from checker.reports.prediction_text import prediction_text

    design = load_design(file)
    modes = known_modes(design, file, mode or [])
    facts = solved_facts(design)
    places = known_places(facts, modes, file, at or [])
    found = prediction(design, facts, modes, places, faults=faults)
    if form == "json":
        from json import dumps

        pieces = iter([dumps(found, ensure_ascii=False, indent=2, allow_nan=False), "\n"])
    elif form == "csv":
        pieces = prediction_csv(found)
    else:
        pieces = prediction_text(found, whole=bool(places), colour=output is None and wants_colour())
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), [Path(file)])
    return FOUND if any(one["reason"] for one in found["modes"]) else 0
