"""From a path to the text of a file: size, encoding, and what the system says."""

from __future__ import annotations

import os
from pathlib import Path
from typing import NoReturn

from checker.source.problems import Problem, Problems, SourceErrors
from checker.source.tree import Node

LARGEST = 2 * 1024 * 1024
"""Bytes of the largest file that is read. A coach with 300 circuits takes 120,000."""

_START = Node(1, 1)
_OTHER_MARKS = (
    (b"\xff\xfe\x00\x00", "UTF-32"),
    (b"\x00\x00\xfe\xff", "UTF-32"),
    (b"\xff\xfe", "UTF-16"),
    (b"\xfe\xff", "UTF-16"),
)


def load_bytes(path: str | os.PathLike[str]) -> bytes:
    """The bytes of the file at `path`. Raises `SourceErrors` when it cannot or should not be read."""
    file = Path(path)
    problems = Problems(str(path))
    try:
        if file.is_dir():
            problems.add(_START, "this is a folder, not a file", "name a file, such as `coach.fitout.yaml`")
        elif file.exists() and not file.is_file():
            problems.add(_START, "this is not an ordinary file", "name a file, such as `coach.fitout.yaml`")
        elif file.exists() and file.stat().st_size > LARGEST:
            refuse_size(str(path), file.stat().st_size)
        problems.raise_any()
        with file.open("rb") as stream:
            data = stream.read(LARGEST + 1)
    except FileNotFoundError:
        problems.add(_START, "there is no such file", "look at the spelling and the folder")
    except PermissionError:
        problems.add(_START, "the file may not be read by this user", "ask its owner for the right to read it")
    except (OSError, ValueError) as error:
        cause = getattr(error, "strerror", None) or str(error)
        problems.add(_START, f"the file cannot be read: {cause}", "name a file on this machine")
    else:
        if len(data) > LARGEST:
            refuse_size(str(path), len(data))
        return data
    raise SourceErrors(problems.found)


def decode(data: bytes, file: str) -> str:
    """The text in `data`, which must be UTF-8. Raises `SourceErrors`."""
    problems = Problems(file)
    if len(data) > LARGEST:
        refuse_size(file, len(data))
    for mark, name in _OTHER_MARKS:
        if data.startswith(mark):
            problems.add(_START, f"the file is written in {name}", "save it as UTF-8")
            problems.raise_any()
    if b"\x00" in data:
        at = _place(data, data.index(b"\x00"))
        problems.add(at, "the file holds bytes that are no text", "name a text file, such as `coach.fitout.yaml`")
        problems.raise_any()
    try:
        return data.removeprefix(b"\xef\xbb\xbf").decode("utf-8")
    except UnicodeDecodeError as error:
        start = error.start + (3 if data.startswith(b"\xef\xbb\xbf") else 0)
        problems.add(_place(data, start), f"the byte 0x{data[start]:02X} is not UTF-8", "save the file as UTF-8")
        raise SourceErrors(problems.found) from None


def _place(data: bytes, position: int) -> Node:
    before = data[:position].removeprefix(b"\xef\xbb\xbf").decode("utf-8", errors="replace")
    lines = before.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return Node(len(lines), len(lines[-1]) + 1)


def refuse_size(file: str, size: int) -> NoReturn:
    """Raise `SourceErrors` for a text of `size` bytes, which is too large."""
    what = f"the file is {size:,} bytes, more than {LARGEST:,}"
    raise SourceErrors([Problem(file, 1, 1, what, "one file is one vehicle; drop what is no design")])
