"""The whole working of one rule on one subject: the verdict, its comparisons, and every number down to the file."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.document import FindingData, finding_data
from checker.reports.paragraphs import LABEL, Painter, heading, labelled, paragraph
from checker.reports.plain import one_line
from checker.reports.rule_facts import Broke, rule_limits, rule_steps
from checker.reports.wording import conditions, need, place, record, subject
from checker.reports.words import SIGNAL_MEANS, UNPROVEN, VERDICT_MEANS, VERDICTS
from checker.reports.working import step_lines
from checker.rulebook.judge import judge

if TYPE_CHECKING:
    from checker.design.model import Design
    from checker.facts.subject import Facts, Subject
    from checker.rulebook import Broken, Limits, Rule, Rulebook


class Explained(NamedTuple):
    """One pair of rule and subject with all that it rests on, in lines; blanks in front are levels."""

    finding: FindingData
    conditions: tuple[str, ...]
    limits: tuple[str, ...]
    facts: tuple[str, ...]


class OneSubject:
    """The facts of a design of which only one subject of one kind is listed, so that only it is judged."""

    def __init__(self, facts: Facts, subject: Subject) -> None:
        self._facts = facts
        self._subject = subject

    def subjects(self, kind: str) -> tuple[Subject, ...]:
        """The one subject, or all of another kind."""
        return (self._subject,) if kind == self._subject.kind else self._facts.subjects(kind)


def explained(design: Design, rulebook: Rulebook, rule: Rule, one: Subject, code: str | None) -> Explained:
    """Judge `one` by `rule` and show all of it.

    Raises
    ------
    ValueError: there is no such code of practice.
    """
    from checker.review import review
    from checker.review.run import code_of
    from checker.rulebook import Rulebook

    alone = Rulebook([rule], rulebook.limits, rulebook.codes, rulebook.sha256)
    facts: Any = OneSubject(one.facts, one)
    found = review(design, alone, code, keep_all=True, facts=facts)
    finding = next(each for each in found.findings if each.rule == rule.id and each.about == (one.kind, one.id))
    limits = rulebook.limits_for(code or code_of(design))
    steps = rule_steps(rule, one, design_subject(one.facts))
    return Explained(
        finding_data(finding),
        tuple(conditions(finding.working)),
        tuple(_limit(name, limits) for name in rule_limits(rule)),
        tuple(_facts(steps, design.file)),
    )


def design_subject(facts: Facts) -> Any:
    """The design as a subject of rules, or unknown where it cannot be listed."""
    from checker.quantities import Unknown

    try:
        return facts.subjects("design")[0]
    except Exception:  # noqa: BLE001 - as in a review: what cannot be listed is unknown, and what asks for it unproven
        return Unknown("the design could not be listed")


def verdicts(
    design: Any, rule: Rule, subjects: Sequence[Any], limits: Limits, broken: list[Broken]
) -> list[tuple[Any, str]]:
    """Each subject of a rule with its verdict, departures left aside."""
    return list(zip(subjects, judge(rule, subjects, design, dict(limits), broken), strict=True))


def _limit(name: str, limits: Limits) -> str:
    taken = limits.taken.get(name)
    if taken is None:
        missing = f"neither the code {limits.code} nor the international one gives it"
        return f"limits.{name} = unknown: {missing}{limits.elsewhere(name)}"
    code, value = taken
    whose = f"code {code}" if code == limits.code else f"code {code}, because {limits.code} gives none"
    return f"limits.{name} = {value.text} ({whose}; {value.source}){limits.elsewhere(name)}"


def _facts(steps: Sequence[Any], file: str) -> Iterator[str]:
    for each in steps:
        if isinstance(each, Broke):
            yield f"{each.kind}.{each.name} of {each.id} could not be computed: {each.cause}"
    yield from step_lines((each for each in steps if not isinstance(each, Broke)), file)


def explanation_text(each: Explained, *, colour: bool = False) -> Iterator[str]:
    """The explanation for a terminal, line by line."""
    for line in _lines(each, Painter(colour)):
        yield line + "\n"


def _lines(each: Explained, paint: Painter) -> Iterator[str]:
    finding = each.finding
    signal = finding["signal"]
    yield from paragraph(CAUTION)
    yield ""
    yield from (paint.strong(line) for line in paragraph(finding["title"]))
    yield from paragraph(f"{subject(finding)}, {place(finding)}")
    yield ""
    yield from paragraph(f"Verdict: {finding['verdict']} ({VERDICT_MEANS[finding['verdict']]})")
    yield f"Signal:  {paint.signal(signal)} ({SIGNAL_MEANS[signal]})"
    yield from paragraph(finding["says"])
    yield ""
    yield from _section("Conditions", each.conditions, paint)
    yield from _section("Limits", each.limits, paint)
    yield from _section("Facts, down to the lines of the file", each.facts, paint)
    if finding["verdict"] == UNPROVEN:
        asked = [need(one) for one in finding["needs"]] or ["narrower values of what stands above, or a measurement"]
        yield from _section("To settle it, look at, measure or look up", asked, paint)
    departure = finding["departure"]
    if departure is not None:
        yield from _section("Recorded departure", [departure["reason"], record(departure)], paint)
    yield from heading("Rule", paint)
    for label, words in (("Id", [finding["rule"]]), ("Why", [finding["why"]]), ("Mend", [finding["mend"]]),
                         ("Covers", finding["covers"]), ("Source", finding["sources"])):  # fmt: skip
        yield from (line[LABEL:] for line in labelled(label, words))
    yield ""
    yield from paragraph(DEFERRAL)


def _section(title: str, lines: Sequence[str], paint: Painter) -> Iterator[str]:
    if not lines:
        return
    yield from heading(title, paint)
    for line in lines:
        depth = len(line) - len(line.lstrip(" "))
        yield from paragraph(line, "", " " * (depth + 4))
    yield ""


def subjects_text(rule: Rule, found: Sequence[tuple[Any, str]], file: str, *, colour: bool = False) -> Iterator[str]:
    """The subjects of a rule by verdict, with the line of each."""
    paint = Painter(colour)
    for line in paragraph(CAUTION):
        yield line + "\n"
    yield "\n"
    for line in paragraph(f"{rule.id}: {rule.title}"):
        yield paint.strong(line) + "\n"
    for line in paragraph(f"It is about each {rule.about}. Name one of them to see its working:"):
        yield line + "\n"
    yield "\n"
    if not found:
        yield f"  (the design has no {rule.about})\n"
    for verdict in VERDICTS:
        for each, given in found:
            if given == verdict:
                yield f"  {verdict:<16}{one_line(each.id)}, {one_line(file)}:{each.where[0]}\n"
    yield "\n"
    for line in paragraph(DEFERRAL):
        yield line + "\n"
