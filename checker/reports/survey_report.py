"""The questions that a design leaves open, as plain data, and the words that all ways of writing them share."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, TypedDict

from checker.reports.caution import CAUTION, DEFERRAL
from checker.reports.words import counted
from checker.review.finding import SIGNALS
from checker.review.survey_order import order_of_work, settle_most

if TYPE_CHECKING:
    from checker.review import Finding, Review
    from checker.review.survey import Hanging, Question, Survey
    from checker.review.survey_order import Step

MOST_SHOWN = 3
"""Rules told in full under one question on the terminal and on the sheet; the document holds all."""
ORDER = (
    "One line is one place with one instrument in hand; the numbers are those of the questions below. Papers come "
    "first, tests with instruments last."
)
MEANS = (
    "Each question is one entry of the design file. Write what you found with its basis, and `unknown` for what you "
    "could not see; then review again. Nothing is taken as right before it is answered."
)


class Hangs(TypedDict):
    """A verdict that hangs on an entry; `alone` when nothing else stands in its way."""

    rule: str
    signal: str
    about: dict[str, str]
    alone: bool
    wanted: str
    otherwise: str
    covers: list[str]


class Asked(TypedDict):
    """One question: the entry of the design file, where to look and with what, what to write, what it settles.

    `word` is what to add to the list of what was looked at; empty where something else is to be written.
    """

    number: int
    entry: str
    word: str
    signal: str
    now: str
    line: int
    look_at: str
    instrument: str
    isolation: str
    takes: str
    write: str
    settles: list[Hangs]


class Round(TypedDict):
    """One step of the work: a place and an instrument, the first and last of its questions, their worst signal."""

    place: str
    instrument: str
    first: int
    last: int
    worst: str


class Group(TypedDict):
    """The questions of one place."""

    place: str
    questions: list[Asked]


class Unasked(TypedDict):
    """An unproven verdict for which there is no question."""

    rule: str
    signal: str
    about: dict[str, str]
    says: str


class SurveyCounts(TypedDict):
    """How many questions, unproven verdicts, and verdicts that no question settles."""

    questions: int
    unproven: int
    without_a_question: int


class SurveyDocument(TypedDict):
    """All questions that a design leaves open."""

    survey: int
    design: dict[str, str]
    rulebook: dict[str, Any]
    version: str
    caution: str
    counts: SurveyCounts
    order: list[Round]
    settle_most: list[int]
    groups: list[Group]
    without_a_question: list[Unasked]
    deferral: str


def survey_document(review: Review, found: Survey) -> dict[str, Any]:
    """All of it as plain data."""
    steps = order_of_work(found.questions)
    return {
        "survey": 1,
        "design": dict(review.design),
        "rulebook": dict(review.rulebook),
        "version": review.version,
        "caution": CAUTION,
        "counts": {
            "questions": len(found.questions),
            "unproven": found.undecided,
            "without_a_question": len(found.unasked),
        },
        "order": [_step(step) for step in steps],
        "settle_most": list(settle_most(steps)),
        "groups": _groups(steps),
        "without_a_question": [_unasked(one) for one in found.unasked],
        "deferral": DEFERRAL,
    }


def _step(step: Step) -> dict[str, Any]:
    signals = [one.signal for one in step.questions]
    return {
        "place": step.place,
        "instrument": step.instrument,
        "first": step.first,
        "last": step.last,
        "worst": min(signals, key=SIGNALS.index).upper(),
    }


def _groups(steps: tuple[Step, ...]) -> list[dict[str, Any]]:
    groups: dict[str, list[dict[str, Any]]] = {}
    for step in steps:
        numbered = enumerate(step.questions, step.first)
        groups.setdefault(step.place, []).extend(_question(number, one) for number, one in numbered)
    return [{"place": place, "questions": held} for place, held in groups.items()]


def _question(number: int, one: Question) -> dict[str, Any]:
    return {
        "number": number,
        "entry": one.entry,
        "word": one.word,
        "signal": one.signal.upper(),
        "now": one.now,
        "line": one.line,
        "look_at": one.way.look,
        "instrument": one.way.instrument,
        "isolation": one.way.care,
        "takes": one.takes,
        "write": one.way.write,
        "settles": [_hanging(each) for each in one.settles],
    }


def _hanging(one: Hanging) -> dict[str, Any]:
    return {
        "rule": one.rule,
        "signal": one.signal.upper(),
        "about": one.about._asdict(),
        "alone": one.alone,
        "wanted": one.wanted,
        "otherwise": one.title,
        "covers": list(one.covers),
    }


def _unasked(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "signal": finding.signal.upper(),
        "about": finding.about._asdict(),
        "says": finding.says,
    }


def numbers_of(step: dict[str, Any]) -> str:
    """First and last number of the questions of a step."""
    return str(step["first"]) if step["first"] == step["last"] else f"{step['first']}-{step['last']}"


def short_of_time(document: dict[str, Any]) -> str:
    """What to begin with when time is short; empty for a list that is short itself."""
    most = document["settle_most"]
    if document["counts"]["questions"] <= 2 * len(most):
        return ""
    numbered = {one["number"]: one for group in document["groups"] for one in group["questions"]}
    named = [f"{number} ({len(numbered[number]['settles'])})" for number in most]
    return f"When time is short, begin where most findings hang on one answer: {', '.join(named)}."


def count_words(counts: dict[str, int]) -> str:
    """How much is asked, and how much hangs on it."""
    return (
        f"{counted(counts['questions'], 'question')}, on which {counted(counts['unproven'], 'unproven finding')} hang; "
        f"{counts['without_a_question']} more cannot be settled by an entry of the file."
    )


def now_words(one: dict[str, Any]) -> str:
    """What the file says now, and what may be written."""
    return f"{one['now']}, line {one['line']}" + (f"; takes {one['takes']}" if one["takes"] else "")


def settles_words(one: dict[str, Any]) -> list[str]:
    """What the answer means where it decides by itself, then what it only helps to decide."""
    held = one["settles"]
    alone = _by_rule([each for each in held if each["alone"]])
    helps = _by_rule([each for each in held if not each["alone"]])
    decided = sum(each["alone"] for each in held)
    lines = [f"{counted(len(held), 'finding')}, {decided} by this answer alone"]
    lines += [_meaning(these) for these in list(alone.values())[:MOST_SHOWN]]
    if len(alone) > MOST_SHOWN:
        lines.append(f"and {counted(len(alone) - MOST_SHOWN, 'more rule')} by itself")
    if helps:
        named = ", ".join(list(helps)[:MOST_SHOWN])
        more = f" and {counted(len(helps) - MOST_SHOWN, 'more rule')}" if len(helps) > MOST_SHOWN else ""
        first = next(iter(helps.values()))[0]
        lines.append(f"with others: {named}{more}; at worst {first['signal']}: {first['otherwise']}")
    return lines


def _by_rule(held: list[dict[str, Any]]) -> dict[str, list[dict[str, Any]]]:
    found: dict[str, list[dict[str, Any]]] = {}
    for each in held:
        found.setdefault(each["rule"], []).append(each)
    return found


def _meaning(these: list[dict[str, Any]]) -> str:
    first = these[0]
    more = f" and {len(these) - 1} more" if len(these) > 1 else ""
    wanted = first["wanted"].replace("*", "")
    return (
        f"{first['signal']} {first['rule']}, {first['about']['id']}{more}: right when {wanted}; "
        f"otherwise: {first['otherwise']}"
    )
