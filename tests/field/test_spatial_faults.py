"""Faults of space, heat, gas and mass in a clean design: found at their subject and line, bad enough."""

from __future__ import annotations

import pytest

from tests.field.cases import Case, cases, findings, line_of
from tests.field.test_field_defects import at_least, of

SPATIAL = cases("spatial")


@pytest.mark.parametrize("case", SPATIAL, ids=[case.id for case in SPATIAL])
def test_the_fault_is_found_where_it_is_and_the_clean_twin_says_nothing_of_it(case: Case) -> None:
    clean = of(findings(case.base, case.prepared), case, "breach") + of(
        findings(case.base, case.prepared), case, "unproven"
    )
    assert clean == []
    found = of(findings(case.base, case.prepared + case.changes), case, "breach")
    assert found, f"{case.rule} says nothing of {case.subject}"
    assert at_least(found[0], case.signal)
    assert not case.at or found[0].where.line == line_of(case.base, case.at)


def test_each_fault_stands_here_once() -> None:
    assert len({case.id for case in SPATIAL}) == len({case.changes for case in SPATIAL}) == len(SPATIAL) >= 20
