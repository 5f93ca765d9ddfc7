"""Faults found in the field: those a design shows are found in it, and the others are asked for."""

from __future__ import annotations

from collections import Counter

import pytest

from checker.review import SIGNALS, Finding
from tests.field.cases import Case, cases, findings, line_of

MADE = cases("defects")
ASKED = [case for case in cases("asked") if not case.silent]
SILENT = [case for case in cases("asked") if case.silent]
SILENCE = ("danger", "warning", "caution")
RECORDED = 78
DECIDABLE_FROM_A_DESIGN = 56


def of(found: tuple[Finding, ...], case: Case, verdict: str) -> list[Finding]:
    return [
        one for one in found if (one.rule, one.about.id, one.verdict) == (case.rule, case.subject, verdict)
    ]  # fmt: skip


def at_least(finding: Finding, signal: str) -> bool:
    return SIGNALS.index(finding.signal) <= SIGNALS.index(signal)


@pytest.mark.parametrize("case", MADE, ids=[case.id for case in MADE])
def test_the_fault_is_found_at_its_subject_and_line_and_is_bad_enough(case: Case) -> None:
    found = of(findings(case.base, case.prepared + case.changes), case, "breach")
    assert found, f"{case.rule} says nothing of {case.subject}"
    assert at_least(found[0], case.signal)
    assert found[0].where.line == line_of(case.base, case.at)


@pytest.mark.parametrize("case", MADE, ids=[case.id for case in MADE])
def test_the_clean_twin_is_silent(case: Case) -> None:
    loud = [one for one in findings(case.base, case.prepared) if one.verdict in ("breach", "unproven")]
    assert [one.key for one in loud if one.signal in SILENCE] == []


@pytest.mark.parametrize("case", ASKED, ids=[case.id for case in ASKED])
def test_what_no_drawing_shows_is_asked_for(case: Case) -> None:
    before, after = findings(case.base, case.prepared), findings(case.base, case.prepared + case.changes)
    assert of(before, case, "unproven") == [], "the clean design answers it"
    found = of(after, case, "unproven")
    assert found, f"{case.rule} does not ask about {case.subject}"
    assert at_least(found[0], case.signal)
    assert found[0].needs, "the question names an entry that would answer it"


@pytest.mark.parametrize("case", SILENT, ids=[case.id for case in SILENT])
def test_what_stays_silent_says_why(case: Case) -> None:
    assert not case.base
    assert len(case.silent.split()) > 5


def test_each_recorded_fault_stands_here_once() -> None:
    count = Counter(case.id for case in (*MADE, *ASKED, *SILENT))
    assert [id for id, times in count.items() if times > 1] == []
    assert len(count) == RECORDED
    assert len(MADE) == DECIDABLE_FROM_A_DESIGN
    assert len(ASKED) >= 18
