"""From a path to a text: what cannot or should not be read is refused, with the reason."""

from __future__ import annotations

import io
import os
from pathlib import Path
from typing import Any

import pytest

from checker.reading import ReadingErrors, read_design, read_text
from checker.reading.source import LARGEST, decode, load_bytes
from checker.source.problems import Problem


def refusal(path: str | Path) -> Problem:
    with pytest.raises(ReadingErrors) as caught:
        read_design(path)
    (problem,) = caught.value.problems
    assert problem.file == str(path)
    return problem


def written(folder: Path, data: bytes) -> Path:
    file = folder / "x.fitout.yaml"
    file.write_bytes(data)
    return file


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    problem = refusal(tmp_path / "no.fitout.yaml")
    assert "no such file" in problem.what and problem[1:3] == (1, 1)
    assert str(problem).startswith(f"{tmp_path}/no.fitout.yaml:1:1: ")


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    assert "folder" in refusal(tmp_path).what


def test_what_is_no_ordinary_file_is_refused_without_waiting(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert "not an ordinary file" in refusal(tmp_path / "pipe").what


def test_a_file_without_permission_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = written(tmp_path, b"fitout: 1\n")
    file.chmod(0)

    def refuse(self: Path, *args: Any, **options: Any) -> Any:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)  # root may read everything
    problem = refusal(file)
    assert "may not be read" in problem.what and "right to read" in problem.right


def test_a_fault_of_the_system_is_passed_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = written(tmp_path, b"fitout: 1\n")

    def refuse(self: Path, *args: Any, **options: Any) -> Any:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(Path, "open", refuse)
    assert "Input/output error" in refusal(file).what


def test_a_path_that_cannot_be_is_refused() -> None:
    assert refusal("a\0b").right


def test_a_large_file_is_refused_by_its_size_before_it_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "x.fitout.yaml"
    with file.open("wb") as stream:
        stream.write(b"title: ")
        stream.truncate(30 * 1024 * 1024)  # one scalar of 30 MB

    def never(self: Path, *args: Any, **options: Any) -> Any:
        raise AssertionError("the file was opened")

    monkeypatch.setattr(Path, "open", never)
    assert "31,457,280 bytes" in refusal(file).what


def test_a_file_that_grows_while_it_is_read_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = written(tmp_path, b"fitout: 1\n")
    monkeypatch.setattr(Path, "open", lambda self, *args: io.BytesIO(b"x" * (LARGEST + 10)))
    assert "more than 2,097,152" in refusal(file).what


def test_a_large_text_is_refused() -> None:
    with pytest.raises(ReadingErrors, match="more than 2,097,152"):
        read_text("a: " + "ä" * (LARGEST // 2))


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-be", "utf-32"])
def test_other_unicode_encodings_are_told_apart(tmp_path: Path, encoding: str) -> None:
    data = "\ufeffa: 1".encode(encoding) if encoding.endswith("be") else "a: 1".encode(encoding)
    problem = refusal(written(tmp_path, data))
    assert encoding[:6].upper() in problem.what and "UTF-8" in problem.right


def test_latin_letters_of_an_old_encoding_show_their_place(tmp_path: Path) -> None:
    problem = refusal(written(tmp_path, b"fitout: 1\ntitle: \xc3\xa4 Wohnmobil f\xfcr zwei\n"))
    assert problem[1:3] == (2, 21) and "0xFC" in problem.what and "UTF-8" in problem.right


def test_a_binary_file_is_no_text(tmp_path: Path) -> None:
    problem = refusal(written(tmp_path, b"\x7fELF\x02\x01\x00\x00"))
    assert "bytes that are no text" in problem.what and problem[1:3] == (1, 7)


def test_a_byte_order_mark_of_utf_8_moves_no_column() -> None:
    assert decode(b"\xef\xbb\xbfa: 1", "f") == "a: 1"
    with pytest.raises(ReadingErrors) as caught:
        read_text("\ufefffitout: 7")
    assert caught.value.problems[0][1:3] == (1, 9)


def test_an_ordinary_file_comes_as_its_bytes(tmp_path: Path) -> None:
    assert load_bytes(written(tmp_path, b"a: \xc3\xa4\n")) == b"a: \xc3\xa4\n"
