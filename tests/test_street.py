"""The rooms import downwards only, and the check that says so can fail."""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
LINT = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports('pyproject.toml', no_cache=True))"


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    """Run the import contracts of the project that lies in the folder."""
    return subprocess.run(
        [sys.executable, "-c", LINT], cwd=folder, capture_output=True, text=True, check=False, env={"PYTHONPATH": "."}
    )


@pytest.fixture
def empty_street(tmp_path: Path) -> Path:
    """A project with our contracts and nothing in any room."""
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    layers = project["tool"]["importlinter"]["contracts"][0]["layers"]
    for layer in layers:
        for room in layer.replace(":", "|").split("|"):
            folder = tmp_path / "checker" / room.strip()
            folder.mkdir(parents=True)
            (folder / "__init__.py").touch()
    (tmp_path / "checker" / "__init__.py").touch()
    return tmp_path


def test_every_import_points_down_the_street() -> None:
    done = lint(ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


def test_an_empty_street_breaks_no_contract(empty_street: Path) -> None:
    done = lint(empty_street)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(
    ("room", "line"),
    [
        ("design", "import checker.reading"),
        ("quantities", "import checker.physics"),
        ("physics", "from checker import quantities"),
        ("circuit", "def late():\n    import checker.reading"),
        ("rulebook", "import checker.design"),
        ("review", "import checker.reports"),
        ("facts", "import numpy"),
        ("circuit", "def late():\n    import scipy"),
    ],
)
def test_an_import_against_the_street_is_reported(empty_street: Path, room: str, line: str) -> None:
    (empty_street / "checker" / room / "__init__.py").write_text(line + "\n", "utf-8")
    done = lint(empty_street)
    assert done.returncode == 1, done.stdout + done.stderr
    assert f"checker.{room}" in done.stdout
    assert "BROKEN" in done.stdout


def test_a_room_outside_the_street_is_reported(empty_street: Path) -> None:
    (empty_street / "checker" / "attic.py").touch()
    done = lint(empty_street)
    assert done.returncode != 0
    assert "attic" in done.stdout + done.stderr


def imported_modules(file: Path) -> set[str]:
    """Absolute names of the modules that a file imports, wherever in it."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
            found.add(node.module)
    return found


def test_the_rulebook_knows_of_the_facts_their_catalogue_alone() -> None:
    files = sorted((ROOT / "checker" / "rulebook").rglob("*.py"))
    assert files
    wrong = {
        (file.relative_to(ROOT).as_posix(), name)
        for file in files
        for name in imported_modules(file)
        if name.startswith("checker.facts") and name != "checker.facts.catalogue"
    }
    assert not wrong
