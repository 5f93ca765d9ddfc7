"""The same design gives the same bytes, whatever the order of hashes, the working folder and the locale."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.benchmarks.generator import coach

ROOT = Path(__file__).resolve().parents[2]
NAME = "coach.fitout.yaml"
CARAVAN = (ROOT / "tests/clean/wren-caravan.fitout.yaml").read_text("utf-8")  # fed through a plug of many contacts


def reviewed(folder: Path, form: str, seed: str, locale: str) -> bytes:
    """Standard output of a review run in `folder`."""
    environment = {
        **os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": seed, "LC_ALL": locale, "LANG": locale,
        "FITOUT_CACHE": "none", "COLUMNS": "200" if seed == "1" else "40",
    }  # fmt: skip
    command = [sys.executable, "-m", "checker.commands", "review", NAME, "--format", form, "--all"]
    run = subprocess.run(command, cwd=folder, env=environment, capture_output=True, timeout=120, check=False)
    assert run.returncode in (0, 1), run.stderr.decode()
    return run.stdout


@pytest.mark.parametrize(
    ("text", "form"), [(coach(24, seed=3), "json"), (coach(24, seed=3), "text"), (CARAVAN, "json")],
    ids=["coach-json", "coach-text", "caravan-json"],
)  # fmt: skip
def test_hashes_folder_and_locale_change_no_byte(text: str, form: str, tmp_path: Path) -> None:
    found = set()
    for number, (seed, locale) in enumerate((("0", "C"), ("1", "C.UTF-8"), ("4242", "tr_TR.UTF-8"))):
        folder = tmp_path / f"folder {number}"
        folder.mkdir()
        (folder / NAME).write_text(text, "utf-8", newline="\n")
        found.add(reviewed(folder, form, seed, locale))
    (bytes_found,) = found
    assert b"coach.fitout.yaml" in bytes_found and len(bytes_found) > 2000
