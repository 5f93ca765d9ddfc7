"""The folders that come along with the package are found in a checkout and in a wheel."""

from __future__ import annotations

from pathlib import Path

import pytest

from checker import shipped as module
from checker.shipped import FOLDERS, shipped

ROOT = Path(__file__).parents[1]


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty place that stands for the installed package."""
    folder = tmp_path / "checker"
    folder.mkdir()
    monkeypatch.setattr(module, "_PACKAGE", folder)
    return folder


@pytest.mark.parametrize("folder", FOLDERS)
def test_a_checkout_has_the_folder_beside_the_package(folder: str) -> None:
    assert shipped(folder) == ROOT / folder


def test_every_shipped_folder_is_put_into_the_wheel() -> None:
    import tomllib

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    included = project["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    assert included == {folder: f"checker/_data/{folder}" for folder in FOLDERS}


def test_an_installed_package_prefers_the_folder_inside_it(package: Path) -> None:
    inside = package / "_data" / "rules"
    inside.mkdir(parents=True)
    (package.parent / "rules").mkdir()
    assert shipped("rules") == inside


def test_the_folder_beside_the_package_is_taken_when_none_is_inside(package: Path) -> None:
    beside = package.parent / "schemas"
    beside.mkdir()
    assert shipped("schemas") == beside


def test_a_missing_folder_is_an_error_that_names_the_places_looked_at(package: Path) -> None:
    with pytest.raises(FileNotFoundError, match=r"'rules' is missing, looked at .*_data.* and .*install the package"):
        shipped("rules")


@pytest.mark.parametrize("folder", ["", "tests", "../rules", "/etc"])
def test_a_folder_that_is_not_shipped_is_refused(folder: str) -> None:
    with pytest.raises(ValueError, match="there are rules, schemas, examples"):
        shipped(folder)
