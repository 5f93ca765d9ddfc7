"""The coach with its protection broken in ways that no example shows: each found where it is and bad enough."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import NamedTuple

import pytest
import yaml

from checker.review import SIGNALS
from tests.field.cases import findings

BASE = "estuary-coach"


class Variant(NamedTuple):
    """One way to break it, and what must be found."""

    id: str
    changes: tuple[tuple[str, str], ...]
    rule: str
    subject: str
    signal: str


@cache
def variants() -> tuple[Variant, ...]:
    told = yaml.safe_load((Path(__file__).parent / "coach_protection.yaml").read_text("utf-8"))
    return tuple(
        Variant(one["id"], tuple((path, str(text)) for path, text in one["changes"].items()),
                one["expect"]["rule"], one["expect"]["subject"], one["expect"]["signal"])
        for one in told
    )  # fmt: skip


@pytest.mark.parametrize("variant", variants(), ids=[one.id for one in variants()])
def test_it_is_found_at_the_right_subject_and_is_bad_enough(variant: Variant) -> None:
    breaches = [one for one in findings(BASE, variant.changes) if one.verdict == "breach"]
    found = [one for one in breaches if (one.rule, one.about.id) == (variant.rule, variant.subject)]
    assert found, [(one.rule, one.about.id) for one in breaches]
    assert SIGNALS.index(found[0].signal) <= SIGNALS.index(variant.signal)


@pytest.mark.parametrize("variant", variants(), ids=[one.id for one in variants()])
def test_the_coach_itself_has_no_such_finding(variant: Variant) -> None:
    clean = [one for one in findings(BASE, ()) if one.verdict in ("breach", "unproven")]
    assert (variant.rule, variant.subject) not in [(one.rule, one.about.id) for one in clean]


def test_there_are_many_and_each_is_another() -> None:
    assert len({one.id for one in variants()}) == len(variants()) >= 30
    assert len({one.changes for one in variants()}) == len(variants())
