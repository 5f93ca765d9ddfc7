"""Phrases that several formats share."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING

from checker.reports.plain import one_line
from checker.reports.words import BREACH, MET, NOT_APPLICABLE, SET_ASIDE, UNPROVEN

if TYPE_CHECKING:
    from checker.reports.document import Counts, Departure, FindingData, Need

_CONDITIONS = ("given: ", "require: ")

SHORT = 8
"""So many lines of working stand in a report for reading; JSON and SARIF have all of them."""

FEW = 6
"""So many entries of a list stand there."""


def subject(finding: FindingData) -> str:
    """`conductor galley-feed`; the one design is just `the design`."""
    about = finding["about"]
    return one_line("the design" if about["kind"] == "design" else f"{about['kind']} {about['id']}")


def place(finding: FindingData) -> str:
    """`coach.fitout.yaml:41:9`."""
    where = finding["where"]
    return one_line(f"{where['file']}:{where['line']}:{where['column']}")


def short_working(finding: FindingData) -> tuple[str, ...]:
    """What decided a verdict, for reading: the comparisons with their values, and the limits with their codes."""
    lines = finding["working"]
    return (tuple(_outer(lines)) or tuple(lines))[:SHORT]


def _outer(lines: Sequence[str]) -> Iterator[str]:
    block = tuple(conditions(lines))
    compared = tuple(line.strip() for line in block if line.startswith(" "))
    yield from compared or block
    yield from (line for line in lines if line.startswith("limit for "))


def conditions(lines: Iterable[str]) -> Iterator[str]:
    """Of a working the conditions of the rule and the comparisons that decided them, which stand further in."""
    inside = False
    for line in lines:
        if not line.startswith(" "):
            inside = line.startswith(_CONDITIONS)
        if inside:
            yield line


def how_to_see_all(file: str) -> str:
    """What to type for the whole of a shortened working."""
    from shlex import quote

    return f"Workings are shortened. The whole of one: fitout explain {quote(one_line(file))} RULE SUBJECT"


def how_to_see_questions(file: str) -> str:
    """What to type for all questions, and for where to look."""
    from shlex import quote

    named = quote(one_line(file))
    return (
        f"All of them, question by question: fitout review {named} --all. Where to look, and with which instrument: "
        f"fitout survey {named}"
    )


def few(entries: Sequence[str]) -> tuple[str, ...]:
    """The entries of a list for reading: a long one is cut and the rest counted."""
    if len(entries) <= FEW:
        return tuple(entries)
    return (*entries[: FEW - 1], f"and {len(entries) - FEW + 1} more")


def judged(finding: FindingData) -> str:
    """The signal word, and that it is not proven where it is not."""
    return f"{finding['signal']} if broken, unproven:" if finding["verdict"] == UNPROVEN else finding["signal"]


def need(given: Need) -> str:
    """`circuits.heater.cable.size (unknown, line 52)`."""
    return one_line(f"{given['path']} ({given['what']}, line {given['line']})")


def record(departure: Departure) -> str:
    """Who recorded a departure, under which licence or note, and when."""
    parts = (departure["by"], departure["reference"], departure["date"])
    return ", ".join(one_line(part) for part in parts if part)


def tally(counts: Counts) -> dict[str, int]:
    """Number of verdicts by their word."""
    return {
        BREACH: sum(counts["breach"].values()),
        UNPROVEN: counts["unproven"],
        SET_ASIDE: counts["set_aside"],
        MET: counts["met"],
        NOT_APPLICABLE: counts["not_applicable"],
    }
