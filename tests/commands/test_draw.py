"""`fitout draw` as a user meets it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from checker.commands import run

HERE = Path(__file__).parent
VAN = HERE / "gravel-van.fitout.yaml"
HOUSE = HERE / "house"

pytestmark = pytest.mark.usefixtures("no_shipped_rules")


def draw(*arguments: Any) -> int:
    return run(["draw", *map(str, arguments), "--rules", str(HOUSE)])


@pytest.mark.parametrize("view", ["plan", "side"])
def test_the_drawing_goes_to_the_terminal_as_svg(view: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert draw(VAN, "--view", view) == 0
    picture = etree.fromstring(capsys.readouterr().out.encode())
    assert picture.tag == "{http://www.w3.org/2000/svg}svg"


def test_the_drawing_goes_to_a_file_the_same_each_time(tmp_path: Path) -> None:
    first, second = tmp_path / "one.svg", tmp_path / "two.svg"
    assert draw(VAN, "--output", first) == 0 and draw(VAN, "--output", second) == 0
    assert first.read_bytes() == second.read_bytes() and first.read_bytes().startswith(b"<?xml")


def test_a_picture_in_dots_is_the_same_in_a_file_and_at_the_terminal(
    tmp_path: Path, capsysbinary: pytest.CaptureFixture[bytes]
) -> None:
    file = tmp_path / "van.png"
    assert draw(VAN, "--format", "png", "--output", file) == 0 and draw(VAN, "--format", "png") == 0
    assert capsysbinary.readouterr().out == file.read_bytes() and file.read_bytes().startswith(b"\x89PNG")


def test_dots_are_not_poured_into_a_terminal(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True)
    assert draw(VAN, "--format", "png") == 2
    assert "--output FILE" in capsys.readouterr().err


def test_without_the_extra_the_command_says_how_to_have_it(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setitem(sys.modules, "resvg_py", None)
    assert draw(VAN, "--format", "png", "--output", tmp_path / "van.png") == 2
    assert "pip install resvg-py ttf-opensans" in capsys.readouterr().err and not (tmp_path / "van.png").exists()


def test_the_design_itself_is_never_replaced(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copy = tmp_path / "van.fitout.yaml"
    copy.write_bytes(VAN.read_bytes())
    assert draw(copy, "--output", copy) == 2
    assert "input" in capsys.readouterr().err and copy.read_bytes() == VAN.read_bytes()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [((VAN, "--view", "front"), "plan"), ((VAN, "--format", "gif"), "png"), (("nowhere.fitout.yaml",), "no such file")],
)
def test_what_cannot_be_drawn_is_refused_with_what_can(
    arguments: tuple[Any, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert draw(*arguments) == 2
    assert said in capsys.readouterr().err
