"""`fitout rules`: which rules there are, and what they cover."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

if TYPE_CHECKING:
    from checker.rulebook import Rule, Rulebook

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
    examples: Annotated[
        bool, typer.Option("--examples", help="Put the examples of the rules to them; exit with 1 when one disagrees.")
    ] = False,
    rules: Annotated[
        list[str] | None, typer.Option(help="A folder of further rules; may be repeated.", metavar="FOLDER")
    ] = None,
) -> int:
    """List the rules by topic, and how many published requirements they cover.

    With RULE tell that one in full: what it asks of what, why, what puts it right, its limits
    under each code, its sources. With --examples try the examples of that rule, of a TOPIC, or of all.
    """
    from checker.commands.loading import load_requirements, load_rules
    from checker.commands.output import wants_colour
    from checker.commands.refusal import Refused, nearest
    from checker.reports.rule_list import rule_list, rule_list_text

    folders = [Path(folder) for folder in rules or []]
    rulebook = load_rules(folders)
    known = {one.id: one for one in rulebook.rules}
    if rule is not None and rule not in known:
        raise Refused(f"there is no rule {rule!r}{nearest(rule, known) or '; `fitout rules` lists them'}")
    if rule is not None and not examples:
        from checker.reports.rule_text import rule_text, whole_rule

        whole = whole_rule(known[rule], rulebook)
        told = rule_text(whole, colour=output is None and wants_colour())
        _out(iter([_json(whole)]) if form == "json" else told, output, folders)
        return 0
    requirements = load_requirements()
    topics = sorted({rule.topic for rule in rulebook.rules})
    if topic is not None and topic not in topics:
        raise Refused(f"there is no topic {topic!r}{nearest(topic, topics) or '; there are ' + ', '.join(topics)}")
    if examples:
        if form == "json":
            raise Refused("--examples writes text alone; leave --format out")
        chosen = [one for one in rulebook.rules if rule in (None, one.id) and topic in (None, one.topic)]
        wrong = _put(chosen, rulebook, folders)
        shown = sum(len(one.examples) for one in chosen)
        _out(iter([*wrong, _counted(shown, len(chosen), len(wrong))]), output, folders)
        return 1 if wrong else 0
    listed = rule_list(rulebook.rules, requirements, topic)
    told = rule_list_text(listed, colour=output is None and wants_colour())
    _out(iter([_json(listed)]) if form == "json" else told, output, folders)
    return 0


def _put(chosen: Sequence[Rule], rulebook: Rulebook, folders: list[Path]) -> list[str]:
    """One line for each example that gets another verdict than the one it stands under, or cannot be put."""
    from checker.review.examples import ExampleError, example_verdict

    wrong = []
    for rule in chosen:
        for example in rule.examples:
            try:
                verdict = example_verdict(rule, example, rulebook, folders)
            except ExampleError as error:
                wrong.append(f"{error}\n")
                continue
            if verdict != example.verdict:
                said = f"stands under `{example.verdict}` and gets `{verdict}`"
                wrong.append(f"{example.file}:{example.line}: the example `{example.name}` {said}\n")
    return wrong


def _counted(examples: int, rules: int, wrong: int) -> str:
    end = f"{wrong} disagree{'s' if wrong == 1 else ''}" if wrong else "each gets the verdict it stands under"
    return f"Examples: {examples} of {rules} rule{'' if rules == 1 else 's'}; {end}.\n"


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
