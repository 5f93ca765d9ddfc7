"""`fitout survey` lists what has to be found out, in each of its forms, and refuses plainly."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from checker.commands import run
from checker.reports.caution import CAUTION, DEFERRAL

ROOT = Path(__file__).parents[2]
SURVEY = ROOT / "examples" / "saltbush-survey.fitout.yaml"


def survey(*arguments: str) -> int:
    return run(["survey", str(SURVEY), *arguments])


def as_json(capsys: pytest.CaptureFixture[str]) -> dict[str, object]:
    assert survey("--format", "json") == 0
    found: dict[str, object] = json.loads(capsys.readouterr().out)
    return found


def test_the_text_opens_with_the_caution_and_ends_by_deferring(capsys: pytest.CaptureFixture[str]) -> None:
    assert survey() == 0
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith(" ".join(CAUTION.split()))
    assert said.endswith(" ".join(DEFERRAL.split()))


def test_the_text_fits_the_terminal_but_for_names(capsys: pytest.CaptureFixture[str]) -> None:
    assert survey() == 0
    wide = [line for line in capsys.readouterr().out.splitlines() if len(line) > 80]
    assert all(len(line.split()) <= 3 or " " not in line.strip() for line in wide)


def test_the_sheet_is_a_list_to_tick_under_the_places(capsys: pytest.CaptureFixture[str]) -> None:
    assert survey("--format", "markdown") == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("> **Read first.**")
    assert "## front-boot" in lines
    questions = [line for line in lines if line.startswith("### ")]
    assert len([line for line in lines if line.startswith("- [ ] ")]) == len(questions) > 100
    assert len([line for line in lines if line.startswith("- **First:** ")]) == len(questions)


def test_the_document_counts_what_it_holds(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json(capsys)
    groups, counts = found["groups"], found["counts"]
    assert isinstance(groups, list)
    assert isinstance(counts, dict)
    questions = [one for group in groups for one in group["questions"]]
    assert counts["questions"] == len(questions)
    assert found["caution"] == CAUTION
    assert all(one["isolation"] and one["look_at"] and one["write"] and one["settles"] for one in questions)
    assert any("structure-not-weakened" in each["covers"] for one in questions for each in one["settles"])


def test_the_same_design_gives_the_same_bytes(capsys: pytest.CaptureFixture[str]) -> None:
    assert survey() == 0
    first = capsys.readouterr().out
    assert survey() == 0
    assert capsys.readouterr().out == first


def test_it_writes_to_a_file_but_never_over_the_design(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "sheet.md"
    assert survey("--format", "markdown", "--output", str(out)) == 0
    assert out.read_text("utf-8").startswith("> **Read first.**")
    assert survey("--output", str(SURVEY)) == 2
    assert "is an input" in capsys.readouterr().err


@pytest.mark.parametrize("wrong", [["--code", "mars"], ["--format", "sarif"], ["--rules", "/nowhere"]])
def test_what_it_cannot_use_is_refused(wrong: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert survey(*wrong) == 2
    assert "Traceback" not in capsys.readouterr().err
