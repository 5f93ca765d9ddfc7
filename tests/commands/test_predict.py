"""`fitout predict` says what the instruments should read."""

from __future__ import annotations

import csv
import json
import re
from pathlib import Path
from typing import Any

import pytest

from checker.commands import run

COACH = "examples/estuary-coach.fitout.yaml"
SURVEY = "examples/saltbush-survey.fitout.yaml"


def predict(*arguments: str) -> int:
    return run(["predict", *arguments])


def data(capsys: pytest.CaptureFixture[str], *arguments: str) -> Any:
    assert predict(*arguments, "--format", "json") == 0
    return json.loads(capsys.readouterr().out)


def test_text_opens_with_the_caution_and_ends_with_who_decides(capsys: pytest.CaptureFixture[str]) -> None:
    assert predict(COACH, "--mode", "idling") == 0
    text = " ".join(capsys.readouterr().out.split())
    assert text.startswith("Mains and high-current direct current kill and burn.")
    assert text.endswith("a licensed electrician say otherwise, they are right.")
    assert "Mode idling" in text
    assert "Mode driving" not in text
    assert "common practice, no source" in text


def test_lines_are_at_most_eighty_columns_but_for_what_is_copied(capsys: pytest.CaptureFixture[str]) -> None:
    assert predict(COACH) == 0
    assert max(len(line) for line in capsys.readouterr().out.splitlines()) <= 80


def test_every_reading_lies_between_its_ends(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, COACH)
    assert [mode["mode"] for mode in found["modes"]][:2] == ["driving", "idling"]
    readings = [one for mode in found["modes"] for one in mode["readings"]]
    assert len(readings) > 100
    for one in readings:
        if one["likely"] is not None:
            assert one["lowest"] <= one["likely"] <= one["highest"], one
        else:
            assert one["unknown"]


def test_at_asks_for_one_place(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, COACH, "--mode", "driving", "--at", "converter.high")
    (mode,) = found["modes"]
    assert {one["at"] for one in mode["readings"]} == {"converter.high"}
    assert {one["quantity"] for one in mode["readings"]} == {"voltage", "current", "power"}
    power = next(one for one in mode["readings"] if one["quantity"] == "power")
    assert 2500 < power["likely"] < 2835


def test_what_is_not_known_gets_no_number_and_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    found = data(capsys, SURVEY)
    camp = next(mode for mode in found["modes"] if mode["mode"] == "camp")
    assert camp["missing"]
    unknown = [one for one in camp["readings"] if one["unknown"]]
    assert unknown
    assert all(one["likely"] is None for one in unknown)


def test_csv_has_the_caution_a_head_and_a_row_for_each_reading(capsys: pytest.CaptureFixture[str]) -> None:
    assert predict(COACH, "--mode", "driving", "--format", "csv") == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("# Mains and high-current")
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    assert {"mode", "at", "likely", "lowest", "highest"} <= set(rows[0])
    assert float(next(row for row in rows if row["at"] == "bar-48")["likely"]) > 50.0


def test_the_same_file_gives_the_same_bytes(capsys: pytest.CaptureFixture[str]) -> None:
    predict(COACH)
    first = capsys.readouterr().out
    predict(COACH)
    assert capsys.readouterr().out == first


def test_a_file_is_written_and_never_the_design_itself(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "readings.csv"
    assert predict(COACH, "--format", "csv", "--output", str(target)) == 0
    assert target.read_text("utf-8").startswith("# Mains")
    copy = tmp_path / "copy.fitout.yaml"
    copy.write_text(Path(COACH).read_text("utf-8"), "utf-8")
    assert predict(str(copy), "--output", str(copy)) == 2
    assert "is an input" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--mode", "drivin"), "did you mean driving?"),
        (("--at", "converter.hig"), "did you mean converter.high"),
        (("--at", "kitchen-outlets"), "not on the direct-current side"),
    ],
)
def test_a_wrong_name_is_told_the_nearest(
    arguments: tuple[str, ...], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert predict(COACH, *arguments) == 2
    assert words in capsys.readouterr().err


def test_a_mode_without_operating_point_sets_the_status(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = Path(COACH).read_text("utf-8").replace("slide-motor: 18 A}}", "slide-motor: 18 A, cabin-lights: 9 kW}}")
    file = tmp_path / "too-much.fitout.yaml"
    file.write_text(text, "utf-8")
    assert predict(str(file), "--mode", "slide-out") == 1
    text = " ".join(capsys.readouterr().out.split())
    assert "No operating point" in text
    assert "cabin-lights" in text


def test_short_circuits_are_told_when_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    wanted = ("--mode", "shore", "--at", "coach-feed", "--at", "bank-main", "--faults")
    (mode,) = data(capsys, COACH, *wanted)["modes"]
    feed, main = mode["shorts"]
    # With the engine off the converter alone holds the 12 V side up: it gives its peak, and perhaps nothing.
    assert (feed["at"], feed["weakest"], feed["least"], feed["greatest"]) == ("coach-feed", "converter.low", 0.0, 260.0)
    assert main["weakest"].startswith("house-bank.unit-")
    assert 0.0 < main["least"] <= main["least_at_most"] < main["greatest_at_least"] <= main["greatest"]
    assert predict(COACH, *wanted) == 0
    assert re.search(r"coach-feed +0\.\.200 +260  converter\.low\n", capsys.readouterr().out)
    assert predict(COACH, *wanted, "--format", "csv") == 0
    rows = list(csv.reader(capsys.readouterr().out.splitlines()))
    assert ["shore", "coach-feed", "least short circuit", "A", "", "0.0", "200.0", "", "converter.low", ""] in rows


def test_without_asking_no_short_circuit_is_worked_out(capsys: pytest.CaptureFixture[str]) -> None:
    assert all(mode["shorts"] == [] for mode in data(capsys, COACH, "--mode", "shore")["modes"])


def test_a_short_circuit_of_which_nothing_is_known_says_why(capsys: pytest.CaptureFixture[str]) -> None:
    assert predict(SURVEY, "--faults", "--at", "charge-line") == 0
    assert "charge-line: unknown: what tow-coupling.charge gives is not known" in capsys.readouterr().out
