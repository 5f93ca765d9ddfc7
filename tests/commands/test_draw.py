"""`fitout draw` as a user meets it."""

from __future__ import annotations

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


def test_the_design_itself_is_never_replaced(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copy = tmp_path / "van.fitout.yaml"
    copy.write_bytes(VAN.read_bytes())
    assert draw(copy, "--output", copy) == 2
    assert "input" in capsys.readouterr().err and copy.read_bytes() == VAN.read_bytes()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [((VAN, "--view", "front"), "plan"), ((VAN, "--format", "png"), "svg"), (("nowhere.fitout.yaml",), "no such file")],
)
def test_what_cannot_be_drawn_is_refused_with_what_can(
    arguments: tuple[Any, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert draw(*arguments) == 2
    assert said in capsys.readouterr().err
