"""Limits of the codes of practice against a second transcription of what was published."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

import pytest
import yaml

from checker.quantities import parse
from checker.rulebook import Rulebook, load_rulebook


class Published(NamedTuple):
    """One published figure: of which requirement, as which limit, by which code."""

    requirement: str
    limit: str
    code: str
    value: str


ROWS = [Published(**row) for row in yaml.safe_load((Path(__file__).parent / "code-limits.yaml").read_text("utf-8"))]
BOOK: Rulebook = load_rulebook()


@pytest.mark.parametrize("row", ROWS, ids=[f"{row.code}-{row.limit}" for row in ROWS])
def test_a_limit_is_what_was_published(row: Published) -> None:
    given = BOOK.codes[row.code].limits.get(row.limit)
    assert given is not None, f"{row.code} gives none of its own"
    unit = BOOK.limits[row.limit].unit
    published = float(row.value) if unit in ("count", "ratio") else parse(row.value, unit)
    assert given.value == pytest.approx(published, rel=1e-3), given.text


@pytest.mark.parametrize("row", ROWS, ids=[f"{row.code}-{row.limit}" for row in ROWS])
def test_a_rule_for_its_requirement_uses_the_limit(row: Published) -> None:
    users = {rule.id for rule in BOOK.rules if f"limits.{row.limit}" in f"{rule.given} {rule.require} {rule.mend}"}
    covering = {rule.id for rule in BOOK.rules if row.requirement in rule.covers}
    assert users & covering, f"{row.limit} decides nothing of {row.requirement}"
