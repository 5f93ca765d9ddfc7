"""`fitout explain`: the whole working of one rule on one subject."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def command(
    file: Annotated[str, typer.Argument(metavar="FILE", help="The design file.", show_default=False)],
    rule: Annotated[str, typer.Argument(metavar="RULE", help="The id of the rule.", show_default=False)],
    subject: Annotated[
        str | None,
        typer.Argument(metavar="SUBJECT", help="What it is put to; left out: lists what there is.", show_default=False),
    ] = None,
    code: Annotated[
        str | None, typer.Option(help="Code of practice whose limits apply, instead of the file's own.", metavar="CODE")
    ] = None,
    rules: Annotated[
        list[str] | None, typer.Option(help="A folder of further rules; may be repeated.", metavar="FOLDER")
    ] = None,
    output: Annotated[
        str | None, typer.Option(help="Write to this file instead of the terminal.", metavar="FILE")
    ] = None,
) -> int:
    """Show the whole working of one rule on one subject.

    Every number down to the lines of the file and its source; for an undecided verdict what to
    measure or look up. Without SUBJECT it lists the subjects of the rule with their verdicts.
    """
    from checker.commands.loading import input_files, limits_under, load_design, load_rules
    from checker.commands.output import deliver, wants_colour
    from checker.commands.refusal import Refused, nearest
    from checker.facts.subject import Facts
    from checker.reports import explanation
    from checker.review.run import code_of

    folders = [Path(folder) for folder in rules or []]
    colour = output is None and wants_colour()
    design = load_design(file)
    rulebook = load_rules(folders)
    limits = limits_under(rulebook, code or code_of(design))
    design = design.under(code)
    found = rulebook.by_id.get(rule)
    if found is None:
        hint = nearest(rule, rulebook.by_id) or "; `fitout rules` lists them"
        raise Refused(f"there is no rule {rule!r}{hint}")
    facts = Facts(design)
    subjects = facts.subjects(found.about)
    if subject is None:
        judged = explanation.verdicts(explanation.design_subject(facts), found, subjects, limits, [])
        pieces = explanation.subjects_text(found, judged, file, colour=colour)
    else:
        one = facts.subject(found.about, subject)
        if one is None:
            known = [each.id for each in subjects]
            hint = nearest(subject, known) or f"; `fitout explain {file} {rule}` lists them"
            raise Refused(f"the rule {rule} is about no {found.about} {subject!r} in {file}{hint}")
        pieces = explanation.explanation_text(explanation.explained(design, rulebook, found, one, code), colour=colour)
    if output is None:
        deliver(pieces)
    else:
        deliver(pieces, Path(output), input_files(file, folders))
    return 0
