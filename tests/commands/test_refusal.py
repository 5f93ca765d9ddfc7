"""Errors of the system in plain words."""

from __future__ import annotations

import errno

import pytest

from checker.commands.refusal import Refused, nearest, why


@pytest.mark.parametrize(
    ("code", "said"),
    [(errno.ENOSPC, "no room left on the device"), (errno.EACCES, "permission denied"),
     (errno.EISDIR, "is a folder, not a file"), (errno.EROFS, "the file system is read-only")],
)  # fmt: skip
def test_a_known_cause_has_words_of_its_own(code: int, said: str) -> None:
    assert why(OSError(code, "etwas anderes")) == said


def test_an_unknown_cause_keeps_those_of_the_system() -> None:
    assert why(OSError(errno.EIO, "Input/output error")) == "Input/output error"
    assert why(OSError()) == "OSError"


def test_the_nearest_names_are_offered_best_first_and_nothing_when_none_is_near() -> None:
    assert nearest("reveiw", ["rules", "review", "schema"]) == "; did you mean review?"
    assert nearest("xyz", ["rules", "review"]) == ""


def test_a_refusal_keeps_its_lines() -> None:
    assert Refused("a", "b").lines == ("a", "b")
    assert str(Refused("a", "b")) == "a; b"
