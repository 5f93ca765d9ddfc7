"""`fitout day` tells a day and what it rests on."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from checker.commands import run
from checker.reports.caution import CAUTION, DEFERRAL

ROOT = Path(__file__).parents[2]
COACH = ROOT / "examples" / "estuary-coach.fitout.yaml"
SURVEY = ROOT / "examples" / "saltbush-survey.fitout.yaml"


def day(*arguments: str, file: Path = COACH) -> int:
    return run(["day", str(file), *arguments])


def as_json(capsys: pytest.CaptureFixture[str], *arguments: str, file: Path = COACH) -> dict[str, object]:
    assert day("--format", "json", *arguments, file=file) == 0
    found: dict[str, object] = json.loads(capsys.readouterr().out)
    return found


def test_the_text_opens_with_the_caution_and_ends_by_deferring(capsys: pytest.CaptureFixture[str]) -> None:
    assert day() == 0
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith(" ".join(CAUTION.split()))
    assert said.endswith(" ".join(DEFERRAL.split()))


def test_the_text_has_a_row_and_a_bar_for_every_hour(capsys: pytest.CaptureFixture[str]) -> None:
    assert day() == 0
    lines = capsys.readouterr().out.splitlines()
    rows = [line for line in lines if line[2:6] == ":00 "]
    assert [row[:2] for row in rows] == [f"{hour:02d}" for hour in range(24)]
    assert all(len(line) <= 80 for line in lines)
    for row in rows:
        told = int(row.split("%")[0].split()[-1])
        assert row.count("#") == pytest.approx(told / 5, abs=0.51)


def test_what_was_taken_for_granted_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert day() == 0
    said = " ".join(capsys.readouterr().out.split())
    assert "sun from 6 to 18 h" in said
    assert "full at midnight a day before" in said


def test_the_json_holds_the_steps_and_their_sums(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json(capsys)
    steps = found["steps"]
    assert isinstance(steps, list)
    assert len(steps) == 96
    uses = found["uses"]
    assert isinstance(uses, list)
    assert sum(step["load"] for step in steps) / 4 == pytest.approx(sum(use["energy"] for use in uses), rel=1e-3)
    assert found["caution"] == CAUTION


def test_a_start_is_taken_as_given(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json(capsys, "--start", "30")
    steps = found["steps"]
    assert isinstance(steps, list)
    assert steps[0]["charge"][0] == pytest.approx(0.30, abs=0.01)
    assumed = found["assumed"]
    assert isinstance(assumed, list)
    assert not any("day before" in line for line in assumed)


def test_in_the_cold_the_battery_takes_less(capsys: pytest.CaptureFixture[str]) -> None:
    warm = as_json(capsys, "--start", "30")["unused"]
    cold = as_json(capsys, "--start", "30", "--cold")["unused"]
    assert isinstance(warm, float) and isinstance(cold, float)
    assert cold > warm


def test_a_design_that_tells_no_day_is_refused_with_what_would_help(capsys: pytest.CaptureFixture[str]) -> None:
    assert day(file=SURVEY) != 0
    said = " ".join(capsys.readouterr().err.split())
    assert "a day cannot be told" in said
    assert "`uses` under `day`" in said


@pytest.mark.parametrize("start", ["-1", "101", "half"])
def test_a_start_that_cannot_be_is_refused(capsys: pytest.CaptureFixture[str], start: str) -> None:
    assert day("--start", start) != 0
    assert "--start" in capsys.readouterr().err


def test_what_is_left_out_is_named_before_the_hours(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "coach.fitout.yaml"
    file.write_text(COACH.read_text("utf-8").replace("sun hours: 4.5 h", "sun hours: unknown"), "utf-8")
    assert day(file=file) == 0
    said = capsys.readouterr().out
    assert said.index("what sun brings") < said.index("00:00")


def test_the_output_goes_to_a_file_and_never_over_the_design(tmp_path: Path) -> None:
    out = tmp_path / "day.json"
    assert day("--format", "json", "--output", str(out)) == 0
    assert json.loads(out.read_text("utf-8"))["day"] == 1
    assert day("--output", str(COACH)) != 0


def test_the_same_file_gives_the_same_bytes(capsys: pytest.CaptureFixture[str]) -> None:
    assert day() == 0
    first = capsys.readouterr().out
    assert day() == 0
    assert capsys.readouterr().out == first


def test_what_the_day_asks_of_the_battery_is_told_in_text_and_json(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json(capsys)
    use, usable, deficit = found["use"], found["usable"], found["deficit"]
    autonomy, cycles = found["autonomy"], found["cycles"]
    assert isinstance(use, float) and isinstance(usable, float) and isinstance(deficit, float)
    assert isinstance(autonomy, dict) and isinstance(cycles, float)
    sources, steps = found["sources"], found["steps"]
    assert isinstance(sources, list) and isinstance(steps, list)
    assert autonomy["hours"] == pytest.approx(usable / use * 24, rel=1e-4)
    assert autonomy["days"] == pytest.approx(usable / use, rel=1e-4)
    assert deficit == pytest.approx(use - sum(source["could_give"] for source in sources), rel=1e-4)
    assert cycles == pytest.approx(sum(-min(step["battery"], 0) for step in steps) / 4 / usable, rel=1e-3)
    assert found["cold_hours"] == 12.0
    assert found["efficiency"] == 0.97
    assert day() == 0
    said = " ".join(capsys.readouterr().out.split())
    for sentence in (
        f"The day uses {use:.0f} Wh, {-deficit:.0f} Wh less than its sources can bring.",
        f"{usable:.0f} Wh of 6480 Wh may be drawn every day.",
        f"it lasts {autonomy['hours']:.3g} h, which is {autonomy['days']:.3g} days.",
        f"Such a day is {cycles:.3g} of a whole cycle",
        "On a coldest day it may not be charged for 12 h.",
    ):
        assert sentence in said


def test_belt_power_is_told_for_the_worst_mode_and_at_idle(capsys: pytest.CaptureFixture[str]) -> None:
    (alternator,) = as_json(capsys)["alternators"]  # type: ignore[misc]
    assert alternator["belt_power"] > alternator["belt_power_at_idle"] > 0
    assert day() == 0
    said = " ".join(capsys.readouterr().out.split())
    assert f"takes up to {alternator['belt_power']:.0f} W from the belt" in said
    assert f"at idle up to {alternator['belt_power_at_idle']:.0f} W." in said


def test_sources_that_bring_less_or_perhaps_less_are_said_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = COACH.read_text("utf-8").replace("driving: 2 h", "driving: 0 h")
    for sun, said in (
        ("0.5 h", "more than its sources can bring"),
        ("1..40 h", "Wh less to"),
        ("1..1.5 h", "Wh more than its sources can bring"),
    ):
        file = tmp_path / "coach.fitout.yaml"
        file.write_text(text.replace("sun hours: 4.5 h", f"sun hours: {sun}"), "utf-8")
        assert day(file=file) == 0
        assert said in " ".join(capsys.readouterr().out.split())


def test_a_trip_is_told_day_by_day(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "coach.fitout.yaml"
    text = COACH.read_text("utf-8").replace("sun hours: 4.5 h", "sun hours: 0 h")
    file.write_text(text.replace("driving: 2 h", "driving: 0 h"), "utf-8")
    found = as_json(capsys, "--days", "3", "--start", "100", file=file)
    trip, use, capacity = found["trip"], found["use"], found["capacity"]
    assert isinstance(trip, list) and isinstance(use, float) and isinstance(capacity, float)
    assert [one["day"] for one in trip] == [1, 2, 3]
    assert trip[0]["end"] == pytest.approx(1 - use / capacity, abs=1e-3)
    assert trip[0]["missing"] == 0.0
    assert sum(one["missing"] for one in trip) == pytest.approx(3 * use - capacity, rel=1e-3)
    assert day("--days", "3", file=file) == 0
    lines = capsys.readouterr().out.splitlines()
    at = lines.index(" day  lowest    end  missing")
    assert lines[at + 1].split() == ["1", f"{trip[0]['lowest']:.0%}", f"{trip[0]['end']:.0%}", "0", "Wh"]
    assert any("all days of the trip are alike" in line for line in lines)


def test_without_days_there_is_no_trip(capsys: pytest.CaptureFixture[str]) -> None:
    assert as_json(capsys)["trip"] == []


@pytest.mark.parametrize("days", ["0", "-1", "367", "2.5", "two", "²", "9" * 5000])
def test_a_number_of_days_that_cannot_be_is_refused(days: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert day("--days", days) != 0
    assert "write a whole number from 1 to 366" in " ".join(capsys.readouterr().err.split())
