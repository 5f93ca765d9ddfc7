"""Which names things may have."""

from __future__ import annotations

import pytest

from tests.reading.small import SMALL, only, problems


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ("equipment", "a.b: {kind: fuse}"),
        ("joints", "a.b: {kind: joint}"),
        ("places", "a.b: {}"),
        ("passes", "a.b: {}"),
        ("circuits", "a.b: {from: house, to: lamp, run: [1 m], cable: two}"),
        ("equipment", "'a#1': {kind: fuse}"),
        ("equipment", "a>b: {kind: fuse}"),
        ("places", "1 m via x: {}"),
        ("moving", "a.b: {}"),
    ],
)
def test_marks_that_mean_something_in_runs_are_refused_in_names(path: str, text: str) -> None:
    section = f"{path}:\n"
    spoilt = SMALL.replace(section, f"{section}  {text}\n") if section in SMALL else f"{SMALL}{section}  {text}\n"
    problem = only(text=spoilt)
    assert "which has a meaning in runs" in problem.what and problem.right.startswith("write `")


def test_cables_and_parts_may_hold_dots() -> None:
    assert not problems(text=SMALL.replace("cables:\n", "cables:\n  flex-2.5: {size: 2.5 mm2}\n"))


@pytest.mark.parametrize("name", ["chassis", "unknown", "none", "same"])
@pytest.mark.parametrize("section", ["equipment", "places", "cables", "modes", "circuits", "parts"])
def test_words_with_a_meaning_are_no_names(section: str, name: str) -> None:
    entry = {
        "equipment": "{kind: fuse}",
        "parts": "{kind: fuse}",
        "circuits": "{from: house, to: lamp, run: [1 m], cable: two}",
    }
    problem = only((f"{section}.{name}", entry.get(section, "{}")))
    assert f"`{name}` has a meaning of its own" in problem.what


@pytest.mark.parametrize(
    ("section", "name", "other"),
    [("joints", "F1", "equipment"), ("passes", "cabin", "places"), ("passes", "tee", "joints")],
)
def test_one_name_is_one_thing_in_runs(section: str, name: str, other: str) -> None:
    found = problems((f"{section}.{name}", "{kind: joint}" if section == "joints" else "{}"))
    assert any(
        f"`{name}` stands in {other} too" in problem.what or f"`{name}` stands in {section} too" in problem.what
        for problem in found
    )


def test_a_circuit_may_be_called_like_what_it_feeds() -> None:
    assert not problems(("circuits.lamp", "{from: bar, to: lamp, run: [1 m], cable: two}"))
