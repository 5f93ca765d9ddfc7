"""`fitout rules`: which rules there are, and what they cover."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "json"]


def command(
    topic: Annotated[str | None, typer.Option(help="Only the rules of this topic.", metavar="TOPIC")] = None,
    form: Annotated[Format, typer.Option("--format", help="How the list is written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
    rules: Annotated[
        list[str] | None, typer.Option(help="A folder of further rules; may be repeated.", metavar="FOLDER")
    ] = None,
) -> int:
    """List the rules by topic, and how many published requirements they cover."""
    from checker.commands.loading import load_requirements, load_rules, rule_files_of
    from checker.commands.output import deliver, wants_colour
    from checker.commands.refusal import Refused, nearest
    from checker.reports.rule_list import rule_list, rule_list_text

    folders = [Path(folder) for folder in rules or []]
    rulebook = load_rules(folders)
    requirements = load_requirements()
    topics = sorted({rule.topic for rule in rulebook.rules})
    if topic is not None and topic not in topics:
        raise Refused(f"there is no topic {topic!r}{nearest(topic, topics) or '; there are ' + ', '.join(topics)}")
    listed = rule_list(rulebook.rules, requirements, topic)
    if form == "json":
        import json

        pieces = iter([json.dumps(listed, indent=2, ensure_ascii=False) + "\n"])
    else:
        pieces = rule_list_text(listed, colour=output is None and wants_colour())
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), rule_files_of(folders))
    return 0
