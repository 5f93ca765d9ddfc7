"""`fitout states`: every supply state of the mains side, and what it means."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "json"]


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file.", show_default=False)],
    form: Annotated[Format, typer.Option("--format", help="How the table is written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """List the supply states of the mains side: what feeds, where neutral meets earth, what is live.

    Each state comes with the shortest sequence of operations that reaches it, from the shore
    lead out and everything at rest; then what stays live with a switch open or the lead out.

    Exit status: 0 listed; 2 the design, an option or the output could not be used.
    """
    from checker.commands.loading import load_design
    from checker.commands.output import deliver, wants_colour
    from checker.reports.supply_states import supply_states
    from checker.reports.supply_text import supply_json, supply_text

    table = supply_states(load_design(file))
    if form == "json":
        pieces = supply_json(table)
    else:
        pieces = supply_text(table, colour=output is None and wants_colour())
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), [Path(file)])
    return 0
