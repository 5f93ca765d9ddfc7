"""The example files can be read, say what they teach, and the spoilt twin's list fits its file."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from checker.reading import read_design

EXAMPLES = Path(__file__).parents[2] / "examples"
FILES = sorted(EXAMPLES.glob("*.fitout.yaml"))
SIGNALS = {"danger", "warning", "caution", "notice"}


def test_there_is_a_coach_with_its_twin_a_camper_and_a_survey() -> None:
    names = {path.name.removesuffix(".fitout.yaml") for path in FILES}
    assert names == {"estuary-coach", "estuary-coach-flawed", "heron-camper", "saltbush-survey"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_an_example_says_what_it_teaches_and_is_read_without_a_problem(path: Path) -> None:
    assert path.read_text("utf-8").startswith("# Teaches ")
    design = read_design(path)
    assert design.circuits
    assert design.equipment


def test_the_list_of_flaws_names_subjects_of_the_spoilt_coach() -> None:
    flaws = yaml.safe_load((EXAMPLES / "estuary-coach-flawed.expected.yaml").read_text("utf-8"))
    design = read_design(EXAMPLES / "estuary-coach-flawed.fitout.yaml")
    known = {*design.equipment, *design.circuits, *design.places, *design.moving}
    assert len(flaws) == 30
    assert [flaw["subject"] for flaw in flaws if flaw["subject"] not in known] == []
    assert {flaw["signal"] for flaw in flaws} <= SIGNALS
    assert all(flaw["flaw"] for flaw in flaws)


def test_the_twin_differs_from_the_coach_and_keeps_its_circuits() -> None:
    coach = read_design(EXAMPLES / "estuary-coach.fitout.yaml")
    twin = read_design(EXAMPLES / "estuary-coach-flawed.fitout.yaml")
    assert list(coach.circuits) == list(twin.circuits)
    assert set(twin.equipment) < set(coach.equipment)
