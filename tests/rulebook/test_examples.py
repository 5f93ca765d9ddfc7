"""The facts of an example, read by the types of the catalogue; the changes of a design, kept as pieces of YAML."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from checker.quantities import UNKNOWN, Range, Window
from checker.rulebook import load_rulebook
from checker.rulebook.examples import Example
from tests.rulebook.small import rule_text, small_catalogue, write_rules


def read(root: Path, monkeypatch: pytest.MonkeyPatch, met: str) -> Example:
    monkeypatch.setenv("FITOUT_CACHE", "none")
    shown = f"\n  met:\n    - {met}\n  breach: [{{name: x, facts: {{}}}}]\n  unproven: [{{name: y, facts: {{}}}}]"
    book = load_rulebook(catalogue=small_catalogue(), base=write_rules(root, rule_text(examples=shown)))
    return book.rules[0].examples[0]


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("conductor.capacity: 30 A", "capacity", 30.0),
        ("conductor.capacity: 25..30 A", "capacity", Range(25.0, 30.0)),
        ("conductor.capacity: none", "capacity", None),
        ("conductor.is_live: true", "is_live", True),
        ("conductor.window: 10..15 V", "window", Window(10.0, 15.0)),
        ("conductor.covering: split tube", "covering", "split tube"),
        ("conductor.coverings: [conduit, split tube]", "coverings", ("conduit", "split tube")),
        ("conductor.note: anything at all", "note", "anything at all"),
        ("conductor.protected_by: []", "protected_by", ()),
        ("conductor.main_device: none", "main_device", None),
    ],
)
def test_a_fact_has_the_value_of_its_type(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, text: str, name: str, value: Any
) -> None:
    example = read(tmp_path, monkeypatch, f"{{name: a, facts: {{{text}}}}}")
    assert getattr(example.subject, name) == value


def test_what_is_unknown_or_left_out_is_unknown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    facts = "conductor.capacity: unknown, conductor.protected_by: unknown"
    example = read(tmp_path, monkeypatch, f"{{name: a, facts: {{{facts}}}}}")
    assert example.subject is not None
    assert [example.subject.capacity, example.subject.current, example.subject.protected_by] == [UNKNOWN] * 3


def test_subjects_in_lists_have_facts_of_their_own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    facts = "conductor.protected_by: [{device.rating: 30 A, device.protects: [{conductor.is_live: true}]}, {}]"
    example = read(tmp_path, monkeypatch, f"{{name: a, facts: {{{facts}}}}}")
    assert example.subject is not None
    first, second = example.subject.protected_by  # type: ignore[misc]
    assert (first.rating, first.protects[0].is_live, second.rating) == (30.0, True, UNKNOWN)


def test_design_and_limits_can_be_given(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    example = read(tmp_path, monkeypatch, "{name: a, facts: {design.ambient: 40 °C, limits.drop: 2 %}}")
    assert example.design_subject is not None
    assert (example.design_subject.ambient, example.limits) == (40.0, {"drop": 0.02})


def test_changes_of_a_design_are_pieces_of_yaml(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    edits = "{a.b: 4 mm2, c.run: '[1 m, F1]', d: [1 m, {kind: fuse, note: 'it''s: x'}], e: {f: unknown}}"
    example = read(tmp_path, monkeypatch, f"{{name: a, design: base, with: {edits}, about: feed, code: eu}}")
    assert example.edits == (
        ("a.b", "4 mm2"),
        ("c.run", "[1 m, F1]"),
        ("d", "[1 m, {kind: fuse, note: 'it''s: x'}]"),
        ("e", "{f: unknown}"),
    )
    assert (example.design, example.about, example.code) == ("base", "feed", "eu")
