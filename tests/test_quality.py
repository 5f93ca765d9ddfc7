"""The linter and the type checker find nothing, and no lock names where packages come from."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
TOOLS = {
    "ruff": ["ruff", "check", "--no-cache", "--output-format=concise", "checker", "tests"],
    "mypy": ["mypy", "--strict", "checker"],
}


@pytest.mark.parametrize("tool", TOOLS)
def test_the_code_is_clean_for(tool: str) -> None:
    done = subprocess.run([sys.executable, "-m", *TOOLS[tool]], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("name", ["requirements.txt", "requirements-dev.txt"])
def test_a_lock_has_hashes_and_names_no_index(name: str) -> None:
    text = (ROOT / name).read_text("utf-8")
    pinned = [line for line in text.splitlines() if line and not line.startswith((" ", "#"))]
    assert pinned
    assert all("==" in line and line.endswith("\\") for line in pinned)
    assert text.count("--hash=sha256:") >= len(pinned)
    for mark in ("://", "--index-url", "--extra-index-url", "--find-links"):
        assert mark not in text


def test_what_users_install_is_a_part_of_what_developers_install() -> None:
    users, developers = (
        {line for line in (ROOT / name).read_text("utf-8").splitlines() if line and not line.startswith((" ", "#"))}
        for name in ("requirements.txt", "requirements-dev.txt")
    )
    assert users <= developers
