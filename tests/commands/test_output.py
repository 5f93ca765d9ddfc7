"""A file written by a command is the old one or the new one, never half, and never an input."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest

from checker.commands import output as module
from checker.commands.output import deliver, save, wants_colour
from checker.commands.refusal import Refused


def files(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_holds_the_text_and_nothing_else_is_left(tmp_path: Path) -> None:
    save(["Ω ", "two\n"], tmp_path / "report.txt")
    assert (tmp_path / "report.txt").read_bytes() == "Ω two\n".encode()
    assert files(tmp_path) == ["report.txt"]


def test_a_new_file_has_the_permissions_that_any_new_file_gets(tmp_path: Path) -> None:
    old = os.umask(0o027)
    try:
        save(["x"], tmp_path / "report.txt")
    finally:
        os.umask(old)
    assert stat.S_IMODE((tmp_path / "report.txt").stat().st_mode) == 0o640


def test_a_replaced_file_keeps_its_permissions(tmp_path: Path) -> None:
    target = tmp_path / "report.txt"
    target.write_text("old")
    target.chmod(0o604)
    save(["new"], target)
    assert (target.read_text(), stat.S_IMODE(target.stat().st_mode)) == ("new", 0o604)


def test_a_link_stays_a_link_and_its_target_is_replaced(tmp_path: Path) -> None:
    (tmp_path / "real.txt").write_text("old")
    (tmp_path / "link.txt").symlink_to("real.txt")
    save(["new"], tmp_path / "link.txt")
    assert (tmp_path / "link.txt").is_symlink()
    assert (tmp_path / "real.txt").read_text() == "new"


@pytest.mark.parametrize("step", ["replace", "fsync"])
@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EACCES, errno.EROFS])
def test_when_writing_fails_the_old_file_stands_and_nothing_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str, code: int
) -> None:
    def fail(*_: object) -> None:
        raise OSError(code, os.strerror(code))

    target = tmp_path / "report.txt"
    target.write_text("old")
    monkeypatch.setattr(module.os, step, fail)
    with pytest.raises(Refused, match=r"report\.txt: cannot be written: .*; nothing was changed"):
        save(["new"], target)
    assert target.read_text() == "old"
    assert files(tmp_path) == ["report.txt"]


def test_a_report_that_breaks_while_it_is_made_leaves_the_old_file(tmp_path: Path) -> None:
    def pieces() -> Iterator[str]:
        yield "half"
        raise KeyError("broken")

    target = tmp_path / "report.txt"
    target.write_text("old")
    with pytest.raises(KeyError):
        save(pieces(), target)
    assert target.read_text() == "old"
    assert files(tmp_path) == ["report.txt"]


def test_an_interruption_leaves_the_old_file(tmp_path: Path) -> None:
    def pieces() -> Iterator[str]:
        yield "half"
        raise KeyboardInterrupt

    target = tmp_path / "report.txt"
    target.write_text("old")
    with pytest.raises(KeyboardInterrupt):
        save(pieces(), target)
    assert target.read_text() == "old"
    assert files(tmp_path) == ["report.txt"]


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="no such file or folder"):
        save(["x"], tmp_path / "missing" / "report.txt")


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="is a folder"):
        save(["x"], tmp_path)


def test_a_full_device_is_told(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="no room left on the device"):
        save(["x" * 100], Path("/dev/full"))


def test_a_device_is_written_to_and_not_replaced() -> None:
    save(["x"], Path("/dev/null"))
    assert stat.S_ISCHR(os.stat("/dev/null").st_mode)


@pytest.mark.parametrize("how", ["same", "dotted", "symbolic", "hard"])
def test_an_input_is_never_replaced_under_any_name(tmp_path: Path, how: str) -> None:
    design = tmp_path / "coach.fitout.yaml"
    design.write_text("design")
    (tmp_path / "sub").mkdir()
    name = {
        "same": design,
        "dotted": tmp_path / "sub" / ".." / "coach.fitout.yaml",
        "symbolic": tmp_path / "symbolic",
        "hard": tmp_path / "hard",
    }[how]
    if how == "symbolic":
        name.symlink_to(design)
    if how == "hard":
        os.link(design, name)
    with pytest.raises(Refused, match="is an input of this review"):
        save(["report"], name, [tmp_path / "other", design])
    assert design.read_text() == "design"


def test_half_a_surrogate_pair_is_written_as_an_escape(tmp_path: Path) -> None:
    save(["a\udc80b"], tmp_path / "x")
    assert (tmp_path / "x").read_bytes() == b"a\\udc80b"


def test_without_an_output_the_pieces_go_to_standard_output(capsys: pytest.CaptureFixture[str]) -> None:
    deliver(["a", "b"])
    assert capsys.readouterr().out == "ab"


def test_colour_is_for_terminals_only_and_never_with_no_color(monkeypatch: pytest.MonkeyPatch) -> None:
    class Terminal:
        def isatty(self) -> bool:
            return True

    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.delenv("TERM", raising=False)
    assert not wants_colour()
    monkeypatch.setattr(module.sys, "stdout", Terminal())
    assert wants_colour()
    monkeypatch.setenv("NO_COLOR", "1")
    assert not wants_colour()
    monkeypatch.setenv("NO_COLOR", "")
    assert wants_colour()
    monkeypatch.setenv("TERM", "dumb")
    assert not wants_colour()
