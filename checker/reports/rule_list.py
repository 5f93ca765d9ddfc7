"""The rules by topic, and how much of the requirements catalogue they cover."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING, NamedTuple, TypedDict

from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.paragraphs import LABEL, Painter, heading, paragraph
from checker.reports.words import counted

if TYPE_CHECKING:
    from pathlib import Path

    from checker.rulebook import Rule


class Requirement(NamedTuple):
    """One entry of the catalogue of published requirements; `decidable` is design, survey or test.

    `left` says which part of it no rule decides, as far as we know; empty for none.
    """

    id: str
    topic: str
    decidable: str
    left: str = ""


class RuleData(TypedDict):
    """One rule of the list."""

    id: str
    topic: str
    signal: str
    title: str
    about: str
    covers: list[str]


class Coverage(TypedDict):
    """How many requirements have a rule, of all and of those that a design file can decide.

    `decidable_partly` are those of the latter that have a rule and of which a part is known to be undecided.
    """

    covered: int
    total: int
    decidable_covered: int
    decidable_partly: int
    decidable: int


class RuleList(TypedDict):
    """What `fitout rules --format json` prints."""

    caution: str
    rules: list[RuleData]
    coverage: Coverage
    deferral: str


def read_requirements(file: Path) -> tuple[Requirement, ...]:
    """The catalogue of requirements, in the order of the file.

    Raises
    ------
    OSError: it cannot be read.
    ValueError: it has not the columns id, topic and decidable.
    """
    import csv

    with open(file, encoding="utf-8", newline="") as lines:
        table = csv.DictReader(lines)
        if not {"id", "topic", "decidable"} <= set(table.fieldnames or ()):
            raise ValueError("the catalogue of requirements needs the columns id, topic and decidable")
        rows = list(table)
    left = _left(file.with_name("not-decided.csv"))
    return tuple(Requirement(row["id"], row["topic"], row["decidable"], left.get(row["id"], "")) for row in rows)


def _left(file: Path) -> dict[str, str]:
    """Requirement to the part of it that no rule decides; nothing where there is no such file beside the catalogue."""
    import csv

    if not file.exists():
        return {}
    with open(file, encoding="utf-8", newline="") as lines:
        return {row["id"]: row["left"] for row in csv.DictReader(lines)}


def rule_list(rules: Iterable[Rule], requirements: Iterable[Requirement], topic: str | None = None) -> RuleList:
    """The rules, only those of one `topic` when it is given, and the coverage of the whole catalogue by all rules."""
    everything = tuple(rules)
    listed = [rule for rule in everything if topic is None or rule.topic == topic]
    return {
        "caution": CAUTION,
        "rules": [_data(rule) for rule in sorted(listed, key=lambda each: (each.topic, each.id))],
        "coverage": coverage_of(everything, requirements),
        "deferral": DEFERRAL,
    }


def coverage_of(rules: Iterable[Rule], requirements: Iterable[Requirement]) -> Coverage:
    """How much of the catalogue the rules cover; a requirement counts once, however many rules cover it."""
    ids = {each for rule in rules for each in rule.covers}
    everything = tuple(requirements)
    decidable = [each for each in everything if each.decidable == "design"]
    return {
        "covered": sum(each.id in ids for each in everything),
        "total": len(everything),
        "decidable_covered": sum(each.id in ids for each in decidable),
        "decidable_partly": sum(each.id in ids and bool(each.left) for each in decidable),
        "decidable": len(decidable),
    }


def _data(rule: Rule) -> RuleData:
    return {
        "id": rule.id,
        "topic": rule.topic,
        "signal": rule.signal.upper(),
        "title": rule.title,
        "about": rule.about,
        "covers": list(rule.covers),
    }


def rule_list_text(listed: RuleList, *, colour: bool = False) -> Iterator[str]:
    """The list for a terminal, line by line."""
    for line in _lines(listed, Painter(colour)):
        yield line + "\n"


def _lines(listed: RuleList, paint: Painter) -> Iterator[str]:
    yield from paragraph(listed["caution"])
    yield ""
    topic = None
    for rule in listed["rules"]:
        if rule["topic"] != topic:
            if topic is not None:
                yield ""
            topic = rule["topic"]
            yield from heading(topic, paint)
        signal = rule["signal"]
        yield f"{paint.signal(signal)}{' ' * (LABEL - len(signal))}{paint.strong(rule['id'])}"
        yield from paragraph(rule["title"], " " * LABEL)
    if topic is not None:
        yield ""
    yield from heading("Coverage", paint)
    coverage = listed["coverage"]
    yield from paragraph(
        f"{counted(len(listed['rules']), 'rule')}. "
        f"Requirements with a rule: {coverage['covered']} of {coverage['total']}; of those that a design file "
        f"can decide: {coverage['decidable_covered']} of {coverage['decidable']}, {coverage['decidable_partly']} of "
        f"them known to be decided in part only. What has no rule is not checked; "
        "what a file cannot decide needs somebody who looks at the vehicle, or a measurement."
    )
    yield ""
    yield from paragraph(listed["deferral"])
