"""What people install holds everything that the checkout holds, and reviews alike."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from checker.shipped import FOLDERS

ROOT = Path(__file__).parents[1]
EXAMPLE = "estuary-coach.fitout.yaml"

REVIEW = "import sys; from checker.commands import main; sys.argv[0] = 'fitout'; sys.exit(main())"
WHERE = "import checker, checker.shipped as s; print(checker.__file__); [print(s.shipped(f)) for f in s.FOLDERS]"


def run(*command: str, folder: Path, path: Path | None = None) -> str:
    """Output of a Python command that must succeed, with nothing of ours on its path but `path`."""
    env = {key: value for key, value in os.environ.items() if not key.startswith(("PYTHON", "PIP_", "COLUMNS"))}
    if path is not None:
        env["PYTHONPATH"] = str(path)
    done = subprocess.run(
        [sys.executable, *command], cwd=folder, env=env, capture_output=True, text=True, encoding="utf-8", check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built with what is installed here and no network."""
    folder = tmp_path_factory.mktemp("wheel")
    run("-m", "hatchling", "build", "--target", "wheel", "--directory", str(folder), folder=ROOT)
    (built,) = folder.glob("*.whl")
    return built


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the installed package, its dependencies left to the environment."""
    folder = tmp_path_factory.mktemp("installed")
    run(
        *("-m", "pip", "--isolated", "install", "-q", "--no-deps", "--no-index", "--no-compile"),
        *("--target", str(folder), str(wheel)),
        folder=folder,
    )
    return folder


@pytest.fixture
def elsewhere(tmp_path: Path) -> Path:
    """A working folder outside the checkout, with one design in it."""
    (tmp_path / EXAMPLE).write_bytes((ROOT / "examples" / EXAMPLE).read_bytes())
    return tmp_path


def files_below(folder: Path) -> set[str]:
    """Names of the files below a folder, caches left out."""
    return {
        file.relative_to(folder).as_posix()
        for file in folder.rglob("*")
        if file.is_file() and "__pycache__" not in file.parts
    }


def inside(wheel: Path, prefix: str) -> set[str]:
    """Names of the files below a prefix of the wheel."""
    with zipfile.ZipFile(wheel) as archive:
        return {name.removeprefix(prefix) for name in archive.namelist() if name.startswith(prefix)}


def test_the_wheel_holds_every_file_of_the_package_with_tables_and_templates(wheel: Path) -> None:
    packed = {name for name in inside(wheel, "checker/") if not name.startswith("_data/")}
    assert packed == files_below(ROOT / "checker")
    assert any(name.startswith("tables/") and name.endswith(".csv") for name in packed)
    assert any(name.startswith("reports/templates/") for name in packed)


@pytest.mark.parametrize("folder", FOLDERS)
def test_the_wheel_holds_the_whole_shipped_folder(wheel: Path, folder: str) -> None:
    packed = inside(wheel, f"checker/_data/{folder}/")
    assert packed
    assert packed == files_below(ROOT / folder)


def test_the_wheel_brings_the_command_and_the_licence(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        (points,) = [name for name in archive.namelist() if name.endswith(".dist-info/entry_points.txt")]
        assert "fitout = checker.commands:main" in archive.read(points).decode()
        assert any(name.endswith("/licenses/LICENSE") for name in archive.namelist())


def test_an_installed_package_uses_its_own_folders(installed: Path, tmp_path: Path) -> None:
    places = [Path(line) for line in run("-c", WHERE, folder=tmp_path, path=installed).split("\n")[:-1]]
    package = installed / "checker"
    assert places == [package / "__init__.py", *(package / "_data" / folder for folder in FOLDERS)]


def test_an_installed_package_reviews_from_another_folder_as_the_checkout_does(
    installed: Path, elsewhere: Path
) -> None:
    """The same bytes, which hold the hash of the rulebook and the number of its rules."""
    command = ("-c", REVIEW, "review", EXAMPLE, "--format", "json")
    ours = run(*command, folder=elsewhere, path=installed)
    assert '"rulebook"' in ours
    assert ours == run(*command, folder=elsewhere, path=ROOT)
