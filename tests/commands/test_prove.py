"""`fitout prove` compares recorded readings and says what may explain those outside."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from checker.commands import run

COACH = Path("examples/estuary-coach.fitout.yaml")
CAMPER = "examples/heron-camper.fitout.yaml"


def with_readings(folder: Path, *lines: str) -> str:
    """The coach with other readings."""
    text = COACH.read_text("utf-8")
    start, end = text.index("\nreadings:"), text.index("\ndepartures:")
    file = folder / "coach.fitout.yaml"
    readings = "".join(f"  - {line}\n" for line in lines)
    file.write_text(f"{text[:start]}\nreadings:\n{readings}{text[end:]}", "utf-8")
    return str(file)


def prove(file: str, capsys: pytest.CaptureFixture[str], status: int) -> Any:
    assert run(["prove", file, "--format", "json"]) == status
    return json.loads(capsys.readouterr().out)


def test_the_readings_of_the_coach_agree(capsys: pytest.CaptureFixture[str]) -> None:
    found = prove(str(COACH), capsys, 0)
    assert found["counts"] == {"agrees": 5, "outside": 0, "undecided": 0}
    assert all(mode["causes"] == [] for mode in found["modes"])


def test_a_weak_alternator_is_among_the_first_causes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = with_readings(
        tmp_path,
        "{mode: driving, at: alternator, current: 175 A}",
        "{mode: driving, at: converter-low, current: 138 A}",
        "{mode: driving, at: start-battery, voltage: 13.4 V}",
        "{mode: driving, at: link-12, voltage: 13.2 V}",
    )
    found = prove(file, capsys, 1)
    (mode,) = found["modes"]
    assert found["counts"]["outside"] >= 2
    assert any("alternator is weak" in cause["what"] for cause in mode["causes"][:2])
    assert mode["causes"][-1]["what"].startswith("the instrument")
    assert all(cause["tell"] for cause in mode["causes"])


def test_causes_are_ranked_by_how_little_they_leave(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = with_readings(tmp_path, "{mode: free-camp, at: inverter-feed, current: 12.8 A}")
    found = prove(file, capsys, 1)
    causes = found["modes"][0]["causes"]
    left = [cause["left"] for cause in causes[:-1]]
    assert left == sorted(left)
    assert causes[0]["what"] == "inverter draws 4 times what is stated"


def test_what_cannot_be_compared_is_undecided_and_counted(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = with_readings(tmp_path, "{mode: shore, at: K2, voltage: 230 V}", "{mode: stored, at: bar-48, voltage: 0 V}")
    found = prove(file, capsys, 0)
    assert found["counts"]["undecided"] == 2
    assert all(one["unknown"] for mode in found["modes"] for one in mode["readings"])


def test_text_names_the_line_and_the_caution(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = with_readings(tmp_path, "{mode: free-camp, at: fuse-box, voltage: 11.1 V}")
    assert run(["prove", file]) == 1
    text = " ".join(capsys.readouterr().out.split())
    assert text.startswith("Mains and high-current direct current kill and burn.")
    assert "outside: voltage at fuse-box: 11.1 V; expected 13.34, from" in text
    lines = Path(file).read_text("utf-8").splitlines()
    line = next(number for number, each in enumerate(lines, 1) if "fuse-box, voltage" in each)
    assert f"{file}:{line}:" in text
    assert "What may explain it" in text
    assert "How to tell" in text


def test_a_design_without_readings_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["prove", CAMPER]) == 0
    assert "There is no reading" in " ".join(capsys.readouterr().out.split())


def test_a_file_that_is_no_design_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["prove", str(tmp_path / "none.yaml")]) == 2
    assert "no such file" in capsys.readouterr().err


def test_a_joint_shows_between_two_voltages_that_each_agree(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = ("{mode: driving, at: start-battery, voltage: 14.17 V}", "{mode: driving, at: bar-12, voltage: 13.29 V}")
    found = prove(with_readings(tmp_path, *lines), capsys, 1)
    (mode,) = found["modes"]
    assert [one["result"] for one in mode["readings"]] == ["agrees", "outside"]
    later = mode["readings"][1]
    assert later["lowest"] < 13.29 < later["highest"]
    assert later["differs"].startswith("-0.88 V above that at start-battery")
    assert "link-12" in mode["causes"][0]["what"]


def test_the_review_says_the_same_at_the_line_of_the_reading(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = with_readings(
        tmp_path,
        "{mode: driving, at: start-battery, voltage: 14.17 V}",
        "{mode: driving, at: bar-12, voltage: 13.29 V}",
        "{mode: driving, at: chassis-feed, current: 77 A}",
    )
    proved = prove(file, capsys, 1)["modes"][0]
    run(["review", file, "--format", "json"])
    reviewed = json.loads(capsys.readouterr().out)
    said = [one for one in reviewed["findings"] if one["rule"] == "reading-as-predicted"]
    expected = {one["line"] for one in proved["readings"] if one["result"] == "outside"}
    assert len(expected) == 2
    assert {one["where"]["line"] for one in said if one["verdict"] == "breach"} == expected
    assert all(proved["causes"][0]["what"] in one["says"] for one in said)
