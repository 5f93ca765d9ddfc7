"""`fitout answer` writes answers into a copy of the design and refuses plainly."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker.commands import run

FILE = Path("examples/saltbush-survey.fitout.yaml")


def answers(folder: Path, text: str) -> str:
    file = folder / "answers.yaml"
    file.write_text(text, "utf-8")
    return str(file)


def test_the_design_comes_out_with_the_answer_and_a_count(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    given = answers(tmp_path, "answers: {equipment.inlet.degree: IP44, equipment.inverter.bond: unknown}")
    assert run(["answer", str(FILE), given]) == 0
    said = capsys.readouterr()
    assert said.err == "1 answer written, 1 still unknown\n"
    assert said.out.replace("degree: {is: IP44, basis: datasheet}", "degree: unknown") == FILE.read_text("utf-8")


def test_survey_answer_and_survey_again_asks_less(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    form, design = tmp_path / "form.yaml", tmp_path / "answered.fitout.yaml"
    assert run(["survey", str(FILE), "--format", "answers", "--output", str(form)]) == 0
    text = form.read_text("utf-8").replace("equipment.inlet.degree: unknown", "equipment.inlet.degree: IP44")
    form.write_text(text.replace("structure: unknown", "structure: right"), "utf-8")
    assert run(["answer", str(FILE), str(form), "--output", str(design)]) == 0
    capsys.readouterr()
    assert run(["survey", str(design), "--format", "answers"]) == 0
    again = capsys.readouterr().out
    assert "equipment.inlet.degree: unknown" not in again
    assert "  structure: unknown" not in again
    assert again.count(": unknown") < text.count(": unknown") - 1, "the parts of the degree need no answer now"


def test_line_ends_of_the_file_stay(tmp_path: Path) -> None:
    design, out = tmp_path / "crlf.fitout.yaml", tmp_path / "out.fitout.yaml"
    data = FILE.read_bytes().replace(b"\n", b"\r\n")
    design.write_bytes(data)
    given = answers(tmp_path, "answers: {equipment.inlet.degree: IP44}")
    assert run(["answer", str(design), given, "--output", str(out)]) == 0
    assert out.read_bytes() == data.replace(b"degree: unknown", b"degree: {is: IP44, basis: datasheet}")


@pytest.mark.parametrize("name", ["design", "answers"])
def test_neither_input_is_ever_overwritten(name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    design = tmp_path / "copy.fitout.yaml"
    design.write_bytes(FILE.read_bytes())
    given = answers(tmp_path, "answers: {equipment.inlet.degree: IP44}")
    output = {"design": str(design), "answers": given}[name]
    before = Path(output).read_bytes()
    assert run(["answer", str(design), given, "--output", output]) == 2
    assert "is an input" in capsys.readouterr().err
    assert Path(output).read_bytes() == before


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("answers: {equipment.inlet.degre: IP44}", "answers.yaml:1:11: with this answer"),
        ("answers: [", "answers.yaml:1:"),
        ("answers: {equipment.inlet.degree: IP44", "answers.yaml:1:"),
    ],
)
def test_what_cannot_be_used_is_told_and_nothing_is_written(
    text: str, words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "out.fitout.yaml"
    assert run(["answer", str(FILE), answers(tmp_path, text), "--output", str(out)]) == 2
    said = capsys.readouterr()
    assert words in said.err
    assert "Traceback" not in said.err
    assert not out.exists()


def test_a_missing_answers_file_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["answer", str(FILE), "nowhere.yaml"]) == 2
    assert "nowhere.yaml" in capsys.readouterr().err
