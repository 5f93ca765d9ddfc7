"""`fitout states` as a user runs it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
COACH = ROOT / "rules" / "designs" / "mains-coach.fitout.yaml"


def test_it_lists_the_states_and_ends_with_0(fitout: Any) -> None:
    found = fitout("states", COACH)
    assert found.returncode == 0
    said = found.stdout.decode()
    assert "shore absent, inverter inverting, K2 inverter" in said
    assert "switch inverter on; inverter joins neutral to earth" in " ".join(said.split())
    assert found.stderr == b""


def test_json_is_for_programs(fitout: Any) -> None:
    found = json.loads(fitout("states", COACH, "--format", "json").stdout)
    assert len(found["states"]) == 12
    assert found["complete"] is True


def test_a_file_takes_the_text_and_the_design_is_never_overwritten(fitout: Any, tmp_path: Path) -> None:
    target = tmp_path / "states.txt"
    assert fitout("states", COACH, "--output", target).returncode == 0
    assert "Supply states" in target.read_text("utf-8")
    copy = tmp_path / "coach.fitout.yaml"
    copy.write_bytes(COACH.read_bytes())
    assert fitout("states", copy, "--output", copy).returncode == 2
    assert copy.read_bytes() == COACH.read_bytes()


def test_a_file_that_is_no_design_is_refused_in_one_line(fitout: Any, tmp_path: Path) -> None:
    bad = tmp_path / "bad.fitout.yaml"
    bad.write_text("fitout: 1\n", "utf-8")
    found = fitout("states", bad)
    assert found.returncode == 2
    assert b"Traceback" not in found.stderr
    assert b"bad.fitout.yaml:" in found.stderr
