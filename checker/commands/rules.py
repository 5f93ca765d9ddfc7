"""`fitout rules`: which rules there are, and what they cover."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Annotated, Literal

import typer

Format = Literal["text", "json"]


def command(
    rule: Annotated[
        str | None, typer.Argument(metavar="RULE", help="One rule, to be told in full.", show_default=False)
    ] = None,
    topic: Annotated[str | None, typer.Option(help="Only the rules of this topic.", metavar="TOPIC")] = None,
    form: Annotated[Format, typer.Option("--format", help="How the list is written.")] = "text",
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
    rules: Annotated[
        list[str] | None, typer.Option(help="A folder of further rules; may be repeated.", metavar="FOLDER")
    ] = None,
) -> int:
    """List the rules by topic, and how many published requirements they cover.

    With RULE tell that one in full: what it asks of what, why, what puts it right, its limits
    under each code, its sources.
    """
    from checker.commands.loading import load_requirements, load_rules
    from checker.commands.output import wants_colour
    from checker.commands.refusal import Refused, nearest
    from checker.reports.rule_list import rule_list, rule_list_text

    folders = [Path(folder) for folder in rules or []]
    rulebook = load_rules(folders)
    if rule is not None:
        from checker.reports.rule_text import rule_text, whole_rule

        known = {one.id: one for one in rulebook.rules}
        if rule not in known:
            raise Refused(f"there is no rule {rule!r}{nearest(rule, known) or '; `fitout rules` lists them'}")
        whole = whole_rule(known[rule], rulebook)
        told = rule_text(whole, colour=output is None and wants_colour())
        _out(iter([_json(whole)]) if form == "json" else told, output, folders)
        return 0
    requirements = load_requirements()
    topics = sorted({rule.topic for rule in rulebook.rules})
    if topic is not None and topic not in topics:
        raise Refused(f"there is no topic {topic!r}{nearest(topic, topics) or '; there are ' + ', '.join(topics)}")
    listed = rule_list(rulebook.rules, requirements, topic)
    told = rule_list_text(listed, colour=output is None and wants_colour())
    _out(iter([_json(listed)]) if form == "json" else told, output, folders)
    return 0


def _json(found: object) -> str:
    import json

    return json.dumps(found, indent=2, ensure_ascii=False) + "\n"


def _out(pieces: Iterator[str], output: str | None, folders: list[Path]) -> None:
    from checker.commands.loading import rule_files_of
    from checker.commands.output import deliver

    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), rule_files_of(folders))
