"""The two commands of the README are complete, and what they show works."""

from __future__ import annotations

import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text("utf-8")
COMMANDS: list[str] = re.findall(r"^```sh\n(.*?)^```$", README, flags=re.MULTILINE | re.DOTALL)


def test_the_readme_shows_exactly_two_commands() -> None:
    assert len(COMMANDS) == 2


@pytest.mark.parametrize("command", COMMANDS, ids=["review", "tests"])
def test_each_command_is_one_line_that_starts_from_a_new_clone(command: str) -> None:
    assert command.count("\n") == 1
    assert command.startswith("python3 -m venv .venv && .venv/bin/pip install ")
    assert " .venv/bin/pip install -q --no-deps -e . " in command


def test_the_files_that_the_commands_name_exist() -> None:
    named = {word for command in COMMANDS for word in shlex.split(command) if word.endswith((".txt", ".yaml"))}
    assert len(named) == 3
    for name in named:
        assert (ROOT / name).is_file(), name


def test_the_gate_ends_with_the_second_command() -> None:
    assert (ROOT / ".ci" / "run").read_text("utf-8").endswith("\n" + COMMANDS[1])


def test_the_review_in_the_first_command_finds_no_breach_and_says_the_caution() -> None:
    arguments = shlex.split(COMMANDS[0].rpartition(" && ")[2])
    assert arguments[0] == ".venv/bin/fitout"
    argv = ["fitout", *arguments[1:]]
    script = f"import sys; from checker.commands import main; sys.argv = {argv!r}; sys.exit(main())"
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "licensed electrician" in " ".join(done.stdout.split())


def test_every_file_and_folder_named_in_the_readme_exists() -> None:
    named = re.findall(r"^\| `([^`]+)` \|", README, flags=re.MULTILINE)
    assert named
    for name in named:
        assert (ROOT / name).exists(), name
