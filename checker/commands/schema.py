"""`fitout schema`: the JSON Schema of a design, a rule, a report, or what another command prints."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Which = Literal["design", "rule", "report", "predict", "prove", "day", "states", "survey"]


def command(
    which: Annotated[Which, typer.Argument(help="Which schema.")] = "design",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """Print the JSON Schema of a design file, a rule file or the JSON report.

    The name of another command stands for what that prints with --format json.

    An editor that knows JSON Schema completes and checks a design with it while it is written.
    """
    from checker.commands.output import deliver
    from checker.commands.refusal import Refused, why
    from checker.shipped import shipped

    schema = shipped("schemas") / f"{which}.schema.json"
    try:
        text = schema.read_text(encoding="utf-8")
    except OSError as error:
        raise Refused(f"{schema}: {why(error)}; this file comes with fitout: install it again") from error
    deliver([text], None if output is None else Path(output))
    return 0
